using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

// Resolution, noise and loading (handbook 12.3, 6.10, 7.1).
internal sealed partial class Specifier
{
    private Explained<BitDepth>? EffectiveBits()
    {
        if (_requirement.SmallestDetail is not { } detail)
            return null;
        double swing = _requirement.Signals.Max(signal => signal.PeakToPeak.SiValue);
        if (detail.SiValue >= swing)
        {
            _findings.Add(new Finding("detail-exceeds-signal", Severity.Warning, $"the smallest detail, {detail.InWords()}, is no smaller than the signal itself, {FewDigits.Of(swing, PeakToPeakVoltage.Kind)}"));
            return null;
        }
        return new Explained<BitDepth>(
            "effective bits needed", EffectiveResolution.Needed(PeakToPeakVoltage.FromSi(swing, "swing"), detail), "ld(swing / smallest detail)", "handbook 12.3",
            [new("swing", FewDigits.Of(swing, PeakToPeakVoltage.Kind)), new("smallest detail", detail.InWords())],
            null, ["the signal fills the range; a range n times as wide needs ld n bits more"]);
    }

    private Explained<RmsVoltage>? Noise()
    {
        var reasons = new List<Reason>();
        if (_requirement.SmallestDetail is { } detail)
            reasons.Add(new Reason(detail.SiValue / 2, $"{detail.InWords()} is two standard deviations of the noise of one sample", "handbook 6.10"));
        if (_requirement.TimingTolerance is { } timing)
        {
            foreach (Signal signal in _requirement.Signals)
            {
                // Two edges, and the noise may use half of the variance.
                double slew = 0.8 * signal.PeakToPeak.SiValue / signal.RiseTime.SiValue;
                if (slew <= double.MaxValue)
                    reasons.Add(new Reason(timing.SiValue / 2 * slew, $"noise over slew moves an edge of {signal.Name} by at most {FewDigits.Of(timing.SiValue / 2, Duration.Kind)}", "handbook 6.12, 5.12"));
            }
        }
        if (reasons.Count == 0)
            return null;
        Reason least = reasons.OrderBy(reason => reason.Value).First();
        return new Explained<RmsVoltage>("noise allowed", RmsVoltage.FromSi(least.Value, "noise"), least.Text, least.Source,
            reasons.Select(reason => new KeyValuePair<string, string>(reason.Text, FewDigits.Of(reason.Value, RmsVoltage.Kind))).ToList());
    }

    private Explained<Capacitance>? ProbeCapacitance()
    {
        if (_requirement.SourceResistance is not { } source || source.SiValue == 0)
            return null;
        double? most = null;
        string text = NoDemand;
        void Take(double pole, string why)
        {
            double capacitance = 1 / (2 * Math.PI * source.SiValue * pole);
            if (capacitance < (most ?? double.MaxValue))
            {
                most = capacitance;
                text = why;
            }
        }
        foreach (Signal signal in _requirement.Signals)
        {
            if (_requirement.AmplitudeTolerance is { } amplitude && signal.Tone > 0)
                Take(BandwidthForAmplitude(ResponseShape.SinglePole, HighestHarmonic(_requirement, signal) * signal.Tone, amplitude.SiValue), "source resistance and tip capacitance alone may use up the amplitude tolerance, no more");
            if (_requirement.EdgeTolerance is { } edge && signal.SteepestEdge is { } steepest && steepest.RiseTime.SiValue > 0)
                Take(ResponseShape.SinglePole.RiseTimeProduct / EdgeThrough.SystemRiseTime(steepest.RiseTime.SiValue, edge.SiValue), "source resistance and tip capacitance alone may use up the edge tolerance, no more");
        }
        return most is { } value
            ? new Explained<Capacitance>("probe capacitance allowed", Capacitance.FromSi(value, "capacitance"), text, "handbook 7.1", [new("source resistance", source.InWords())])
            : null;
    }

    private Explained<Resistance>? ProbeResistance()
    {
        if (_requirement.SourceResistance is not { } source || source.SiValue == 0 || _requirement.AmplitudeTolerance is not { } amplitude)
            return null;
        return new Explained<Resistance>(
            "probe resistance needed", Resistance.FromSi(source.SiValue * (1 - amplitude.SiValue) / amplitude.SiValue, "resistance"),
            "the divider of source and tip resistance alone may use up the amplitude tolerance, no more", "handbook 7.1", [new("source resistance", source.InWords())]);
    }
}
