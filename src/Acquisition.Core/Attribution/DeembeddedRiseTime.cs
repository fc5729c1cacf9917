using System;
using System.Collections.Generic;
using Acquisition.Core.Records;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

/// <summary>
/// The rise time of an edge itself, from the one displayed and the chain it was seen through (handbook 2.5): by the root-sum-square rule, or by the chain's response.
/// </summary>
/// <remarks>
/// Where the displayed rise time is hardly longer than the chain's own, the answer is dominated by its uncertainty; where it is no longer at all, there is only an upper bound. The bound is stated
/// in every case, with one probability, and passes from the one case to the other without a step. Immutable.
/// </remarks>
public sealed class DeembeddedRiseTime
{
    /// <summary>Below this ratio of displayed to chain rise time the result is mostly uncertainty (handbook 2.5).</summary>
    private const double LeastRatio = 1.2;

    /// <summary>Beyond this part of the rise time its standard uncertainty says more than the value (common practice, no source).</summary>
    private const double LargePart = 0.3;

    /// <summary>The standard normal quantile of 95 %: what an upper bound needs, with the whole 5 % on one side (JCGM 106 8.3.2).</summary>
    private const double OneSided = 1.6448536269514722;

    private readonly bool _isBoundBetter;

    private DeembeddedRiseTime(double? edge, double? deviation, double? bound, string method, double displayed, double chain, double? byRule, IReadOnlyList<string> assumptions)
    {
        Displayed = Duration.FromSi(displayed, nameof(displayed));
        ChainRiseTime = Duration.FromSi(chain, nameof(chain));
        Method = method;
        Assumptions = assumptions.Frozen();
        Uncertainty = deviation is { } u ? Duration.FromSi(u, "uncertainty") : null;
        UpperBound = bound is { } b ? Duration.FromSi(b, "bound") : null;
        _isBoundBetter = edge is null || deviation > LargePart * edge;
        Findings = Judge(edge, deviation, displayed / chain, UpperBound).Frozen();
        if (edge is not { } value)
            return;
        RiseTime = Duration.FromSi(value, "rise time");
        RuleOfThumb<Duration>[]? rules = byRule is { } rule
            ? [new RuleOfThumb<Duration>("sqrt(displayed^2 - chain^2)", Duration.FromSi(rule, nameof(rule)), Ratio.FromFraction(rule / value - 1))]
            : null;
        Explained = new Explained<Duration>(
            "rise time of the edge itself", RiseTime.Value, method, "handbook 2.5",
            [new("displayed rise time", Displayed.ToString()), new("rise time of the chain", ChainRiseTime.ToString())], rules, assumptions, Findings);
    }

    /// <summary>The 10 % to 90 % rise time of the edge itself; null where the display shows no more than the chain.</summary>
    public Duration? RiseTime { get; }

    /// <summary>Its standard uncertainty; null with it.</summary>
    public Duration? Uncertainty { get; }

    /// <summary>
    /// The edge is no slower than this, with the probability <see cref="UpperBoundProbability"/>: a slower one would be displayed as fast as this one was, or faster, in at most 5 of 100 cases. Null
    /// where even an edge without duration would be displayed slower.
    /// </summary>
    public Duration? UpperBound { get; }

    /// <summary>The probability that <see cref="UpperBound"/> is stated with: 95 %, one-sided, of normal uncertainties (k = 1.645).</summary>
    public static Ratio UpperBoundProbability => Ratio.FromPercent(95);

    /// <summary>The displayed rise time.</summary>
    public Duration Displayed { get; }

    /// <summary>The chain's own rise time.</summary>
    public Duration ChainRiseTime { get; }

    /// <summary>How it was computed.</summary>
    public string Method { get; }

    /// <summary>What must hold for it to be right.</summary>
    public IReadOnlyList<string> Assumptions { get; }

    /// <summary>The rise time with its reasons; null where there is none.</summary>
    public Explained<Duration>? Explained { get; }

    /// <summary>What to know about it, or why there is none.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>By the rule <c>sqrt(displayed^2 - chain^2)</c>: exact for Gaussian edges and chains, off by several percent for others.</summary>
    /// <param name="displayed">The displayed 10 % to 90 % rise time, above 0.</param>
    /// <param name="displayedUncertainty">Its standard uncertainty, at least 0.</param>
    /// <param name="chain">The chain's own rise time, above 0.</param>
    /// <param name="chainUncertainty">Its standard uncertainty, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not in its range.</exception>
    public static DeembeddedRiseTime ByRootSumSquare(Duration displayed, Duration displayedUncertainty, Duration chain, Duration chainUncertainty)
    {
        double m = Refuse.UnlessAboveZero(displayed.SiValue, Duration.Kind, nameof(displayed)), um = AtLeastZero(displayedUncertainty, nameof(displayedUncertainty));
        double s = Refuse.UnlessAboveZero(chain.SiValue, Duration.Kind, nameof(chain)), us = AtLeastZero(chainUncertainty, nameof(chainUncertainty));
        double? edge = Difference(m, s);
        double? deviation = edge is not null ? RootSumOfSquares.UncertaintyOfRemoved(displayed, displayedUncertainty, chain, chainUncertainty).SiValue : null;
        return new DeembeddedRiseTime(edge, deviation, Difference(LongestDisplay(m, um, s * us), s), "sqrt(displayed^2 - chain^2)", m, s, null, ["edge and chain both Gaussian"]);
    }

    /// <summary>By the response: the edge whose computed display has the displayed rise time.</summary>
    /// <param name="displayed">The displayed 10 % to 90 % rise time, above 0.</param>
    /// <param name="displayedUncertainty">Its standard uncertainty, at least 0.</param>
    /// <param name="chain">The chain's response.</param>
    /// <param name="chainUncertainty">The relative standard uncertainty of the chain's speed: 5 % for a bandwidth known to 5 %.</param>
    /// <param name="shape">The shape that the edge is taken to have.</param>
    /// <exception cref="ArgumentNullException"><paramref name="chain"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not in its range.</exception>
    /// <exception cref="InvalidOperationException">The chain's step does not rise through 10 % and 90 %.</exception>
    public static DeembeddedRiseTime ByResponse(Duration displayed, Duration displayedUncertainty, Response chain, Ratio chainUncertainty, EdgeShape shape)
    {
        if (chain is null)
            throw new ArgumentNullException(nameof(chain));
        double m = Refuse.UnlessAboveZero(displayed.SiValue, Duration.Kind, nameof(displayed)), um = AtLeastZero(displayedUncertainty, nameof(displayedUncertainty));
        double relative = chainUncertainty.Fraction >= 0 ? chainUncertainty.Fraction : throw Refuse.OutOfRange(chainUncertainty.Fraction, Ratio.Kind, nameof(chainUncertainty), "at least 0 %");
        _ = new Edge(displayed, shape);
        double s = chain.RiseTime.SiValue;
        double? edge = Solve(t => Shown(chain, t, shape), m), deviation = null;
        if (edge is { } found)
        {
            double ofDisplay = DisplayDeviation(found, out double slope);
            deviation = ofDisplay / Math.Abs(slope);
        }
        double? bound = um == 0 && relative == 0 ? edge : Solve(t => Shown(chain, t, shape) - OneSided * DisplayDeviation(t, out _), m);
        string name = shape.ToString();
        return new DeembeddedRiseTime(
            edge, deviation, bound, "edge whose computed display has the displayed rise time", m, s, Difference(m, s), [$"the edge is {char.ToLowerInvariant(name[0])}{name.Substring(1)}", $"the chain is {chain.Name}"]);

        // Scaling edge and chain scales the display: the chain's share of the slope is what the edge's leaves.
        double DisplayDeviation(double t, out double slope)
        {
            double step = 1e-3 * Math.Max(t, 0.01 * s), below = Math.Max(0, t - step);
            slope = (Shown(chain, t + step, shape) - Shown(chain, below, shape)) / (t + step - below);
            return Math.Sqrt(Square(um) + Square((Shown(chain, t, shape) - t * slope) * relative));
        }
    }

    /// <summary>
    /// By the rule, the display M of which the measured one lies the quantile below: M = m + k √(u_m² + (s u_s / M)²), since ∂M/∂s = s/M. The right side falls with M, so there is one, and halving
    /// finds it.
    /// </summary>
    private static double LongestDisplay(double m, double um, double chainTimesUncertainty)
    {
        double low = m, high = m + OneSided * Math.Sqrt(Square(um) + Square(chainTimesUncertainty / m));
        for (int i = 0; i < 100 && high - low > 1e-15 * high; i++)
        {
            double middle = (low + high) / 2;
            if (middle - OneSided * Math.Sqrt(Square(um) + Square(chainTimesUncertainty / middle)) < m) low = middle;
            else high = middle;
        }
        return high;
    }

    private static double Shown(Response chain, double edge, EdgeShape shape) => chain.RiseTimeOf(new Edge(Duration.FromSi(edge, nameof(edge)), shape)).Value.SiValue;

    private static double? Solve(Func<double, double> shown, double displayed)
    {
        double low = 0, high = displayed;
        if (shown(0) >= displayed)
            return null;
        // A chain with overshoot can show an edge faster than it is.
        while (shown(high) < displayed)
        {
            low = high;
            high *= 1.25;
        }
        double below = shown(low) - displayed, above = shown(high) - displayed;
        for (int i = 0; i < 100 && high - low > 1e-12 * high; i++)
        {
            // Regula falsi with a halving whenever it would creep (Illinois).
            double next = low - below * (high - low) / (above - below);
            double value = shown(next) - displayed;
            if (value == 0)
                return next;
            if (value < 0)
            {
                low = next;
                below = value;
                above /= 2;
            }
            else
            {
                high = next;
                above = value;
                below /= 2;
            }
        }
        return (low + high) / 2;
    }

    private static List<Finding> Judge(double? edge, double? deviation, double ratio, Duration? bound)
    {
        var findings = new List<Finding>();
        string times = $"the displayed rise time is {FewDigits.Number(ratio, 3)} times the chain's own";
        string most = bound is { } longest ? AtMost(longest) : "";
        if (edge is null)
        {
            findings.Add(new Finding(
                "edge-not-resolved", Severity.Failure,
                bound is null ? $"{times}: faster than the chain shows anything, by more than the uncertainties explain" : $"{times}: it shows the chain, and of the edge only that it takes {most}",
                bound is null ? "check the rise time of the chain and of the display, and their uncertainties" : "use a faster chain", "handbook 2.5"));
        }
        else if (ratio < LeastRatio)
        {
            findings.Add(new Finding("edge-mostly-chain", Severity.Warning, $"{times}: below {FewDigits.Number(LeastRatio)} the result is dominated by its uncertainty", "use a chain with less than half the rise time of the edge", "handbook 2.5"));
        }
        if (edge is { } t && deviation > LargePart * t)
            findings.Add(new Finding("edge-uncertain", Severity.Warning, $"the standard uncertainty is {FewDigits.Number(100 * deviation.Value / t, 2)} % of the rise time", $"state the upper bound instead: {most}", "handbook 2.5"));
        return findings;
    }

    private static double? Difference(double m, double s) => m > s ? Math.Sqrt((m - s) * (m + s)) : null;

    private static double Square(double x) => x * x;

    private static double AtLeastZero(Duration value, string argument) =>
        value.SiValue >= 0 ? value.SiValue : throw Refuse.OutOfRange(value.SiValue, Duration.Kind, argument, "at least 0 s");

    private static string AtMost(Duration bound) => $"at most {bound.InWords()} ({UpperBoundProbability.InWords()}, one-sided)";

    /// <summary>Rise time and standard uncertainty, such as <c>2.8 ns (u = 73 ps)</c>; where there is no rise time, or its uncertainty is a large part of it, the upper bound with its probability. (± would mean limits.)</summary>
    public override string ToString() =>
        _isBoundBetter ? UpperBound is { } bound ? AtMost(bound) : "not resolved" : $"{RiseTime!.Value.InWords()} (u = {Uncertainty!.Value.InWords(2)})";
}
