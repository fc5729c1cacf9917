namespace Acquisition.Core.Literals;

/// <summary>Bit rate literals: <c>2.bitPerS()</c>.</summary>
public static class BitRateLiterals
{
    /// <summary>A bit rate in bits per second.</summary>
    public static BitRate bitPerS(this double value) => BitRate.FromBitsPerSecond(value);

    /// <summary>A bit rate in bits per second.</summary>
    public static BitRate bitPerS(this int value) => BitRate.FromBitsPerSecond(value);

    /// <summary>A bit rate in kilobits per second.</summary>
    public static BitRate kbitPerS(this double value) => BitRate.FromKilobitsPerSecond(value);

    /// <summary>A bit rate in kilobits per second.</summary>
    public static BitRate kbitPerS(this int value) => BitRate.FromKilobitsPerSecond(value);

    /// <summary>A bit rate in megabits per second.</summary>
    public static BitRate MbitPerS(this double value) => BitRate.FromMegabitsPerSecond(value);

    /// <summary>A bit rate in megabits per second.</summary>
    public static BitRate MbitPerS(this int value) => BitRate.FromMegabitsPerSecond(value);

    /// <summary>A bit rate in gigabits per second.</summary>
    public static BitRate GbitPerS(this double value) => BitRate.FromGigabitsPerSecond(value);

    /// <summary>A bit rate in gigabits per second.</summary>
    public static BitRate GbitPerS(this int value) => BitRate.FromGigabitsPerSecond(value);
}
