using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Attribution;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>What a set of sweeps says of each element, with its uncertainty; what they cannot tell; and whether decibels add up at all (handbook 10.3 to 10.5).</summary>
/// <remarks>All levels are relative to the reference frequency. Immutable.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed partial class AttributionResult
{
    private readonly RollOffAttribution _attribution;
    private readonly IReadOnlyList<AttributionPoint> _points;
    private readonly bool _weighted;
    private readonly double? _varianceScale;

    internal AttributionResult(RollOffAttribution attribution, double reference, IReadOnlyList<AttributionPoint> points, bool weighted)
    {
        _attribution = attribution;
        _points = points;
        _weighted = weighted;
        ReferenceFrequency = Frequency.FromSi(reference, nameof(reference));
        DegreesOfFreedom = points.Sum(p => p.DegreesOfFreedom);
        double squares = points.Sum(p => p.Solution.ChiSquared);
        ChiSquared = weighted && DegreesOfFreedom > 0 ? squares : null;
        _varianceScale = weighted ? 1 : DegreesOfFreedom > 0 ? squares / DegreesOfFreedom : null;
        Ambiguities = FindAmbiguities().Frozen();
        InteractionSearch? search = FindInteractions(squares);
        Interactions = search?.Found ?? [];
        Findings = Judge(squares, Interactions.Count > 1 ? search!.WouldDecide() : null).Frozen();
    }

    /// <summary>The elements.</summary>
    public IReadOnlyList<string> Elements => _attribution.Elements;

    /// <summary>Where every level counts as 0 dB.</summary>
    public Frequency ReferenceFrequency { get; }

    /// <summary>The frequencies that were solved, the reference left out.</summary>
    public IReadOnlyList<Frequency> Frequencies => _points.Select(p => Frequency.FromSi(p.Hertz, "frequency")).ToArray();

    /// <summary>Independent combinations among the rows; each element more than that cannot be told (the fewest over all frequencies).</summary>
    public int Rank => _points.Min(p => p.Open.Rank);

    /// <summary>Sum over all frequencies of squared residuals over variances; null where no uncertainties were given or no rows are to spare.</summary>
    public double? ChiSquared { get; }

    /// <summary>Rows to spare, summed over all frequencies.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>What cannot be told apart, and what would tell it.</summary>
    public IReadOnlyList<Ambiguity> Ambiguities { get; }

    /// <summary>
    /// The pair of elements whose loading of each other explains the residuals best, where the residuals call for it: all pairs where the sweeps do not tell which, and none where decibels add up.
    /// </summary>
    public IReadOnlyList<ElementInteraction> Interactions { get; }

    /// <summary>The assumptions that the result rests on.</summary>
    public IReadOnlyList<string> Assumptions => _attribution.Rows.Where(r => r.Evidence == AttributionEvidence.Assumed).Select(r => r.Text).ToArray();

    /// <summary>What to know about the result.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The response of one element, or the sum of several, at the frequencies where the sweeps determine it; null where they never do.</summary>
    /// <param name="elements">The elements; at least one, each once.</param>
    /// <exception cref="ArgumentNullException">The names are null.</exception>
    /// <exception cref="ArgumentException">There is no such element.</exception>
    public Sweep? ResponseOf(params string[] elements)
    {
        if (elements is null)
            throw new ArgumentNullException(nameof(elements));
        return ResponseOf(CombinationOf(elements));
    }

    /// <summary>The response of one element less that of another; null where the sweeps do not determine it. Often known where neither of the two is.</summary>
    /// <exception cref="ArgumentNullException">A name is null.</exception>
    /// <exception cref="ArgumentException">There is no such element.</exception>
    public Sweep? DifferenceOf(string element, string other)
    {
        double[] combination = CombinationOf([element]);
        combination[RollOffAttribution.IndexOf(Elements, other, nameof(other))] -= 1;
        return ResponseOf(combination);
    }

    /// <summary>How much of the level of a path each part of it takes, at the solved frequency nearest to the one given.</summary>
    /// <param name="frequency">The frequency.</param>
    /// <param name="path">The elements of the path; none for the measured path with the most elements.</param>
    /// <returns>The finest parts that the sweeps determine; empty where they do not even determine the path.</returns>
    /// <exception cref="ArgumentNullException">The path is null.</exception>
    /// <exception cref="ArgumentException">There is no such element.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the solved ones.</exception>
    public IReadOnlyList<AttributionShare> SharesAt(Frequency frequency, params string[] path) => Shares(Nearest(frequency), PathOr(path));

    /// <summary>Correlation of the levels found for two elements: strongly negative where only an assumption keeps them apart. Null where one of them is not determined.</summary>
    /// <exception cref="ArgumentNullException">A name is null.</exception>
    /// <exception cref="ArgumentException">There is no such element.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the solved ones.</exception>
    public double? CorrelationBetween(string element, string other, Frequency frequency)
    {
        AttributionPoint point = Nearest(frequency);
        double[] one = CombinationOf([element]), two = CombinationOf([other]);
        return point.Open.Determines(one) && point.Open.Determines(two)
            ? point.Solution.Covariance(one, two) / Math.Sqrt(point.Solution.Covariance(one, one) * point.Solution.Covariance(two, two))
            : null;
    }

    /// <summary>What is left of a row: measured less modelled, at each frequency where it counts.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="row"/> is null.</exception>
    /// <exception cref="ArgumentException">The row is not one of the attribution, or counts at no solved frequency.</exception>
    public Sweep ResidualsOf(AttributionRow row)
    {
        if (row is null)
            throw new ArgumentNullException(nameof(row));
        AttributionPoint[] points = _points.Where(p => p.Rows.Contains(row)).ToArray();
        if (points.Length == 0)
            throw new ArgumentException($"the row {row} counts at no solved frequency", nameof(row));
        return Sweep.OfDecibels(points.Select(p => p.Hertz).ToArray(), points.Select(p => p.Solution.Residuals[IndexOf(p.Rows, row)]).ToArray());
    }

    private static int IndexOf(IReadOnlyList<AttributionRow> rows, AttributionRow row)
    {
        int index = 0;
        while (!ReferenceEquals(rows[index], row))
            index++;
        return index;
    }

    private Sweep? ResponseOf(double[] combination)
    {
        var hertz = new List<double> { ReferenceFrequency.SiValue };
        var levels = new List<double> { 0 };
        var deviations = new List<double> { 0 };
        foreach (AttributionPoint point in _points.Where(p => p.Open.Determines(combination)))
        {
            int at = point.Hertz < ReferenceFrequency.SiValue ? hertz.IndexOf(ReferenceFrequency.SiValue) : hertz.Count;
            hertz.Insert(at, point.Hertz);
            levels.Insert(at, point.Solution.Level(combination));
            deviations.Insert(at, Deviation(point, combination) ?? 0);
        }
        return hertz.Count == 1 ? null : Sweep.OfDecibels(hertz.ToArray(), levels.ToArray(), _varianceScale is null ? null : deviations.ToArray()).WithReference(ReferenceFrequency);
    }

    private double? Deviation(AttributionPoint point, double[] combination) =>
        _varianceScale is { } scale ? Math.Sqrt(Math.Max(0, scale * point.Solution.Covariance(combination, combination))) : null;

    private double[] CombinationOf(IEnumerable<string> elements)
    {
        var combination = new double[Elements.Count];
        foreach (string element in elements)
            combination[RollOffAttribution.IndexOf(Elements, element ?? throw new ArgumentNullException(nameof(elements)), nameof(elements))] += 1;
        return combination;
    }

    private AttributionPoint Nearest(Frequency frequency)
    {
        double f = Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency));
        double lowest = Math.Min(ReferenceFrequency.SiValue, _points.Min(p => p.Hertz)), highest = Math.Max(ReferenceFrequency.SiValue, _points.Max(p => p.Hertz));
        if (f < lowest || f > highest)
            throw Refuse.OutOfRange(f, Frequency.Kind, nameof(frequency), $"from {FewDigits.Hertz(lowest)} to {FewDigits.Hertz(highest)}, where the sweeps were solved", "measure the combinations there too");
        return _points.OrderBy(p => Math.Abs(Math.Log(p.Hertz / f))).First();
    }

    private List<AttributionShare> Shares(AttributionPoint point, IReadOnlyList<string> path)
    {
        var parts = new List<string[]>();
        double[] whole = CombinationOf(path);
        if (!point.Open.Determines(whole))
            return [];
        // The smallest determined groups first; what is left over at the end is determined because the whole is.
        List<string> left = path.ToList();
        for (int size = 1; size <= left.Count; size++)
        {
            while (FirstDetermined(point.Open, left, size) is { } group)
            {
                parts.Add(group);
                left.RemoveAll(group.Contains);
            }
        }
        double total = point.Solution.Level(whole);
        double[][] combinations = parts.Select(p => CombinationOf(p)).ToArray();
        bool losses = total < 0 && combinations.All(c => point.Solution.Level(c) <= 0);
        return parts.Select((p, i) => new AttributionShare(
            p, combinations[i], point.Solution.Level(combinations[i]), Deviation(point, combinations[i]), losses ? point.Solution.Level(combinations[i]) / total : null)).ToList();
    }

    private string[]? FirstDetermined(NullSpace open, List<string> names, int size)
    {
        if (size > names.Count)
            return null;
        int[] chosen = Enumerable.Range(0, size).ToArray();
        while (true)
        {
            string[] group = chosen.Select(i => names[i]).ToArray();
            if (open.Determines(CombinationOf(group)))
                return group;
            int k = size - 1;
            while (k >= 0 && chosen[k] == names.Count - size + k)
                k--;
            if (k < 0)
                return null;
            chosen[k]++;
            for (int j = k + 1; j < size; j++)
                chosen[j] = chosen[j - 1] + 1;
        }
    }

    private IReadOnlyList<string> PathOr(string[] path)
    {
        if (path is null)
            throw new ArgumentNullException(nameof(path));
        return path.Length > 0 ? path : _attribution.Rows.Where(r => r.Evidence == AttributionEvidence.Measured).OrderByDescending(r => r.Elements.Count).First().Elements;
    }
}
