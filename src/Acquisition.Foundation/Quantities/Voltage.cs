using System;

namespace Acquisition.Core;

/// <summary>A voltage at an instant, or a voltage difference. How an amplitude was stated is a type of its own: <see cref="PeakVoltage"/>, <see cref="PeakToPeakVoltage"/>, <see cref="RmsVoltage"/>.</summary>
/// <remarks>Held in volts, finite. The default value is 0 V. Immutable and thread-safe.</remarks>
public readonly partial struct Voltage
{
    private readonly double _value;

    private Voltage(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Voltage;

    internal double SiValue => _value;

    internal static Voltage FromSi(double value, string argument) =>
        IsInRange(value) ? new Voltage(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Voltage FromResult(double value, string operand) =>
        IsInRange(value) ? new Voltage(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The voltage in volts.</summary>
    public double Volts => _value;

    /// <summary>A voltage given in volts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Voltage FromVolts(double volts) => FromSi(volts, nameof(volts));

    /// <summary>The voltage in millivolts.</summary>
    public double Millivolts => _value * 1e3;

    /// <summary>A voltage given in millivolts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Voltage FromMillivolts(double millivolts) => FromSi(millivolts / 1e3, nameof(millivolts));

    /// <summary>The voltage in microvolts.</summary>
    public double Microvolts => _value * 1e6;

    /// <summary>A voltage given in microvolts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Voltage FromMicrovolts(double microvolts) => FromSi(microvolts / 1e6, nameof(microvolts));

    /// <summary>The voltage in nanovolts.</summary>
    public double Nanovolts => _value * 1e9;

    /// <summary>A voltage given in nanovolts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Voltage FromNanovolts(double nanovolts) => FromSi(nanovolts / 1e9, nameof(nanovolts));

    /// <summary>The voltage in kilovolts.</summary>
    public double Kilovolts => _value / 1e3;

    /// <summary>A voltage given in kilovolts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Voltage FromKilovolts(double kilovolts) => FromSi(kilovolts * 1e3, nameof(kilovolts));

    /// <summary>The current through a resistance.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public static Current operator /(Voltage voltage, Resistance resistance) => Current.FromResult(voltage._value / resistance.SiValue, nameof(resistance));

    /// <summary>The resistance that a voltage and its current mean.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="current"/> is 0 A, or the two differ in sign.</exception>
    public static Resistance operator /(Voltage voltage, Current current) => Resistance.FromResult(voltage._value / current.SiValue, nameof(current));

    /// <summary>The power of a voltage and its current.</summary>
    public static Power operator *(Voltage voltage, Current current) => Power.FromResult(voltage._value * current.SiValue, nameof(current));

    /// <summary>The slope of a voltage change in a time.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="duration"/> is 0 s.</exception>
    public static SlewRate operator /(Voltage voltage, Duration duration) => SlewRate.FromResult(voltage._value / duration.SiValue, nameof(duration));

    /// <summary>The time in which a slope covers a voltage change.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="slope"/> is 0 V/s.</exception>
    public static Duration operator /(Voltage voltage, SlewRate slope) => Duration.FromResult(voltage._value / slope.SiValue, nameof(slope));
}
