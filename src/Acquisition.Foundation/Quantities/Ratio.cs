using System;

namespace Acquisition.Core;

/// <summary>A plain ratio of two like quantities: a duty factor, a tolerance, a gain without decibels.</summary>
/// <remarks>Held as a fraction (50 % is 0.5), finite. The default value is 0. Immutable and thread-safe.</remarks>
public readonly partial struct Ratio
{
    private readonly double _value;

    private Ratio(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Ratio;

    internal double SiValue => _value;

    internal static Ratio FromSi(double value, string argument) =>
        IsInRange(value) ? new Ratio(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Ratio FromResult(double value, string operand) =>
        IsInRange(value) ? new Ratio(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The ratio as a fraction: 0.5 for one half.</summary>
    public double Fraction => _value;

    /// <summary>A ratio given as a fraction: 0.5 for one half.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Ratio FromFraction(double fraction) => FromSi(fraction, nameof(fraction));

    /// <summary>The ratio in percent.</summary>
    public double Percent => _value * 1e2;

    /// <summary>A ratio given in percent.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Ratio FromPercent(double percent) => FromSi(percent / 1e2, nameof(percent));

    /// <summary>The ratio in parts per million.</summary>
    public double PartsPerMillion => _value * 1e6;

    /// <summary>A ratio given in parts per million.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Ratio FromPartsPerMillion(double partsPerMillion) => FromSi(partsPerMillion / 1e6, nameof(partsPerMillion));

    /// <summary>This ratio of amplitudes (voltages, currents) in decibels: 20 lg (handbook 1.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not above 0: its logarithm does not exist.</exception>
    public DecibelRatio ToDecibelsAsAmplitudes() => DecibelRatio.FromAmplitudeRatio(this);

    /// <summary>This ratio of powers in decibels: 10 lg (handbook 1.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not above 0: its logarithm does not exist.</exception>
    public DecibelRatio ToDecibelsAsPowers() => DecibelRatio.FromPowerRatio(this);

    /// <summary>The sum.</summary>
    public static Ratio operator +(Ratio left, Ratio right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Ratio operator -(Ratio left, Ratio right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static Ratio operator -(Ratio value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public Ratio Abs() => FromSi(Math.Abs(_value), "value");

    /// <summary>The product.</summary>
    public static Ratio operator *(Ratio left, Ratio right) => FromResult(left._value * right._value, nameof(right));

    /// <summary>The ratio, scaled by a plain number.</summary>
    public static Ratio operator *(Ratio value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The ratio, scaled by a plain number.</summary>
    public static Ratio operator *(double factor, Ratio value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The quotient.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Ratio value, Ratio divisor) => FromResult(value._value / divisor._value, nameof(divisor));

    /// <summary>The ratio, divided by a plain number.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Ratio operator /(Ratio value, double divisor) => FromResult(value._value / divisor, nameof(divisor));
}
