using System;

namespace Acquisition.Core;

/// <summary>A length: of a cable, of a ground lead.</summary>
/// <remarks>Held in metres, finite. The default value is 0 m. Immutable and thread-safe.</remarks>
public readonly partial struct Length
{
    private readonly double _value;

    private Length(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Length;

    internal double SiValue => _value;

    internal static Length FromSi(double value, string argument) =>
        IsInRange(value) ? new Length(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Length FromResult(double value, string operand) =>
        IsInRange(value) ? new Length(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The length in metres.</summary>
    public double Meters => _value;

    /// <summary>A length given in metres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Length FromMeters(double meters) => FromSi(meters, nameof(meters));

    /// <summary>The length in millimetres.</summary>
    public double Millimeters => _value * 1e3;

    /// <summary>A length given in millimetres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Length FromMillimeters(double millimeters) => FromSi(millimeters / 1e3, nameof(millimeters));

    /// <summary>The length in micrometres.</summary>
    public double Micrometers => _value * 1e6;

    /// <summary>A length given in micrometres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Length FromMicrometers(double micrometers) => FromSi(micrometers / 1e6, nameof(micrometers));

    /// <summary>The length in inches.</summary>
    public double Inches => _value * 1e4 / 254;

    /// <summary>A length given in inches.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Length FromInches(double inches) => FromSi(inches * 254 / 1e4, nameof(inches));
}
