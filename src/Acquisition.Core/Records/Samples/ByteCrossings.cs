#if NET8_0_OR_GREATER
using System;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Acquisition.Core.Records;

/// <summary>Where 8-bit codes cross a level: a bit for each of 64 samples that is at or above it, and one for each that differs from the one before. Where nothing happens, 128 are passed over at once.</summary>
internal static class ByteCrossings
{
    /// <summary>So many samples are looked at together; as many of them may be crossings.</summary>
    internal const int Block = 128;

    /// <param name="codes">The codes, up to the last that is looked at.</param>
    /// <param name="flip">What turns them into offset binary.</param>
    /// <param name="threshold">The lowest code at or above the level.</param>
    /// <param name="from">The first that is looked at; there is one before it.</param>
    /// <param name="places">Where crossings are put.</param>
    /// <param name="count">How many there are.</param>
    /// <returns>The first that was not looked at: fewer than a block are left, or there is no room for the crossings of one.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    internal static int Find(ReadOnlySpan<byte> codes, byte flip, byte threshold, int from, int[] places, out int count)
    {
        ref byte start = ref MemoryMarshal.GetReference(codes);
        Vector256<byte> flips = Vector256.Create(flip), thresholds = Vector256.Create(threshold);
        ulong last = (codes[from - 1] ^ flip) >= threshold ? 1u : 0;
        int i = from, found = 0;
        for (; i <= codes.Length - Block && found <= places.Length - Block; i += Block)
        {
            Vector256<byte> a = AtOrAbove(ref start, i, flips, thresholds), b = AtOrAbove(ref start, i + 32, flips, thresholds), c = AtOrAbove(ref start, i + 64, flips, thresholds), d = AtOrAbove(ref start, i + 96, flips, thresholds);
            Vector256<byte> rest = Vector256.Create((byte)(0 - last));
            if (((a ^ rest) | (b ^ rest) | (c ^ rest) | (d ^ rest)) == Vector256<byte>.Zero)
                continue;
            found = Add(places, found, i, a.ExtractMostSignificantBits() | (ulong)b.ExtractMostSignificantBits() << 32, ref last);
            found = Add(places, found, i + 64, c.ExtractMostSignificantBits() | (ulong)d.ExtractMostSignificantBits() << 32, ref last);
        }
        count = found;
        return i;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<byte> AtOrAbove(ref byte start, int i, Vector256<byte> flips, Vector256<byte> thresholds) =>
        Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips, thresholds);

    /// <summary>Adds the crossings among 64 samples. One or two are usual in a dense train; to write two, whether there are as many or not, is faster than to guess.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Add(int[] places, int found, int i, ulong above, ref ulong last)
    {
        ulong crossings = above ^ (above << 1 | last);
        last = above >> 63;
        int at = found;
        places[at] = i + BitOperations.TrailingZeroCount(crossings);
        found += BitOperations.PopCount(crossings);
        crossings &= crossings - 1;
        places[at + 1] = i + BitOperations.TrailingZeroCount(crossings);
        for (crossings &= crossings - 1, at += 2; crossings != 0; crossings &= crossings - 1)
            places[at++] = i + BitOperations.TrailingZeroCount(crossings);
        return found;
    }
}
#endif
