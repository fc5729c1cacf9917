using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Consecutive transitions of a record, which are measured together: what belongs to one is a few numbers each, kept in columns, and four of them are computed in the time of one.
/// Directions alternate. The last transitions of a batch are the first of the next one, since the neighbors of a transition bound the states around it, and periods reach back.
/// </summary>
internal sealed class EdgeBatch
{
    /// <summary>So many transitions are carried over from the batch before. All but the last of them are done; that one waited for its neighbor.</summary>
    internal const int Carried = 4;

    /// <summary>Groups of four may begin at any transition and end beyond the last.</summary>
    private const int Padding = 8;

    private readonly double[][] _carriedNumbers;
    private readonly int[][] _carriedPlaces;

    /// <param name="capacity">How many transitions are added: a multiple of 4, so that directions are those of the batch before.</param>
    internal EdgeBatch(int capacity)
    {
        Capacity = Carried + capacity;
        int length = Capacity + Padding;
        _carriedPlaces = [Last = new int[length], Crossing = new int[length], First = new int[length]];
        _carriedNumbers = [Proximal = new double[length], Middle = new double[length], Distal = new double[length], FirstOf = new double[length], FirstBeyond = new double[length]];
        IsComplete = new bool[length];
        IsMonotone = new bool[length];
        Samples = new EdgeSamples(length);
        Duration = new double[length];
        Regions = new EdgeRegions(length);
        Extremes = new FourNumbers[length];
        DutyFactor = new double[length];
        Clear();
    }

    /// <summary>The last sample before the proximal level, the first beyond the middle level, the first beyond the distal one.</summary>
    internal int[] Last { get; }

    internal int[] Crossing { get; }

    internal int[] First { get; }

    /// <summary>Whether transitions pass both reference levels.</summary>
    internal bool[] IsComplete { get; }

    /// <summary>Whether they go their way without turning back.</summary>
    internal bool[] IsMonotone { get; }

    internal EdgeSamples Samples { get; }

    /// <summary>Where levels are passed, counted in samples; NaN where they are not.</summary>
    internal double[] Proximal { get; }

    internal double[] Middle { get; }

    internal double[] Distal { get; }

    /// <summary>From the proximal to the distal level.</summary>
    internal double[] Duration { get; }

    /// <summary>The first sample on the transition: where the state before it ends.</summary>
    internal double[] FirstOf { get; }

    /// <summary>The first sample after the transition: where the state that it reaches begins.</summary>
    internal double[] FirstBeyond { get; }

    /// <summary>Where to look for what surrounds the transitions.</summary>
    internal EdgeRegions Regions { get; }

    /// <summary>
    /// What lies in these regions. From the second on: after the transition the extreme beyond the state that is reached, and the one short of it once it has been reached; before it the
    /// extreme to the other side of the state that is left. NaN where there is no region to look at.
    /// </summary>
    internal FourNumbers[] Extremes { get; }

    /// <summary>What part of the cycle that a rising transition ends was high; NaN for falling ones.</summary>
    internal double[] DutyFactor { get; }

    /// <summary>One more than the last transition that has room.</summary>
    internal int Capacity { get; }

    /// <summary>One more than the last transition.</summary>
    internal int Count { get; set; }

    internal bool IsFull => Count >= Capacity;

    /// <summary>Whether transitions of an even index rise.</summary>
    internal bool EvenRises { get; set; }

    /// <summary>Regions that were cut short, of the last that were surrounded.</summary>
    internal long RegionsCut { get; private set; }

    internal bool IsRising(int index) => EvenRises == (index % 2 == 0);

    internal int SamplesOnEdge(int index) => First[index] - Last[index] - 1;

    /// <summary>Intervals from the last sample before the proximal to the first beyond the distal level; 0 where it does not pass both.</summary>
    internal int Widest(int index) => IsComplete[index] ? First[index] - Last[index] : 0;

    /// <summary>Adds a transition.</summary>
    internal void Add(int crossing, int last, int first, bool isComplete, bool isMonotone)
    {
        Last[Count] = last;
        Crossing[Count] = crossing;
        First[Count] = first;
        IsComplete[Count] = isComplete;
        IsMonotone[Count++] = isMonotone;
    }

    /// <summary>Takes away all transitions: those carried over are none, and the state before the first begins with the record.</summary>
    internal void Clear()
    {
        for (int k = 0; k < Carried; k++)
        {
            Last[k] = Crossing[k] = First[k] = 0;
            IsComplete[k] = false;
            IsMonotone[k] = true;
            Proximal[k] = Middle[k] = Distal[k] = double.NaN;
            FirstOf[k] = FirstBeyond[k] = 0;
        }
        Count = Carried;
    }

    /// <summary>Keeps the last transitions only.</summary>
    internal void CarryOver()
    {
        int from = Count - Carried;
        foreach (double[] column in _carriedNumbers)
            FourNumbers.Load(column, from).Store(column, 0);
        for (int k = 0; k < Carried; k++)
        {
            foreach (int[] column in _carriedPlaces)
                column[k] = column[from + k];
            IsComplete[k] = IsComplete[from + k];
            IsMonotone[k] = IsMonotone[from + k];
        }
        Count = Carried;
    }

    /// <summary>Where the straight lines between the samples pass the levels.</summary>
    /// <param name="first">The first transition that is not yet placed; the samples of the others have been read.</param>
    /// <param name="even">The levels of transitions of an even index.</param>
    /// <param name="odd">The levels of the others.</param>
    internal void Place(int first, EdgeLevels even, EdgeLevels odd)
    {
        EdgeLevels a = first % 2 == 0 ? even : odd, b = first % 2 == 0 ? odd : even;
        FourNumbers proximal = Alternating(a.Proximal.Value, b.Proximal.Value), middle = Alternating(a.Middle.Value, b.Middle.Value), distal = Alternating(a.Distal.Value, b.Distal.Value);
        FourNumbers one = Alternating(1, 1);
        for (int k = first; k < Count; k += 4)
        {
            FourNumbers crossing = FourNumbers.Load(Crossing, k);
            FourNumbers begin = FourNumbers.Load(Last, k) + FourNumbers.Passage(Samples.BeforeProximal, Samples.AfterProximal, k, proximal);
            FourNumbers end = FourNumbers.Load(First, k) - one + FourNumbers.Passage(Samples.BeforeDistal, Samples.AfterDistal, k, distal);
            begin.Store(Proximal, k);
            (crossing - one + FourNumbers.Passage(Samples.BeforeMiddle, Samples.AfterMiddle, k, middle)).Store(Middle, k);
            end.Store(Distal, k);
            begin.Ceiling().IfNumberElse(crossing).Store(FirstOf, k);
            end.Ceiling().IfNumberElse(crossing).Store(FirstBeyond, k);
        }
    }

    /// <summary>Between which samples overshoot, undershoot and preshoot are looked for: some transition durations, as long as the states last.</summary>
    /// <param name="first">The first transition.</param>
    /// <param name="to">The one after the last; where it begins must be known.</param>
    /// <param name="factor">So many durations, and at least 3 samples.</param>
    internal void Surround(int first, int to, double factor)
    {
        FourNumbers one = Alternating(1, 1), cut = default;
        // What lies beyond the last one of a group is no transition.
        for (int k = to; k % 4 != first % 4; k++)
            Proximal[k] = Middle[k] = Distal[k] = double.NaN;
        for (int k = first; k < to; k += 4)
        {
            FourNumbers proximal = FourNumbers.Load(Proximal, k), distal = FourNumbers.Load(Distal, k), duration = distal - proximal;
            duration.Store(Duration, k);
            FourNumbers length = (duration.AtLeast(1) * factor).AtLeast(3);
            FourNumbers begin = proximal - length, end = distal + length, previous = FourNumbers.Load(FirstBeyond, k - 1), next = FourNumbers.Load(FirstOf, k + 1);
            cut = cut + begin.OneWhereBelow(previous) + next.OneWhereBelow(end);
            Regions.Put(k, begin.Ceiling().AtLeast(previous), proximal, FourNumbers.Load(FirstBeyond, k), (end.Floor() + one).AtMost(next));
        }
        RegionsCut = (long)(cut.First + cut.Second + cut.Third + cut.Fourth);
    }

    internal static FourNumbers Alternating(double even, double odd) => new(even, odd, even, odd);
}
