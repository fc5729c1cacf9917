using System;
using System.Globalization;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>An outlook as plain text.</summary>
internal static class OutlookText
{
    internal static string Write(Outlook outlook)
    {
        var text = new PlainText();
        text.Line("Signal   " + outlook.Signal.Name);
        text.Line("Chain    " + outlook.Setup.Applied.Describe());
        text.Line("Sampler  " + outlook.Setup.Digitizer);
        text.Line("");
        text.Line("Chain");
        text.Value("bandwidth", "", outlook.ChainBandwidth);
        text.Value("rise time", "", outlook.ChainRiseTime);
        text.Line("Display");
        text.Value("amplitude", "", outlook.DisplayedAmplitude);
        text.Row("amplitude error", Percent(outlook.AmplitudeError));
        text.Value("edge", "", outlook.DisplayedEdge);
        if (!outlook.LevelsSettle && outlook.SingleEdge is { } single)
            text.Row("one edge alone", single.InWords());
        if (outlook.EdgeError is { } slow)
            text.Row("edge error", Percent(slow));
        if (outlook.DisplayedOvershoot is { } overshoot)
            text.Row("overshoot of edge", overshoot.InWords());
        if (outlook.Signal.Fundamental is not null && outlook.Signal.SteepestEdge is not null)
            text.Row("harmonics kept", outlook.HarmonicsKept.ToString(CultureInfo.InvariantCulture));
        Sampling(outlook, text);
        Vertical(outlook, text);
        Events(outlook, text);
        if (outlook.WeakestLink is { } weakest)
        {
            text.Line("Weakest link");
            text.Row(weakest.Element, weakest.Effect);
        }
        if (outlook.Findings.Count > 0)
        {
            text.Line("Findings");
            text.Findings(outlook.Findings);
        }
        return text.ToString();
    }

    private static void Sampling(Outlook outlook, PlainText text)
    {
        text.Line("Sampling");
        text.Value("sample rate", "", outlook.SampleRate);
        text.Row("window", outlook.Window.InWords());
        text.Row("record length", outlook.RecordLength.ToString());
        text.Row("Nyquist frequency", outlook.NyquistFrequency.InWords());
        Row(text, "Nyquist margin", outlook.NyquistMargin is { } margin ? FewDigits.Number(margin.Fraction) + " x" : null);
        Row(text, "points per period", outlook.PointsPerPeriod?.SiValue is { } points ? FewDigits.Number(points) : null);
        Row(text, "points per edge", outlook.IntervalsPerEdge?.SiValue is { } intervals ? FewDigits.Number(intervals) : null);
        Row(text, "interpolation error", outlook.InterpolationErrorOfSignal is { } error ? $"up to {error.InWords()} of the amplitude ({outlook.Setup.Interpolation.Name})" : null);
        Row(text, "folded content", outlook.AliasShare is { } share ? share.InWords() + " of the rms of the waveform" : null);
        Row(text, "between the samples", outlook.KeepsExtremes ? "the band of lowest and highest; nothing is drawn through it, and what is above half the rate widens it" : null);
        Row(text, "crest kept too low", outlook.CrestShortfall is { } crest ? $"by up to {crest.InWords()} of the amplitude; the converter looks at {outlook.Timebase.MaximumRate.InWords()}" : null);
        foreach (HarmonicOutlook alias in outlook.Aliases.Take(3))
            text.Note(alias.ToString());
    }

    private static void Vertical(Outlook outlook, PlainText text)
    {
        if (outlook.FullScale is not { } range)
            return;
        text.Line("Vertical");
        text.Row("range", range.InWords());
        text.Row("one code", outlook.LeastSignificantBit!.Value.InWords());
        Row(text, "noise", outlook.Noise is { } noise ? noise.InWords() : null);
        Row(text, "noise of jitter", outlook.JitterNoise is { } jitter ? jitter.InWords() : null);
        text.Value("effective bits", "", outlook.EffectiveBits);
        Row(text, "bits of the signal", outlook.EffectiveBitsOfSignal is { } bits ? $"{bits.InWords()}: it fills {FewDigits.Of(Math.Min(1, outlook.Signal.PeakToPeak.SiValue / range.SiValue), Ratio.Kind)} of the range" : null);
        Row(text, "smallest detail", outlook.SmallestDetail is { } detail ? detail.InWords() : null);
        Row(text, "edge timing", outlook.EdgeTimingUncertainty is { } timing ? timing.InWords() + " (one standard deviation)" : null);
    }

    private static void Events(Outlook outlook, PlainText text)
    {
        if (outlook.Events is not { } events)
            return;
        text.Line(FormattableString.Invariant($"Pulse of {events.Width.InWords()}"));
        text.Row("height shown", events.Height.InWords());
        text.Row("chance of a sample", events.ChanceOfASample.InWords());
        Row(text, "time observed", events.ObservedShare is { } share ? share.InWords() : null);
        if (!events.IsEverCaught)
            return;
        text.Row("pulses for 99 %", FormattableString.Invariant($"{events.TrialsFor(Ratio.FromPercent(99))}"));
        Row(text, "time for 99 %", events.TimeFor(Ratio.FromPercent(99)) is { } time ? time.InWords() + ", where they come at random" : null);
    }

    private static void Row(PlainText text, string label, string? value)
    {
        if (value is not null)
            text.Row(label, value);
    }

    private static string Percent(Ratio ratio) => (ratio.SiValue > 0 ? "+" : "") + ratio.InWords();
}
