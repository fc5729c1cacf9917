namespace Acquisition.Core;

public readonly partial struct Voltage
{
    /// <summary>The sum.</summary>
    public static Voltage operator +(Voltage left, Voltage right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static Voltage operator -(Voltage left, Voltage right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The same magnitude with the other sign.</summary>
    public static Voltage operator -(Voltage value) => FromSi(-value._value, nameof(value));

    /// <summary>The magnitude without its sign.</summary>
    public Voltage Abs() => FromSi(System.Math.Abs(_value), "value");

    /// <summary>The value, scaled by a plain number.</summary>
    public static Voltage operator *(Voltage value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static Voltage operator *(double factor, Voltage value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Voltage operator /(Voltage value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Voltage operator *(Voltage value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static Voltage operator *(Ratio factor, Voltage value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Voltage operator /(Voltage value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(Voltage value, Voltage divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct Voltage
    : System.Numerics.IAdditionOperators<Voltage, Voltage, Voltage>, System.Numerics.ISubtractionOperators<Voltage, Voltage, Voltage>,
      System.Numerics.IUnaryNegationOperators<Voltage, Voltage>,
      System.Numerics.IMultiplyOperators<Voltage, double, Voltage>, System.Numerics.IDivisionOperators<Voltage, double, Voltage>;
#endif
