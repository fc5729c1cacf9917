namespace Acquisition.Core;

public readonly partial struct Current
{
    /// <summary>The sum.</summary>
    public static Current operator +(Current left, Current right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Current operator -(Current left, Current right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static Current operator -(Current value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public Current Abs() => FromSi(System.Math.Abs(_value), "value");

    /// <summary>The value, scaled by a plain number.</summary>
    public static Current operator *(Current value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Current operator *(double factor, Current value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Current operator /(Current value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Current operator *(Current value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Current operator *(Ratio factor, Current value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Current operator /(Current value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Current value, Current divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Current
    : System.Numerics.IAdditionOperators<Current, Current, Current>, System.Numerics.ISubtractionOperators<Current, Current, Current>,
      System.Numerics.IUnaryNegationOperators<Current, Current>,
      System.Numerics.IMultiplyOperators<Current, double, Current>, System.Numerics.IDivisionOperators<Current, double, Current>;
#endif
