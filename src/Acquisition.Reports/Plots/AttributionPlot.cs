using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Attribution;

namespace Acquisition.Reports;

/// <summary>Which element spoilt it: the level of each over frequency, or what each takes of the whole at one frequency.</summary>
public static class AttributionPlot
{
    /// <summary>Level over frequency of each element that the sweeps determine, with a band of one standard uncertainty on either side; the elements that they leave open are named in the description.</summary>
    /// <param name="result">The result.</param>
    /// <param name="options">Size, title, frequencies; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    public static Plot Of(AttributionResult result, PlotOptions? options = null)
    {
        if (result is null) throw new ArgumentNullException(nameof(result));
        options ??= PlotOptions.Default;
        Axis x = options.LowestFrequency is not null ? ResponseCurve.FrequencyAxis(options, 0, 0) : options.HasLinearFrequency ? Axis.Linear("frequency", "Hz") : Axis.Logarithmic("frequency", "Hz").Tight();
        Plot plot = new Plot(options.Title ?? "Level of each element", x, Axis.Linear("level re " + Engineering.Words(result.ReferenceFrequency), "dB")).With(options);
        var open = new List<string>();
        int look = 0;
        foreach (string[] elements in Parts(result, open))
        {
            Sweep sweep = result.ResponseOf(elements)!;
            SweepPoint[] points = sweep.Points.Where(point => x.CanPlace(point.Frequency.Hertz)).ToArray();
            double[] hertz = points.Select(point => point.Frequency.Hertz).ToArray(), levels = points.Select(point => point.Level.Decibels).ToArray();
            if (points.Any(point => point.Uncertainty is not null))
                plot = plot.With("", TraceStyle.Band, hertz, points.Select(point => point.Level.Decibels - (point.Uncertainty?.Decibels ?? 0)).ToArray(), points.Select(point => point.Level.Decibels + (point.Uncertainty?.Decibels ?? 0)).ToArray(), look);
            plot = plot.With(string.Join(" + ", elements), TraceStyle.Line, hertz, levels, look: look);
            look++;
        }
        string words = FormattableString.Invariant($"{look} parts of the path are determined by the sweeps, each relative to its level at {Engineering.Words(result.ReferenceFrequency)}; bands are one standard uncertainty wide on either side.");
        if (open.Count > 0) words += $" Not separated: {string.Join(", ", open)}.";
        return plot.WithHorizontalLimit("reference", 0).WithDescription(words);
    }

    /// <summary>What each part of a path takes at one frequency, the largest loss first, with its standard uncertainty.</summary>
    /// <param name="result">The result.</param>
    /// <param name="frequency">The frequency; the nearest solved one counts.</param>
    /// <param name="options">Width and title; null for the usual ones.</param>
    /// <param name="path">The elements of the path; none for the measured path with the most elements.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such element.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the solved ones.</exception>
    public static Plot At(AttributionResult result, Frequency frequency, PlotOptions? options = null, params string[] path)
    {
        if (result is null) throw new ArgumentNullException(nameof(result));
        options ??= PlotOptions.Default;
        AttributionShare[] shares = result.SharesAt(frequency, path).OrderBy(share => share.Level.Decibels).ToArray();
        List<Bar> bars = shares.Select(share => new Bar(string.Join(" + ", share.Elements), share.Level.Decibels, Note(share), share.IsNotSeparated ? BarFill.Hollow : BarFill.Solid, 1, share.Uncertainty?.Decibels ?? 0)).ToList();
        if (bars.Count == 0) bars.Add(new Bar("path", 0, "not determined", BarFill.Absent));
        return new Plot(options.Title ?? "What each element takes at " + Engineering.Words(frequency), Axis.Linear("level re " + Engineering.Words(result.ReferenceFrequency), "dB"), Axis.Linear("", ""))
            .With(options).WithBars(bars).WithDescription(result.ExplainAt(frequency, path));
    }

    private static string Note(AttributionShare share) =>
        Engineering.Words(share.Level, 3) + (share.Uncertainty is { } u ? " (u " + Engineering.Words(u, 2) + ")" : "") + (share.Fraction is { } fraction ? ", " + Engineering.Text(fraction.Percent, "%", 2) : "");

    /// <summary>Elements that stand alone, and the sums of those that the sweeps do not separate.</summary>
    private static List<string[]> Parts(AttributionResult result, List<string> open)
    {
        var parts = new List<string[]>();
        foreach (string element in result.Elements)
        {
            if (result.ResponseOf(element) is not null) parts.Add(new[] { element });
            else open.Add(element);
        }
        // Of what is open, a sum may be known: the finest parts of each pair of open elements.
        for (int i = 0; i < open.Count; i++)
        {
            for (int k = i + 1; k < open.Count; k++)
            {
                if (result.ResponseOf(open[i], open[k]) is not null) parts.Add(new[] { open[i], open[k] });
            }
        }
        return parts;
    }
}
