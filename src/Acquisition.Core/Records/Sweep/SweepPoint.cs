using System;

namespace Acquisition.Core;

/// <summary>One point of a <see cref="Sweep"/>.</summary>
public sealed class SweepPoint
{
    internal SweepPoint(double hertz, double decibels, double? uncertainty)
    {
        Frequency = Frequency.FromSi(hertz, nameof(hertz));
        Level = DecibelRatio.FromDecibels(decibels);
        Uncertainty = uncertainty is { } u ? DecibelRatio.FromDecibels(u) : null;
    }

    /// <summary>The frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>The level as it was given, not yet relative to the sweep's reference.</summary>
    public DecibelRatio Level { get; }

    /// <summary>Standard uncertainty of the level; null where none was given.</summary>
    public DecibelRatio? Uncertainty { get; }

    /// <summary>Frequency and level in one line.</summary>
    public override string ToString() => $"{Frequency.InWords(5)}: {Level.InWords()}";
}
