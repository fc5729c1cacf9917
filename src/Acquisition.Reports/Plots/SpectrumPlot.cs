using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Planning;

namespace Acquisition.Reports;

/// <summary>The lines of a signal, as applied and as displayed, against the response of the chain; lines that fold show where they do not belong.</summary>
public static class SpectrumPlot
{
    private const double Deepest = -80;
    private const int MostHarmonics = 64, PointsOfDensity = 1601;

    /// <summary>The lines of an outlook, with half the sample rate and the lines that fold below it.</summary>
    /// <param name="outlook">The outlook.</param>
    /// <param name="options">Size, title, frequencies; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="outlook"/> is null.</exception>
    public static Plot Of(Outlook outlook, PlotOptions? options = null)
    {
        if (outlook is null) throw new ArgumentNullException(nameof(outlook));
        Line[] lines = outlook.Harmonics.Select(line => new Line(line.Frequency.Hertz, line.Applied.Volts, line.Displayed.Volts, line.ShownAt.Hertz, line.IsAliased)).ToArray();
        return Draw(outlook.Signal, outlook.Response, lines, outlook.NyquistFrequency, options ?? PlotOptions.Default);
    }

    /// <summary>The lines of a signal through a response.</summary>
    /// <param name="signal">The signal; one that does not repeat shows the curve of its spectral density.</param>
    /// <param name="response">The response.</param>
    /// <param name="options">Size, title, frequencies; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="signal"/> or <paramref name="response"/> is null.</exception>
    public static Plot Of(Signal signal, Response response, PlotOptions? options = null)
    {
        if (signal is null) throw new ArgumentNullException(nameof(signal));
        if (response is null) throw new ArgumentNullException(nameof(response));
        Line[] lines = signal.Fundamental is null ? Array.Empty<Line>() : signal.Harmonics(MostHarmonics).Select(line => Through(response, line)).ToArray();
        return Draw(signal, response, lines, null, options ?? PlotOptions.Default);
    }

    private static Plot Draw(Signal signal, Response response, Line[] all, Frequency? nyquist, PlotOptions options)
    {
        double largest = all.Select(line => line.Applied).DefaultIfEmpty(0).Max();
        Line[] lines = all.Where(line => line.Applied > 0 && Level(line.Applied, largest) >= Deepest && line.Hertz > 0).ToArray();
        Axis x = lines.Length > 0
            ? ResponseCurve.FrequencyAxis(options, lines.Min(line => Math.Min(line.Hertz, line.IsFolded && line.ShownAt > 0 ? line.ShownAt : line.Hertz)) / 2, Math.Max(lines.Max(line => line.Hertz), nyquist?.Hertz ?? 0) * 1.3)
            : ResponseCurve.FrequencyAxis(response, options);
        Axis y = Axis.Linear(lines.Length > 0 ? "level re largest line" : "density re largest", "dB").WithRange(Deepest, 10);
        ResponseCurve curve = ResponseCurve.Of(response, x);
        Plot plot = new Plot(options.Title ?? "Spectrum of " + signal.Name + " through " + response.Name, x, y).With(options).With("gain of the chain", TraceStyle.Line, curve.Hertz, curve.Decibels, look: 3);
        plot = lines.Length > 0 ? WithLines(plot, lines, largest) : WithDensity(plot, signal, response, x);
        if (nyquist is { } half && half.Hertz > x.Lower && half.Hertz < x.Upper) plot = plot.WithVerticalLimit("Nyquist frequency " + Engineering.Words(half), half.Hertz);
        return plot.WithDescription(Lead(signal, lines, largest, all.Length - lines.Length));
    }

    private static Plot WithLines(Plot plot, Line[] lines, double largest)
    {
        bool isPlaced(double hertz) => hertz >= plot.X.Lower && hertz <= plot.X.Upper;
        Line[] applied = lines.Where(line => isPlaced(line.Hertz)).ToArray();
        Line[] kept = lines.Where(line => !line.IsFolded && line.Displayed > 0 && isPlaced(line.Hertz)).ToArray(), folded = lines.Where(line => line.IsFolded && line.Displayed > 0 && isPlaced(line.ShownAt)).ToArray();
        plot = plot.With("applied", TraceStyle.Dots, applied.Select(line => line.Hertz).ToArray(), applied.Select(line => Level(line.Applied, largest)).ToArray(), look: 1)
            .With("displayed", TraceStyle.Stems, kept.Select(line => line.Hertz).ToArray(), kept.Select(line => Level(line.Displayed, largest)).ToArray(), look: 0);
        return folded.Length == 0
            ? plot
            : plot.With("folded, displayed where it is not", TraceStyle.Stems, folded.Select(line => line.ShownAt).ToArray(), folded.Select(line => Level(line.Displayed, largest)).ToArray(), look: 2);
    }

    private static Plot WithDensity(Plot plot, Signal signal, Response response, Axis x)
    {
        var hertz = new List<double>();
        var volts = new List<double>();
        for (int i = 0; i < PointsOfDensity; i++)
        {
            double part = i / (PointsOfDensity - 1.0), f = x.IsLogarithmic ? x.Lower * Math.Pow(x.Upper / x.Lower, part) : x.Lower + ((x.Upper - x.Lower) * part);
            if (f <= 0) continue;
            hertz.Add(f);
            volts.Add(System.Numerics.Complex.Abs(signal.SpectrumAt(Frequency.FromHertz(f))));
        }
        double largest = volts.Max();
        double[] applied = volts.Select(value => Level(value, largest)).ToArray();
        double[] displayed = hertz.Select((f, i) => applied[i] + (ResponseCurve.LevelAt(response, Frequency.FromHertz(f)) ?? double.NegativeInfinity) - response.ReferenceGain.Decibels).Select(level => Math.Max(level, -300)).ToArray();
        return plot.With("applied", TraceStyle.Line, hertz, applied, look: 1).With("displayed", TraceStyle.Line, hertz, displayed, look: 0);
    }

    private static string Lead(Signal signal, Line[] lines, double largest, int below)
    {
        if (lines.Length == 0) return $"{signal.Name} does not repeat: its spectrum is a curve, not lines.";
        Line[] folded = lines.Where(line => line.IsFolded).ToArray();
        string words = FormattableString.Invariant($"{lines.Length} lines of {signal.Name}; 0 dB is a peak of {Engineering.Text(largest, "V")}.");
        if (below > 0) words += FormattableString.Invariant($" {below} more lines are more than {-Deepest} dB below it and left out.");
        if (folded.Length == 0) return words + " None folds.";
        Line worst = folded.OrderByDescending(line => line.Displayed).First();
        words += FormattableString.Invariant($" {folded.Length} of them lie above half the sample rate and fold; the largest, at {Engineering.Text(worst.Hertz, "Hz")}, shows at {Engineering.Text(worst.ShownAt, "Hz")} with {Engineering.Text(Level(worst.Displayed, largest), "dB", 3)}.");
        int atZero = folded.Count(line => line.ShownAt <= 0);
        return atZero == 0 ? words : words + FormattableString.Invariant($" {atZero} of them fold onto 0 Hz, which a logarithmic axis does not show.");
    }

    private static double Level(double volts, double largest) => volts > 0 ? Math.Max(-300, 20 * Math.Log10(volts / largest)) : -300;

    private static Line Through(Response response, SpectralLine line)
    {
        double gain = ResponseCurve.LevelAt(response, line.Frequency) is { } level ? Math.Pow(10, (level - response.ReferenceGain.Decibels) / 20) : 0;
        return new Line(line.Frequency.Hertz, line.Peak.Volts, line.Peak.Volts * gain, line.Frequency.Hertz, false);
    }

    private sealed class Line(double hertz, double applied, double displayed, double shownAt, bool isFolded)
    {
        internal double Hertz { get; } = hertz;

        internal double Applied { get; } = applied;

        internal double Displayed { get; } = displayed;

        internal double ShownAt { get; } = shownAt;

        internal bool IsFolded { get; } = isFolded;
    }
}
