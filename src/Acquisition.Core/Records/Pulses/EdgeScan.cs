using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Walks once through a record and finds its transitions, with hysteresis (handbook 8.3, 8.7 steps 4 and 5). Crossings of the middle level are found ahead, many samples at once; what
/// lies around each is then looked at.
/// </summary>
internal abstract class EdgeScan
{
    /// <summary>Crossings of the middle level that did not count.</summary>
    internal long Rejected { get; private protected set; }

    /// <summary>Called with first and last place and the extreme of each pulse that does not reach the other state.</summary>
    internal Action<double, double, double, bool>? OnRunt { get; set; }

    /// <summary>Who watches; null where nobody does.</summary>
    internal LongCall? Call { get; set; }

    /// <summary>What transitions of either direction are compared with.</summary>
    internal abstract EdgeLevels Levels(bool rising);

    /// <summary>Adds the next transitions to a batch until it is full, and places them; false where there are no more.</summary>
    internal abstract bool Fill(EdgeBatch batch);

    /// <summary>Adds a transition once more, from its crossing and that of the one before (0 where there is none).</summary>
    internal abstract void Again(EdgeBatch batch, int crossing, int lastCrossing, bool rising);

    /// <summary>Places the transitions of a batch from one on, of which the last one ends its state at a sample.</summary>
    internal abstract void Place(EdgeBatch batch, int first, int end);

    /// <summary>Where a transition passes the middle level, from its crossing.</summary>
    internal abstract double MiddleOf(int crossing);

    /// <summary>Measures what surrounds transitions of a batch, from one to before another; where that one begins must be known.</summary>
    internal abstract void Surround(EdgeBatch batch, int first, int to);
}
