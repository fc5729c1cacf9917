using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>The band that a response passes within a drop of so many decibels: its edges, everything else that crosses the level, and what is odd about it.</summary>
public sealed class PassBand
{
    internal PassBand(DecibelRatio drop, DecibelRatio reference, bool fromDc, Frequency? lower, Frequency? upper, IReadOnlyList<Crossing> crossings, IReadOnlyList<Finding> findings)
    {
        Drop = drop;
        ReferenceGain = reference;
        IsRelativeToDc = fromDc;
        Lower = lower;
        Upper = upper;
        Crossings = crossings.Frozen();
        Findings = findings.Frozen();
    }

    /// <summary>By how much the gain lies below the reference at the edges: a negative value, such as <see cref="DecibelRatio.HalfPower"/>.</summary>
    public DecibelRatio Drop { get; }

    /// <summary>The gain that 0 dB of drop means.</summary>
    public DecibelRatio ReferenceGain { get; }

    /// <summary>Whether the reference is the gain at DC; otherwise it is the largest gain (responses that block DC).</summary>
    public bool IsRelativeToDc { get; }

    /// <summary>The lower edge; null where the band reaches down to DC.</summary>
    public Frequency? Lower { get; }

    /// <summary>The upper edge: the first falling crossing above the reference; null where the gain never falls that far.</summary>
    public Frequency? Upper { get; }

    /// <summary>From edge to edge (from DC where there is no lower edge); null where there is no upper edge.</summary>
    public Frequency? Width => Upper is { } upper ? Lower is { } lower ? upper - lower : upper : null;

    /// <summary>Every crossing of the level that was found, in order of frequency.</summary>
    public IReadOnlyList<Crossing> Crossings { get; }

    /// <summary>What to know: <c>several-crossings</c>; <c>never-falls</c>, which names how far a measured response reaches.</summary>
    public IReadOnlyList<Finding> Findings { get; }
}
