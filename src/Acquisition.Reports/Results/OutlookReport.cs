using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>An <see cref="Outlook"/> as a report: what will be seen, why, what it costs, and how the chain behaves.</summary>
public static class OutlookReport
{
    private const int PointsPerCurve = 201;

    /// <summary>The report of an outlook.</summary>
    /// <param name="outlook">The outlook.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this Outlook outlook, string title = "Outlook")
    {
        if (outlook is null) throw new ArgumentNullException(nameof(outlook));
        return new Report(title)
            .WithParagraph($"{outlook.Signal.Name} through {outlook.Response.Name}, taken by {outlook.Setup.Digitizer}.")
            .WithFindings(outlook.Findings)
            .WithValues(new ReportValues("chain", "Chain").With(outlook.ChainBandwidth).With(outlook.ChainRiseTime).With("overshoot", ReportCell.OfAny(outlook.ChainOvershoot)))
            .WithValues(Display(outlook))
            .WithValues(Sampling(outlook))
            .WithValues(Vertical(outlook))
            .WithValues(Events(outlook))
            .WithTable(Harmonics(outlook))
            .WithTable(Contributions(outlook))
            .WithPlot(Gain(outlook.Response, outlook.NyquistFrequency));
    }

    /// <summary>The gain of a response over frequency, from two decades below its bandwidth to one above, with the Nyquist frequency where it is given.</summary>
    /// <param name="response">The response.</param>
    /// <param name="nyquist">Half the sample rate; null leaves it out.</param>
    /// <exception cref="ArgumentNullException"><paramref name="response"/> is null.</exception>
    public static Plot Gain(Response response, Frequency? nyquist = null)
    {
        if (response is null) throw new ArgumentNullException(nameof(response));
        double center = response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) ? bandwidth.Hertz : nyquist?.Hertz ?? 1e6;
        var hertz = new List<double>();
        var decibels = new List<double>();
        for (int i = 0; i < PointsPerCurve; i++)
        {
            double f = center * Math.Pow(10, -2 + (3.0 * i / (PointsPerCurve - 1)));
            double ratio = response.AmplitudeRatio(Frequency.FromHertz(f)).Fraction;
            if (ratio < 1e-4) continue;
            hertz.Add(f);
            decibels.Add(20 * Math.Log10(ratio));
        }
        double reference = response.ReferenceGain.Decibels;
        Plot plot = new Plot("Gain of " + response.Name, Axis.Logarithmic("frequency", "Hz"), Axis.Linear("gain", "dB").WithRange(Math.Floor(reference - 45), Math.Ceiling(reference + 5)))
            .WithLine(response.Name, hertz, decibels)
            .WithHorizontalLimit("half power", reference + DecibelRatio.HalfPower.Decibels);
        return nyquist is { } limit && limit.Hertz > 0 ? plot.WithVerticalLimit("Nyquist frequency", limit.Hertz) : plot;
    }

    /// <summary>The step response over time: what an ideal edge would look like.</summary>
    /// <param name="response">The response, which must pass DC.</param>
    /// <exception cref="ArgumentNullException"><paramref name="response"/> is null.</exception>
    /// <exception cref="ArgumentException">The response blocks DC, so that its step returns to nothing.</exception>
    public static Plot Step(Response response)
    {
        if (response is null) throw new ArgumentNullException(nameof(response));
        if (!response.PassesDc) throw new ArgumentException($"the step of {response.Name} has no final level, since it blocks DC", nameof(response));
        Duration rise = response.RiseTime, half = response.StepCrossing(Ratio.FromPercent(50));
        var seconds = new List<double>();
        var levels = new List<double>();
        for (int i = 0; i < 2 * PointsPerCurve; i++)
        {
            Duration t = half + (rise * (-2 + (7.0 * i / ((2 * PointsPerCurve) - 1))));
            seconds.Add(t.Seconds);
            levels.Add(100 * response.StepAt(t).Fraction / response.ReferenceGain.ToAmplitudeRatio().Fraction);
        }
        return new Plot("Step response of " + response.Name, Axis.Linear("time", "s"), Axis.Linear("level", "%"))
            .WithLine(response.Name, seconds, levels)
            .WithHorizontalLimit("10 %", 10)
            .WithHorizontalLimit("90 %", 90);
    }

    private static ReportValues Display(Outlook outlook) => new ReportValues("display", "Display")
        .With(outlook.DisplayedAmplitude)
        .With("amplitude error", ReportCell.Of(outlook.AmplitudeError))
        .With(outlook.DisplayedEdge)
        .With("edge error", ReportCell.OfAny(outlook.EdgeError))
        .With("harmonics kept", outlook.Harmonics.Count > 0 ? ReportCell.Count(outlook.HarmonicsKept) : null);

    private static ReportValues Sampling(Outlook outlook) => new ReportValues("sampling", "Sampling")
        .With(outlook.SampleRate)
        .With("record length", ReportCell.Of(outlook.RecordLength))
        .With("window", ReportCell.Of(outlook.Window))
        .With("Nyquist frequency", ReportCell.Of(outlook.NyquistFrequency))
        .With("Nyquist margin", Number(outlook.NyquistMargin))
        .With("points per period", Number(outlook.PointsPerPeriod))
        .With("intervals per edge", Number(outlook.IntervalsPerEdge))
        .With("folded content", ReportCell.OfAny(outlook.AliasShare), "of the fundamental")
        .With("interpolation error", ReportCell.OfAny(outlook.InterpolationError))
        .With("interpolation error of the highest harmonic kept", ReportCell.OfAny(outlook.InterpolationErrorOfHighestHarmonic));

    private static ReportValues Vertical(Outlook outlook) => new ReportValues("vertical", "Vertical")
        .With("range", ReportCell.OfAny(outlook.FullScale))
        .With("one code", ReportCell.OfAny(outlook.LeastSignificantBit))
        .With("noise", ReportCell.OfAny(outlook.Noise))
        .With("noise of quantization", ReportCell.OfAny(outlook.QuantizationNoise))
        .With("noise of jitter", ReportCell.OfAny(outlook.JitterNoise))
        .With("noise altogether", ReportCell.OfAny(outlook.TotalNoise))
        .With(outlook.EffectiveBits)
        .With("smallest detail", ReportCell.OfAny(outlook.SmallestDetail))
        .With("edge timing", ReportCell.OfAny(outlook.EdgeTimingUncertainty), "one standard deviation");

    private static ReportValues Events(Outlook outlook)
    {
        var values = new ReportValues("pulse", "The pulse to watch for");
        return outlook.Events is not { } events ? values : values
            .With("width", ReportCell.Of(events.Width))
            .With("height shown", ReportCell.Of(events.Height))
            .With("chance of a sample", ReportCell.Of(events.ChanceOfASample))
            .With("fewest samples on it", ReportCell.Of(events.FewestSamples))
            .With("time observed", ReportCell.OfAny(events.ObservedShare))
            .With("chance to be seen, each time", ReportCell.Of(events.ChancePerOccurrence));
    }

    private static ReportTable Harmonics(Outlook outlook) => new ReportTable("harmonics", "Harmonics, as applied and as displayed", "harmonic", "frequency", "applied", "displayed", "shown at", "note")
        .WithRows(outlook.Harmonics.Select(line => new ReportCell[]
        {
            ReportCell.Count(line.Number), ReportCell.Of(line.Frequency), ReportCell.Of(line.Applied), ReportCell.Of(line.Displayed), ReportCell.Of(line.ShownAt), line.IsAliased ? "folded" : null,
        }));

    private static ReportTable Contributions(Outlook outlook) => new ReportTable("contributions", "What each element costs", "element", "share", "effect")
        .WithRows(outlook.Contributions.Select(x => new[] { x.Element, ReportCell.Of(x.Share), x.Effect }));

    private static ReportCell? Number(Ratio? ratio) => ratio is { } value ? ReportCell.Number(value.Fraction) : null;
}
