using System;

namespace Acquisition.Core;

/// <summary>An electric current.</summary>
/// <remarks>Held in amperes, finite. The default value is 0 A. Immutable and thread-safe.</remarks>
public readonly partial struct Current
{
    private readonly double _value;

    private Current(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Current;

    internal double SiValue => _value;

    internal static Current FromSi(double value, string argument) =>
        IsInRange(value) ? new Current(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Current FromResult(double value, string operand) =>
        IsInRange(value) ? new Current(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The current in amperes.</summary>
    public double Amperes => _value;

    /// <summary>A current given in amperes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Current FromAmperes(double amperes) => FromSi(amperes, nameof(amperes));

    /// <summary>The current in milliamperes.</summary>
    public double Milliamperes => _value * 1e3;

    /// <summary>A current given in milliamperes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Current FromMilliamperes(double milliamperes) => FromSi(milliamperes / 1e3, nameof(milliamperes));

    /// <summary>The current in microamperes.</summary>
    public double Microamperes => _value * 1e6;

    /// <summary>A current given in microamperes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Current FromMicroamperes(double microamperes) => FromSi(microamperes / 1e6, nameof(microamperes));

    /// <summary>The current in nanoamperes.</summary>
    public double Nanoamperes => _value * 1e9;

    /// <summary>A current given in nanoamperes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Current FromNanoamperes(double nanoamperes) => FromSi(nanoamperes / 1e9, nameof(nanoamperes));

    /// <summary>The voltage across a resistance.</summary>
    public static Voltage operator *(Current current, Resistance resistance) => Voltage.FromResult(current._value * resistance.SiValue, nameof(resistance));

    /// <summary>The power of a current and its voltage.</summary>
    public static Power operator *(Current current, Voltage voltage) => Power.FromResult(current._value * voltage.SiValue, nameof(voltage));
}
