using System;
using System.Collections.Generic;
using System.Globalization;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>Uncertainty from repeated readings (type A evaluation, JCGM 100 4.2).</summary>
public static class TypeA
{
    /// <summary>The mean of independent readings: standard uncertainty s/√n, n - 1 degrees of freedom, a t-distribution.</summary>
    /// <remarks>Readings that are all alike say nothing of the scatter below the resolution (JCGM 100 F.2.2.1): budgets carry the finding <c>readings-identical</c>; add <see cref="Spread.Resolution{T}"/>.</remarks>
    /// <param name="readings">At least two readings, taken one after the other under the same conditions and independent of each other.</param>
    /// <param name="name">The name in the budget.</param>
    /// <exception cref="ArgumentException">There are fewer than two readings.</exception>
    public static Uncertain<T> Mean<T>(IReadOnlyList<T> readings, string? name = null)
        where T : struct, IQuantity
    {
        var statistics = ReadingStatistics.Of(Values(readings, 2, nameof(readings)));
        return Source<T>(statistics.Mean, statistics.StandardDeviationOfMean, statistics.Count - 1, $"mean of {statistics.Count} readings", name);
    }

    /// <summary>The mean of readings whose scatter is known from a larger, earlier set: s/√n with the degrees of freedom of that set (JCGM 100 4.2.4, H.1.3.2).</summary>
    /// <param name="readings">At least one reading.</param>
    /// <param name="pooledStandardDeviation">The standard deviation of one reading, from the earlier set.</param>
    /// <param name="pooledDegreesOfFreedom">The degrees of freedom of that set.</param>
    /// <param name="name">The name in the budget.</param>
    /// <exception cref="ArgumentException">There is no reading.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is negative, or the degrees of freedom are not above 0.</exception>
    public static Uncertain<T> MeanWithPooledScatter<T>(IReadOnlyList<T> readings, T pooledStandardDeviation, double pooledDegreesOfFreedom, string? name = null)
        where T : struct, IQuantity
    {
        double[] values = Values(readings, 1, nameof(readings));
        double s = pooledStandardDeviation.ToQuantity().SiValue;
        if (!(s >= 0)) throw Refuse.OutOfRange(s, StrongType<T>.Kind, nameof(pooledStandardDeviation), "at least 0");
        if (!(pooledDegreesOfFreedom > 0)) throw Refuse.OutOfRange(pooledDegreesOfFreedom, QuantityKind.Ratio, nameof(pooledDegreesOfFreedom), "above 0");
        var statistics = ReadingStatistics.Of(values);
        return Source<T>(statistics.Mean, s / Math.Sqrt(values.Length), pooledDegreesOfFreedom, $"mean of {values.Length} readings, pooled scatter", name, isScatterOfThese: false);
    }

    /// <summary>A quantity that varies as its recorded readings did, each as likely as the others: not their mean, but any one of them.</summary>
    /// <param name="readings">At least two readings.</param>
    /// <param name="name">The name in the budget.</param>
    /// <exception cref="ArgumentException">There are fewer than two readings.</exception>
    public static Uncertain<T> AnyOf<T>(IReadOnlyList<T> readings, string? name = null)
        where T : struct, IQuantity
    {
        double[] values = Values(readings, 2, nameof(readings));
        double mean = ReadingStatistics.Of(values).Mean;
        for (int i = 0; i < values.Length; i++) values[i] -= mean;
        var estimate = new Quantity(mean, StrongType<T>.Kind);
        var distribution = new DiscreteDistribution(values);
        string statement = $"any of {values.Length} readings";
        var source = new UncertaintySource(name ?? estimate.Kind.Name, estimate, distribution, statement) { Finding = WhyNotExact(estimate, distribution.StandardUncertainty, statement, name) };
        return new Uncertain<T>(mean, LinearCombination.Of(source));
    }

    /// <summary>The means of two quantities read at the same time, with the correlation that the readings show (JCGM 100 5.2.3, H.2).</summary>
    /// <exception cref="ArgumentException">There are fewer than three sets, or the two differ in length.</exception>
    public static (Uncertain<T1> First, Uncertain<T2> Second) Simultaneous<T1, T2>(
        IReadOnlyList<T1> first, IReadOnlyList<T2> second, string? firstName = null, string? secondName = null)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
    {
        double[] a = Values(first, 3, nameof(first)), b = Values(second, 3, nameof(second));
        UncertaintySource[] sources = Joint(new[] { a, b }, new[] { StrongType<T1>.Kind, StrongType<T2>.Kind }, new[] { firstName, secondName });
        return (Made<T1>(sources[0]), Made<T2>(sources[1]));
    }

    /// <summary>The means of three quantities read at the same time, with the correlation that the readings show (JCGM 100 5.2.3, H.2).</summary>
    /// <exception cref="ArgumentException">There are fewer than three sets, or the lists differ in length.</exception>
    public static (Uncertain<T1> First, Uncertain<T2> Second, Uncertain<T3> Third) Simultaneous<T1, T2, T3>(
        IReadOnlyList<T1> first, IReadOnlyList<T2> second, IReadOnlyList<T3> third, string? firstName = null, string? secondName = null, string? thirdName = null)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
        where T3 : struct, IQuantity
    {
        double[] a = Values(first, 3, nameof(first)), b = Values(second, 3, nameof(second)), c = Values(third, 3, nameof(third));
        UncertaintySource[] sources = Joint(
            new[] { a, b, c }, new[] { StrongType<T1>.Kind, StrongType<T2>.Kind, StrongType<T3>.Kind }, new[] { firstName, secondName, thirdName });
        return (Made<T1>(sources[0]), Made<T2>(sources[1]), Made<T3>(sources[2]));
    }

    internal static double[] Values<T>(IReadOnlyList<T> readings, int atLeast, string argument)
        where T : struct, IQuantity
    {
        if (readings is null) throw new ArgumentNullException(argument);
        if (readings.Count < atLeast)
            throw new ArgumentException($"at least {atLeast.ToString(CultureInfo.InvariantCulture)} readings are needed; had {readings.Count.ToString(CultureInfo.InvariantCulture)}", argument);
        var values = new double[readings.Count];
        for (int i = 0; i < values.Length; i++) values[i] = readings[i].ToQuantity().SiValue;
        return values;
    }

    internal static Uncertain<T> Source<T>(double mean, double standardUncertainty, double degreesOfFreedom, string statement, string? name, bool isScatterOfThese = true)
        where T : struct, IQuantity
    {
        var estimate = new Quantity(mean, StrongType<T>.Kind);
        Distribution distribution = double.IsPositiveInfinity(degreesOfFreedom) ? new NormalDistribution(standardUncertainty) : new StudentTDistribution(standardUncertainty, degreesOfFreedom);
        return Made<T>(new UncertaintySource(name ?? estimate.Kind.Name, estimate, distribution, statement) { Finding = isScatterOfThese ? WhyNotExact(estimate, standardUncertainty, statement, name) : null });
    }

    /// <summary>Readings that do not differ have a scatter below the last digit that was read, not none.</summary>
    private static Finding? WhyNotExact(Quantity estimate, double standardUncertainty, string statement, string? name) => standardUncertainty > 0 ? null : new Finding(
        "readings-identical", Severity.Warning,
        $"{name ?? estimate.Kind.Name} is {estimate.InWords()} each time ({statement}): the scatter is below the resolution, which is not the same as none",
        $"add the resolution of the reading: Uncertain.Of(0 {UncertaintyKind.Of(estimate.Kind).Symbol}, Spread.Resolution(step)), step being the last digit or code; its standard uncertainty is step/√12",
        "JCGM 100 F.2.2.1");

    private static Uncertain<T> Made<T>(UncertaintySource source)
        where T : struct, IQuantity =>
        new(source.Estimate.SiValue, LinearCombination.Of(source));

    private static UncertaintySource[] Joint(double[][] columns, QuantityKind[] kinds, string?[] names)
    {
        int count = columns[0].Length;
        var statistics = new ReadingStatistics[columns.Length];
        for (int i = 0; i < columns.Length; i++)
        {
            if (columns[i].Length != count) throw new ArgumentException($"quantities read at the same time have as many readings each; had {count} and {columns[i].Length}");
            statistics[i] = ReadingStatistics.Of(columns[i]);
        }
        var coefficients = new double[columns.Length, columns.Length];
        for (int i = 0; i < columns.Length; i++)
        {
            coefficients[i, i] = 1;
            for (int j = 0; j < i; j++) coefficients[i, j] = coefficients[j, i] = ReadingStatistics.Correlation(columns[i], statistics[i], columns[j], statistics[j]);
        }
        var set = new CorrelatedSet(coefficients);
        var sources = new UncertaintySource[columns.Length];
        for (int i = 0; i < sources.Length; i++)
        {
            sources[i] = new UncertaintySource(
                names[i] ?? kinds[i].Name, new Quantity(statistics[i].Mean, kinds[i]),
                new StudentTDistribution(statistics[i].StandardDeviationOfMean, count - 1), $"mean of {count} simultaneous readings")
            {
                Finding = WhyNotExact(new Quantity(statistics[i].Mean, kinds[i]), statistics[i].StandardDeviationOfMean, $"mean of {count} simultaneous readings", names[i]),
            };
            sources[i].Join(set, i);
        }
        return sources;
    }
}
