using System;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <content>Functions with exact derivatives, conversions, and functions of the caller's own.</content>
public static partial class Uncertain
{
    /// <summary>The square root of a ratio.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The estimate is not above 0.</exception>
    public static Uncertain<Ratio> Sqrt(Uncertain<Ratio> value)
    {
        double root = Math.Sqrt(AboveZero(value, nameof(value)));
        return Function<Ratio>(value, root, 1 / (2 * root), nameof(value));
    }

    /// <summary>A ratio to an exact power.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The power is not a finite number.</exception>
    public static Uncertain<Ratio> Pow(Uncertain<Ratio> value, double exponent)
    {
        double x = Estimate(value, nameof(value));
        return Function<Ratio>(value, Math.Pow(x, exponent), exponent == 0 ? 0 : exponent * Math.Pow(x, exponent - 1), nameof(exponent));
    }

    /// <summary>The exponential of a ratio.</summary>
    public static Uncertain<Ratio> Exp(Uncertain<Ratio> value)
    {
        double y = Math.Exp(Estimate(value, nameof(value)));
        return Function<Ratio>(value, y, y, nameof(value));
    }

    /// <summary>The natural logarithm of a ratio.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The estimate is not above 0.</exception>
    public static Uncertain<Ratio> Log(Uncertain<Ratio> value)
    {
        double x = AboveZero(value, nameof(value));
        return Function<Ratio>(value, Math.Log(x), 1 / x, nameof(value));
    }

    /// <summary>The sine of an angle.</summary>
    public static Uncertain<Ratio> Sin(Uncertain<Angle> angle)
    {
        double x = Estimate(angle, nameof(angle));
        return Function<Ratio>(angle, Math.Sin(x), Math.Cos(x), nameof(angle));
    }

    /// <summary>The cosine of an angle.</summary>
    public static Uncertain<Ratio> Cos(Uncertain<Angle> angle)
    {
        double x = Estimate(angle, nameof(angle));
        return Function<Ratio>(angle, Math.Cos(x), -Math.Sin(x), nameof(angle));
    }

    /// <summary>The tangent of an angle.</summary>
    public static Uncertain<Ratio> Tan(Uncertain<Angle> angle)
    {
        double y = Math.Tan(Estimate(angle, nameof(angle)));
        return Function<Ratio>(angle, y, 1 + y * y, nameof(angle));
    }

    /// <summary>The angle whose tangent is <paramref name="opposite"/> over <paramref name="adjacent"/>, from -180° to 180°.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Both estimates are zero.</exception>
    public static Uncertain<Angle> Atan2<T>(Uncertain<T> opposite, Uncertain<T> adjacent)
        where T : struct, IQuantity
    {
        double y = Estimate(opposite, nameof(opposite)), x = Estimate(adjacent, nameof(adjacent)), r2 = x * x + y * y;
        if (!(r2 > 0)) throw Refuse.OutOfRange(0, adjacent.Kind, nameof(adjacent), "other than 0 where the opposite side is 0");
        return Uncertain<Angle>.Made(Math.Atan2(y, x), LinearCombination.Sum(opposite.Combination, x / r2, adjacent.Combination, -y / r2), nameof(opposite));
    }

    /// <summary>The root of the sum of squares, as of rise times that combine; shared sources count as what they are.</summary>
    /// <exception cref="ArgumentException">There is no value, all estimates are zero, or the type does not add in squares (levels, decibels, temperatures).</exception>
    public static Uncertain<T> RootSumOfSquares<T>(params Uncertain<T>[] values)
        where T : struct, IQuantity
    {
        if (values is null) throw new ArgumentNullException(nameof(values));
        if (StrongType<T>.Kind.Nature >= QuantityNature.Point) throw new ArgumentException($"values of kind {StrongType<T>.Kind.Name} do not add in squares", nameof(values));
        double squares = 0;
        foreach (Uncertain<T> value in values) squares += Estimate(value, nameof(values)) * value.SiEstimate;
        double root = Math.Sqrt(squares);
        if (!(root > 0)) throw new ArgumentException("at least one value must be other than 0", nameof(values));
        LinearCombination combination = LinearCombination.Exact;
        foreach (Uncertain<T> value in values) combination = LinearCombination.Sum(combination, 1, value.Combination, value.SiEstimate / root);
        return Uncertain<T>.Made(root, combination, nameof(values));
    }

    /// <summary>The gain that amplitudes in a ratio mean, 20 lg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The estimate is not above 0.</exception>
    public static Uncertain<DecibelRatio> ToDecibelsAsAmplitudes(Uncertain<Ratio> ratio) => Decibels(ratio, DecibelRatio.DecibelsPerNeper);

    /// <summary>The gain that powers in a ratio mean, 10 lg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The estimate is not above 0.</exception>
    public static Uncertain<DecibelRatio> ToDecibelsAsPowers(Uncertain<Ratio> ratio) => Decibels(ratio, DecibelRatio.DecibelsPerNeper / 2);

    /// <summary>The ratio of amplitudes that a gain means.</summary>
    public static Uncertain<Ratio> ToAmplitudeRatio(Uncertain<DecibelRatio> gain)
    {
        double ratio = Math.Pow(10, Estimate(gain, nameof(gain)) / 20);
        return Function<Ratio>(gain, ratio, ratio / DecibelRatio.DecibelsPerNeper, nameof(gain));
    }

    /// <summary>The ratio of powers that a gain means.</summary>
    public static Uncertain<Ratio> ToPowerRatio(Uncertain<DecibelRatio> gain)
    {
        double ratio = Math.Pow(10, Estimate(gain, nameof(gain)) / 10);
        return Function<Ratio>(gain, ratio, 2 * ratio / DecibelRatio.DecibelsPerNeper, nameof(gain));
    }

    /// <summary>The power at a level.</summary>
    public static Uncertain<Power> ToPower(Uncertain<PowerLevel> level)
    {
        double watts = Math.Pow(10, Estimate(level, nameof(level)) / 10) / 1e3;
        return Function<Power>(level, watts, 2 * watts / DecibelRatio.DecibelsPerNeper, nameof(level));
    }

    /// <summary>The level of a power.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The estimate is not above 0 W.</exception>
    public static Uncertain<PowerLevel> ToLevel(Uncertain<Power> power)
    {
        double watts = AboveZero(power, nameof(power));
        return Function<PowerLevel>(power, 10 * Math.Log10(watts * 1e3), DecibelRatio.DecibelsPerNeper / 2 / watts, nameof(power));
    }

    /// <summary>The rms voltage at a level.</summary>
    public static Uncertain<RmsVoltage> ToRmsVoltage(Uncertain<VoltageLevel> level)
    {
        double volts = Math.Pow(10, Estimate(level, nameof(level)) / 20);
        return Function<RmsVoltage>(level, volts, volts / DecibelRatio.DecibelsPerNeper, nameof(level));
    }

    /// <summary>The level of an rms voltage.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The estimate is not above 0 V.</exception>
    public static Uncertain<VoltageLevel> ToLevel(Uncertain<RmsVoltage> voltage)
    {
        double volts = AboveZero(voltage, nameof(voltage));
        return Function<VoltageLevel>(voltage, 20 * Math.Log10(volts), DecibelRatio.DecibelsPerNeper / volts, nameof(voltage));
    }

    /// <summary>By how many decibels the first level is above the second.</summary>
    public static Uncertain<DecibelRatio> Difference(Uncertain<PowerLevel> left, Uncertain<PowerLevel> right) => Difference<PowerLevel, DecibelRatio>(left, right);

    /// <summary>By how many decibels the first level is above the second.</summary>
    public static Uncertain<DecibelRatio> Difference(Uncertain<VoltageLevel> left, Uncertain<VoltageLevel> right) => Difference<VoltageLevel, DecibelRatio>(left, right);

    /// <summary>The period of a frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The estimate is not above 0 Hz.</exception>
    public static Uncertain<Duration> Period(Uncertain<Frequency> frequency)
    {
        double f = AboveZero(frequency, nameof(frequency));
        return Function<Duration>(frequency, 1 / f, -1 / (f * f), nameof(frequency));
    }

    /// <summary>The frequency of a period.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The estimate is not above 0 s.</exception>
    public static Uncertain<Frequency> Frequency(Uncertain<Duration> period)
    {
        double t = AboveZero(period, nameof(period));
        return Function<Frequency>(period, 1 / t, -1 / (t * t), nameof(period));
    }

    /// <summary>Any function of one uncertain value, such as a calculation of this library.</summary>
    /// <remarks>The derivative is found by Ridders' extrapolation of central differences with its own error estimate; use the overload with a derivative where one is known.</remarks>
    /// <exception cref="InvalidOperationException">The function is not smooth enough near the estimate for its derivative to be found.</exception>
    public static Uncertain<TResult> Apply<T, TResult>(Uncertain<T> x, Func<T, TResult> function)
        where T : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (function is null) throw new ArgumentNullException(nameof(function));
        double f(double si) => function(StrongType<T>.Nearest(si, nameof(x))).ToQuantity().SiValue;
        double at = Estimate(x, nameof(x));
        return Function<TResult>(x, f(at), Derivative(f, x), nameof(function));
    }

    /// <summary>Any function of one uncertain value with its derivative.</summary>
    /// <param name="x">The value.</param>
    /// <param name="function">The function.</param>
    /// <param name="derivativeInSi">Its derivative, in SI units of the result per SI unit of the value (decibels for decibel kinds).</param>
    public static Uncertain<TResult> Apply<T, TResult>(Uncertain<T> x, Func<T, TResult> function, Func<T, double> derivativeInSi)
        where T : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (x is null) throw new ArgumentNullException(nameof(x));
        if (function is null) throw new ArgumentNullException(nameof(function));
        if (derivativeInSi is null) throw new ArgumentNullException(nameof(derivativeInSi));
        return Function<TResult>(x, function(x.Value).ToQuantity().SiValue, derivativeInSi(x.Value), nameof(function));
    }

    /// <summary>Any function of two uncertain values; derivatives as in <see cref="Apply{T,TResult}(Uncertain{T},Func{T,TResult})"/>.</summary>
    /// <exception cref="InvalidOperationException">The function is not smooth enough near the estimates for its derivatives to be found.</exception>
    public static Uncertain<TResult> Apply<T1, T2, TResult>(Uncertain<T1> x1, Uncertain<T2> x2, Func<T1, T2, TResult> function)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (x1 is null) throw new ArgumentNullException(nameof(x1));
        if (x2 is null) throw new ArgumentNullException(nameof(x2));
        if (function is null) throw new ArgumentNullException(nameof(function));
        T1 at1 = x1.Value;
        T2 at2 = x2.Value;
        double c1 = Derivative(si => function(StrongType<T1>.Nearest(si, nameof(x1)), at2).ToQuantity().SiValue, x1);
        double c2 = Derivative(si => function(at1, StrongType<T2>.Nearest(si, nameof(x2))).ToQuantity().SiValue, x2);
        return Uncertain<TResult>.Made(function(at1, at2).ToQuantity().SiValue, LinearCombination.Sum(x1.Combination, c1, x2.Combination, c2), nameof(function));
    }

    /// <summary>Any function of three uncertain values; derivatives as in <see cref="Apply{T,TResult}(Uncertain{T},Func{T,TResult})"/>.</summary>
    /// <exception cref="InvalidOperationException">The function is not smooth enough near the estimates for its derivatives to be found.</exception>
    public static Uncertain<TResult> Apply<T1, T2, T3, TResult>(Uncertain<T1> x1, Uncertain<T2> x2, Uncertain<T3> x3, Func<T1, T2, T3, TResult> function)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
        where T3 : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (x1 is null) throw new ArgumentNullException(nameof(x1));
        if (x2 is null) throw new ArgumentNullException(nameof(x2));
        if (x3 is null) throw new ArgumentNullException(nameof(x3));
        if (function is null) throw new ArgumentNullException(nameof(function));
        T3 at3 = x3.Value;
        Uncertain<TResult> withoutThird = Apply(x1, x2, (a, b) => function(a, b, at3));
        T1 at1 = x1.Value;
        T2 at2 = x2.Value;
        double c3 = Derivative(si => function(at1, at2, StrongType<T3>.Nearest(si, nameof(x3))).ToQuantity().SiValue, x3);
        return Uncertain<TResult>.Made(withoutThird.SiEstimate, LinearCombination.Sum(withoutThird.Combination, 1, x3.Combination, c3), nameof(function));
    }

    private static Uncertain<TResult> Difference<T, TResult>(Uncertain<T> left, Uncertain<T> right)
        where T : struct, IQuantity
        where TResult : struct, IQuantity =>
        Uncertain<TResult>.Made(
            Estimate(left, nameof(left)) - Estimate(right, nameof(right)), LinearCombination.Sum(left.Combination, 1, right.Combination, -1), nameof(right));

    private static Uncertain<DecibelRatio> Decibels(Uncertain<Ratio> ratio, double decibelsPerNeper)
    {
        double x = AboveZero(ratio, nameof(ratio));
        return Function<DecibelRatio>(ratio, decibelsPerNeper * Math.Log(x), decibelsPerNeper / x, nameof(ratio));
    }

    private static Uncertain<TResult> Function<TResult>(UncertainQuantity x, double value, double derivative, string argument)
        where TResult : struct, IQuantity =>
        Uncertain<TResult>.Made(value, x.Combination.Times(derivative), argument);

    private static double Derivative(Func<double, double> function, UncertainQuantity x) =>
        x.Combination.Sources.Length == 0 ? 0 : NumericalDerivative.Of(function, x.SiEstimate, x.SiStandardUncertainty, x.Kind.Name);

    private static double Estimate(UncertainQuantity value, string argument) => (value ?? throw new ArgumentNullException(argument)).SiEstimate;

    private static double AboveZero(UncertainQuantity value, string argument) => Refuse.UnlessAboveZero(Estimate(value, argument), value.Kind, argument);
}
