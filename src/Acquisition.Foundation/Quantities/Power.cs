using System;

namespace Acquisition.Core;

/// <summary>A power.</summary>
/// <remarks>Held in watts, finite. The default value is 0 W. Immutable and thread-safe.</remarks>
public readonly partial struct Power
{
    private readonly double _value;

    private Power(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Power;

    internal double SiValue => _value;

    internal static Power FromSi(double value, string argument) =>
        IsInRange(value) ? new Power(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Power FromResult(double value, string operand) =>
        IsInRange(value) ? new Power(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The power in watts.</summary>
    public double Watts => _value;

    /// <summary>A power given in watts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Power FromWatts(double watts) => FromSi(watts, nameof(watts));

    /// <summary>The power in milliwatts.</summary>
    public double Milliwatts => _value * 1e3;

    /// <summary>A power given in milliwatts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Power FromMilliwatts(double milliwatts) => FromSi(milliwatts / 1e3, nameof(milliwatts));

    /// <summary>The power in microwatts.</summary>
    public double Microwatts => _value * 1e6;

    /// <summary>A power given in microwatts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Power FromMicrowatts(double microwatts) => FromSi(microwatts / 1e6, nameof(microwatts));

    /// <summary>The power in nanowatts.</summary>
    public double Nanowatts => _value * 1e9;

    /// <summary>A power given in nanowatts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Power FromNanowatts(double nanowatts) => FromSi(nanowatts / 1e9, nameof(nanowatts));

    /// <summary>This power as a level re 1 mW (dBm): 10 lg (handbook 1.3).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The power is not above 0 W: its logarithm does not exist.</exception>
    public PowerLevel ToLevel() => PowerLevel.FromSi(10 * Math.Log10(_value * 1e3), "power");

    /// <summary>The rms voltage that dissipates this power in a resistance: sqrt(P R).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The power is negative.</exception>
    public RmsVoltage ToRmsVoltage(Resistance resistance) => RmsVoltage.FromSi(Math.Sqrt(_value * resistance.SiValue), "power");

    /// <summary>The current that a power and its voltage mean.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="voltage"/> is 0 V.</exception>
    public static Current operator /(Power power, Voltage voltage) => Current.FromResult(power._value / voltage.SiValue, nameof(voltage));

    /// <summary>The voltage that a power and its current mean.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="current"/> is 0 A.</exception>
    public static Voltage operator /(Power power, Current current) => Voltage.FromResult(power._value / current.SiValue, nameof(current));
}
