namespace Acquisition.Core;

public readonly partial struct Capacitance
{
    /// <summary>The sum.</summary>
    public static Capacitance operator +(Capacitance left, Capacitance right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Capacitance operator -(Capacitance left, Capacitance right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Capacitance operator *(Capacitance value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Capacitance operator *(double factor, Capacitance value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Capacitance operator /(Capacitance value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Capacitance operator *(Capacitance value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Capacitance operator *(Ratio factor, Capacitance value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Capacitance operator /(Capacitance value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Capacitance value, Capacitance divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Capacitance
    : System.Numerics.IAdditionOperators<Capacitance, Capacitance, Capacitance>, System.Numerics.ISubtractionOperators<Capacitance, Capacitance, Capacitance>,
      System.Numerics.IMultiplyOperators<Capacitance, double, Capacitance>, System.Numerics.IDivisionOperators<Capacitance, double, Capacitance>;
#endif
