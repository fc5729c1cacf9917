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
        if (outlook.AmplitudeError.SiValue < -0.02)
        {
            double error = -outlook.AmplitudeError.SiValue;
            string? remedy = Signal.SteepestEdge is null && Signal.Fundamental is { } f && outlook.ChainBandwidth is { } bandwidth
                ? $"about {PlainText.Short(BandwidthFactor(f.SiValue, bandwidth.Value.SiValue, 0.02) * bandwidth.Value.SiValue, Frequency.Kind)} of chain bandwidth shows it to 2 %, or correct by the factor {PlainText.Number(1 / (1 - error))}"
                : Signal.SteepestEdge is not null ? "less load on the source, or correct by the computed gain" : null;
            Add("amplitude-short", error > 0.1 ? Severity.Failure : Severity.Warning,
                $"the display shows {PlainText.Short(outlook.DisplayedAmplitude.Value)} of {PlainText.Short(Signal.PeakToPeak)}: {PlainText.Short(error, Ratio.Kind)} short", remedy, "handbook 4.6, 7.1");
        }
        if (Signal.SteepestEdge is not null && outlook.DisplayedEdge is null && !outlook.LevelsSettle)
        {
            Add("edge-incomplete", Severity.Warning, "no edge on the display goes from 10 % to 90 % of the swing undisturbed, because the levels do not settle in between: its duration depends on its neighbours and is not given",
                "a faster chain", "handbook 2.6");
        }
        if (outlook.EdgeError is { SiValue: > 0.05 } slow)
        {
            Edge edge = Signal.SteepestEdge!;
            double system = EdgeThrough.SystemRiseTime(edge.RiseTime.SiValue, 0.05);
            Add("edge-slowed", slow.SiValue > 0.2 ? Severity.Failure : Severity.Warning,
                $"the {PlainText.Short(edge.RiseTime)} edge is shown as {PlainText.Short(outlook.DisplayedEdge!.Value)}: {PlainText.Short(slow)} slower",
                $"a chain with a rise time of {PlainText.Short(system, Duration.Kind)} (about {PlainText.Short(0.35 / system, Frequency.Kind)}) shows it to 5 %", "handbook 12.1, 2.5");
        }
        if (Signal.SteepestEdge is not null && outlook.ChainOvershoot is { SiValue: > 0.05 } overshoot)
        {
            Add("chain-overshoots", Severity.Warning, $"the chain adds {PlainText.Short(overshoot)} of overshoot that is not in the signal",
                "damp the lead, or choose a response that falls off more gently", "handbook 2.2, 7.4");
        }
        if (Signal.Fundamental is { } fundamental && outlook.ChainBandwidth is { } b && fundamental.SiValue > b.Value.SiValue)
            Add("signal-beyond-bandwidth", Severity.Failure, $"the signal repeats at {PlainText.Short(fundamental)}, above the {PlainText.Short(b.Value)} of the chain",
                $"a chain of at least {PlainText.Short(3 * fundamental.SiValue, Frequency.Kind)}", "handbook 4.6");
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
                $"what lies above {PlainText.Short(outlook.NyquistFrequency)} folds down: {PlainText.Short(share)} of the fundamental{which}",
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
