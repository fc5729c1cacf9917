using System;

namespace Acquisition.Core;

/// <summary>A voltage as a level: decibels re 1 V rms (dBV). It is not a ratio: two levels cannot be added, their difference is a <see cref="DecibelRatio"/>.</summary>
/// <remarks>Held in dBV, finite. The default value is 0 dBV, that is 1 V rms. Immutable and thread-safe. Source: handbook 1.3.</remarks>
public readonly partial struct VoltageLevel
{
    private readonly double _value;

    private VoltageLevel(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.VoltageLevel;

    internal double SiValue => _value;

    internal static VoltageLevel FromSi(double value, string argument) =>
        IsInRange(value) ? new VoltageLevel(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static VoltageLevel FromResult(double value, string operand) =>
        IsInRange(value) ? new VoltageLevel(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The level in dBV.</summary>
    public double DecibelVolts => _value;

    /// <summary>A level given in dBV.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static VoltageLevel FromDecibelVolts(double decibelVolts) => FromSi(decibelVolts, nameof(decibelVolts));

    /// <summary>The level in dBmV: 60 above its figure in dBV.</summary>
    public double DecibelMillivolts => _value + 60;

    /// <summary>A level given in dBmV.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static VoltageLevel FromDecibelMillivolts(double decibelMillivolts) => FromSi(decibelMillivolts - 60, nameof(decibelMillivolts));

    /// <summary>The level in dBµV: 120 above its figure in dBV.</summary>
    public double DecibelMicrovolts => _value + 120;

    /// <summary>A level given in dBµV.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static VoltageLevel FromDecibelMicrovolts(double decibelMicrovolts) => FromSi(decibelMicrovolts - 120, nameof(decibelMicrovolts));

    /// <summary>The rms voltage this level means.</summary>
    public RmsVoltage ToRmsVoltage() => RmsVoltage.FromSi(Math.Pow(10, _value / 20), "level");

    /// <summary>This level as a level re 1 mW across a resistance (handbook 1.3).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public PowerLevel ToPowerLevel(Resistance resistance) => ToRmsVoltage().ToPowerLevel(resistance);

    /// <summary>The level after a gain.</summary>
    public static VoltageLevel operator +(VoltageLevel level, DecibelRatio gain) => FromResult(level._value + gain.SiValue, nameof(gain));

    /// <summary>The level after a gain.</summary>
    public static VoltageLevel operator +(DecibelRatio gain, VoltageLevel level) => FromResult(gain.SiValue + level._value, nameof(gain));

    /// <summary>The level after a loss.</summary>
    public static VoltageLevel operator -(VoltageLevel level, DecibelRatio loss) => FromResult(level._value - loss.SiValue, nameof(loss));

    /// <summary>How far the left level lies above the right one.</summary>
    public static DecibelRatio operator -(VoltageLevel left, VoltageLevel right) => DecibelRatio.FromResult(left._value - right._value, nameof(right));
}
