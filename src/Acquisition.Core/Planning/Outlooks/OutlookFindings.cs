using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>What is to be said about an outlook. Codes are stable; texts carry the numbers, remedies the number that would cure it.</summary>
internal sealed partial class OutlookFindings(Outlook outlook)
{
    private readonly List<Finding> _findings = [];

    private Signal Signal => outlook.Signal;

    internal IReadOnlyList<Finding> All()
    {
        _findings.AddRange(outlook.Timebase.Findings);
        Chain();
        Sampling();
        Aliases();
        Vertical();
        Mode();
        Events();
        _findings.AddRange(outlook.Setup.Applied.Findings.Where(finding => !IsSaid(finding.Code)).ToList());
        return _findings.OrderByDescending(finding => finding.Severity).ThenBy(finding => finding.Code, StringComparer.Ordinal).ToList();
    }

    // A rule that the chain alone judges by is not repeated where the outlook has worked out what it means for this signal.
    private bool IsSaid(string ofChain) => ofChain switch
    {
        "chain-slower-than-signal" => Says("edge-slowed") || Says("edge-incomplete"),
        "content-beyond-bandwidth" => Says("signal-beyond-bandwidth") || Says("edge-slowed") || Says("edge-incomplete") || (Signal.SteepestEdge is null && Says("amplitude-short")),
        "dc-error" => (Says("amplitude-short") || Says("amplitude-high")) && AmplitudeIsOffAtDc(AmplitudeLimit),
        _ => false,
    };

    private bool Says(string code) => _findings.Any(finding => finding.Code == code);

    private void Chain()
    {
        if (outlook.ChainBandwidth is null)
            Add("no-bandwidth", Severity.Note, "the response of the chain never falls by 3 dB, so no bandwidth is given", null, "handbook 3.1");
        Amplitude();
        if (Signal.SteepestEdge is not null && outlook.DisplayedEdge is null && !outlook.LevelsSettle)
        {
            Add("edge-incomplete", Severity.Warning, "no edge on the display goes from 10 % to 90 % of the swing undisturbed, because the levels do not settle in between: its duration depends on its neighbours and is not given",
                _remedies.For(changed => changed.DisplayedEdge is not null) ?? "a faster chain", "handbook 2.6");
        }
        if (outlook.DisplayedEdge is { } shown && !outlook.LevelsSettle && !double.IsNaN(outlook.EdgeAlone))
            Unsettled(shown.Value);
        SlowedEdge();
        Overshoot();
        if (outlook.Tone is { } tone && outlook.ChainBandwidth is { } b && tone.SiValue > b.Value.SiValue)
            Add("signal-beyond-bandwidth", Severity.Failure, $"the signal has {tone.InWords()}, above the {b.Value.InWords()} of the chain",
                BeyondRemedy(3 * tone.SiValue), "handbook 4.6");
    }

    private string BeyondRemedy(double needed)
    {
        static double Lost(Outlook changed) => changed.ChainBandwidth is { } band ? 1 / band.Value.SiValue : 0;
        return _remedies.Element(changed => Lost(changed) <= 1 / needed, Lost) ?? $"a chain of at least {FewDigits.Of(FewDigits.RoundUp(needed), Frequency.Kind)}{Worst(Lost)}";
    }

    private void Unsettled(Duration shown)
    {
        (double needed, double shortest) = outlook.Settling;
        string why = !outlook.Response.PassesDc ? "the chain blocks DC, so that no level stays" : double.IsInfinity(needed) ? "the chain rings on from edge to edge"
            : $"a level takes {FewDigits.Of(needed, Duration.Kind)} to settle to 0.1 %, {(shortest > 0 ? "the shortest lasts " + FewDigits.Of(shortest, Duration.Kind) : "and the edges follow each other without any")}";
        string alone = FewDigits.Of(outlook.EdgeAlone, Duration.Kind), seen = shown.InWords();
        Add("levels-unsettled", Severity.Note,
            $"{why}: amplitude and edge are told between the lowest and the highest value of the waveform, over- and undershoot included; one edge alone would take {(alone == seen ? "as long, " + alone : $"{alone}, not {seen}")}",
            null, "handbook 2.6; IEEE 181 state levels");
    }

    private void Sampling()
    {
        double rate = outlook.StoredRate.SiValue;
        if (Signal.Period is { } period && outlook.Window.SiValue < period.SiValue * (1 - 1e-9))
        {
            Add("window-too-short", Severity.Warning, $"the window of {outlook.Window.InWords()} shows less than one period, {period.InWords()}",
                $"a window of at least {FewDigits.Of(FewDigits.RoundUp(period.SiValue), Duration.Kind)}", "handbook 5.4");
        }
        int stated = outlook.Setup.Digitizer.StatedChannels, used = outlook.Setup.ChannelsInUse;
        if (stated > 1 && used > stated)
        {
            Add("channels-not-stated", Severity.Warning, FormattableString.Invariant($"rate and memory of {outlook.Setup.Digitizer.Name} are stated for up to {stated} channels in use; those of {stated} are taken for {used}"),
                FormattableString.Invariant($"state rate and memory for {used} channels, or use {stated} at most"), "handbook 5.4");
        }
        if (outlook.IntervalsPerEdge?.SiValue is { } intervals && Signal.SteepestEdge!.RiseTime.SiValue > 0 && intervals < 3)
        {
            double needed = 3 / outlook.DisplayedEdge!.Value.SiValue;
            Add("few-points-per-edge", intervals < 1 ? Severity.Failure : Severity.Warning,
                FormattableString.Invariant($"{FewDigits.Number(intervals)} sample intervals lie on the edge of {outlook.DisplayedEdge.Value.InWords()}; 3 to 5 are needed to time it"),
                RateRemedy(needed), "handbook 5.13");
        }
        if (outlook.InterpolationError is { SiValue: > 0.05 } error && Signal.SteepestEdge is null)
        {
            Add("coarse-interpolation", Severity.Warning,
                $"{outlook.Setup.Interpolation.Name} interpolation is off by up to {error.InWords()} of the amplitude at {FewDigits.Number(outlook.PointsPerPeriod!.Value.SiValue)} samples per period",
                outlook.Setup.Interpolation == Reconstruction.Sinc ? RateRemedy(4 * Signal.Tone) : "sinc interpolation, or " + RateRemedy(rate * Math.Sqrt(error.SiValue / 0.01)), "handbook 5.8, 5.9");
        }
    }

    private void Aliases()
    {
        // Extremes hold what is above half the rate as a band, not at a frequency that it does not have.
        if (outlook.Tone is not { } fundamental || outlook.KeepsExtremes)
            return;
        if (fundamental >= outlook.NyquistFrequency)
        {
            Add("fundamental-aliased", Severity.Failure,
                $"the signal at {fundamental.InWords()} is sampled at {outlook.StoredRate.InWords()} and shows at {Core.Aliasing.Fold(fundamental, outlook.StoredRate).InWords()}",
                RateRemedy(2.5 * fundamental.SiValue), "handbook 5.1, 5.2");
        }
        else if (outlook.AliasShare is { SiValue: > 0.01 } share)
        {
            IReadOnlyList<HarmonicOutlook> aliases = outlook.Aliases;
            HarmonicOutlook? strongest = aliases.Count > 0 ? aliases[0] : null;
            string which = strongest is null ? "" : $"; the strongest is {strongest.Named}, which shows at {strongest.ShownAt.InWords()} with {strongest.Displayed.InWords()}";
            Add("harmonics-aliased", share.SiValue > 0.1 ? Severity.Failure : Severity.Warning,
                $"what lies above {outlook.NyquistFrequency.InWords()} folds down: {share.InWords()} of the rms of the waveform{which}",
                outlook.ChainBandwidth is { } b ? $"{RateRemedy(5 * b.Value.SiValue)}, or a bandwidth limit below {FewDigits.Of(outlook.NyquistFrequency.SiValue / 2.5, Frequency.Kind)}" : null, "handbook 5.2, 12.2");
        }
    }

    private void Add(string code, Severity severity, string message, string? remedy = null, string? source = null) => _findings.Add(new Finding(code, severity, message, remedy, source));

    private string RateRemedy(double needed)
    {
        double most = outlook.Timebase.MaximumRate.SiValue, memory = outlook.Setup.Digitizer.Memory(outlook.Setup.ChannelsInUse).SiValue;
        string rate = FewDigits.Of(needed = FewDigits.RoundUp(needed), Core.SampleRate.Kind);
        return needed <= most
            ? $"{rate}, which the memory allows for a window of up to {FewDigits.Of(FewDigits.RoundDown(memory / needed), Duration.Kind)}"
            : $"{rate}; this digitizer has {FewDigits.Of(most, Core.SampleRate.Kind)} at best";
    }
}
