using System;

namespace Acquisition.Core;

/// <summary>Where a sweep crosses a level, by interpolation linear in decibels over the logarithm of frequency (handbook 10.1).</summary>
public sealed class SweepCrossing
{
    internal SweepCrossing(double hertz, double linear, bool isFalling, double low, double high, double? noise, double spacing)
    {
        Frequency = Frequency.FromSi(hertz, "frequency");
        LinearFrequency = Frequency.FromSi(linear, "frequency");
        IsFalling = isFalling;
        PointBelow = Frequency.FromSi(low, "frequency");
        PointAbove = Frequency.FromSi(high, "frequency");
        NoiseUncertainty = noise is { } u ? Frequency.FromSi(u, "uncertainty") : null;
        SpacingUncertainty = Frequency.FromSi(spacing, "uncertainty");
    }

    /// <summary>Where it is.</summary>
    public Frequency Frequency { get; }

    /// <summary>Where it would be by interpolation linear in frequency: the other convention, for comparison with figures that use it.</summary>
    public Frequency LinearFrequency { get; }

    /// <summary>Whether the level falls there as frequency rises.</summary>
    public bool IsFalling { get; }

    /// <summary>The measured point below it.</summary>
    public Frequency PointBelow { get; }

    /// <summary>The measured point above it.</summary>
    public Frequency PointAbove { get; }

    /// <summary>Standard uncertainty from that of the levels: u(L)/|dL/df|, the reference level's included. Null where the levels have none.</summary>
    public Frequency? NoiseUncertainty { get; }

    /// <summary>
    /// Standard uncertainty from the spacing of the points: the bend between two points that the neighbouring ones show, taken as the bounds of a rectangular distribution; the bracket
    /// itself where there are no neighbours to show a bend.
    /// </summary>
    public Frequency SpacingUncertainty { get; }

    /// <summary>Both together, as a root sum of squares.</summary>
    public Frequency Uncertainty => NoiseUncertainty is { } noise
        ? Frequency.FromSi(Math.Sqrt(noise.SiValue * noise.SiValue + SpacingUncertainty.SiValue * SpacingUncertainty.SiValue), "uncertainty")
        : SpacingUncertainty;

    /// <summary>Frequency, uncertainty and direction in one line.</summary>
    public override string ToString() => $"{Frequency.InWords(5)} (u = {Uncertainty.InWords(2)}, {(IsFalling ? "falling" : "rising")})";
}
