namespace Acquisition.Core.Literals;

/// <summary>Power level literals: <c>10.dBm()</c>.</summary>
public static class PowerLevelLiterals
{
    /// <summary>A value in dBm.</summary>
    public static PowerLevel dBm(this double value) => PowerLevel.FromDecibelMilliwatts(value);

    /// <summary>A value in dBm.</summary>
    public static PowerLevel dBm(this int value) => PowerLevel.FromDecibelMilliwatts(value);

    /// <summary>A value in dBW.</summary>
    public static PowerLevel dBW(this double value) => PowerLevel.FromDecibelWatts(value);

    /// <summary>A value in dBW.</summary>
    public static PowerLevel dBW(this int value) => PowerLevel.FromDecibelWatts(value);
}
