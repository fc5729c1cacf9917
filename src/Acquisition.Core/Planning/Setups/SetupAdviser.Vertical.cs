using System;
using System.Collections.Generic;
using System.Linq;
using System.Numerics;

namespace Acquisition.Core.Planning;

// Range and bandwidth limit: the largest swing must fit, and no signal may lose what is demanded of it.
internal sealed partial class SetupAdviser
{
    private InputRange Range()
    {
        double swing = _largest.Swing;
        InputRange range = RangeFor(_wanted.Signals);
        double full = FullScale(range);
        string? loses = null;
        if (full < swing)
        {
            loses = "the signal is clipped: use a probe that divides more";
        }
        else
        {
            AdvisedSignal smallest = Most(signal => -signal.Swing);
            if (full > 2 * smallest.Swing)
                loses = $"{FewDigits.Number(Math.Log(full / smallest.Swing) / Math.Log(2))} bits, for {(_signals.Length > 1 ? smallest.Signal.Name : "the signal")} fills only {FewDigits.Of(smallest.Swing / full, Ratio.Kind)}";
        }
        Add("range", FewDigits.Of(full, PeakToPeakVoltage.Kind), full >= swing ? $"it is the smallest that holds {FewDigits.Of(swing, PeakToPeakVoltage.Kind)}{WithOffset(full)}" : "it is the largest there is", loses, _largest);
        RangeAgainstDetail(full);
        return range;
    }

    // Where a smaller range would hold the swing, it is the stated offset that it lacks.
    private string WithOffset(double full)
    {
        double offset = _wanted.Signals.Max(signal => InputRange.OffsetFor(signal, full));
        return offset > 0 ? $" with an offset of {FewDigits.Of(offset, Voltage.Kind)} or more" : _instrument.Ranges.Any(range => FullScale(range) < full && FullScale(range) >= _largest.Swing) ? " with the offset that it has" : "";
    }

    // A small signal beside a large one: alone it would have a range in which one code tells the detail.
    private void RangeAgainstDetail(double full)
    {
        if (_wanted.SmallestDetail is not { } detail || Code(full) <= detail.SiValue)
            return;
        foreach (AdvisedSignal signal in _signals.OrderBy(signal => signal.Swing))
        {
            double own = FullScale(RangeFor([signal.Signal]));
            if (own >= full || Code(own) > detail.SiValue)
                continue;
            _findings.Add(new Finding("range-against-detail", Severity.Warning,
                $"the range of {FewDigits.Of(full, PeakToPeakVoltage.Kind)} that {_largest.Signal} needs has codes of {FewDigits.Of(Code(full), Voltage.Kind)}; {detail.InWords()} are to be told apart",
                $"a channel of its own for {signal.Signal}, in the range of {FewDigits.Of(own, PeakToPeakVoltage.Kind)} with codes of {FewDigits.Of(Code(own), Voltage.Kind)}; or two captures", "handbook 12.3"));
            return;
        }
    }

    private InputRange RangeFor(IReadOnlyList<Signal> signals) => _instrument.RangeFor(signals, _probe.AttenuationFactor);

    private double FullScale(InputRange range) => range.FullScale.SiValue * _probe.AttenuationFactor;

    private double Code(double fullScale) => fullScale / Math.Pow(2, _instrument.Bits.SiValue);

    // The narrowest limit that leaves every demand on amplitude, edge and pulse of every signal met: it takes noise away for nothing.
    private Frequency? Limit(InputRange range)
    {
        var screen = new Screen(_wanted);
        bool asked = screen.JudgesAmplitude || _wanted.EdgeTolerance is not null || _wanted.NarrowestPulse is not null;
        AdvisedSignal? against = null;
        foreach (ScreenedInput input in ScreenedInput.All(screen, new Catalogue([_instrument], [])).Where(input => ReferenceEquals(input.Termination, _termination) && input.Limit is not null).OrderBy(input => input.Limit!.Value))
        {
            (AdvisedSignal Signal, double Margin) tightest = _signals.Select(signal => (signal, Margin(signal, input.Limit!.Value))).OrderBy(judged => judged.Item2).First();
            if (!asked || tightest.Margin < 0)
            {
                against = asked ? tightest.Signal : null;
                continue;
            }
            Add("bandwidth limit", input.Limit!.Value.InWords(), "amplitude, edge and pulse stay within their tolerances" + (range.Noise is null ? "" : FormattableString.Invariant($", and the noise falls to {FewDigits.Of(input.NoiseFactor, Ratio.Kind)}")),
                "what lies above it", tightest.Signal);
            return input.Limit;
        }
        if (_instrument.BandwidthLimits.Count > 0)
            Add("bandwidth limit", "off", asked ? "every limit it has would cost more than the requirement allows" : "nothing was asked that could tell what a limit would cost", null, asked ? against ?? _fastest : null);
        return null;
    }

    // The smallest margin of what is demanded of one signal behind this limit; infinite where nothing is.
    private double Margin(AdvisedSignal signal, Frequency limit)
    {
        Response own = _instrument.Shape.At(_instrument.Bandwidth.Value).Then(Response.SinglePole(limit));
        StageGains probe = new ScreenedProbe(signal.Screen, _probe).Gains, input = new(signal.Screen, own);
        var workspace = new Complex[EdgeSpectrum.LineCount];
        double least = double.PositiveInfinity;
        foreach (Demand demand in new[] { Demand.Amplitude, Demand.Edge, Demand.Pulse })
        {
            double margin = Judgement.OfChain(signal.Screen, probe, input, workspace, demand);
            if (margin < least)
                least = margin;
        }
        return least;
    }
}
