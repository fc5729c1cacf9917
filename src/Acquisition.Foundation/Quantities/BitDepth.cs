using System;

namespace Acquisition.Core;

/// <summary>Bits of vertical resolution, whole for a converter (8 bit) or fractional when they are effective bits (7.4 bit).</summary>
/// <remarks>Held in bits, finite and never negative. The default value is 0 bit. Immutable and thread-safe.</remarks>
public readonly partial struct BitDepth
{
    private readonly double _value;

    private BitDepth(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.BitDepth;

    internal double SiValue => _value;

    internal static BitDepth FromSi(double value, string argument) =>
        IsInRange(value) ? new BitDepth(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static BitDepth FromResult(double value, string operand) =>
        IsInRange(value) ? new BitDepth(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The bit depth in bits.</summary>
    public double Bits => _value;

    /// <summary>A bit depth given in bits.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static BitDepth FromBits(double bits) => FromSi(bits, nameof(bits));
}
