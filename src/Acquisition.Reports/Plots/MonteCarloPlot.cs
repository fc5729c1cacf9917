using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>The results of Monte Carlo trials as a histogram, with the coverage interval and, for comparison, the normal distribution of a first-order budget.</summary>
public static class MonteCarloPlot
{
    private const int FewestBins = 12, MostBins = 80;

    /// <summary>The histogram of trials with estimate and probabilistically symmetric coverage interval.</summary>
    /// <param name="result">The trials.</param>
    /// <param name="options">Size and title; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    public static Plot Of(MonteCarloResult result, PlotOptions? options = null)
    {
        if (result is null) throw new ArgumentNullException(nameof(result));
        return Draw(result, null, options ?? PlotOptions.Default);
    }

    /// <summary>The histogram beside the normal distribution that a first-order budget of the same result stands for.</summary>
    /// <param name="result">The trials.</param>
    /// <param name="budget">The budget, of the same kind of quantity.</param>
    /// <param name="options">Size and title; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> or <paramref name="budget"/> is null.</exception>
    /// <exception cref="ArgumentException">The two are of different kinds.</exception>
    public static Plot Of(MonteCarloResult result, UncertaintyBudget budget, PlotOptions? options = null)
    {
        if (result is null) throw new ArgumentNullException(nameof(result));
        if (budget is null) throw new ArgumentNullException(nameof(budget));
        if (budget.Value.Kind != result.Estimate.Kind) throw new ArgumentException($"the budget must be of the same kind as the trials, {result.Estimate.Kind}; was {budget.Value.Kind}", nameof(budget));
        return Draw(result, budget, options ?? PlotOptions.Default);
    }

    private static Plot Draw(MonteCarloResult result, UncertaintyBudget? budget, PlotOptions options)
    {
        double[] sorted = result.SortedResultsInSi();
        CoverageInterval interval = result.SymmetricInterval();
        QuantityShape shape = Shape(sorted);
        Axis x = Axis.Linear(result.Estimate.Kind.Name, result.Estimate.Kind.Symbol).Tight();
        double[] percent = shape.Counts.Select(count => 100.0 * count / sorted.Length).ToArray();
        double[] lefts = Enumerable.Range(0, percent.Length).Select(i => shape.Low + (i * shape.Width)).ToArray(), rights = lefts.Select(left => left + shape.Width).ToArray();
        Plot plot = new Plot(options.Title ?? "Monte Carlo, " + result.Trials.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture).Replace(',', '\u00a0') + " trials", x, Axis.Linear("share of the trials in each column", "%")).With(options)
            .With("trials", TraceStyle.Columns, lefts, percent, rights, look: 1);
        if (budget is not null && budget.StandardUncertainty.SiValue > 0) plot = WithNormal(plot, budget, shape);
        string coverage = ProbabilityText.Of(interval.CoverageProbability);
        plot = plot.WithVerticalLimit("low " + Figure(x, interval.Low, result), interval.Low.SiValue).WithVerticalLimit("estimate " + Figure(x, result.Estimate, result), result.Estimate.SiValue)
            .WithVerticalLimit("high " + Figure(x, interval.High, result), interval.High.SiValue);
        string words = $"Estimate {Figure(x, result.Estimate, result)}, standard uncertainty {Engineering.Words(result.StandardUncertainty, 2)}; {coverage} of the trials lie from {Figure(x, interval.Low, result)} to {Figure(x, interval.High, result)}, as many below as above.";
        return plot.WithDescription(shape.Outside == 0 ? words : words + FormattableString.Invariant($" {shape.Outside} trials lie beyond the picture."));
    }

    private static Plot WithNormal(Plot plot, UncertaintyBudget budget, QuantityShape shape)
    {
        const int points = 201;
        double mean = budget.Value.SiValue, u = budget.StandardUncertainty.SiValue, span = shape.Width * shape.Counts.Length;
        double[] x = Enumerable.Range(0, points).Select(i => shape.Low + (span * i / (points - 1))).ToArray();
        return plot.With("normal distribution of the budget", TraceStyle.Line, x, x.Select(value => 100 * shape.Width / (u * Math.Sqrt(2 * Math.PI)) * Math.Exp(-0.5 * Math.Pow((value - mean) / u, 2))).ToArray(), look: 2);
    }

    /// <summary>Columns by the rule of Freedman and Diaconis (1981, from memory), 2 IQR / n^(1/3), over all but the outermost thousandth at either end.</summary>
    private static QuantityShape Shape(double[] sorted)
    {
        int n = sorted.Length, cut = n / 1000;
        double low = sorted[cut], high = sorted[n - 1 - cut], quartiles = sorted[(int)(0.75 * (n - 1))] - sorted[(int)(0.25 * (n - 1))];
        if (!(high - low > 1e-12 * Math.Max(Math.Abs(low), Math.Abs(high))))
        {
            double margin = low == 0 ? 1 : Math.Abs(low) * 0.01;
            (low, high) = (low - margin, high + margin);
        }
        double width = 2 * quartiles / Math.Pow(n, 1.0 / 3);
        int bins = width > 0 ? (int)Math.Min(MostBins, Math.Max(FewestBins, Math.Ceiling((high - low) / width))) : FewestBins;
        width = (high - low) / bins;
        var counts = new long[bins];
        long outside = 0;
        foreach (double value in sorted)
        {
            if (value < low || value > high) outside++;
            else counts[Math.Min(bins - 1, (int)((value - low) / width))]++;
        }
        return new QuantityShape(low, width, counts, outside);
    }

    /// <summary>A value in as many digits as its uncertainty warrants.</summary>
    private static string Figure(Axis x, Quantity value, MonteCarloResult result)
    {
        double u = result.StandardUncertainty.SiValue, magnitude = Math.Abs(value.SiValue);
        int digits = u > 0 && magnitude > 0 ? Math.Min(Math.Max((int)Math.Floor(Math.Log10(magnitude)) - (int)Math.Floor(Math.Log10(u)) + 2, 2), 12) : 4;
        return Engineering.Text(value.SiValue, x.Unit, digits, keepsZeros: true);
    }

    private sealed class QuantityShape(double low, double width, long[] counts, long outside)
    {
        internal double Low { get; } = low;

        internal double Width { get; } = width;

        internal long[] Counts { get; } = counts;

        internal long Outside { get; } = outside;
    }
}
