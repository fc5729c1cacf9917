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
        _findings.AddRange(outlook.Setup.Applied.Findings);
        _findings.AddRange(outlook.Timebase.Findings);
        Chain();
        Sampling();
        Aliases();
        Vertical();
        Mode();
        Events();
        Safety();
        return _findings.OrderByDescending(finding => finding.Severity).ThenBy(finding => finding.Code, StringComparer.Ordinal).ToList();
    }

    private void Chain()
    {
        if (outlook.ChainBandwidth is null)
            Add("no-bandwidth", Severity.Note, "the response of the chain never falls by 3 dB, so no bandwidth is given", null, "handbook 3.1");
        Amplitude();
        if (Signal.SteepestEdge is not null && outlook.DisplayedEdge is null && !outlook.LevelsSettle)
        {
            Add("edge-incomplete", Severity.Warning, "no edge on the display goes from 10 % to 90 % of the swing undisturbed, because the levels do not settle in between: its duration depends on its neighbours and is not given",
                "a faster chain", "handbook 2.6");
        }
        if (outlook.DisplayedEdge is { } shown && !outlook.LevelsSettle && !double.IsNaN(outlook.EdgeAlone))
            Unsettled(shown.Value);
        SlowedEdge();
        if (Signal.SteepestEdge is not null && outlook.ChainOvershoot is { SiValue: > 0.05 } overshoot)
        {
            Add("chain-overshoots", Severity.Warning, $"the chain adds {PlainText.Short(overshoot)} of overshoot that is not in the signal",
                "damp the lead, or choose a response that falls off more gently", "handbook 2.2, 7.4");
        }
        if (Signal.Fundamental is { } fundamental && outlook.ChainBandwidth is { } b && fundamental.SiValue > b.Value.SiValue)
            Add("signal-beyond-bandwidth", Severity.Failure, $"the signal repeats at {PlainText.Short(fundamental)}, above the {PlainText.Short(b.Value)} of the chain",
                $"a chain of at least {PlainText.Short(3 * fundamental.SiValue, Frequency.Kind)}", "handbook 4.6");
    }

    private void Unsettled(Duration shown)
    {
        (double needed, double shortest) = outlook.Settling;
        string why = !outlook.Response.PassesDc ? "the chain blocks DC, so that no level stays" : double.IsInfinity(needed) ? "the chain rings on from edge to edge"
            : $"a level takes {PlainText.Short(needed, Duration.Kind)} to settle to 0.1 %, the shortest lasts {PlainText.Short(Math.Max(0, shortest), Duration.Kind)}";
        Add("levels-unsettled", Severity.Note,
            $"{why}: amplitude and edge are told between the lowest and the highest value of the waveform, over- and undershoot included; one edge alone would take {PlainText.Short(outlook.EdgeAlone, Duration.Kind)}, not {PlainText.Short(shown)}",
            null, "handbook 2.6; IEEE 181 state levels");
    }

    private void Amplitude()
    {
        double usual = 0.02, error = -outlook.AmplitudeError.SiValue, limit = outlook.Wanted?.AmplitudeTolerance?.SiValue ?? usual;
        if (error <= Math.Min(usual, limit))
            return;
        string message = $"the display shows {PlainText.Short(outlook.DisplayedAmplitude.Value)} of {PlainText.Short(Signal.PeakToPeak)}: {PlainText.Short(error, Ratio.Kind)} short";
        if (error <= limit)
            Add("amplitude-short", Severity.Note, $"{message}, within the {PlainText.Short(limit, Ratio.Kind)} wanted", null, "handbook 4.6, 7.1");
        else
            Add("amplitude-short", outlook.Wanted?.AmplitudeTolerance is not null || error > 0.1 ? Severity.Failure : Severity.Warning, message, AmplitudeRemedy(error, limit), "handbook 4.6, 7.1");
    }

    private string? AmplitudeRemedy(double error, double limit)
    {
        string within = PlainText.Short(limit, Ratio.Kind);
        if (Signal.SteepestEdge is null)
        {
            return Signal.Fundamental is { } f && outlook.ChainBandwidth is { } bandwidth
                ? $"about {PlainText.Short(BandwidthFactor(f.SiValue, bandwidth.Value.SiValue, limit) * bandwidth.Value.SiValue, Frequency.Kind)} of chain bandwidth shows it to {within}, or correct by the factor {PlainText.Number(1 / (1 - error))}"
                : null;
        }
        const string load = "less load on the source, or correct by the computed gain; an amplitude that the generator states into a load is given as such with the source impedance";
        if (outlook.LevelsSettle)
            return load;
        (double needed, double shortest) = outlook.Settling;
        string bandwidthRemedy = shortest > 0 && !double.IsInfinity(needed) && outlook.ChainBandwidth is { } present
            ? $"a chain of the same shape and about {PlainText.Short(present.Value.SiValue * needed / shortest, Frequency.Kind)} lets the levels settle to 0.1 %"
            : "more bandwidth: the levels do not settle";
        return outlook.Response.PassesDc && 1 - Math.Abs(outlook.Response.DcGain) > limit ? bandwidthRemedy + ", and less load on the source" : bandwidthRemedy;
    }

    private void SlowedEdge()
    {
        double usual = 0.05, limit = outlook.Wanted?.EdgeTolerance?.SiValue ?? usual;
        if (outlook.EdgeError is not { } slow || slow.SiValue <= Math.Min(usual, limit))
            return;
        Edge edge = Signal.SteepestEdge!;
        string message = $"the {PlainText.Short(edge.RiseTime)} edge is shown as {PlainText.Short(outlook.DisplayedEdge!.Value)}: {PlainText.Short(slow)} slower";
        double system = EdgeThrough.SystemRiseTime(edge.RiseTime.SiValue, limit);
        if (slow.SiValue <= limit)
            Add("edge-slowed", Severity.Note, $"{message}, within the {PlainText.Short(limit, Ratio.Kind)} wanted", null, "handbook 12.1, 2.5");
        else
            Add("edge-slowed", outlook.Wanted?.EdgeTolerance is not null || slow.SiValue > 0.2 ? Severity.Failure : Severity.Warning, message,
                $"a chain with a rise time of {PlainText.Short(system, Duration.Kind)} (about {PlainText.Short(0.35 / system, Frequency.Kind)}) shows it to {PlainText.Short(limit, Ratio.Kind)}", "handbook 12.1, 2.5");
    }

    // By how much the bandwidth must grow for a sine to be short by no more than an error, if the response keeps its shape.
    private double BandwidthFactor(double hertz, double bandwidth, double error)
    {
        try
        {
            return Math.Max(1, hertz / outlook.Response.FrequencyForAmplitudeError(Ratio.FromFraction(error)).SiValue);
        }
        catch (InvalidOperationException)
        {
            return Math.Max(1, 5 * hertz / bandwidth);
        }
    }

    private void Sampling()
    {
        double rate = outlook.StoredRate.SiValue;
        if (Signal.Period is { } period && outlook.Window.SiValue < period.SiValue * (1 - 1e-9))
        {
            Add("window-too-short", Severity.Warning, $"the window of {PlainText.Short(outlook.Window)} shows less than one period, {PlainText.Short(period)}",
                $"a window of at least {PlainText.Short(period)}", "handbook 5.4");
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
                FormattableString.Invariant($"{PlainText.Number(intervals)} sample intervals lie on the edge of {PlainText.Short(outlook.DisplayedEdge.Value)}; 3 to 5 are needed to time it"),
                RateRemedy(needed), "handbook 5.13");
        }
        if (outlook.InterpolationError is { SiValue: > 0.05 } error && Signal.SteepestEdge is null)
        {
            Add("coarse-interpolation", Severity.Warning,
                $"{outlook.Setup.Interpolation.Name} interpolation is off by up to {PlainText.Short(error)} of the amplitude at {PlainText.Number(outlook.PointsPerPeriod!.Value.SiValue)} samples per period",
                outlook.Setup.Interpolation == Reconstruction.Sinc ? RateRemedy(4 * Signal.Fundamental!.Value.SiValue) : "sinc interpolation, or " + RateRemedy(rate * Math.Sqrt(error.SiValue / 0.01)), "handbook 5.8, 5.9");
        }
    }

    private void Aliases()
    {
        if (Signal.Fundamental is not { } fundamental)
            return;
        if (fundamental >= outlook.NyquistFrequency)
        {
            Add("fundamental-aliased", Severity.Failure,
                $"the signal at {PlainText.Short(fundamental)} is sampled at {PlainText.Short(outlook.StoredRate)} and shows at {PlainText.Short(Core.Aliasing.Fold(fundamental, outlook.StoredRate))}",
                RateRemedy(2.5 * fundamental.SiValue), "handbook 5.1, 5.2");
        }
        else if (outlook.AliasShare is { SiValue: > 0.01 } share)
        {
            IReadOnlyList<HarmonicOutlook> aliases = outlook.Aliases;
            HarmonicOutlook? strongest = aliases.Count > 0 ? aliases[0] : null;
            string which = strongest is null ? "" : $"; the strongest is harmonic {strongest.Number}, {PlainText.Short(strongest.Frequency)}, which shows at {PlainText.Short(strongest.ShownAt)} with {PlainText.Short(strongest.Displayed)}";
            Add("harmonics-aliased", share.SiValue > 0.1 ? Severity.Failure : Severity.Warning,
                $"what lies above {PlainText.Short(outlook.NyquistFrequency)} folds down: {PlainText.Short(share)} of the rms of the waveform{which}",
                outlook.ChainBandwidth is { } b ? $"{RateRemedy(5 * b.Value.SiValue)}, or a bandwidth limit below {PlainText.Short(outlook.NyquistFrequency.SiValue / 2.5, Frequency.Kind)}" : null, "handbook 5.2, 12.2");
        }
    }

    private void Add(string code, Severity severity, string message, string? remedy = null, string? source = null) => _findings.Add(new Finding(code, severity, message, remedy, source));

    private string RateRemedy(double needed)
    {
        double most = outlook.Timebase.MaximumRate.SiValue, memory = outlook.Setup.Digitizer.Memory(outlook.Setup.ChannelsInUse).SiValue;
        string rate = PlainText.Short(needed, Core.SampleRate.Kind);
        return needed <= most
            ? $"{rate}, which the memory allows for a window of up to {PlainText.Short(memory / needed, Duration.Kind)}"
            : $"{rate}; this digitizer has {PlainText.Short(most, Core.SampleRate.Kind)} at best";
    }
}
