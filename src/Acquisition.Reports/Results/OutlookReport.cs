using System;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>An <see cref="Outlook"/> as a report: what will be seen, why, what it costs, and how the chain behaves.</summary>
public static class OutlookReport
{
    /// <summary>The report of an outlook.</summary>
    /// <param name="outlook">The outlook.</param>
    /// <param name="title">The title of the report.</param>
    /// <param name="mostHarmonics">How many harmonics to list; the report says how many there are.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mostHarmonics"/> is negative.</exception>
    public static Report ToReport(this Outlook outlook, string title = "Outlook", int mostHarmonics = 20)
    {
        if (outlook is null) throw new ArgumentNullException(nameof(outlook));
        if (mostHarmonics < 0) throw new ArgumentOutOfRangeException(nameof(mostHarmonics), mostHarmonics, "mostHarmonics must be 0 or more");
        Report report = new Report(title)
            .WithParagraph($"{outlook.Signal.Name} through {outlook.Setup.Applied.Chain?.ToString() ?? outlook.Response.Name}, taken by {outlook.Setup.Digitizer}{Mode(outlook.Setup)}.")
            .WithFindings(outlook.Findings)
            .WithValues(new ReportValues("chain", "Chain").With(outlook.ChainBandwidth).With(outlook.ChainRiseTime).With("overshoot of a step", ReportCell.OfAny(outlook.ChainOvershoot)))
            .WithValues(Display(outlook))
            .WithValues(Sampling(outlook))
            .WithValues(Vertical(outlook))
            .WithValues(Events(outlook))
            .WithTable(Contributions(outlook))
            .WithPlot(ResponsePlot.Of(outlook))
            .WithTable(Harmonics(outlook, mostHarmonics));
        if (outlook.Harmonics.Count > mostHarmonics)
            report = report.WithParagraph(FormattableString.Invariant($"Of {outlook.Harmonics.Count} harmonics the first {mostHarmonics} are listed."));
        return outlook.Harmonics.Count > 0 ? report.WithPlot(SpectrumPlot.Of(outlook)) : report;
    }

    private static string Mode(SampledSignal setup) => setup.Mode switch
    {
        AcquisitionMode.PeakDetect => ", peak detect",
        AcquisitionMode.HighResolution => FormattableString.Invariant($", each point the mean of {setup.Combined} samples"),
        AcquisitionMode.Average => FormattableString.Invariant($", mean of {setup.Combined} records"),
        AcquisitionMode.Envelope => FormattableString.Invariant($", envelope of {setup.Combined} records"),
        _ => "",
    };

    private static ReportValues Display(Outlook outlook) => new ReportValues("display", "Display")
        .With(outlook.DisplayedAmplitude)
        .With("amplitude error", ReportCell.Of(outlook.AmplitudeError))
        .With(outlook.DisplayedEdge)
        .With("edge error", ReportCell.OfAny(outlook.EdgeError))
        .With("overshoot of the edge", ReportCell.OfAny(outlook.DisplayedOvershoot))
        .With("lowest to highest", ReportCell.Of(outlook.DisplayedExtremes), "pre- and overshoot included")
        .With("harmonics kept", outlook.Harmonics.Count > 0 ? ReportCell.Count(outlook.HarmonicsKept) : null);

    private static ReportValues Sampling(Outlook outlook) => new ReportValues("sampling", "Sampling")
        .With(outlook.SampleRate)
        .With("record length", ReportCell.Of(outlook.RecordLength))
        .With("window", ReportCell.Of(outlook.Window))
        .With("Nyquist frequency", ReportCell.Of(outlook.NyquistFrequency))
        .With("Nyquist margin", Number(outlook.NyquistMargin))
        .With("points per period", Number(outlook.PointsPerPeriod))
        .With("intervals per edge", Number(outlook.IntervalsPerEdge))
        .With("folded content", ReportCell.OfAny(outlook.AliasShare), "of the rms of the waveform")
        .With("interpolation error", ReportCell.OfAny(outlook.InterpolationErrorOfSignal), "of the amplitude, at most")
        .With("crest kept too low", ReportCell.OfAny(outlook.CrestShortfall), "of the amplitude, at most");

    private static ReportValues Vertical(Outlook outlook) => new ReportValues("vertical", "Vertical")
        .With("range", ReportCell.OfAny(outlook.FullScale))
        .With("one code", ReportCell.OfAny(outlook.LeastSignificantBit))
        .With("noise", ReportCell.OfAny(outlook.Noise))
        .With("noise of quantization", ReportCell.OfAny(outlook.QuantizationNoise))
        .With("noise of jitter", ReportCell.OfAny(outlook.JitterNoise))
        .With("noise altogether", ReportCell.OfAny(outlook.TotalNoise))
        .With(outlook.EffectiveBits)
        .With("effective bits of the signal", ReportCell.OfAny(outlook.EffectiveBitsOfSignal), "what the range leaves of them")
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
            .With("chance to be seen, each time", ReportCell.OfAny(events.ChancePerOccurrence));
    }

    private static ReportTable Harmonics(Outlook outlook, int most) => new ReportTable("harmonics", "Harmonics, as applied and as displayed", "harmonic", "frequency", "applied", "displayed", "shown at", "note")
        .WithRows(outlook.Harmonics.Take(most).Select(line => new ReportCell[]
        {
            ReportCell.Count(line.Number), ReportCell.Of(line.Frequency), ReportCell.Of(line.Applied), ReportCell.Of(line.Displayed), ReportCell.Of(line.ShownAt), line.IsAliased ? "folded" : null,
        }));

    private static ReportTable Contributions(Outlook outlook) => new ReportTable("contributions", "What each element costs", "element", "share", "effect")
        .WithRows(outlook.Contributions.Select(x => new[] { x.Element, ReportCell.Of(x.Share), x.Effect }));

    private static ReportCell? Number(Ratio? ratio) => ratio is { } value ? ReportCell.Number(value.Fraction) : null;
}
