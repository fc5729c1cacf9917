namespace Acquisition.Core;

public readonly partial struct PeakToPeakVoltage
{
    /// <summary>The sum.</summary>
    public static PeakToPeakVoltage operator +(PeakToPeakVoltage left, PeakToPeakVoltage right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static PeakToPeakVoltage operator -(PeakToPeakVoltage left, PeakToPeakVoltage right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static PeakToPeakVoltage operator *(PeakToPeakVoltage value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static PeakToPeakVoltage operator *(double factor, PeakToPeakVoltage value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static PeakToPeakVoltage operator /(PeakToPeakVoltage value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static PeakToPeakVoltage operator *(PeakToPeakVoltage value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static PeakToPeakVoltage operator *(Ratio factor, PeakToPeakVoltage value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static PeakToPeakVoltage operator /(PeakToPeakVoltage value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(PeakToPeakVoltage value, PeakToPeakVoltage divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct PeakToPeakVoltage
    : System.Numerics.IAdditionOperators<PeakToPeakVoltage, PeakToPeakVoltage, PeakToPeakVoltage>, System.Numerics.ISubtractionOperators<PeakToPeakVoltage, PeakToPeakVoltage, PeakToPeakVoltage>,
      System.Numerics.IMultiplyOperators<PeakToPeakVoltage, double, PeakToPeakVoltage>, System.Numerics.IDivisionOperators<PeakToPeakVoltage, double, PeakToPeakVoltage>;
#endif
