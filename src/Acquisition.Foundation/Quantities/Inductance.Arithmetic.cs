namespace Acquisition.Core;

public readonly partial struct Inductance
{
    /// <summary>The sum.</summary>
    public static Inductance operator +(Inductance left, Inductance right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Inductance operator -(Inductance left, Inductance right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Inductance operator *(Inductance value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Inductance operator *(double factor, Inductance value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Inductance operator /(Inductance value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Inductance operator *(Inductance value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Inductance operator *(Ratio factor, Inductance value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Inductance operator /(Inductance value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Inductance value, Inductance divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Inductance
    : System.Numerics.IAdditionOperators<Inductance, Inductance, Inductance>, System.Numerics.ISubtractionOperators<Inductance, Inductance, Inductance>,
      System.Numerics.IMultiplyOperators<Inductance, double, Inductance>, System.Numerics.IDivisionOperators<Inductance, double, Inductance>;
#endif
