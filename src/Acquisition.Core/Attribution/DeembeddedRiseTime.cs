using System;
using System.Collections.Generic;
using Acquisition.Core.Records;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

/// <summary>
/// The rise time of an edge itself, from the one displayed and the chain it was seen through (handbook 2.5): by the root-sum-square rule, or by the chain's response.
/// </summary>
/// <remarks>
/// Where the displayed rise time is hardly longer than the chain's own, the answer is dominated by its uncertainty; where it is no longer at all, there is only an upper bound. Immutable.
/// </remarks>
public sealed class DeembeddedRiseTime
{
    /// <summary>Below this ratio of displayed to chain rise time the result is mostly uncertainty (handbook 2.5).</summary>
    private const double LeastRatio = 1.2;

    private DeembeddedRiseTime(double? edge, double? deviation, double? bound, string method, double displayed, double chain, double? byRule, IReadOnlyList<string> assumptions)
    {
        Displayed = Duration.FromSi(displayed, nameof(displayed));
        ChainRiseTime = Duration.FromSi(chain, nameof(chain));
        Method = method;
        Assumptions = assumptions.Frozen();
        Uncertainty = deviation is { } u ? Duration.FromSi(u, "uncertainty") : null;
        UpperBound = bound is { } b ? Duration.FromSi(b, "bound") : null;
        Findings = Judge(edge, deviation, displayed / chain).Frozen();
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

    /// <summary>The edge is no slower than this, with displayed and chain rise time each two standard uncertainties on the far side (about 95 %); null where even that is no edge.</summary>
    public Duration? UpperBound { get; }

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
        return new DeembeddedRiseTime(edge, deviation, Difference(m + 2 * um, Math.Max(0, s - 2 * us)), "sqrt(displayed^2 - chain^2)", m, s, null, ["edge and chain both Gaussian"]);
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
        double? edge = Solve(chain, m, shape), deviation = null;
        if (edge is { } t)
        {
            // Scaling edge and chain scales the display: the chain's share of the slope is what the edge's leaves.
            double step = 1e-3 * t, slope = (Shown(chain, t + step, shape) - Shown(chain, t - step, shape)) / (2 * step);
            deviation = Math.Sqrt(Square(um) + Square((m - t * slope) * relative)) / Math.Abs(slope);
        }
        double faster = Math.Max(0.01, 1 - 2 * relative);
        double? bound = Solve(chain, (m + 2 * um) / faster, shape) * faster;
        string name = shape.ToString();
        return new DeembeddedRiseTime(
            edge, deviation, bound, "edge whose computed display has the displayed rise time", m, s, Difference(m, s), [$"the edge is {char.ToLowerInvariant(name[0])}{name.Substring(1)}", $"the chain is {chain.Name}"]);
    }

    private static double Shown(Response chain, double edge, EdgeShape shape) => chain.RiseTimeOf(new Edge(Duration.FromSi(edge, nameof(edge)), shape)).Value.SiValue;

    private static double? Solve(Response chain, double displayed, EdgeShape shape)
    {
        double low = 0, high = displayed;
        if (Shown(chain, 0, shape) >= displayed)
            return null;
        // A chain with overshoot can show an edge faster than it is.
        while (Shown(chain, high, shape) < displayed)
        {
            low = high;
            high *= 1.25;
        }
        double below = Shown(chain, low, shape) - displayed, above = Shown(chain, high, shape) - displayed;
        for (int i = 0; i < 100 && high - low > 1e-12 * high; i++)
        {
            // Regula falsi with a halving whenever it would creep (Illinois).
            double next = low - below * (high - low) / (above - below);
            double value = Shown(chain, next, shape) - displayed;
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

    private static List<Finding> Judge(double? edge, double? deviation, double ratio)
    {
        var findings = new List<Finding>();
        string times = $"the displayed rise time is {FewDigits.Number(ratio, 3)} times the chain's own";
        if (edge is null)
        {
            findings.Add(new Finding("edge-not-resolved", Severity.Failure, $"{times}: it shows the chain, and only an upper bound of the edge", "use a faster chain", "handbook 2.5"));
        }
        else if (ratio < LeastRatio)
        {
            findings.Add(new Finding("edge-mostly-chain", Severity.Warning, $"{times}: below {FewDigits.Number(LeastRatio)} the result is dominated by its uncertainty", "use a chain with less than half the rise time of the edge", "handbook 2.5"));
        }
        if (edge is { } t && deviation > 0.3 * t)
            findings.Add(new Finding("edge-uncertain", Severity.Warning, $"the standard uncertainty is {FewDigits.Number(100 * deviation.Value / t, 2)} % of the rise time: state the upper bound instead", null, "handbook 2.5"));
        return findings;
    }

    private static double? Difference(double m, double s) => m > s ? Math.Sqrt((m - s) * (m + s)) : null;

    private static double Square(double x) => x * x;

    private static double AtLeastZero(Duration value, string argument) =>
        value.SiValue >= 0 ? value.SiValue : throw Refuse.OutOfRange(value.SiValue, Duration.Kind, argument, "at least 0 s");

    /// <summary>Rise time and standard uncertainty, such as <c>2.8 ns (u = 73 ps)</c>, or the upper bound. (± would mean limits.)</summary>
    public override string ToString() => RiseTime is { } t ? $"{t.InWords()} (u = {Uncertainty!.Value.InWords(2)})" : UpperBound is { } bound ? $"at most {bound.InWords()}" : "not resolved";
}
