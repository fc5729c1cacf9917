namespace Acquisition.Core;

public readonly partial struct Resistance
{
    /// <summary>The sum.</summary>
    public static Resistance operator +(Resistance left, Resistance right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Resistance operator -(Resistance left, Resistance right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Resistance operator *(Resistance value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Resistance operator *(double factor, Resistance value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Resistance operator /(Resistance value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Resistance operator *(Resistance value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Resistance operator *(Ratio factor, Resistance value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Resistance operator /(Resistance value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Resistance value, Resistance divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Resistance
    : System.Numerics.IAdditionOperators<Resistance, Resistance, Resistance>, System.Numerics.ISubtractionOperators<Resistance, Resistance, Resistance>,
      System.Numerics.IMultiplyOperators<Resistance, double, Resistance>, System.Numerics.IDivisionOperators<Resistance, double, Resistance>;
#endif
