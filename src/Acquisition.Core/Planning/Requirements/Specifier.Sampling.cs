using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

// Sample rate, record length and clock (handbook 12.2, 5.4, 5.13).
internal sealed partial class Specifier
{
    private Explained<SampleRate>? Rate(Explained<Frequency>? bandwidth)
    {
        var reasons = new List<Reason>();
        foreach (Signal signal in _requirement.Signals)
        {
            AddPointsPerEdge(signal, reasons);
            AddContent(signal, bandwidth, reasons);
        }
        if (_requirement.NarrowestPulse is { } pulse)
        {
            reasons.Add(new Reason(2 / pulse.SiValue, $"two samples at least on a pulse of {pulse.InWords()}: one would do to notice it, two tell it from a spike of noise", "handbook 5.5")
                .Rule("one sample per width", 1 / pulse.SiValue));
        }
        if (reasons.Count == 0)
            return null;
        Reason most = reasons.OrderByDescending(reason => reason.Value).First();
        if (bandwidth is not null)
            most.Rule("5 x bandwidth", 5 * bandwidth.Value.SiValue).Rule("2.5 x bandwidth (steep chains, sinc)", 2.5 * bandwidth.Value.SiValue);
        return new Explained<SampleRate>(
            "sample rate needed", SampleRate.FromSi(most.Value, "rate"), most.Text, most.Source,
            reasons.Select(reason => new KeyValuePair<string, string>(reason.Text, FewDigits.Of(reason.Value, SampleRate.Kind))).ToList(),
            most.Rules.Select(rule => new RuleOfThumb<SampleRate>(rule.Key, SampleRate.FromSi(rule.Value, "rule"), Ratio.FromSi((rule.Value / most.Value) - 1, "rule"))).ToList(),
            ["one channel, real time"]);
    }

    private void AddPointsPerEdge(Signal signal, List<Reason> reasons)
    {
        if (_requirement.EdgeTolerance is not { } tolerance || signal.SteepestEdge is not { } edge || edge.RiseTime.SiValue <= 0)
            return;
        int points = PointsPerEdge(tolerance.SiValue);
        reasons.Add(new Reason(points / edge.RiseTime.SiValue, FormattableString.Invariant($"{points} sample intervals on the {edge.RiseTime.InWords()} edge of {signal.Name}"), "handbook 5.13, 12.2"));
    }

    /// <summary>How many sample intervals an edge needs: 3 to 5, more where it is to be shown more closely (handbook 5.13, common practice).</summary>
    internal static int PointsPerEdge(double edgeTolerance) => edgeTolerance <= 0.02 ? 5 : edgeTolerance <= 0.05 ? 4 : 3;

    // Everything above half the sample rate folds down. What folds must stay below the tolerated error of the amplitude, as a root-sum-square over the lines.
    private void AddContent(Signal signal, Explained<Frequency>? bandwidth, List<Reason> reasons)
    {
        if (signal.Tone == 0 || bandwidth is null)
            return;
        double f0 = signal.Tone, error = _requirement.AmplitudeTolerance?.SiValue ?? _requirement.EdgeTolerance?.SiValue ?? 0.1;
        int wanted = HighestHarmonic(_requirement, signal);
        int highest = signal.Fundamental is null || signal is BurstSignal ? 1 : Math.Max(wanted, HighestThatMatters(signal, _shape.At(bandwidth.Value), error));
        string text = highest == 1
            ? $"more than two samples per period of {signal.Name}; 2.5 for sinc to rebuild it"
            : FormattableString.Invariant($"what lies above harmonic {highest} of {signal.Name} ({FewDigits.Of(highest * f0, Frequency.Kind)}) adds up to less than {FewDigits.Of(error, Ratio.Kind)} of its rms; 2.5 samples per period up to there");
        reasons.Add(new Reason(2.5 * highest * f0, text, "handbook 5.1, 5.13"));
    }

    /// <summary>The highest harmonic that must stay below half the sample rate: those above it add up, behind the response, to less than the error times the rms of the waveform.</summary>
    private static int HighestThatMatters(Signal signal, Response response, double error)
    {
        const int oneByOne = 2000;
        double f0 = signal.Fundamental!.Value.SiValue;
        // Beyond 20 bandwidths every shape of the catalogue is so far down that a line there no longer counts.
        double reach = 20 * response.Bandwidth.SiValue / f0;
        int last = (int)Math.Min(oneByOne, Math.Max(1, Math.Ceiling(reach)));
        var powers = new double[last + 1];
        for (int number = 1; number <= last; number++)
            powers[number] = PowerOf(number);
        HarmonicBlock[] blocks = HarmonicBlock.From(oneByOne + 1, reach).ToArray();
        double[] blockPowers = blocks.Select(block => block.Representatives().Sum(PowerOf) * block.Weight).ToArray();
        double allowed = error * error * (powers.Sum() + blockPowers.Sum()), beyond = 0;
        for (int i = blocks.Length - 1; i >= 0; i--)
        {
            beyond += blockPowers[i];
            if (beyond > allowed)
                return blocks[i].Last;
        }
        for (int number = last; number > 1; number--)
        {
            beyond += powers[number];
            if (beyond > allowed)
                return number;
        }
        return 1;

        double PowerOf(int number)
        {
            double amplitude = signal.Harmonic(number).PeakVolts;
            return amplitude * amplitude * response.PowerGain(number * f0);
        }
    }

    private Explained<PointCount>? RecordLength(Explained<SampleRate>? rate)
    {
        if (rate is null || _requirement.Window is not { } window)
            return null;
        double points = rate.Value.SiValue * window.SiValue;
        if (points > PointCount.MaxValue.SiValue)
        {
            _findings.Add(new Finding("record-too-long", Severity.Failure, $"{rate.Value.InWords()} for {window.InWords()} is more points than can be counted",
                "shorten the window, or record in segments", "handbook 5.4"));
            return null;
        }
        PointCount count = PointCount.FromSi(Math.Ceiling(points * (1 - 1e-12)), "window");
        return new Explained<PointCount>(
            "record length needed", count, "sample rate x window", "handbook 5.4",
            [new("sample rate", rate.Value.InWords()), new("window", window.InWords())]);
    }

    private Explained<Duration>? Jitter()
    {
        if (_requirement.TimingTolerance is not { } timing)
            return null;
        // An interval has two edges, and the clock may use half of the variance.
        return new Explained<Duration>(
            "sample clock jitter", Duration.FromSi(timing.SiValue / 2, "timing"), "timing tolerance / √2 for two edges / √2 for half of the variance", "handbook 5.12",
            [new("timing tolerance", timing.InWords())]);
    }

    private Explained<Ratio>? TimebaseAccuracy()
    {
        if (_requirement.TimingTolerance is not { } timing || _requirement.Window is not { } window)
            return null;
        // The relative limit is rectangular: its standard deviation is 1/√3 of it.
        return new Explained<Ratio>(
            "time base accuracy", Ratio.FromSi(Math.Sqrt(3) * timing.SiValue / window.SiValue, "timing"), "√3 x timing tolerance / window: the limit is rectangular", "handbook 5.12",
            [new("timing tolerance", timing.InWords()), new("window", window.InWords())]);
    }
}
