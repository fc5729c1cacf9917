using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>From a requirement to what the equipment needs. Each value takes the most demanding of the reasons for it (handbook 12.1 to 12.3).</summary>
internal sealed partial class Specifier
{
    private const string NoDemand = "";
    private readonly Requirement _requirement;
    private readonly ResponseShape _shape;
    private readonly List<Finding> _findings = [];

    internal Specifier(Requirement requirement, ResponseShape shape)
    {
        _requirement = requirement;
        _shape = shape;
    }

    internal Specification Specify()
    {
        Explained<Frequency>? bandwidth = Bandwidth();
        Explained<SampleRate>? rate = Rate(bandwidth);
        return new Specification(_requirement, _shape)
        {
            Bandwidth = bandwidth,
            RiseTime = RiseTime(bandwidth),
            SampleRate = rate,
            RecordLength = RecordLength(rate),
            EffectiveBits = EffectiveBits(),
            Noise = Noise(),
            Jitter = Jitter(),
            TimebaseAccuracy = TimebaseAccuracy(),
            ProbeCapacitance = ProbeCapacitance(),
            ProbeResistance = ProbeResistance(),
            VoltageToEarth = VoltageToEarth(),
            Findings = _findings.AsReadOnly(),
        };
    }

    /// <summary>
    /// The highest harmonic that matters for a signal: stated, or the one that reaches the stated share of the power; 1 where neither is. What is stated counts from the fastest alternation: the fifth
    /// harmonic of a pattern of bits is that of 0101..., not of the repetition of the pattern.
    /// </summary>
    internal static int HighestHarmonic(Requirement requirement, Signal signal)
    {
        if (signal.Fundamental is null || signal is SineSignal or BurstSignal)
            return 1;
        int highest = (int)Math.Min(int.MaxValue, (long)(requirement.HighestHarmonic ?? 1) * signal.Alternation);
        if (requirement.PowerShare is { } share)
        {
            double wanted = share.SiValue * signal.AcPower, sum = 0;
            int number = 0;
            // An ideal square needs about 0.2/(1 - share) harmonics; the bound keeps a share next to 1 from running on.
            while (sum < wanted && number < 10_000)
            {
                number++;
                double amplitude = signal.Harmonic(number).PeakVolts;
                sum += amplitude * amplitude / 2;
            }
            highest = Math.Max(highest, number);
        }
        return highest;
    }

    private Explained<Frequency>? Bandwidth()
    {
        var reasons = new List<Reason>();
        foreach (Signal signal in _requirement.Signals)
        {
            AddAmplitude(signal, reasons);
            AddEdge(signal, reasons);
        }
        AddPulse(reasons);
        if (reasons.Count == 0)
            return null;
        Reason most = reasons.OrderByDescending(reason => reason.Value).First();
        return new Explained<Frequency>(
            "bandwidth needed", Frequency.FromSi(most.Value, "bandwidth"), most.Text, most.Source,
            reasons.Select(reason => new KeyValuePair<string, string>(reason.Text, FewDigits.Of(reason.Value, Frequency.Kind))).ToList(),
            most.Rules.Select(rule => new RuleOfThumb<Frequency>(rule.Key, Frequency.FromSi(rule.Value, "rule"), Ratio.FromSi((rule.Value / most.Value) - 1, "rule"))).ToList(),
            ["the whole chain falls off as " + _shape, "probe and input together reach it (handbook 3.4 shares it out)"]);
    }

    private void AddAmplitude(Signal signal, List<Reason> reasons)
    {
        if (_requirement.LargestAmplitudeError is not { } error)
            return;
        if (signal.Tone == 0)
        {
            if (_requirement.NarrowestPulse is null && _requirement.EdgeTolerance is null)
                _findings.Add(new Finding("no-line", Severity.Warning, $"{signal.Name} has no line whose amplitude could be told; nothing follows from what is demanded of it", "an edge tolerance, or the narrowest pulse"));
            return;
        }
        int harmonic = HighestHarmonic(_requirement, signal);
        double top = harmonic * signal.Tone;
        // A harmonic that is merely to be kept, without a tolerance, is kept at half power.
        bool stated = _requirement.AmplitudeTolerance is not null;
        double needed = BandwidthForAmplitude(_shape, top, error);
        string what = harmonic == 1 ? signal.Name : FormattableString.Invariant($"harmonic {harmonic} of {signal.Name}, {FewDigits.Of(top, Frequency.Kind)},");
        var reason = new Reason(needed, stated ? $"{what} at most {FewDigits.Of(error, Ratio.Kind)} short" : $"{what} at half power or better", "handbook 12.1, 4.6");
        if (signal.SteepestEdge is null)
            reason.Rule("3 x frequency", 3 * top);
        else
            reason.Rule("fifth harmonic", 5.0 * signal.Alternation * signal.Tone);
        reasons.Add(reason);
    }

    private void AddEdge(Signal signal, List<Reason> reasons)
    {
        if (_requirement.EdgeTolerance is not { } tolerance)
            return;
        if (signal.SteepestEdge is not { } edge)
        {
            _findings.Add(new Finding("no-edge", Severity.Note, $"{signal.Name} has no edge; the edge tolerance of {tolerance.InWords()} says nothing about it"));
            return;
        }
        if (edge.RiseTime.SiValue <= 0)
        {
            _findings.Add(new Finding(
                "ideal-edge", Severity.Warning, $"{signal.Name} has edges of 0 s, which no bandwidth shows to within {tolerance.InWords()}",
                "state the rise time of the signal", "handbook 12.1"));
            return;
        }
        double rise = edge.RiseTime.SiValue, error = tolerance.SiValue;
        double system = EdgeThrough.SystemRiseTime(rise, error), quadrature = _shape.RiseTimeProduct / system;
        double needed = BandwidthForEdge(edge, error, _shape);
        reasons.Add(new Reason(needed, $"{edge.RiseTime.InWords()} edge of {signal.Name} at most {FewDigits.Of(error, Ratio.Kind)} slower", "handbook 12.1, 2.6")
            .Rule("root-sum-square of rise times", quadrature).Rule("0.35 / rise time", 0.35 / rise));
    }

    // The displayed edge falls with bandwidth: a bracket around the root-sum-square answer, then bisection in the logarithm. A ramp is asked of the response of 1 Hz, scaled.
    internal static double BandwidthForEdge(Edge edge, double error, ResponseShape shape)
    {
        double rise = edge.RiseTime.SiValue, wanted = (1 + error) * rise, start = shape.RiseTimeProduct / EdgeThrough.SystemRiseTime(rise, error);
        bool Fast(double hertz) => (edge.Shape == EdgeShape.Linear
            ? shape.Ramps.RiseTime(edge.Scale * hertz) / hertz
            : EdgeThrough.RiseTime(edge, shape.At(Frequency.FromSi(hertz, "bandwidth")))) <= wanted;
        double low = start, high = start;
        for (int i = 0; i < 60 && !Fast(high); i++)
            high *= 1.1;
        for (int i = 0; i < 60 && Fast(low); i++)
            low /= 1.1;
        while (high > low * (1 + 1e-10))
        {
            double middle = Math.Sqrt(low * high);
            if (middle <= low || middle >= high)
                break;
            if (Fast(middle))
                high = middle;
            else
                low = middle;
        }
        return high;
    }

    private void AddPulse(List<Reason> reasons)
    {
        if (_requirement.NarrowestPulse is not { } pulse)
            return;
        double error = _requirement.AmplitudeTolerance?.SiValue ?? 0.1;
        Response unit = _shape.Unit;
        // Width times bandwidth at which the pulse still reaches its height, to within the error.
        double low = 0.01, high = 0.01;
        while (EdgeThrough.PulsePeak(high, unit) < 1 - error && high < 1e4)
            high *= 1.5;
        for (int i = 0; i < 40; i++)
        {
            double middle = Math.Sqrt(low * high);
            if (EdgeThrough.PulsePeak(middle, unit) < 1 - error)
                low = middle;
            else
                high = middle;
        }
        double width = pulse.SiValue;
        reasons.Add(new Reason(high / width, $"a pulse of {pulse.InWords()} reaches its height to within {FewDigits.Of(error, Ratio.Kind)}", "handbook 2.2")
            .Rule("0.35 / width", 0.35 / width));
    }

    private Explained<Duration>? RiseTime(Explained<Frequency>? bandwidth)
    {
        if (bandwidth is null)
            return null;
        double hertz = bandwidth.Value.SiValue, rise = _shape.RiseTimeProduct / hertz;
        return new Explained<Duration>(
            "rise time needed", Duration.FromSi(rise, "bandwidth"), $"10 % to 90 % of a {_shape} chain of that bandwidth", "handbook 2.2",
            [new("bandwidth", bandwidth.Value.InWords())],
            [new RuleOfThumb<Duration>("0.35 / bandwidth", Duration.FromSi(0.35 / hertz, "rule"), Ratio.FromSi((0.35 / _shape.RiseTimeProduct) - 1, "rule"))]);
    }

    /// <summary>The bandwidth at which a frequency is short by an error (handbook 12.1): the shape's own frequency for that error scales.</summary>
    internal static double BandwidthForAmplitude(ResponseShape shape, double hertz, double error) =>
        hertz / shape.Unit.FrequencyForAmplitudeError(Ratio.FromFraction(error)).SiValue;

    /// <summary>One reason for a needed value, with the rules of thumb beside it.</summary>
    private sealed class Reason(double value, string text, string source)
    {
        internal double Value { get; } = value;

        internal string Text { get; } = text;

        internal string Source { get; } = source;

        internal List<KeyValuePair<string, double>> Rules { get; } = [];

        internal Reason Rule(string rule, double value)
        {
            Rules.Add(new KeyValuePair<string, double>(rule, value));
            return this;
        }
    }
}
