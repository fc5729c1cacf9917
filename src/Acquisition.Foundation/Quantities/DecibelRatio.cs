using System;

namespace Acquisition.Core;

/// <summary>A gain (positive) or loss (negative) in decibels. It is not a level (see <see cref="PowerLevel"/>) and not a plain <see cref="Ratio"/>.</summary>
/// <remarks>
/// Held in decibels, finite. Sums cascade: 20 dB + 6 dB is 26 dB. Leaving the logarithm is always by name, because the factor is 20 for amplitudes and
/// 10 for powers (handbook 1.1). The default value is 0 dB: unchanged. Immutable and thread-safe.
/// </remarks>
public readonly partial struct DecibelRatio
{
    /// <summary>Decibels in one neper: 20 / ln 10 (handbook 1.1).</summary>
    internal static readonly double DecibelsPerNeper = 20 / Math.Log(10);

    private readonly double _value;

    private DecibelRatio(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.DecibelRatio;

    internal double SiValue => _value;

    internal static DecibelRatio FromSi(double value, string argument) =>
        IsInRange(value) ? new DecibelRatio(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static DecibelRatio FromResult(double value, string operand) =>
        IsInRange(value) ? new DecibelRatio(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>Half the power: 10 lg(1/2) = -3.0103 dB, an amplitude of 1/sqrt 2. What the trade calls the -3 dB point (handbook 1.2).</summary>
    public static DecibelRatio HalfPower => new(10 * Math.Log10(0.5));

    /// <summary>The ratio in decibels.</summary>
    public double Decibels => _value;

    /// <summary>A ratio given in decibels.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static DecibelRatio FromDecibels(double decibels) => FromSi(decibels, nameof(decibels));

    /// <summary>The ratio in nepers, as a root-power quantity: 1 Np is 8.6859 dB.</summary>
    public double Nepers => _value / DecibelsPerNeper;

    /// <summary>A ratio given in nepers.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static DecibelRatio FromNepers(double nepers) => FromSi(nepers * DecibelsPerNeper, nameof(nepers));

    /// <summary>The decibels of a ratio of amplitudes (voltages, currents): 20 lg (handbook 1.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="ratio"/> is not above 0: its logarithm does not exist.</exception>
    public static DecibelRatio FromAmplitudeRatio(Ratio ratio) => FromSi(20 * Math.Log10(Refuse.UnlessAboveZero(ratio.SiValue, Ratio.Kind, nameof(ratio))), nameof(ratio));

    /// <summary>The decibels of a ratio of powers: 10 lg (handbook 1.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="ratio"/> is not above 0: its logarithm does not exist.</exception>
    public static DecibelRatio FromPowerRatio(Ratio ratio) => FromSi(10 * Math.Log10(Refuse.UnlessAboveZero(ratio.SiValue, Ratio.Kind, nameof(ratio))), nameof(ratio));

    /// <summary>The ratio of amplitudes (voltages, currents) these decibels mean: 10^(dB/20).</summary>
    public Ratio ToAmplitudeRatio() => Ratio.FromSi(Math.Pow(10, _value / 20), "decibels");

    /// <summary>The ratio of powers these decibels mean: 10^(dB/10).</summary>
    public Ratio ToPowerRatio() => Ratio.FromSi(Math.Pow(10, _value / 10), "decibels");

    /// <summary>Two gains, one after the other.</summary>
    public static DecibelRatio operator +(DecibelRatio left, DecibelRatio right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>By how much the left gain exceeds the right one.</summary>
    public static DecibelRatio operator -(DecibelRatio left, DecibelRatio right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The inverse ratio: a gain as a loss.</summary>
    public static DecibelRatio operator -(DecibelRatio value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public DecibelRatio Abs() => FromSi(Math.Abs(_value), "value");

    /// <summary>So many times the same gain.</summary>
    public static DecibelRatio operator *(DecibelRatio value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>So many times the same gain.</summary>
    public static DecibelRatio operator *(double factor, DecibelRatio value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>One of so many equal shares of a gain.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static DecibelRatio operator /(DecibelRatio value, double divisor) => FromResult(value._value / divisor, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct DecibelRatio
    : System.Numerics.IAdditionOperators<DecibelRatio, DecibelRatio, DecibelRatio>, System.Numerics.ISubtractionOperators<DecibelRatio, DecibelRatio, DecibelRatio>,
      System.Numerics.IUnaryNegationOperators<DecibelRatio, DecibelRatio>,
      System.Numerics.IMultiplyOperators<DecibelRatio, double, DecibelRatio>, System.Numerics.IDivisionOperators<DecibelRatio, double, DecibelRatio>;
#endif
