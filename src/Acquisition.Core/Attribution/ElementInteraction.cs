using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core;

/// <summary>Two elements that together do not do what each does alone: they load each other (handbook 10.4).</summary>
public sealed class ElementInteraction
{
    internal ElementInteraction(string first, string second, double[] hertz, double[] decibels)
    {
        First = first;
        Second = second;
        Level = Sweep.OfDecibels(hertz, decibels);
        Largest = DecibelRatio.FromDecibels(decibels.OrderByDescending(Math.Abs).First());
        LargestAt = Frequency.FromSi(hertz[Array.IndexOf(decibels, Largest.Decibels)], "frequency");
    }

    /// <summary>One of the two.</summary>
    public string First { get; }

    /// <summary>The other.</summary>
    public string Second { get; }

    /// <summary>By how much the level of a path that holds both differs from the sum of the two.</summary>
    public Sweep Level { get; }

    /// <summary>Its largest value.</summary>
    public DecibelRatio Largest { get; }

    /// <summary>Where that is.</summary>
    public Frequency LargestAt { get; }

    /// <summary>The two elements and the largest deviation.</summary>
    public override string ToString() => $"{First} with {Second}: {Largest.InWords()} at {LargestAt.InWords()}";
}
