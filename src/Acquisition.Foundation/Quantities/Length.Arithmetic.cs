namespace Acquisition.Core;

public readonly partial struct Length
{
    /// <summary>The sum.</summary>
    public static Length operator +(Length left, Length right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Length operator -(Length left, Length right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static Length operator -(Length value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public Length Abs() => FromSi(System.Math.Abs(_value), "value");

    /// <summary>The value, scaled by a plain number.</summary>
    public static Length operator *(Length value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Length operator *(double factor, Length value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Length operator /(Length value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Length operator *(Length value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Length operator *(Ratio factor, Length value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Length operator /(Length value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Length value, Length divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Length
    : System.Numerics.IAdditionOperators<Length, Length, Length>, System.Numerics.ISubtractionOperators<Length, Length, Length>,
      System.Numerics.IUnaryNegationOperators<Length, Length>,
      System.Numerics.IMultiplyOperators<Length, double, Length>, System.Numerics.IDivisionOperators<Length, double, Length>;
#endif
