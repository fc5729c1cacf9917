using System;

namespace Acquisition.Core.Planning;

/// <summary>One needed value beside the one that a set-up has.</summary>
/// <remarks>Immutable. Made by <see cref="Specification.Check"/>.</remarks>
public sealed class NeedCheck
{
    // Exactly enough is enough, whatever the last bits say.
    private const double Rounding = 1e-9;

    internal NeedCheck(string need, string needed, string present, double margin)
    {
        Need = need;
        Needed = needed;
        Present = present;
        IsMet = margin >= -Rounding;
        Margin = Math.Abs(margin) <= double.MaxValue ? Ratio.FromSi(margin, nameof(margin)) : null;
    }

    /// <summary>What is needed: <c>bandwidth</c>, <c>rise time</c>, <c>sample rate</c> ...; or what was demanded itself: <c>error at 120 MHz</c>, the highest harmonic that matters, <c>edge error</c>.</summary>
    public string Need { get; }

    /// <summary>The needed value with its bound: <c>at least 390 MHz</c>.</summary>
    public string Needed { get; }

    /// <summary>The value that the set-up has.</summary>
    public string Present { get; }

    /// <summary>By how much the set-up is better than needed, as in a shortlist: 0 is exactly enough, 100 % twice as good, below 0 not enough; null where there is no limit to it, as with no noise at all.</summary>
    public Ratio? Margin { get; }

    /// <summary>Whether the set-up meets the need.</summary>
    public bool IsMet { get; }

    /// <summary>Whether it is what was demanded itself, as the set-up shows it; else a value that was derived from a demand, for a chain of an assumed shape.</summary>
    public bool IsDemand { get; internal init; }

    /// <summary>The demands that decide in place of this derived value, where the set-up itself has been judged by all of them; null where the value stands for itself.</summary>
    public string? DecidedBy { get; internal set; }

    /// <summary>The verdict of what decides in its place; null where nothing does.</summary>
    internal bool? IsDecided { get; set; }

    /// <summary>The verdict in words.</summary>
    internal string Verdict => $"here {Present}: {(IsMet ? "met" : "not met")}" + (Margin is { } margin ? $", margin {(margin.SiValue is > 0 and < FewDigits.Tenfold ? "+" : "")}{FewDigits.Margin(margin, 3)}" : "")
        + (IsDecided is { } decided && decided != IsMet ? $"; {DecidedBy} decides: {(decided ? "met" : "not met")}" : "");

    /// <summary>Need, needed and present value, and the verdict.</summary>
    public override string ToString() => $"{Need}: needed {Needed}, {Verdict}";
}
