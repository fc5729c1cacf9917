using System;

namespace Acquisition.Core.Planning;

// Resolution, acquisition mode and rare events.
internal sealed partial class OutlookFindings
{
    private void Vertical()
    {
        double swing = outlook.DisplayedAmplitude.Value.SiValue;
        if (outlook.FullScale is not { } range)
        {
            Add("no-range", Severity.Failure, $"no range of {outlook.Setup.Digitizer.Name} holds {outlook.DisplayedExtremes.InWords()}{(outlook.DisplayedExtremes.SiValue > swing * (1 + Plateau.SettledWithin) ? ", pre- and overshoot included" : "")}", "a probe that divides more", "handbook 6.1");
            return;
        }
        // A range set to the swing as the user knows it holds a swing that differs by the last digits of a computed gain.
        if (range.SiValue < swing * (1 - 1e-9))
        {
            Add("clipped", Severity.Failure, $"{outlook.DisplayedAmplitude.Value.InWords()} do not fit into the range of {range.InWords()}",
                $"a range of at least {FewDigits.Of(FewDigits.RoundUp(swing * (1 - 1e-9)), PeakToPeakVoltage.Kind)}", "handbook 8.7");
        }
        // A thousandth is what levels are settled to.
        else if (outlook.DisplayedExtremes.SiValue > range.SiValue * (1 + Plateau.SettledWithin))
        {
            Add("overshoot-clipped", Severity.Warning, $"the levels, {outlook.DisplayedAmplitude.Value.InWords()} apart, fit into the range of {range.InWords()}; with pre- and overshoot it is {outlook.DisplayedExtremes.InWords()}, whose ends are cut off",
                $"a range of at least {FewDigits.Of(FewDigits.RoundUp(outlook.DisplayedExtremes.SiValue), PeakToPeakVoltage.Kind)}", "handbook 8.7");
        }
        // Where the display has lost the signal, that is what must be cured.
        else if (range.SiValue > 4 * swing && outlook.AmplitudeError.SiValue > -0.9)
        {
            Add("range-mostly-empty", Severity.Warning, $"the signal fills {FewDigits.Of(swing / range.SiValue, Ratio.Kind)} of the range of {range.InWords()}, which costs {FewDigits.Number(Math.Log(range.SiValue / swing) / Math.Log(2))} bits",
                $"a range nearer to {FewDigits.Of(swing, PeakToPeakVoltage.Kind)}", "handbook 12.3");
        }
        Offset(range.SiValue, swing);
        if (outlook.LeavesNoBits)
        {
            Add("no-bits-left", Severity.Failure, $"the noise, {outlook.TotalNoise!.Value.InWords()} in all, is as large as the range of {range.InWords()}: a single reading says nothing",
                "averaging, or less noise", "handbook 6.3");
        }
        if (outlook.JitterNoise is { } jitter && outlook.QuantizationNoise is { } quantization && jitter > quantization && (outlook.Noise is not { } noise || jitter > noise))
        {
            Add("jitter-rules", Severity.Note, $"the jitter of the clock, {jitter.InWords()} over the whole waveform, is more than noise and quantisation: more bits would not show more",
                null, "handbook 6.7");
        }
    }

    private void Offset(double range, double swing)
    {
        if (!outlook.Response.PassesDc)
            return;
        double middle = outlook.Response.DcGain * (Signal.Highest + Signal.Lowest) / 2, least = InputRange.OffsetFor(middle, swing, range);
        bool isStated = outlook.Setup.MaximumOffset is not null;
        double most = outlook.Setup.MaximumOffset?.SiValue ?? range * InputRange.UsualOffset;
        if (least <= most * (1 + 1e-9))
            return;
        string holds = $"the range of {FewDigits.Of(range, PeakToPeakVoltage.Kind)} holds the signal only with an offset of {FewDigits.Of(middle, Voltage.Kind)}";
        string larger = $"AC coupling where the level does not matter, or a range of at least {FewDigits.Of(FewDigits.RoundUp((2 * Math.Abs(middle)) + swing - (isStated ? 2 * most : 0)), PeakToPeakVoltage.Kind)}";
        if (isStated)
            Add("offset-needed", Severity.Failure, $"{holds}, {FewDigits.Of(least, Voltage.Kind)} at least; it has {FewDigits.Of(most, Voltage.Kind)} at most", larger + (most > 0 ? " with the same offset" : ""), "handbook 6.1");
        else
            Add("offset-needed", Severity.Note, holds, $"an input whose offset reaches that in this range, {larger}", "handbook 6.1, common practice");
    }

    private void Mode()
    {
        SampledSignal setup = outlook.Setup;
        switch (setup.Mode)
        {
            case AcquisitionMode.PeakDetect:
                double each = outlook.Timebase.MaximumRate.SiValue / outlook.StoredRate.SiValue;
                Add("peak-detect-distorts", Severity.Note, $"peak detection keeps spikes, but noise looks larger{Widened(each, "samples")}, and rms, spectra and effective bits of the record are not those of the signal; edges are timed no better than {outlook.StoredRate.SampleInterval.InWords()} and pulses look wider or narrower, so that no timing is given",
                    "ordinary samples for such values", "handbook 5.5");
                break;
            case AcquisitionMode.Envelope:
                Add("envelope-widens", Severity.Note, $"an envelope keeps the highest and the lowest of every place: noise looks larger{Widened(setup.Combined, "records")}, and neither effective bits, smallest detail nor edge timing are given for it",
                    "single records for such values", "handbook 5.5");
                break;
            case AcquisitionMode.HighResolution:
                Add("high-resolution-limits", Severity.Note,
                    FormattableString.Invariant($"the mean of {setup.Combined} samples gains {HighResolution.BitsGained(setup.Combined).InWords()} against white noise and limits the bandwidth to {HighResolution.Bandwidth(setup.Combined, Core.SampleRate.FromSi(outlook.StoredRate.SiValue * setup.Combined, "rate")).InWords()}"),
                    null, "handbook 5.5");
                break;
            case AcquisitionMode.Average:
                string gained = FormattableString.Invariant($"the mean of {setup.Combined} records gains {Averaging.BitsGained(setup.Combined).InWords()} on a signal that repeats; what happens once is lost");
                if (setup.WatchedPulse is { } watched)
                    Add("average-loses-single-events", Severity.Failure, $"{gained}, and so is the pulse of {watched.InWords()} to be caught", "single records, peak detection or an envelope", "handbook 5.5, 6.9");
                else
                    Add("average-loses-single-events", Severity.Note, gained, null, "handbook 5.5, 6.9");
                break;
        }
    }

    // The median of the highest of so many normal deviates: a chance of one half that all stay below it, Φ(x)^n = 1/2.
    private static string Widened(double count, string of) => count >= 2
        ? $", the extremes of {FewDigits.Number(Math.Floor(count))} {of} lie about ±{FewDigits.Number(ErrorFunction.NormalQuantile(Math.Pow(0.5, 1 / Math.Floor(count))))} standard deviations of it apart from the signal"
        : "";

    private void Events()
    {
        if (outlook.Setup.RecordRate is { } records && !outlook.Setup.RecordRateIsBest && outlook.LookedAt > 1 + 1e-9)
        {
            Add("records-overlap", Severity.Failure, $"{records.InWords()} of records, each {outlook.Window.InWords()} long, would look {FewDigits.Of(outlook.LookedAt!.Value, Ratio.Kind)} of the time: no share of time is computed",
                $"at most {FewDigits.Of(FewDigits.RoundDown(1 / outlook.Window.SiValue), Frequency.Kind)} of records, or a window of at most {FewDigits.Of(FewDigits.RoundDown(1 / records.SiValue), Duration.Kind)}", "handbook 5.11");
        }
        if (outlook.Events is not { } events)
            return;
        Flattened(events);
        if (events.ChanceOfASample.SiValue < 1)
        {
            string remedy = RateRemedy(1 / events.Width.SiValue);
            Add("pulse-between-samples", events.ChanceOfASample.SiValue < 0.5 ? Severity.Failure : Severity.Warning,
                $"a pulse of {events.Width.InWords()} meets a sample with a chance of {events.ChanceOfASample.InWords()}: the samples are {outlook.StoredRate.SampleInterval.InWords()} apart",
                outlook.Setup.Mode == AcquisitionMode.Sample && outlook.Timebase.MaximumRate.SiValue * events.Width.SiValue >= 1 ? "peak detection, or " + remedy : remedy, "handbook 5.5");
        }
        if (outlook.Setup.RecordRate is null)
        {
            Add("record-rate-unknown", Severity.Note, "how many records a second are taken is not stated: for which share of the time the instrument looks, and so the chance to catch a pulse, is not known",
                "state the records a second (WithRecordRate), or trigger on the pulse itself", "handbook 5.11");
        }
        if (events.ObservedShare is { SiValue: < 1 } observed && events.IsEverCaught)
        {
            string time = events.TimeFor(Ratio.FromPercent(99)) is { } wait ? $", and where they come at random one has to look for {wait.InWords()}{InDays(wait.SiValue)}" : "";
            Add("dead-time", Severity.Note, FormattableString.Invariant($"the instrument looks {observed.InWords()} of the time; {events.TrialsFor(Ratio.FromPercent(99))} pulses must happen to catch one with 99 % confidence{time}"),
                "trigger on the pulse itself", "handbook 5.11");
        }
    }

    private static string InDays(double seconds) => seconds switch
    {
        < 120 => "",
        < 7200 => $" ({FewDigits.Number(seconds / 60)} min)",
        < 172_800 => $" ({FewDigits.Number(seconds / 3600)} h)",
        _ => $" ({FewDigits.Number(seconds / 86_400)} days)",
    };

    private void Flattened(EventOutlook events)
    {
        if (events.Height.SiValue >= 0.9)
            return;
        string pulse = "a pulse of " + events.Width.InWords(), height = events.Height.InWords();
        if (outlook.Setup.Mode == AcquisitionMode.HighResolution && EdgeThrough.PulsePeak(events.Width, outlook.Setup.WatchedRiseTime, outlook.Response) >= 0.9)
        {
            Add("pulse-flattened", events.Height.SiValue < 0.5 ? Severity.Failure : Severity.Warning, FormattableString.Invariant($"{pulse} leaves at most {height} of its height in the mean of {outlook.Setup.Combined} samples, and half of that where it falls on two of them"),
                "peak detection, or ordinary samples", "handbook 5.5");
            return;
        }
        // What the bandwidth would let through is spoilt by something else: more of it is then no remedy.
        bool narrow = outlook.ChainBandwidth is not { } present || present.Value.SiValue < 0.5 / events.Width.SiValue;
        Add("pulse-flattened", events.Height.SiValue < 0.5 ? Severity.Failure : Severity.Warning, $"{pulse} reaches {height} of its height behind the chain",
            narrow ? $"a chain of about {FewDigits.Of(FewDigits.RoundUp(0.5 / events.Width.SiValue), Frequency.Kind)}" : "a chain that passes low frequencies and settles faster: its bandwidth is enough", "handbook 2.2");
    }
}
