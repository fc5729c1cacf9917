namespace Acquisition.Core.Literals;

/// <summary>Slew rate literals: <c>2.VPerS()</c>.</summary>
public static class SlewRateLiterals
{
    /// <summary>A slew rate in volts per second.</summary>
    public static SlewRate VPerS(this double value) => SlewRate.FromVoltsPerSecond(value);

    /// <summary>A slew rate in volts per second.</summary>
    public static SlewRate VPerS(this int value) => SlewRate.FromVoltsPerSecond(value);

    /// <summary>A slew rate in volts per microsecond.</summary>
    public static SlewRate VPerUs(this double value) => SlewRate.FromVoltsPerMicrosecond(value);

    /// <summary>A slew rate in volts per microsecond.</summary>
    public static SlewRate VPerUs(this int value) => SlewRate.FromVoltsPerMicrosecond(value);

    /// <summary>A slew rate in volts per nanosecond.</summary>
    public static SlewRate VPerNs(this double value) => SlewRate.FromVoltsPerNanosecond(value);

    /// <summary>A slew rate in volts per nanosecond.</summary>
    public static SlewRate VPerNs(this int value) => SlewRate.FromVoltsPerNanosecond(value);
}
