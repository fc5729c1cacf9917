using System;

namespace Acquisition.Core.Records;

/// <summary>Where a transition passes its levels, counted in samples; NaN where it does not.</summary>
internal readonly struct TransitionPlaces
{
    internal TransitionPlaces(bool rising, double proximal, double middle, double distal, int samplesOnEdge, int widest, bool monotone, int crossing)
    {
        IsRising = rising;
        Proximal = proximal;
        Middle = middle;
        Distal = distal;
        SamplesOnEdge = samplesOnEdge;
        Widest = widest;
        IsMonotone = monotone;
        Crossing = crossing;
    }

    internal bool IsRising { get; }

    internal double Proximal { get; }

    internal double Middle { get; }

    internal double Distal { get; }

    internal int SamplesOnEdge { get; }

    /// <summary>Intervals from the last sample before the proximal to the first beyond the distal level.</summary>
    internal int Widest { get; }

    internal bool IsMonotone { get; }

    /// <summary>The first sample beyond the middle level.</summary>
    internal int Crossing { get; }

    internal double Duration => Distal - Proximal;

    /// <summary>The first sample on it: where the state before it ends.</summary>
    internal int FirstOf => double.IsNaN(Proximal) ? Crossing : (int)Math.Ceiling(Proximal);

    /// <summary>The first sample after it: where the state that it reaches begins.</summary>
    internal int FirstBeyond => double.IsNaN(Distal) ? Crossing : (int)Math.Ceiling(Distal);
}

/// <summary>What surrounds a transition, in parts of the amplitude; NaN where there is no region to look at.</summary>
internal readonly struct Aberrations
{
    internal static readonly Aberrations None = new(double.NaN, double.NaN, double.NaN, 0);

    internal Aberrations(double overshoot, double undershoot, double preshoot, int regionsCut)
    {
        Overshoot = overshoot;
        Undershoot = undershoot;
        Preshoot = preshoot;
        RegionsCut = regionsCut;
    }

    internal double Overshoot { get; }

    internal double Undershoot { get; }

    internal double Preshoot { get; }

    internal int RegionsCut { get; }
}
