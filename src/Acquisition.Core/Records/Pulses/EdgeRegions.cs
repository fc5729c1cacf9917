#if NET8_0_OR_GREATER
using System.Runtime.Intrinsics;
#endif

namespace Acquisition.Core.Records;

/// <summary>Where to look for what surrounds the transitions of a batch: from a sample up to the last one before the proximal level, and from the first after the distal level to before another.</summary>
internal sealed class EdgeRegions
{
    internal EdgeRegions(int length)
    {
        From = new int[length];
        Before = new int[length];
        After = new int[length];
        To = new int[length];
#if NET8_0_OR_GREATER
        Extent = new int[length];
#endif
    }

    internal int[] From { get; }

    internal int[] Before { get; }

    internal int[] After { get; }

    internal int[] To { get; }

#if NET8_0_OR_GREATER
    /// <summary>From 0 to 31 where both regions hold 1 to 32 samples; else more, or negative.</summary>
    internal int[] Extent { get; }
#endif

    /// <summary>Puts those of four transitions, of places that are cut to whole samples.</summary>
    internal void Put(int index, FourNumbers from, FourNumbers before, FourNumbers after, FourNumbers to)
    {
        from.StoreWhole(From, index);
        before.StoreWhole(Before, index);
        after.StoreWhole(After, index);
        to.StoreWhole(To, index);
#if NET8_0_OR_GREATER
        // No other bits than the lowest five are set in any of them, where one is taken off the lengths. What is not complete begins nowhere: that is negative.
        Vector128<int> begin = from.Whole();
        (before.Whole() - begin | to.Whole() - after.Whole() - Vector128<int>.One | begin & Vector128.Create(int.MinValue)).CopyTo(Extent, index);
#endif
    }
}
