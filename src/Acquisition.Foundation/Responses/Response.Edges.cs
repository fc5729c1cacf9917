using System;
using System.Collections.Generic;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

// What becomes of a signal's edge: computed by the response itself, the rules of thumb beside it.
public abstract partial class Response
{
    private static readonly string[] AsMatched = { "each stage's gain holds with the impedances it meets" };

    /// <summary>The 10 % to 90 % rise time that an edge has after this response: the edge convolved with the response, not a root sum of squares.</summary>
    /// <param name="edge">The edge at the input.</param>
    /// <returns>The rise time, with the root-sum-square rules beside it and their difference.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="edge"/> is null.</exception>
    /// <exception cref="InvalidOperationException">The output does not rise through the levels.</exception>
    public Explained<Duration> RiseTimeOf(Edge edge) => RiseTimeOf(edge, TenPercent, NinetyPercent);

    /// <summary>The time an edge takes between two levels after this response.</summary>
    /// <param name="edge">The edge at the input.</param>
    /// <param name="low">The lower level, as a fraction of the final value (of the largest where the response blocks DC).</param>
    /// <param name="high">The upper level.</param>
    /// <exception cref="ArgumentNullException"><paramref name="edge"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The levels are not 0 &lt; low &lt; high &lt; 1.</exception>
    /// <exception cref="InvalidOperationException">The output does not rise through the levels.</exception>
    public Explained<Duration> RiseTimeOf(Edge edge, Ratio low, Ratio high)
    {
        _ = edge ?? throw new ArgumentNullException(nameof(edge));
        RequireLevels(low, high);
        StepResponse output = EdgeStep(edge, out _);
        double reference = ReferenceOf(output);
        if (!output.FirstReach(low.SiValue * reference, out double first) || !output.FirstReach(high.SiValue * reference, out double last))
            throw new InvalidOperationException($"a {edge} does not rise from {low} to {high} after {Name}");
        Duration value = Duration.FromSi(last - first, nameof(edge));
        var rules = new List<RuleOfThumb<Duration>>();
        if (low == TenPercent && high == NinetyPercent)
        {
            double own = RiseTime.SiValue, signal = edge.RiseTime.SiValue;
            AddRule(rules, "√(edge² + rise time of the response²)", Math.Sqrt(signal * signal + own * own), value);
            if (TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth))
            {
                double ruled = 0.35 / bandwidth.SiValue;
                AddRule(rules, "√(edge² + (0.35 / bandwidth)²)", Math.Sqrt(signal * signal + ruled * ruled), value);
            }
        }
        return new Explained<Duration>(
            "rise time of the edge after the response",
            value,
            $"the {edge.Shape} edge convolved with the step response; first crossings of {low} and {high}",
            "handbook 2.5, 2.6; IEEE 181 transition duration",
            new[] { Input("edge", edge.ToString()), Input("response", Name) },
            rules,
            new[] { "the response is linear", PassesDc ? "levels refer to the final value" : "levels refer to the largest value, because the response blocks DC" });
    }

    /// <summary>The 10 % to 90 % rise time that the steepest edge of a signal has after this response.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="signal"/> is null.</exception>
    /// <exception cref="InvalidOperationException">The signal has no edges (a sine), or the output does not rise through the levels.</exception>
    public Explained<Duration> RiseTimeOf(Signal signal)
    {
        _ = signal ?? throw new ArgumentNullException(nameof(signal));
        return RiseTimeOf(signal.SteepestEdge ?? throw new InvalidOperationException($"{signal.Name} has no edge between two levels; ask for its amplitude after the response instead"));
    }

    /// <summary>By how much an edge overshoots after this response, as a fraction of its height: less than the response's own overshoot when the edge is slow.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="edge"/> is null.</exception>
    /// <exception cref="InvalidOperationException">The response blocks DC.</exception>
    public Ratio OvershootOf(Edge edge)
    {
        _ = edge ?? throw new ArgumentNullException(nameof(edge));
        RequireDc("overshoot");
        return Ratio.FromSi(Beyond(edge).Over, nameof(edge));
    }

    /// <summary>By how much an edge goes the other way after this response before it rises, as a fraction of its height: less than the response's own preshoot when the edge is slow.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="edge"/> is null.</exception>
    /// <exception cref="InvalidOperationException">The response blocks DC.</exception>
    public Ratio PreshootOf(Edge edge)
    {
        _ = edge ?? throw new ArgumentNullException(nameof(edge));
        RequireDc("preshoot");
        return Ratio.FromSi(Beyond(edge).Under, nameof(edge));
    }

    /// <summary>How far an edge goes above its final and below its first level after a response that passes DC, as fractions of its height.</summary>
    internal (double Over, double Under) Beyond(Edge edge)
    {
        StepResponse output = EdgeStep(edge, out _);
        double over = (output.Largest(Math.Sign(output.Final), out _) / output.Final) - 1, under = -output.Largest(-Math.Sign(output.Final), out _) / output.Final;
        return (over > 1e-12 ? over : 0, under > 1e-12 ? under : 0);
    }

    /// <summary>The 10 % to 90 % rise time of the step response, explained: with 0.35/bandwidth and the root sum of squares of the stages beside it.</summary>
    /// <exception cref="InvalidOperationException">The step response does not rise through the levels.</exception>
    public Explained<Duration> ExplainRiseTime()
    {
        Duration value = RiseTime;
        var rules = new List<RuleOfThumb<Duration>>();
        if (TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth))
            AddRule(rules, "0.35 / bandwidth", 0.35 / bandwidth.SiValue, value);
        if (Stages.Count > 1)
        {
            double sum = 0;
            foreach (Response stage in Stages)
                sum += stage.RiseTime.SiValue * stage.RiseTime.SiValue;
            AddRule(rules, "root sum of squares of the stages", Math.Sqrt(sum), value);
        }
        return new Explained<Duration>(
            "rise time",
            value,
            "first crossings of 10 % and 90 % of the computed step response",
            "handbook 2.1, 2.7; IEEE 181 transition duration",
            new[] { Input("response", Name) },
            rules,
            new[] { "the response is linear", PassesDc ? "levels refer to the final value" : "levels refer to the largest value, because the response blocks DC" });
    }

    /// <summary>The half-power bandwidth, explained: with the root-sum-square rule of the stages beside it, and a finding where the gain crosses the level more than once.</summary>
    /// <exception cref="InvalidOperationException">The gain never falls that far.</exception>
    public Explained<Frequency> ExplainBandwidth()
    {
        Frequency value = Bandwidth;
        PassBand band = PassBand(DecibelRatio.HalfPower);
        var rules = new List<RuleOfThumb<Frequency>>();
        if (Stages.Count > 1)
        {
            double sum = 0;
            foreach (Response stage in Stages)
                sum += stage.TryBandwidth(DecibelRatio.HalfPower, out Frequency own) ? 1 / (own.SiValue * own.SiValue) : 0;
            if (sum > 0)
            {
                Frequency rule = Frequency.FromSi(1 / Math.Sqrt(sum), "bandwidth");
                rules.Add(new RuleOfThumb<Frequency>("1 / √(sum of 1/f² of the stages)", rule, rule / value - Ratio.FromFraction(1)));
            }
        }
        return new Explained<Frequency>(
            "bandwidth",
            value,
            PassesDc ? "first frequency at which the amplitude is 1/√2 of that at DC" : "first frequency above the largest gain at which the amplitude is 1/√2 of it",
            "handbook 1.2, 3.1",
            new[] { Input("response", Name) },
            rules,
            AsMatched,
            band.Findings);
    }

    /// <summary>The output for an edge of 1 whose 50 % point passes at t = 0, this response's pure delay left out.</summary>
    /// <param name="edge">The edge.</param>
    /// <param name="shift">What to add to a time before asking, s: exponential edges begin before their 50 % point.</param>
    internal StepResponse EdgeStep(Edge edge, out double shift)
    {
        shift = 0;
        if (edge.Scale == 0)
            return StepResponse;
        switch (edge.Shape)
        {
            case EdgeShape.Linear:
                return new RampStep(StepResponse, edge.Scale);
            case EdgeShape.Gaussian:
                return Then(new FactoredResponse("edge", new Factors(1, Array.Empty<Section>(), edge.Scale * edge.Scale, 0))).StepResponse;
            default:
                shift = edge.Scale * Math.Log(2);
                return Then(new FactoredResponse("edge", new Factors(1, new[] { Section.Pole(edge.Scale) }, 0, 0))).StepResponse;
        }
    }

    private double ReferenceOf(StepResponse output)
    {
        if (PassesDc)
            return output.Final;
        double up = output.Largest(1, out _), down = output.Largest(-1, out _);
        return up >= -down ? up : down;
    }

    private static void AddRule(List<RuleOfThumb<Duration>> rules, string rule, double seconds, Duration value)
    {
        Duration answer = Duration.FromSi(seconds, "rule");
        if (value.SiValue > 0)
            rules.Add(new RuleOfThumb<Duration>(rule, answer, answer / value - Ratio.FromFraction(1)));
    }

    private static KeyValuePair<string, string> Input(string name, string text) => new(name, text);
}
