namespace Acquisition.Core;

public readonly partial struct PeakVoltage
{
    /// <summary>The sum.</summary>
    public static PeakVoltage operator +(PeakVoltage left, PeakVoltage right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static PeakVoltage operator -(PeakVoltage left, PeakVoltage right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static PeakVoltage operator *(PeakVoltage value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static PeakVoltage operator *(double factor, PeakVoltage value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static PeakVoltage operator /(PeakVoltage value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static PeakVoltage operator *(PeakVoltage value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static PeakVoltage operator *(Ratio factor, PeakVoltage value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static PeakVoltage operator /(PeakVoltage value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(PeakVoltage value, PeakVoltage divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct PeakVoltage
    : System.Numerics.IAdditionOperators<PeakVoltage, PeakVoltage, PeakVoltage>, System.Numerics.ISubtractionOperators<PeakVoltage, PeakVoltage, PeakVoltage>,
      System.Numerics.IMultiplyOperators<PeakVoltage, double, PeakVoltage>, System.Numerics.IDivisionOperators<PeakVoltage, double, PeakVoltage>;
#endif
