using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A sweep over frequency with its half-power edges and their uncertainty, and a model fitted to it with the residuals below.</summary>
public static class SweepPlot
{
    /// <summary>A sweep; strips mark twice the standard uncertainty of each edge on either side.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="options">Size, title, frequencies; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sweep"/> is null.</exception>
    public static Plot Of(Sweep sweep, PlotOptions? options = null)
    {
        if (sweep is null) throw new ArgumentNullException(nameof(sweep));
        return Draw(sweep, options ?? PlotOptions.Default, out _);
    }

    /// <summary>A sweep with a fitted model: the curve through the points, and below what it leaves.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="fit">The fit, of the same sweep.</param>
    /// <param name="options">Size, title, frequencies; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sweep"/> or <paramref name="fit"/> is null.</exception>
    public static Plot Of(Sweep sweep, SweepFit fit, PlotOptions? options = null)
    {
        if (sweep is null) throw new ArgumentNullException(nameof(sweep));
        if (fit is null) throw new ArgumentNullException(nameof(fit));
        options ??= PlotOptions.Default;
        Plot plot = Draw(sweep, options, out string words);
        if (fit.Response is not { } model || fit.Gain is not { } gain) return plot.WithDescription(words + " No model fits: " + string.Join("; ", fit.Findings.Select(finding => finding.Message)) + ".");

        // The fit states its gain on the scale of the levels, the picture counts from the reference of the sweep.
        double shift = gain.Decibels - sweep.ReferenceLevel.Decibels;
        ResponseCurve curve = ResponseCurve.Of(model, Ranged(plot.X, sweep));
        plot = plot.With("fitted model, " + Engineering.Words(fit.Bandwidth!.Value), TraceStyle.Line, curve.Hertz, curve.Decibels.Select(level => level + shift).ToArray(), look: 1);
        var hertz = new List<double>();
        var residuals = new List<double>();
        var uncertainties = new List<double>();
        foreach (SweepPoint point in Shown(sweep, plot.X))
        {
            if (ResponseCurve.LevelAt(model, point.Frequency) is not { } level) continue;
            hertz.Add(point.Frequency.Hertz);
            residuals.Add(point.Level.Decibels - gain.Decibels - (level - model.ReferenceGain.Decibels));
            uncertainties.Add(point.Uncertainty?.Decibels ?? 0);
        }
        Plot below = Points(new Plot("residuals", plot.X, Axis.Linear("residual", "dB")), "", hertz, residuals, uncertainties).WithHorizontalLimit("", 0);
        words += $" The fitted model has a bandwidth of {Engineering.Words(fit.Bandwidth!.Value)}" + (fit.BandwidthUncertainty is { } u ? $" (u = {Engineering.Words(u, 2)})" : "") + $" and leaves residuals of {Engineering.Words(fit.ResidualDeviation, 2)}.";
        return plot.Above(below).WithDescription(words);
    }

    private static Plot Draw(Sweep sweep, PlotOptions options, out string words)
    {
        Axis x = Frequencies(sweep, options);
        double reference = sweep.ReferenceLevel.Decibels;
        SweepPoint[] points = Shown(sweep, x);
        var plot = new Plot(options.Title ?? "Sweep of " + sweep.Count.ToString(System.Globalization.CultureInfo.InvariantCulture) + " points", x, Axis.Linear("level re reference", "dB"));
        plot = Points(plot.With(options), "measured", points.Select(point => point.Frequency.Hertz).ToList(), points.Select(point => point.Level.Decibels - reference).ToList(), points.Select(point => point.Uncertainty?.Decibels ?? 0).ToList());
        plot = plot.WithHorizontalLimit("reference", 0);
        SweepBandwidth band = sweep.Bandwidth();
        words = FormattableString.Invariant($"{sweep.Count} levels from {Engineering.Words(sweep.Lowest)} to {Engineering.Words(sweep.Highest)} relative to the {sweep.ReferenceText}.");
        SweepCrossing[] edges = new[] { band.Lower, band.Upper }.OfType<SweepCrossing>().ToArray();
        if (edges.Length == 0) words += " The sweep shows no half-power edge.";
        else plot = plot.WithHorizontalLimit(Engineering.Words(DecibelRatio.HalfPower, 3), DecibelRatio.HalfPower.Decibels);
        foreach (SweepCrossing edge in edges)
        {
            double f = edge.Frequency.Hertz, u = edge.Uncertainty.Hertz, from = Math.Max(f - (2 * u), x.IsLogarithmic ? f / 10 : 0);
            string name = Engineering.Words(edge.Frequency) + ", u = " + Engineering.Words(edge.Uncertainty, 2);
            words += $" It {(edge.IsFalling ? "falls" : "rises")} through half power at {name}.";
            plot = Outside(x, f) ? plot : plot.WithVerticalStrip(name, f, from, f + (2 * u));
        }
        return plot.WithDescription(words);
    }

    private static Plot Points(Plot plot, string name, IReadOnlyList<double> hertz, IReadOnlyList<double> decibels, List<double> uncertainties) => uncertainties.Any(u => u > 0)
        ? plot.With(name.Length > 0 ? name + ", ± one standard uncertainty" : "", TraceStyle.Intervals, hertz, decibels.Select((level, i) => level - uncertainties[i]).ToArray(), decibels.Select((level, i) => level + uncertainties[i]).ToArray(), look: 0)
        : plot.With(name, TraceStyle.Dots, hertz, decibels, look: 0);

    private static Axis Frequencies(Sweep sweep, PlotOptions options)
    {
        if (options.LowestFrequency is not null) return ResponseCurve.FrequencyAxis(options, 0, 0);
        bool isLinear = options.HasLinearFrequency || sweep.Highest.Hertz <= 0;
        return isLinear ? Axis.Linear("frequency", "Hz") : Axis.Logarithmic("frequency", "Hz").Tight();
    }

    private static SweepPoint[] Shown(Sweep sweep, Axis x) => sweep.Points.Where(point => x.CanPlace(point.Frequency.Hertz)).ToArray();

    private static Axis Ranged(Axis x, Sweep sweep) => x.HasRange ? x : x.WithRange(x.IsLogarithmic ? sweep.Points.Select(point => point.Frequency.Hertz).First(hertz => hertz > 0) : sweep.Lowest.Hertz, sweep.Highest.Hertz);

    private static bool Outside(Axis x, double hertz) => x.HasRange && (hertz < x.Lower || hertz > x.Upper);
}
