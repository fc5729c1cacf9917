namespace Acquisition.Core;

public readonly partial struct Power
{
    /// <summary>The sum.</summary>
    public static Power operator +(Power left, Power right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Power operator -(Power left, Power right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static Power operator -(Power value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public Power Abs() => FromSi(System.Math.Abs(_value), "value");

    /// <summary>The value, scaled by a plain number.</summary>
    public static Power operator *(Power value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Power operator *(double factor, Power value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Power operator /(Power value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Power operator *(Power value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Power operator *(Ratio factor, Power value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Power operator /(Power value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Power value, Power divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Power
    : System.Numerics.IAdditionOperators<Power, Power, Power>, System.Numerics.ISubtractionOperators<Power, Power, Power>,
      System.Numerics.IUnaryNegationOperators<Power, Power>,
      System.Numerics.IMultiplyOperators<Power, double, Power>, System.Numerics.IDivisionOperators<Power, double, Power>;
#endif
