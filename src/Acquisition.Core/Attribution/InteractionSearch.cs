using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Records;

namespace Acquisition.Core.Attribution;

/// <summary>
/// Which pairs of elements may load each other: one more column for a pair, 1 in the paths that hold both (handbook 10.4). Pairs that explain the residuals alike are all named: with probes A, B and
/// inputs 1, 2 in all four combinations, x dB on A with 1 is x dB on A and -x dB on A with 2, and no arithmetic tells which it is.
/// </summary>
internal sealed class InteractionSearch
{
    /// <summary>By how much chi-squared must rise from one pair to another before the other is ruled out: 1 % of a chi-squared of one degree of freedom.</summary>
    private const double Decided = 6.63;

    private const int MostMeasurements = 3;

    private readonly IReadOnlyList<string> _elements;
    private readonly IReadOnlyList<AttributionPoint> _points;
    private readonly List<(int First, int Second, double Gain, ElementInteraction Interaction)> _found = new();

    /// <param name="elements">The elements.</param>
    /// <param name="points">The solved frequencies.</param>
    /// <param name="isSignificant">Whether so much less chi-squared by so many columns is more than chance.</param>
    /// <param name="unit">The variance of a residual of weight 1, where so much is explained.</param>
    internal InteractionSearch(IReadOnlyList<string> elements, IReadOnlyList<AttributionPoint> points, Func<double, int, bool> isSignificant, Func<double, int, double> unit)
    {
        _elements = elements;
        _points = points;
        double most = 0, slack = 0;
        for (int a = 0; a < elements.Count; a++)
        {
            for (int b = a + 1; b < elements.Count; b++)
            {
                double sum = 0;
                var hertz = new List<double>();
                var levels = new List<double>();
                foreach (AttributionPoint point in points)
                {
                    if (!point.Solution.Extra(Column(point.Rows.Select(r => r.Coefficients), a, b), out double level, out double gain))
                        continue;
                    sum += gain;
                    hertz.Add(point.Hertz);
                    levels.Add(level);
                }
                if (hertz.Count == 0 || !isSignificant(sum, hertz.Count))
                    continue;
                _found.Add((a, b, sum, new ElementInteraction(elements[a], elements[b], hertz.ToArray(), levels.ToArray())));
                if (sum > most)
                {
                    most = sum;
                    slack = Decided * unit(sum, hertz.Count);
                }
            }
        }
        // What rounding alone tells apart is alike.
        _found.RemoveAll(x => x.Gain < most - slack - 1e-6 * most);
    }

    internal IReadOnlyList<ElementInteraction> Found => _found.Select(x => x.Interaction).Frozen();

    /// <summary>The fewest further measurements that would tell the pairs apart, in words; null where none of those that are tried would.</summary>
    internal string? WouldDecide()
    {
        IReadOnlyList<AttributionRow> rows = _points[_points.Count - 1].Rows;
        double[][] coefficients = rows.Select(r => r.Coefficients).ToArray();
        if (TellsApart(coefficients))
            return "the same sweeps with smaller uncertainties";
        List<(double[] Row, string Text)> offered = Offered(rows);
        for (int count = 1; count <= MostMeasurements; count++)
        {
            if (Choose(coefficients, offered, 0, count) is { } chosen)
                return string.Join(" and ", chosen.ToArray());
        }
        return null;
    }

    private static double[] Column(IEnumerable<double[]> rows, int a, int b) => rows.Select(r => r[a] * r[b]).ToArray();

    /// <summary>Single elements of the pairs, then paths with another element left out.</summary>
    private List<(double[] Row, string Text)> Offered(IReadOnlyList<AttributionRow> rows)
    {
        var offered = new List<(double[] Row, string Text)>();
        void Offer(double[] row, string text)
        {
            if (!rows.Any(r => r.Coefficients.SequenceEqual(row)) && !offered.Exists(o => o.Row.SequenceEqual(row)))
                offered.Add((row, text));
        }
        int[] concerned = _found.SelectMany(x => new[] { x.First, x.Second }).ToArray();
        // The element that most of the pairs have in common decides most.
        foreach (int i in concerned.Distinct().OrderByDescending(i => concerned.Count(c => c == i)))
            Offer(_elements.Select((_, k) => k == i ? 1.0 : 0).ToArray(), $"{_elements[i]} on its own, added as known");
        foreach (AttributionRow row in rows.Where(r => r.Evidence == AttributionEvidence.Measured))
        {
            for (int k = 1; k < row.Elements.Count - 1; k++)
            {
                string[] rest = row.Elements.Where((_, i) => i != k).ToArray();
                Offer(_elements.Select(e => rest.Contains(e) ? 1.0 : 0).ToArray(), $"a sweep of {AttributionRow.Join(rest)}");
            }
        }
        return offered;
    }

    private List<string>? Choose(double[][] rows, List<(double[] Row, string Text)> offered, int from, int count)
    {
        for (int i = from; i <= offered.Count - count; i++)
        {
            double[][] more = rows.Concat([offered[i].Row]).ToArray();
            if (count == 1 && TellsApart(more))
                return [offered[i].Text];
            if (count > 1 && Choose(more, offered, i + 1, count - 1) is { } others)
                return [offered[i].Text, .. others];
        }
        return null;
    }

    /// <summary>Whether no two of the pairs give columns that differ by columns of single elements only.</summary>
    private bool TellsApart(double[][] rows)
    {
        int elements = _elements.Count;
        for (int i = 0; i < _found.Count; i++)
        {
            for (int j = i + 1; j < _found.Count; j++)
            {
                double[] one = Column(rows, _found[i].First, _found[i].Second), other = Column(rows, _found[j].First, _found[j].Second);
                int withOne = new NullSpace(rows.Select((r, k) => (double[])[.. r, one[k]]).ToArray(), elements + 1).Rank;
                if (new NullSpace(rows.Select((r, k) => (double[])[.. r, one[k], other[k]]).ToArray(), elements + 2).Rank == withOne)
                    return false;
            }
        }
        return true;
    }
}
