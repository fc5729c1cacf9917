using System;

namespace Acquisition.Core;

/// <summary>A resistance, or the magnitude of an impedance.</summary>
/// <remarks>Held in ohms, finite and never negative. The default value is 0 Ω. Immutable and thread-safe.</remarks>
public readonly partial struct Resistance
{
    private readonly double _value;

    private Resistance(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Resistance;

    internal double SiValue => _value;

    internal static Resistance FromSi(double value, string argument) =>
        IsInRange(value) ? new Resistance(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Resistance FromResult(double value, string operand) =>
        IsInRange(value) ? new Resistance(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The resistance in ohms.</summary>
    public double Ohms => _value;

    /// <summary>A resistance given in ohms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Resistance FromOhms(double ohms) => FromSi(ohms, nameof(ohms));

    /// <summary>The resistance in milliohms.</summary>
    public double Milliohms => _value * 1e3;

    /// <summary>A resistance given in milliohms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Resistance FromMilliohms(double milliohms) => FromSi(milliohms / 1e3, nameof(milliohms));

    /// <summary>The resistance in kiloohms.</summary>
    public double Kiloohms => _value / 1e3;

    /// <summary>A resistance given in kiloohms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Resistance FromKiloohms(double kiloohms) => FromSi(kiloohms * 1e3, nameof(kiloohms));

    /// <summary>The resistance in megaohms.</summary>
    public double Megaohms => _value / 1e6;

    /// <summary>A resistance given in megaohms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Resistance FromMegaohms(double megaohms) => FromSi(megaohms * 1e6, nameof(megaohms));

    /// <summary>The voltage across this resistance.</summary>
    public static Voltage operator *(Resistance resistance, Current current) => Voltage.FromResult(resistance._value * current.SiValue, nameof(current));

    /// <summary>The time constant R C.</summary>
    public static Duration operator *(Resistance resistance, Capacitance capacitance) => Duration.FromResult(resistance._value * capacitance.SiValue, nameof(capacitance));

    /// <summary>The two in parallel; 0 Ω beside anything is 0 Ω.</summary>
    public Resistance Parallel(Resistance other) =>
        _value == 0 || other._value == 0 ? default : FromSi(1.0 / (1.0 / _value + 1.0 / other._value), nameof(other));
}
