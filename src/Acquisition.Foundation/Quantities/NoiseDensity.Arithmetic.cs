namespace Acquisition.Core;

public readonly partial struct NoiseDensity
{
    /// <summary>The sum.</summary>
    public static NoiseDensity operator +(NoiseDensity left, NoiseDensity right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static NoiseDensity operator -(NoiseDensity left, NoiseDensity right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static NoiseDensity operator *(NoiseDensity value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static NoiseDensity operator *(double factor, NoiseDensity value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static NoiseDensity operator /(NoiseDensity value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static NoiseDensity operator *(NoiseDensity value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static NoiseDensity operator *(Ratio factor, NoiseDensity value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static NoiseDensity operator /(NoiseDensity value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(NoiseDensity value, NoiseDensity divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct NoiseDensity
    : System.Numerics.IAdditionOperators<NoiseDensity, NoiseDensity, NoiseDensity>, System.Numerics.ISubtractionOperators<NoiseDensity, NoiseDensity, NoiseDensity>,
      System.Numerics.IMultiplyOperators<NoiseDensity, double, NoiseDensity>, System.Numerics.IDivisionOperators<NoiseDensity, double, NoiseDensity>;
#endif
