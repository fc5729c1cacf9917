namespace Acquisition.Core;

public readonly partial struct SampleRate
{
    /// <summary>The sum.</summary>
    public static SampleRate operator +(SampleRate left, SampleRate right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    public static SampleRate operator -(SampleRate left, SampleRate right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>The value, scaled by a plain number.</summary>
    public static SampleRate operator *(SampleRate value, double factor) => FromResult(value._value * factor, nameof(factor));

    /// <summary>The value, scaled by a plain number.</summary>
    public static SampleRate operator *(double factor, SampleRate value) => FromResult(factor * value._value, nameof(factor));

    /// <summary>The value, divided by a plain number.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static SampleRate operator /(SampleRate value, double divisor) => FromResult(value._value / divisor, nameof(divisor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static SampleRate operator *(SampleRate value, Ratio factor) => FromResult(value._value * factor.Fraction, nameof(factor));

    /// <summary>The value, scaled by a ratio.</summary>
    public static SampleRate operator *(Ratio factor, SampleRate value) => FromResult(factor.Fraction * value._value, nameof(factor));

    /// <summary>The value, divided by a ratio.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static SampleRate operator /(SampleRate value, Ratio divisor) => FromResult(value._value / divisor.Fraction, nameof(divisor));

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException"><paramref name="divisor"/> is zero.</exception>
    public static Ratio operator /(SampleRate value, SampleRate divisor) => Ratio.FromResult(value._value / divisor._value, nameof(divisor));
}

#if NET8_0_OR_GREATER
public readonly partial struct SampleRate
    : System.Numerics.IAdditionOperators<SampleRate, SampleRate, SampleRate>, System.Numerics.ISubtractionOperators<SampleRate, SampleRate, SampleRate>,
      System.Numerics.IMultiplyOperators<SampleRate, double, SampleRate>, System.Numerics.IDivisionOperators<SampleRate, double, SampleRate>;
#endif
