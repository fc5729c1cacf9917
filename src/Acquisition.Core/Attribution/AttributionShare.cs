using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>What one element, or several that cannot be told apart, takes of a level.</summary>
public sealed class AttributionShare
{
    internal AttributionShare(IReadOnlyList<string> elements, double[] combination, double decibels, double? uncertainty, double? fraction)
    {
        Elements = elements.Frozen();
        Combination = combination;
        Level = DecibelRatio.FromDecibels(decibels);
        Uncertainty = uncertainty is { } u ? DecibelRatio.FromDecibels(u) : null;
        Fraction = fraction is { } f ? Ratio.FromFraction(f) : null;
    }

    /// <summary>The element, or the elements whose sum alone is known.</summary>
    public IReadOnlyList<string> Elements { get; }

    /// <summary>Their level relative to the reference frequency: negative for a loss.</summary>
    public DecibelRatio Level { get; }

    /// <summary>Its standard uncertainty; null where nothing tells it (no uncertainties given, no rows to spare).</summary>
    public DecibelRatio? Uncertainty { get; }

    /// <summary>Its part of the whole, where all parts are losses; null otherwise.</summary>
    public Ratio? Fraction { get; }

    /// <summary>Whether several elements are in it that the sweeps do not separate.</summary>
    public bool IsNotSeparated => Elements.Count > 1;

    internal double[] Combination { get; }

    internal string Name => AttributionRow.Join(Elements);

    /// <summary>Elements and level in one line.</summary>
    public override string ToString() => $"{Name}: {Level.InWords()}" + (Uncertainty is { } u ? $" (u = {u.InWords(2)})" : "");
}
