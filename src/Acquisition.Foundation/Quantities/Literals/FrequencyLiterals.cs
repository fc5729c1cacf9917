namespace Acquisition.Core.Literals;

/// <summary>Frequency literals: <c>20.MHz()</c>.</summary>
// MHz and mHz differ only in case, as the SI wants it; languages that fold case use the factories.
[System.CLSCompliant(false)]
public static class FrequencyLiterals
{
    /// <summary>A frequency in hertz.</summary>
    public static Frequency Hz(this double value) => Frequency.FromHertz(value);

    /// <summary>A frequency in hertz.</summary>
    public static Frequency Hz(this int value) => Frequency.FromHertz(value);

    /// <summary>A frequency in millihertz.</summary>
    public static Frequency mHz(this double value) => Frequency.FromMillihertz(value);

    /// <summary>A frequency in millihertz.</summary>
    public static Frequency mHz(this int value) => Frequency.FromMillihertz(value);

    /// <summary>A frequency in kilohertz.</summary>
    public static Frequency kHz(this double value) => Frequency.FromKilohertz(value);

    /// <summary>A frequency in kilohertz.</summary>
    public static Frequency kHz(this int value) => Frequency.FromKilohertz(value);

    /// <summary>A frequency in megahertz.</summary>
    public static Frequency MHz(this double value) => Frequency.FromMegahertz(value);

    /// <summary>A frequency in megahertz.</summary>
    public static Frequency MHz(this int value) => Frequency.FromMegahertz(value);

    /// <summary>A frequency in gigahertz.</summary>
    public static Frequency GHz(this double value) => Frequency.FromGigahertz(value);

    /// <summary>A frequency in gigahertz.</summary>
    public static Frequency GHz(this int value) => Frequency.FromGigahertz(value);
}
