namespace Acquisition.Core;

public readonly partial struct BitDepth
{
    /// <summary>The sum.</summary>
    public static BitDepth operator +(BitDepth left, BitDepth right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static BitDepth operator -(BitDepth left, BitDepth right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static BitDepth operator *(BitDepth value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static BitDepth operator *(double factor, BitDepth value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static BitDepth operator /(BitDepth value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static BitDepth operator *(BitDepth value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static BitDepth operator *(Ratio factor, BitDepth value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static BitDepth operator /(BitDepth value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(BitDepth value, BitDepth divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct BitDepth
    : System.Numerics.IAdditionOperators<BitDepth, BitDepth, BitDepth>, System.Numerics.ISubtractionOperators<BitDepth, BitDepth, BitDepth>,
      System.Numerics.IMultiplyOperators<BitDepth, double, BitDepth>, System.Numerics.IDivisionOperators<BitDepth, double, BitDepth>;
#endif
