namespace Acquisition.Core;

public readonly partial struct Angle
{
    /// <summary>The sum.</summary>
    public static Angle operator +(Angle left, Angle right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Angle operator -(Angle left, Angle right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static Angle operator -(Angle value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public Angle Abs() => FromSi(System.Math.Abs(_value), "value");

    /// <summary>The value, scaled by a plain number.</summary>
    public static Angle operator *(Angle value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Angle operator *(double factor, Angle value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Angle operator /(Angle value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Angle operator *(Angle value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Angle operator *(Ratio factor, Angle value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Angle operator /(Angle value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Angle value, Angle divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Angle
    : System.Numerics.IAdditionOperators<Angle, Angle, Angle>, System.Numerics.ISubtractionOperators<Angle, Angle, Angle>,
      System.Numerics.IUnaryNegationOperators<Angle, Angle>,
      System.Numerics.IMultiplyOperators<Angle, double, Angle>, System.Numerics.IDivisionOperators<Angle, double, Angle>;
#endif
