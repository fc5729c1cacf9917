using System;
#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
#endif

namespace Acquisition.Core.Records;

/// <summary>
/// Counts bytes. Neighbouring samples are often equal, and adding to the same counter twice in a row waits for memory each time; several tables in turn do not wait. Many bytes
/// are counted in pairs: half as many counters are touched, and few of the 65 536 are in use in a record of two states.
/// </summary>
internal static class ByteHistogram
{
    /// <summary>So many bytes at most go into 32-bit counters before they are emptied into the long ones.</summary>
    private const int Stretch = 1 << 30;

    internal static void Count(byte[] codes, int from, int count, long[] counts)
    {
#if NET8_0_OR_GREATER
        if (count >= FewestInPairs)
        {
            CountPairs(codes, from, count, counts);
            return;
        }
#endif
        var tables = new int[8 * 256];
        for (int end = from + count; from < end;)
        {
            int length = Math.Min(Stretch, end - from);
            Add(codes, from, length, tables);
            for (int code = 0; code < 256; code++)
            {
                for (int table = 0; table < 8; table++)
                    counts[code] += tables[256 * table + code];
            }
            Array.Clear(tables, 0, tables.Length);
            from += length;
        }
    }

#if NET8_0_OR_GREATER
    // A long record is measured once, in the first call: there is no second one for the runtime to be fast in.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
#endif
    private static void Add(byte[] codes, int from, int length, int[] tables)
    {
        int i = from, end = from + length;
#if NET8_0_OR_GREATER
        ref int counts = ref MemoryMarshal.GetArrayDataReference(tables);
        for (; i + 8 <= end; i += 8)
        {
            ulong eight = Unsafe.ReadUnaligned<ulong>(ref codes[i]);
            Unsafe.Add(ref counts, (nint)(byte)eight)++;
            Unsafe.Add(ref counts, 256 + (nint)(byte)(eight >> 8))++;
            Unsafe.Add(ref counts, 512 + (nint)(byte)(eight >> 16))++;
            Unsafe.Add(ref counts, 768 + (nint)(byte)(eight >> 24))++;
            Unsafe.Add(ref counts, 1024 + (nint)(byte)(eight >> 32))++;
            Unsafe.Add(ref counts, 1280 + (nint)(byte)(eight >> 40))++;
            Unsafe.Add(ref counts, 1536 + (nint)(byte)(eight >> 48))++;
            Unsafe.Add(ref counts, 1792 + (nint)(byte)(eight >> 56))++;
        }
#else
        for (; i + 4 <= end; i += 4)
        {
            tables[codes[i]]++;
            tables[256 + codes[i + 1]]++;
            tables[512 + codes[i + 2]]++;
            tables[768 + codes[i + 3]]++;
        }
#endif
        for (; i < end; i++)
            tables[codes[i]]++;
    }

#if NET8_0_OR_GREATER
    /// <summary>Emptying the tables of pairs takes as long as counting a hundred thousand bytes.</summary>
    private const int FewestInPairs = 1 << 20;

    private static void CountPairs(byte[] codes, int from, int count, long[] counts)
    {
        var tables = new int[2 * 65536];
        int whole = count & ~7;
        for (int i = 0, length; i < whole; i += length)
        {
            length = Math.Min(Stretch, whole - i);
            AddPairs(codes, from + i, length, tables);
            for (int second = 0; second < 256; second++)
            {
                long some = 0;
                for (int first = 0; first < 256; first++)
                {
                    int pairs = tables[(second << 8) + first] + tables[65536 + (second << 8) + first];
                    counts[first] += pairs;
                    some += pairs;
                }
                counts[second] += some;
            }
            if (length < whole - i)
                Array.Clear(tables, 0, tables.Length);
        }
        for (int i = from + whole; i < from + count; i++)
            counts[codes[i]]++;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddPairs(byte[] codes, int from, int length, int[] tables)
    {
        ref int even = ref MemoryMarshal.GetArrayDataReference(tables), odd = ref Unsafe.Add(ref even, 65536);
        for (int i = from, end = from + length; i < end; i += 8)
        {
            // Four short loads are fewer instructions than a long one that is shifted and cut.
            ref byte eight = ref codes[i];
            Unsafe.Add(ref even, (nint)Unsafe.ReadUnaligned<ushort>(ref eight))++;
            Unsafe.Add(ref odd, (nint)Unsafe.ReadUnaligned<ushort>(ref Unsafe.Add(ref eight, 2)))++;
            Unsafe.Add(ref even, (nint)Unsafe.ReadUnaligned<ushort>(ref Unsafe.Add(ref eight, 4)))++;
            Unsafe.Add(ref odd, (nint)Unsafe.ReadUnaligned<ushort>(ref Unsafe.Add(ref eight, 6)))++;
        }
    }
#endif
}
