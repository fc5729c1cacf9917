using System;

namespace Acquisition.Core;

/// <summary>A capacitance.</summary>
/// <remarks>Held in farads, finite and never negative. The default value is 0 F. Immutable and thread-safe.</remarks>
public readonly partial struct Capacitance
{
    private readonly double _value;

    private Capacitance(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Capacitance;

    internal double SiValue => _value;

    internal static Capacitance FromSi(double value, string argument) =>
        IsInRange(value) ? new Capacitance(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Capacitance FromResult(double value, string operand) =>
        IsInRange(value) ? new Capacitance(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The capacitance in farads.</summary>
    public double Farads => _value;

    /// <summary>A capacitance given in farads.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Capacitance FromFarads(double farads) => FromSi(farads, nameof(farads));

    /// <summary>The capacitance in microfarads.</summary>
    public double Microfarads => _value * 1e6;

    /// <summary>A capacitance given in microfarads.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Capacitance FromMicrofarads(double microfarads) => FromSi(microfarads / 1e6, nameof(microfarads));

    /// <summary>The capacitance in nanofarads.</summary>
    public double Nanofarads => _value * 1e9;

    /// <summary>A capacitance given in nanofarads.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Capacitance FromNanofarads(double nanofarads) => FromSi(nanofarads / 1e9, nameof(nanofarads));

    /// <summary>The capacitance in picofarads.</summary>
    public double Picofarads => _value * 1e12;

    /// <summary>A capacitance given in picofarads.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Capacitance FromPicofarads(double picofarads) => FromSi(picofarads / 1e12, nameof(picofarads));

    /// <summary>The capacitance in femtofarads.</summary>
    public double Femtofarads => _value * 1e15;

    /// <summary>A capacitance given in femtofarads.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Capacitance FromFemtofarads(double femtofarads) => FromSi(femtofarads / 1e15, nameof(femtofarads));

    /// <summary>The time constant R C.</summary>
    public static Duration operator *(Capacitance capacitance, Resistance resistance) => Duration.FromResult(capacitance._value * resistance.SiValue, nameof(resistance));
}
