namespace Acquisition.Core;

public readonly partial struct Duration
{
    /// <summary>The sum.</summary>
    public static Duration operator +(Duration left, Duration right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Duration operator -(Duration left, Duration right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static Duration operator -(Duration value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public Duration Abs() => FromSi(System.Math.Abs(_value), "value");

    /// <summary>The value, scaled by a plain number.</summary>
    public static Duration operator *(Duration value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Duration operator *(double factor, Duration value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Duration operator /(Duration value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Duration operator *(Duration value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Duration operator *(Ratio factor, Duration value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Duration operator /(Duration value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Duration value, Duration divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Duration
    : System.Numerics.IAdditionOperators<Duration, Duration, Duration>, System.Numerics.ISubtractionOperators<Duration, Duration, Duration>,
      System.Numerics.IUnaryNegationOperators<Duration, Duration>,
      System.Numerics.IMultiplyOperators<Duration, double, Duration>, System.Numerics.IDivisionOperators<Duration, double, Duration>;
#endif
