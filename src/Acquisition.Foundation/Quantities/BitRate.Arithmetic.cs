namespace Acquisition.Core;

public readonly partial struct BitRate
{
    /// <summary>The sum.</summary>
    public static BitRate operator +(BitRate left, BitRate right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static BitRate operator -(BitRate left, BitRate right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static BitRate operator *(BitRate value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static BitRate operator *(double factor, BitRate value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static BitRate operator /(BitRate value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static BitRate operator *(BitRate value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static BitRate operator *(Ratio factor, BitRate value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static BitRate operator /(BitRate value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(BitRate value, BitRate divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct BitRate
    : System.Numerics.IAdditionOperators<BitRate, BitRate, BitRate>, System.Numerics.ISubtractionOperators<BitRate, BitRate, BitRate>,
      System.Numerics.IMultiplyOperators<BitRate, double, BitRate>, System.Numerics.IDivisionOperators<BitRate, double, BitRate>;
#endif
