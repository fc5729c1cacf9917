namespace Acquisition.Core;

public readonly partial struct Frequency
{
    /// <summary>The sum.</summary>
    public static Frequency operator +(Frequency left, Frequency right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Frequency operator -(Frequency left, Frequency right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static Frequency operator -(Frequency value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public Frequency Abs() => FromSi(System.Math.Abs(_value), "value");

    /// <summary>The value, scaled by a plain number.</summary>
    public static Frequency operator *(Frequency value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Frequency operator *(double factor, Frequency value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Frequency operator /(Frequency value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Frequency operator *(Frequency value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Frequency operator *(Ratio factor, Frequency value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Frequency operator /(Frequency value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Frequency value, Frequency divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Frequency
    : System.Numerics.IAdditionOperators<Frequency, Frequency, Frequency>, System.Numerics.ISubtractionOperators<Frequency, Frequency, Frequency>,
      System.Numerics.IUnaryNegationOperators<Frequency, Frequency>,
      System.Numerics.IMultiplyOperators<Frequency, double, Frequency>, System.Numerics.IDivisionOperators<Frequency, double, Frequency>;
#endif
