using System;
using System.Collections.Generic;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>Readings taken in groups of equal size, such as days: how much they scatter within a group and between groups, and what the mean of all is worth (analysis of variance, JCGM 100 H.5).</summary>
/// <typeparam name="T">The quantity type.</typeparam>
/// <remarks>Immutable.</remarks>
public sealed class GroupedReadings<T>
    where T : struct, IQuantity
{
    private readonly double _mean;
    private readonly double _betweenVariance;
    private readonly double _withinVariance;

    private GroupedReadings(double mean, double betweenVariance, double withinVariance, int groups, int perGroup)
    {
        _mean = mean;
        _betweenVariance = betweenVariance;
        _withinVariance = withinVariance;
        Groups = groups;
        ReadingsPerGroup = perGroup;
    }

    /// <summary>The number of groups, J.</summary>
    public int Groups { get; }

    /// <summary>The readings in each group, K.</summary>
    public int ReadingsPerGroup { get; }

    /// <summary>The standard deviation of one reading as the scatter of the group means shows it, √K times the standard deviation of the group means; J - 1 degrees of freedom (H.5.2.3).</summary>
    public Quantity BetweenGroups => new(Math.Sqrt(_betweenVariance), StrongType<T>.Kind);

    /// <summary>The standard deviation of one reading as the scatter within the groups shows it; J (K - 1) degrees of freedom (H.5.2.4).</summary>
    public Quantity WithinGroups => new(Math.Sqrt(_withinVariance), StrongType<T>.Kind);

    /// <summary>The ratio of the two variances, F; large where the groups really differ (H.5.2.5).</summary>
    public double VarianceRatio => _betweenVariance / _withinVariance;

    /// <summary>The standard deviation that the difference between groups adds to a group mean, 0 where the scatter within explains all (H.5.2.6).</summary>
    public Quantity GroupEffect => new(Math.Sqrt(Math.Max(0, (_betweenVariance - _withinVariance) / ReadingsPerGroup)), StrongType<T>.Kind);

    /// <summary>Readings in groups.</summary>
    /// <param name="groups">At least two groups of at least two readings, all of one size.</param>
    /// <exception cref="ArgumentException">There are too few groups or readings, or the groups differ in size.</exception>
#pragma warning disable CA1000 // the type argument is the readings' own and reads well here
    public static GroupedReadings<T> Of(IReadOnlyList<IReadOnlyList<T>> groups)
#pragma warning restore CA1000
    {
        if (groups is null) throw new ArgumentNullException(nameof(groups));
        if (groups.Count < 2) throw new ArgumentException($"at least 2 groups are needed; had {groups.Count}", nameof(groups));
        var means = new double[groups.Count];
        double within = 0;
        int size = groups[0]?.Count ?? 0;
        for (int i = 0; i < means.Length; i++)
        {
            double[] values = TypeA.Values(groups[i], 2, nameof(groups));
            if (values.Length != size) throw new ArgumentException($"groups must be of one size; group 1 has {size} readings, group {i + 1} has {values.Length}", nameof(groups));
            var statistics = ReadingStatistics.Of(values);
            means[i] = statistics.Mean;
            within += statistics.SumOfSquares;
        }
        return OfMeans(means, within / (means.Length * (size - 1)), size);
    }

    /// <summary>Groups of which the means and the standard deviations within are known, as tables print them (JCGM 100 table H.9).</summary>
    /// <param name="means">The mean of each group.</param>
    /// <param name="standardDeviations">The standard deviation of the readings within each group.</param>
    /// <param name="readingsPerGroup">How many readings each group has, at least 2.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups, or the two lists differ in length.</exception>
#pragma warning disable CA1000 // as above
    public static GroupedReadings<T> Of(IReadOnlyList<T> means, IReadOnlyList<T> standardDeviations, int readingsPerGroup)
#pragma warning restore CA1000
    {
        double[] centres = TypeA.Values(means, 2, nameof(means)), scatters = TypeA.Values(standardDeviations, 2, nameof(standardDeviations));
        if (centres.Length != scatters.Length) throw new ArgumentException($"{centres.Length} means need as many standard deviations; had {scatters.Length}", nameof(standardDeviations));
        if (readingsPerGroup < 2) throw new ArgumentOutOfRangeException(nameof(readingsPerGroup), readingsPerGroup, $"readingsPerGroup must be at least 2; was {readingsPerGroup}");
        double within = 0;
        foreach (double scatter in scatters) within += scatter * scatter;
        return OfMeans(centres, within / scatters.Length, readingsPerGroup);
    }

    /// <summary>The mean of all readings where the groups may differ: its uncertainty from the group means alone, J - 1 degrees of freedom (H.5.2.7).</summary>
    public Uncertain<T> MeanWithGroupEffect(string? name = null) =>
        TypeA.Source<T>(_mean, Math.Sqrt(_betweenVariance / (Groups * ReadingsPerGroup)), Groups - 1, $"mean of {Groups} groups of {ReadingsPerGroup} readings, groups differ", name);

    /// <summary>The mean of all readings where the groups are taken not to differ: all readings pooled, J K - 1 degrees of freedom (H.5.2.8).</summary>
    public Uncertain<T> MeanWithoutGroupEffect(string? name = null)
    {
        int all = Groups * ReadingsPerGroup;
        double pooled = ((Groups - 1) * _betweenVariance + Groups * (ReadingsPerGroup - 1) * _withinVariance) / (all - 1);
        return TypeA.Source<T>(_mean, Math.Sqrt(pooled / all), all - 1, $"mean of {all} readings, groups alike", name);
    }

    private static GroupedReadings<T> OfMeans(double[] means, double withinVariance, int size)
    {
        var ofMeans = ReadingStatistics.Of(means);
        return new GroupedReadings<T>(ofMeans.Mean, size * ofMeans.SumOfSquares / (means.Length - 1), withinVariance, means.Length, size);
    }
}
