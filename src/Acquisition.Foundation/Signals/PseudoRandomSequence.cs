using System;

namespace Acquisition.Core.Signals;

/// <summary>Maximum-length sequences of a linear feedback shift register.</summary>
internal static class PseudoRandomSequence
{
    internal const int Lowest = 2, Highest = 16;

    /// <summary>The lower taps of one primitive polynomial per order, x^order + ... + 1 (orders 7, 9, 11, 15: ITU-T O.150, from memory; the test counts every period).</summary>
    private static readonly int[][] Taps =
    {
        new[] { 1 }, new[] { 2 }, new[] { 3 }, new[] { 3 }, new[] { 5 }, new[] { 6 }, new[] { 6, 5, 4 }, new[] { 5 }, new[] { 7 }, new[] { 9 },
        new[] { 11, 10, 4 }, new[] { 12, 11, 8 }, new[] { 13, 12, 2 }, new[] { 14 }, new[] { 15, 13, 4 },
    };

    internal static bool[] Bits(int order)
    {
        int length = (1 << order) - 1;
        var bits = new bool[length];
        for (int i = 0; i < length; i++)
        {
            // The register starts with ones; each new bit is the sum of those at the taps.
            bool bit = i < order || bits[i - order];
            if (i >= order)
            {
                foreach (int tap in Taps[order - Lowest])
                    bit ^= bits[i - tap];
            }
            bits[i] = bit;
        }
        return bits;
    }
}
