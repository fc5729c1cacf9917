using System;

namespace Acquisition.Core;

/// <summary>An inductance.</summary>
/// <remarks>Held in henries, finite and never negative. The default value is 0 H. Immutable and thread-safe.</remarks>
public readonly partial struct Inductance
{
    private readonly double _value;

    private Inductance(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Inductance;

    internal double SiValue => _value;

    internal static Inductance FromSi(double value, string argument) =>
        IsInRange(value) ? new Inductance(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Inductance FromResult(double value, string operand) =>
        IsInRange(value) ? new Inductance(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The inductance in henries.</summary>
    public double Henries => _value;

    /// <summary>A inductance given in henries.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Inductance FromHenries(double henries) => FromSi(henries, nameof(henries));

    /// <summary>The inductance in millihenries.</summary>
    public double Millihenries => _value * 1e3;

    /// <summary>A inductance given in millihenries.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Inductance FromMillihenries(double millihenries) => FromSi(millihenries / 1e3, nameof(millihenries));

    /// <summary>The inductance in microhenries.</summary>
    public double Microhenries => _value * 1e6;

    /// <summary>A inductance given in microhenries.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Inductance FromMicrohenries(double microhenries) => FromSi(microhenries / 1e6, nameof(microhenries));

    /// <summary>The inductance in nanohenries.</summary>
    public double Nanohenries => _value * 1e9;

    /// <summary>A inductance given in nanohenries.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Inductance FromNanohenries(double nanohenries) => FromSi(nanohenries / 1e9, nameof(nanohenries));

    /// <summary>The inductance in picohenries.</summary>
    public double Picohenries => _value * 1e12;

    /// <summary>A inductance given in picohenries.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static Inductance FromPicohenries(double picohenries) => FromSi(picohenries / 1e12, nameof(picohenries));

    /// <summary>The time constant L / R.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public static Duration operator /(Inductance inductance, Resistance resistance) => Duration.FromResult(inductance._value / resistance.SiValue, nameof(resistance));
}
