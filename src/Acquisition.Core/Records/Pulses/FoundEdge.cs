using System.Runtime.InteropServices;

namespace Acquisition.Core.Records;

/// <summary>
/// A transition as the scan finds it: between which samples it passes its levels, and what these samples are. All that is measured follows from it. Its fields are in the order in
/// which four at a time are computed with; the fourth of each row means nothing.
/// </summary>
[StructLayout(LayoutKind.Sequential, Size = 80)]
internal struct FoundEdge
{
    /// <summary>The last sample before the proximal level, the first beyond the middle level, the first beyond the distal one.</summary>
    internal int Last, Crossing, First;

    internal bool IsMonotone;

    /// <summary>The samples before and after the passage of each level; NaN at proximal and distal level where the transition does not pass both.</summary>
    internal double BeforeProximal, BeforeMiddle, BeforeDistal, BeforeNone, AfterProximal, AfterMiddle, AfterDistal, AfterNone;

    internal readonly bool IsComplete => !double.IsNaN(BeforeProximal);

    internal readonly int SamplesOnEdge => First - Last - 1;

    /// <summary>Intervals from the last sample before the proximal to the first beyond the distal level; 0 where it does not pass both.</summary>
    internal readonly int Widest => IsComplete ? First - Last : 0;

    /// <summary>Fills in the samples on either side of the levels.</summary>
    internal void Read<TView>(TView samples)
        where TView : struct, ISampleView
    {
        BeforeProximal = samples[Last];
        AfterProximal = samples[Last + 1];
        BeforeMiddle = samples[Crossing - 1];
        AfterMiddle = samples[Crossing];
        BeforeDistal = samples[First - 1];
        AfterDistal = samples[First];
    }

    /// <summary>Where the straight lines between the samples pass the three levels.</summary>
    /// <param name="edge">The transition.</param>
    /// <param name="levels">The levels.</param>
    /// <param name="oneOff">0, 1, 1: the second and the third place are those of the samples beyond.</param>
    internal static FourNumbers Places(in FoundEdge edge, FourNumbers levels, FourNumbers oneOff)
    {
#if NET8_0_OR_GREATER
        FourNumbers samples = FourNumbers.Consecutive(edge.Last), from = FourNumbers.Consecutive(edge.BeforeProximal), to = FourNumbers.Consecutive(edge.AfterProximal);
#else
        FourNumbers samples = new(edge.Last, edge.Crossing, edge.First, 0);
        FourNumbers from = new(edge.BeforeProximal, edge.BeforeMiddle, edge.BeforeDistal, 0), to = new(edge.AfterProximal, edge.AfterMiddle, edge.AfterDistal, 0);
#endif
        return samples - oneOff + (levels - from) / (to - from);
    }
}
