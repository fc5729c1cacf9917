namespace Acquisition.Core;

public readonly partial struct SlewRate
{
    /// <summary>The sum.</summary>
    public static SlewRate operator +(SlewRate left, SlewRate right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static SlewRate operator -(SlewRate left, SlewRate right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static SlewRate operator -(SlewRate value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public SlewRate Abs() => FromSi(System.Math.Abs(_value), "value");

    /// <summary>The value, scaled by a plain number.</summary>
    public static SlewRate operator *(SlewRate value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static SlewRate operator *(double factor, SlewRate value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static SlewRate operator /(SlewRate value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static SlewRate operator *(SlewRate value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static SlewRate operator *(Ratio factor, SlewRate value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static SlewRate operator /(SlewRate value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(SlewRate value, SlewRate divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct SlewRate
    : System.Numerics.IAdditionOperators<SlewRate, SlewRate, SlewRate>, System.Numerics.ISubtractionOperators<SlewRate, SlewRate, SlewRate>,
      System.Numerics.IUnaryNegationOperators<SlewRate, SlewRate>,
      System.Numerics.IMultiplyOperators<SlewRate, double, SlewRate>, System.Numerics.IDivisionOperators<SlewRate, double, SlewRate>;
#endif
