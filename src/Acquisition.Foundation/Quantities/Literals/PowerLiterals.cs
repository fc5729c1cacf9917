namespace Acquisition.Core.Literals;

/// <summary>Power literals: <c>2.W()</c>.</summary>
public static class PowerLiterals
{
    /// <summary>A power in watts.</summary>
    public static Power W(this double value) => Power.FromWatts(value);

    /// <summary>A power in watts.</summary>
    public static Power W(this int value) => Power.FromWatts(value);

    /// <summary>A power in milliwatts.</summary>
    public static Power mW(this double value) => Power.FromMilliwatts(value);

    /// <summary>A power in milliwatts.</summary>
    public static Power mW(this int value) => Power.FromMilliwatts(value);

    /// <summary>A power in microwatts.</summary>
    public static Power uW(this double value) => Power.FromMicrowatts(value);

    /// <summary>A power in microwatts.</summary>
    public static Power uW(this int value) => Power.FromMicrowatts(value);

    /// <summary>A power in nanowatts.</summary>
    public static Power nW(this double value) => Power.FromNanowatts(value);

    /// <summary>A power in nanowatts.</summary>
    public static Power nW(this int value) => Power.FromNanowatts(value);
}
