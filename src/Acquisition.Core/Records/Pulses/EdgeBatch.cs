using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Consecutive transitions of a record, which are measured together: what belongs to one is a few numbers each, and four of them are computed in the time of one. Directions alternate.
/// The last transitions of a batch are the first of the next one, since the neighbors of a transition bound the states around it, and periods reach back.
/// </summary>
internal sealed class EdgeBatch
{
    /// <summary>So many transitions are carried over from the batch before. All but the last of them are done; that one waited for its neighbor.</summary>
    internal const int Carried = 4;

    /// <summary>Groups of four may begin at any transition and end beyond the last.</summary>
    private const int Padding = 8;

    private readonly int _capacity;
    private readonly double[][] _columns;

    /// <param name="capacity">How many transitions are added: a multiple of 4, so that directions are those of the batch before.</param>
    internal EdgeBatch(int capacity)
    {
        _capacity = Carried + capacity;
        int length = _capacity + Padding;
        Found = new FoundEdge[length];
        _columns = [Proximal = new double[length], Middle = new double[length], Distal = new double[length], FirstOf = new double[length], FirstBeyond = new double[length]];
        Duration = new double[length];
        Regions = new EdgeRegions[length];
        Aberrations = new FourNumbers[length];
        Clear();
    }

    internal FoundEdge[] Found { get; }

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
    internal EdgeRegions[] Regions { get; }

    /// <summary>From the second on: overshoot, undershoot and preshoot, in parts of the amplitude; NaN where there is no region to look at.</summary>
    internal FourNumbers[] Aberrations { get; }

    /// <summary>One more than the last transition.</summary>
    internal int Count { get; set; }

    internal bool IsFull => Count >= _capacity;

    /// <summary>Whether transitions of an even index rise.</summary>
    internal bool EvenRises { get; set; }

    /// <summary>Regions that were cut short, of the last that were surrounded.</summary>
    internal long RegionsCut { get; private set; }

    internal bool IsRising(int index) => EvenRises == (index % 2 == 0);

    /// <summary>Adds a transition that does not pass both reference levels.</summary>
    internal void AddIncomplete(int crossing, int last, int first, bool isMonotone, double before, double after) => Found[Count++] = new FoundEdge
    {
        Crossing = crossing,
        Last = last,
        First = first,
        IsMonotone = isMonotone,
        BeforeProximal = double.NaN,
        BeforeMiddle = before,
        AfterMiddle = after,
        BeforeDistal = double.NaN,
    };

    /// <summary>Takes away all transitions: those carried over are none, and the state before the first begins with the record.</summary>
    internal void Clear()
    {
        for (int k = 0; k < Carried; k++)
        {
            Found[k] = new FoundEdge { IsMonotone = true, BeforeProximal = double.NaN, BeforeMiddle = double.NaN, BeforeDistal = double.NaN };
            Proximal[k] = Middle[k] = Distal[k] = double.NaN;
            FirstOf[k] = FirstBeyond[k] = 0;
        }
        Count = Carried;
    }

    /// <summary>Keeps the last transitions only.</summary>
    internal void CarryOver()
    {
        Array.Copy(Found, Count - Carried, Found, 0, Carried);
        foreach (double[] column in _columns)
            Array.Copy(column, Count - Carried, column, 0, Carried);
        Count = Carried;
    }

    /// <summary>Where the straight lines between the samples pass the levels.</summary>
    /// <param name="first">The first transition that is not yet placed.</param>
    /// <param name="even">The levels of transitions of an even index.</param>
    /// <param name="odd">The levels of the others.</param>
    internal void Place(int first, EdgeLevels even, EdgeLevels odd)
    {
        EdgeLevels a = first % 2 == 0 ? even : odd, b = first % 2 == 0 ? odd : even;
        FourNumbers some = a.References, others = b.References, oneOff = new(0, 1, 1, 0);
        for (int k = first; k < Count; k += 4)
        {
            ref FoundEdge e = ref Found[k], f = ref Found[k + 1], g = ref Found[k + 2], h = ref Found[k + 3];
            FourNumbers proximal = FoundEdge.Places(e, some, oneOff), middle = FoundEdge.Places(f, others, oneOff), distal = FoundEdge.Places(g, some, oneOff), fourth = FoundEdge.Places(h, others, oneOff);
            FourNumbers.Transpose(ref proximal, ref middle, ref distal, ref fourth);
            var crossing = new FourNumbers(e.Crossing, f.Crossing, g.Crossing, h.Crossing);
            proximal.Store(Proximal, k);
            middle.Store(Middle, k);
            distal.Store(Distal, k);
            proximal.Ceiling().IfNumberElse(crossing).Store(FirstOf, k);
            distal.Ceiling().IfNumberElse(crossing).Store(FirstBeyond, k);
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
            Proximal[k] = Distal[k] = double.NaN;
        for (int k = first; k < to; k += 4)
        {
            FourNumbers proximal = FourNumbers.Load(Proximal, k), distal = FourNumbers.Load(Distal, k), duration = distal - proximal;
            duration.Store(Duration, k);
            FourNumbers length = (duration.AtLeast(1) * factor).AtLeast(3);
            FourNumbers begin = proximal - length, end = distal + length, previous = FourNumbers.Load(FirstBeyond, k - 1), next = FourNumbers.Load(FirstOf, k + 1);
            cut = cut + begin.OneWhereBelow(previous) + next.OneWhereBelow(end);
            FourNumbers from = begin.Ceiling().AtLeast(previous), before = proximal, after = FourNumbers.Load(FirstBeyond, k), until = (end.Floor() + one).AtMost(next);
            FourNumbers.Transpose(ref from, ref before, ref after, ref until);
            Regions[k] = EdgeRegions.Of(from);
            Regions[k + 1] = EdgeRegions.Of(before);
            Regions[k + 2] = EdgeRegions.Of(after);
            Regions[k + 3] = EdgeRegions.Of(until);
        }
        RegionsCut = (long)(cut.First + cut.Second + cut.Third + cut.Fourth);
    }

    internal static FourNumbers Alternating(double even, double odd) => new(even, odd, even, odd);
}
