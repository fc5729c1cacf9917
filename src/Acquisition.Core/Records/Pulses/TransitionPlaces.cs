namespace Acquisition.Core.Records;

/// <summary>Where a transition passes its levels, counted in samples; NaN where it does not. It is filled for one transition after the other: copying it would cost as much as finding it.</summary>
internal sealed class TransitionPlaces
{
    internal bool IsRising { get; set; }

    internal double Proximal { get; set; }

    internal double Middle { get; set; }

    internal double Distal { get; set; }

    internal int SamplesOnEdge { get; set; }

    /// <summary>Intervals from the last sample before the proximal to the first beyond the distal level.</summary>
    internal int Widest { get; set; }

    internal bool IsMonotone { get; set; }

    /// <summary>The first sample beyond the middle level.</summary>
    internal int Crossing { get; set; }

    internal double Duration => Distal - Proximal;

    /// <summary>The first sample on it: where the state before it ends.</summary>
    internal int FirstOf { get; set; }

    /// <summary>The first sample after it: where the state that it reaches begins.</summary>
    internal int FirstBeyond { get; set; }
}
