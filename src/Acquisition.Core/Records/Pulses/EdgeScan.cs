using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Walks once through a record and finds its transitions, with hysteresis (handbook 8.3, 8.7 steps 4 and 5). Between transitions it asks the samples for the next one
/// beyond the middle level, which skips what does not cross it a block at a time.
/// </summary>
internal abstract class EdgeScan
{
    /// <summary>Crossings of the middle level that did not count.</summary>
    internal long Rejected { get; private protected set; }

    /// <summary>Called with first and last place and the extreme of each pulse that does not reach the other state.</summary>
    internal Action<double, double, double, bool>? OnRunt { get; set; }

    /// <summary>Who watches; null where nobody does.</summary>
    internal LongCall? Call { get; set; }

    /// <summary>The next transition; false where there is none.</summary>
    internal abstract bool Next(TransitionPlaces transition);

    /// <summary>A transition once more, from its crossing and that of the one before (0 where there is none).</summary>
    internal abstract TransitionPlaces Again(int crossing, int lastCrossing, bool rising);

    /// <summary>Where a transition passes the middle level, from its crossing.</summary>
    internal abstract double MiddleOf(int crossing);

    /// <summary>What surrounds a transition.</summary>
    /// <param name="t">The transition.</param>
    /// <param name="previous">The first sample of the state before it.</param>
    /// <param name="next">The first sample beyond the state after it.</param>
    /// <param name="cut">How many of its two regions are cut short.</param>
    internal abstract Aberrations Around(TransitionPlaces t, int previous, int next, out int cut);
}
