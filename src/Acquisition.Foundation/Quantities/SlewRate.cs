using System;

namespace Acquisition.Core;

/// <summary>The slope of a voltage.</summary>
/// <remarks>Held in volts per second, finite. The default value is 0 V/s. Immutable and thread-safe.</remarks>
public readonly partial struct SlewRate
{
    private readonly double _value;

    private SlewRate(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.SlewRate;

    internal double SiValue => _value;

    internal static SlewRate FromSi(double value, string argument) =>
        IsInRange(value) ? new SlewRate(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static SlewRate FromResult(double value, string operand) =>
        IsInRange(value) ? new SlewRate(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The slew rate in volts per second.</summary>
    public double VoltsPerSecond => _value;

    /// <summary>A slew rate given in volts per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static SlewRate FromVoltsPerSecond(double voltsPerSecond) => FromSi(voltsPerSecond, nameof(voltsPerSecond));

    /// <summary>The slew rate in volts per microsecond.</summary>
    public double VoltsPerMicrosecond => _value / 1e6;

    /// <summary>A slew rate given in volts per microsecond.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static SlewRate FromVoltsPerMicrosecond(double voltsPerMicrosecond) => FromSi(voltsPerMicrosecond * 1e6, nameof(voltsPerMicrosecond));

    /// <summary>The slew rate in volts per nanosecond.</summary>
    public double VoltsPerNanosecond => _value / 1e9;

    /// <summary>A slew rate given in volts per nanosecond.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static SlewRate FromVoltsPerNanosecond(double voltsPerNanosecond) => FromSi(voltsPerNanosecond * 1e9, nameof(voltsPerNanosecond));

    /// <summary>The voltage change of a slope in a time.</summary>
    public static Voltage operator *(SlewRate slope, Duration duration) => Voltage.FromResult(slope._value * duration.SiValue, nameof(duration));
}
