using System;

namespace Acquisition.Core;

/// <summary>A plane angle: a phase.</summary>
/// <remarks>Held in radians, finite. The default value is 0 rad. Immutable and thread-safe.</remarks>
public readonly partial struct Angle
{
    private readonly double _value;

    private Angle(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Angle;

    internal double SiValue => _value;

    internal static Angle FromSi(double value, string argument) =>
        IsInRange(value) ? new Angle(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Angle FromResult(double value, string operand) =>
        IsInRange(value) ? new Angle(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The angle in radians.</summary>
    public double Radians => _value;

    /// <summary>A angle given in radians.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Angle FromRadians(double radians) => FromSi(radians, nameof(radians));

    /// <summary>The angle in degrees.</summary>
    public double Degrees => _value * 180 / Math.PI;

    /// <summary>A angle given in degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Angle FromDegrees(double degrees) => FromSi(degrees * Math.PI / 180, nameof(degrees));
}
