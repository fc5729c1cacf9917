using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Attribution;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>One frequency of an attribution: the rows that hold there, what they leave open, and the solution.</summary>
internal sealed class AttributionPoint
{
    internal AttributionPoint(double hertz, IReadOnlyList<AttributionRow> rows, NullSpace open, WeightedSolution solution)
    {
        Hertz = hertz;
        Rows = rows;
        Open = open;
        Solution = solution;
    }

    internal double Hertz { get; }

    internal IReadOnlyList<AttributionRow> Rows { get; }

    internal NullSpace Open { get; }

    internal WeightedSolution Solution { get; }

    internal int DegreesOfFreedom => Rows.Count - Open.Rank;
}

/// <summary>Builds and solves the log-additive model at each frequency: steps 2 to 5 of handbook 10.5.</summary>
internal static class AttributionSolver
{
    internal static AttributionResult Solve(RollOffAttribution attribution, AttributionRow[] rows, double? reference, double? uncertainty, double common, LongCall? call)
    {
        AttributionRow[] measured = rows.Where(r => r.Evidence == AttributionEvidence.Measured).ToArray();
        if (measured.Length == 0)
            throw new InvalidOperationException("there is no sweep to take apart; add one with WithSweep");
        double low = measured.Max(r => r.Sweep.HertzValues[0]), high = measured.Min(r => r.Sweep.HertzValues[r.Sweep.Count - 1]);
        double[] covered = measured[0].Sweep.HertzValues.Where(f => f >= low && f <= high).ToArray();
        if (covered.Length == 0)
            throw new InvalidOperationException($"the sweeps have no frequency in common: {AttributionRow.Join(measured[0].Elements)} has no point from {FewDigits.Hertz(low)} to {FewDigits.Hertz(high)}, where all sweeps reach");
        double zero = reference ?? covered[0];
        foreach (AttributionRow row in rows)
        {
            if (row.Evidence != AttributionEvidence.Assumed && !(zero >= row.Sweep.HertzValues[0] && zero <= row.Sweep.HertzValues[row.Sweep.Count - 1]))
                throw new InvalidOperationException($"the reference frequency {FewDigits.Hertz(zero)} lies outside the sweep of {row} ({row.Sweep.Lowest} to {row.Sweep.Highest}); choose one that all sweeps cover");
        }
        bool weighted = measured.All(r => r.Sweep.HasUncertainties) || uncertainty is not null;
        if (!weighted && measured.Length < rows.Length)
            throw new InvalidOperationException("known and assumed responses have to be weighed against the sweeps, and a sweep carries no uncertainty; state one with WithLevelUncertainty");

        var points = new List<AttributionPoint>();
        var open = new Dictionary<string, NullSpace>(StringComparer.Ordinal);
        for (int n = 0; n < covered.Length; n++)
        {
            double f = covered[n];
            if (f == zero)
                continue;
            call?.Reached(n, covered.Length);
            AttributionRow[] active = rows.Where(r => r.Evidence == AttributionEvidence.Measured || r.Covers(f)).ToArray();
            string key = string.Join(" ", active.Select(r => Array.IndexOf(rows, r).ToString(System.Globalization.CultureInfo.InvariantCulture)));
            double[][] coefficients = active.Select(r => r.Coefficients).ToArray();
            if (!open.TryGetValue(key, out NullSpace? space))
                open[key] = space = new NullSpace(coefficients, attribution.Elements.Count);
            var levels = new double[active.Length];
            var covariance = new double[active.Length, active.Length];
            for (int i = 0; i < active.Length; i++)
            {
                levels[i] = Relative(active[i], f, zero, weighted, uncertainty, out double variance);
                covariance[i, i] = variance;
                for (int k = 0; k < active.Length && weighted; k++)
                {
                    if (active[i].Evidence == AttributionEvidence.Measured && active[k].Evidence == AttributionEvidence.Measured)
                        covariance[i, k] += common * common;
                }
            }
            points.Add(new AttributionPoint(f, active, space, new WeightedSolution(coefficients, levels, covariance, space.Rank)));
        }
        if (points.Count == 0)
            throw new InvalidOperationException($"besides the reference {FewDigits.Hertz(zero)} the sweeps have no frequency in common; measure at least two frequencies");
        return new AttributionResult(attribution, zero, points, weighted);
    }

    private static double Relative(AttributionRow row, double hertz, double zero, bool weighted, double? uncertainty, out double variance)
    {
        double level = row.Sweep.Level(hertz, "sweep", out double? u), atZero = 0, uZero = 0;
        if (row.Evidence == AttributionEvidence.Assumed)
        {
            // The assumption is about the level relative to the reference, whose own row may begin above it.
            atZero = row.Covers(zero) ? row.Sweep.Level(zero, "sweep", out _) : 0;
        }
        else
        {
            atZero = row.Sweep.Level(zero, "sweep", out double? atReference);
            uZero = atReference ?? 0;
        }
        if (!weighted)
        {
            variance = 1;
            return level - atZero;
        }
        if (!row.Sweep.HasUncertainties)
            u = uZero = uncertainty!.Value;
        variance = u!.Value * u.Value + uZero * uZero;
        if (!(variance > 0))
            throw new InvalidOperationException($"the sweep of {row} has an uncertainty of 0 dB at {FewDigits.Hertz(hertz)}; a row that is exact would silence all others: give it the uncertainty that it has");
        return level - atZero;
    }
}
