using System;

namespace Acquisition.Core;

/// <summary>A power as a level: decibels re 1 mW (dBm). It is not a ratio: two levels cannot be added, their difference is a <see cref="DecibelRatio"/>.</summary>
/// <remarks>Held in dBm, finite. The default value is 0 dBm, that is 1 mW. Immutable and thread-safe. Source: handbook 1.3.</remarks>
public readonly partial struct PowerLevel
{
    private readonly double _value;

    private PowerLevel(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.PowerLevel;

    internal double SiValue => _value;

    internal static PowerLevel FromSi(double value, string argument) =>
        IsInRange(value) ? new PowerLevel(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static PowerLevel FromResult(double value, string operand) =>
        IsInRange(value) ? new PowerLevel(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The level in dBm.</summary>
    public double DecibelMilliwatts => _value;

    /// <summary>A level given in dBm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static PowerLevel FromDecibelMilliwatts(double decibelMilliwatts) => FromSi(decibelMilliwatts, nameof(decibelMilliwatts));

    /// <summary>The level in dBW: 30 below its figure in dBm.</summary>
    public double DecibelWatts => _value - 30;

    /// <summary>A level given in dBW.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static PowerLevel FromDecibelWatts(double decibelWatts) => FromSi(decibelWatts + 30, nameof(decibelWatts));

    /// <summary>The power this level means.</summary>
    public Power ToPower() => Power.FromSi(Math.Pow(10, _value / 10) / 1e3, "level");

    /// <summary>The rms voltage this level means across a resistance. A level in dBm needs one before it can become volts (handbook 1.3).</summary>
    public RmsVoltage ToRmsVoltage(Resistance resistance) => ToPower().ToRmsVoltage(resistance);

    /// <summary>The level of the two powers together, when they are uncorrelated: 10 lg of the sum (handbook 1.4).</summary>
    public PowerLevel CombinedWith(PowerLevel other) => (ToPower() + other.ToPower()).ToLevel();

    /// <summary>The level after a gain.</summary>
    public static PowerLevel operator +(PowerLevel level, DecibelRatio gain) => FromResult(level._value + gain.SiValue, nameof(gain));

    /// <summary>The level after a gain.</summary>
    public static PowerLevel operator +(DecibelRatio gain, PowerLevel level) => FromResult(gain.SiValue + level._value, nameof(gain));

    /// <summary>The level after a loss.</summary>
    public static PowerLevel operator -(PowerLevel level, DecibelRatio loss) => FromResult(level._value - loss.SiValue, nameof(loss));

    /// <summary>How far the left level lies above the right one.</summary>
    public static DecibelRatio operator -(PowerLevel left, PowerLevel right) => DecibelRatio.FromResult(left._value - right._value, nameof(right));
}
