namespace Acquisition.Core;

public readonly partial struct RmsVoltage
{
    /// <summary>The sum.</summary>
    public static RmsVoltage operator +(RmsVoltage left, RmsVoltage right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static RmsVoltage operator -(RmsVoltage left, RmsVoltage right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static RmsVoltage operator *(RmsVoltage value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static RmsVoltage operator *(double factor, RmsVoltage value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static RmsVoltage operator /(RmsVoltage value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static RmsVoltage operator *(RmsVoltage value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static RmsVoltage operator *(Ratio factor, RmsVoltage value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static RmsVoltage operator /(RmsVoltage value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(RmsVoltage value, RmsVoltage divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct RmsVoltage
    : System.Numerics.IAdditionOperators<RmsVoltage, RmsVoltage, RmsVoltage>, System.Numerics.ISubtractionOperators<RmsVoltage, RmsVoltage, RmsVoltage>,
      System.Numerics.IMultiplyOperators<RmsVoltage, double, RmsVoltage>, System.Numerics.IDivisionOperators<RmsVoltage, double, RmsVoltage>;
#endif
