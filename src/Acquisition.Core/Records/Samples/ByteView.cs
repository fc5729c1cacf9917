using System;
#if NET8_0_OR_GREATER
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
#endif

namespace Acquisition.Core.Records;

/// <summary>Eight-bit codes as the scan for transitions looks at them: levels are codes, and blocks of samples are compared at once.</summary>
internal readonly struct ByteView : ISampleView
{
#if NET8_0_OR_GREATER
    /// <summary>Thirty-two bytes of zeros, as many of ones, and zeros again: read from 32 - n on, ones begin at place n; from 64 - n on, they end there.</summary>
    private static ReadOnlySpan<byte> Beyond =>
    [
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0,
        255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255,
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0,
    ];
#endif

    private readonly CodeSamples _scale;
    private readonly byte[] _codes;
    private readonly int _first;
    private readonly byte _flip;
    private readonly double[] _values;

    internal ByteView(CodeSamples scale, byte[] codes, int first, byte flip, double[] values)
    {
        _scale = scale;
        _codes = codes;
        _first = first;
        Length = scale.Length;
        _flip = flip;
        _values = values;
    }

    public int Length { get; }

    public int Codes => 256;

    public double this[int index] => _values[_codes[_first + index]];

    public Level LevelOf(double value) => new(value, _scale.Threshold(value));

    public bool IsAtOrAbove(int index, in Level level) => (_codes[_first + index] ^ _flip) >= level.Code;

    public int NextAtOrAbove(in Level level, int from, int to) =>
        level.Code is > 0 and < 256 ? Next(_flip, level.Code, _first + from, _first + to) - _first : level.Code == 0 ? Math.Min(from, to) : to;

    public int NextBelow(in Level level, int from, int to) =>
        level.Code is > 0 and < 256 ? Next((byte)~_flip, 256 - level.Code, _first + from, _first + to) - _first : level.Code == 0 ? to : Math.Min(from, to);

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
#endif
    public void Read(EdgeBatch batch, int first)
    {
#if NET8_0_OR_GREATER
        if (!Avx2.IsSupported)
        {
            EdgeSamples.Read(this, batch, first, batch.Count);
            return;
        }
        // A sample and the next one are read together, and those of four transitions become numbers together. The places are those of samples: checking them again would take as long as reading.
        EdgeSamples at = batch.Samples;
        int k = first;
        for (; k + 4 <= batch.Count; k += 4)
        {
            if (batch.IsComplete.AsSpan(k, 4).Contains(false))
            {
                EdgeSamples.Read(this, batch, k, k + 4);
                continue;
            }
            Values(Pairs(batch.Last, k, 0), at.BeforeProximal, at.AfterProximal, k);
            Values(Pairs(batch.Crossing, k, -1), at.BeforeMiddle, at.AfterMiddle, k);
            Values(Pairs(batch.First, k, -1), at.BeforeDistal, at.AfterDistal, k);
        }
        EdgeSamples.Read(this, batch, k, batch.Count);
#else
        EdgeSamples.Read(this, batch, first, batch.Count);
#endif
    }

    public int Crossings(in Level level, int from, int to, int[] places, out int count)
    {
        count = 0;
        if (level.Code is <= 0 or > 255)
            return to;
        int i = from;
#if NET8_0_OR_GREATER
        if (Avx2.IsSupported)
        {
            i = ByteCrossings.Find(_codes.AsSpan(_first, to), _flip, (byte)level.Code, from, places, out count);
            if (i <= to - ByteCrossings.Block)
                return i;
        }
#endif
        if (i >= to)
            return i;
        bool above = IsAtOrAbove(i - 1, level);
        for (; i < to && count < places.Length; i++)
        {
            if (IsAtOrAbove(i, level) == above)
                continue;
            above = !above;
            places[count++] = i;
        }
        return i;
    }

    public double Extreme(bool highest, int from, int to)
    {
        byte flip = (byte)(highest ? ~_flip : _flip);
        return _values[Lowest(flip, _first + from, _first + to) ^ flip];
    }

#if NET8_0_OR_GREATER
    public bool HasBits => Avx2.IsSupported;

    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    public void Compare(int[] crossings, int count, EdgeLevels first, EdgeLevels next, EdgeBits[] bits)
    {
        ref byte codes = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_codes), _first);
        EdgeLevels levels = first, others = next;
        Vector256<byte> flips = Flips(levels), otherFlips = ~flips;
        for (int k = 0; k < count; k++)
        {
            int crossing = crossings[k];
            if (EdgeBits.Fit(crossing, Length))
            {
                ref byte start = ref Unsafe.Add(ref codes, crossing - EdgeBits.Before);
                Vector256<byte> now = Vector256.LoadUnsafe(ref start) ^ flips, then = Vector256.LoadUnsafe(ref start, 1) ^ flips;
                bits[k] = new EdgeBits(Bits(now, levels.ProximalCode), Bits(now, levels.DistalCode), Bits(now, levels.FarCode), Vector256.GreaterThanOrEqual(then, now).ExtractMostSignificantBits());
            }
            else
                bits[k] = default;
            (flips, otherFlips) = (otherFlips, flips);
            (levels, others) = (others, levels);
        }
    }

    // Not a part of who calls it, where the compiler runs out of registers.
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    public int Extremes(EdgeBatch batch, EdgeLevels even, EdgeLevels odd, int first, int to)
    {
        // Regions begin at samples, and 32 after the last of these beginnings there are still some: nothing is checked twice.
        ref byte codes = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_codes), _first);
        int latest = _codes.Length - 32 - _first;
        EdgeRegions regions = batch.Regions;
        ref int froms = ref MemoryMarshal.GetArrayDataReference(regions.From), befores = ref MemoryMarshal.GetArrayDataReference(regions.Before), afters = ref MemoryMarshal.GetArrayDataReference(regions.After);
        ref int tos = ref MemoryMarshal.GetArrayDataReference(regions.To), extents = ref MemoryMarshal.GetArrayDataReference(regions.Extent);
        ref FourNumbers extremes = ref MemoryMarshal.GetArrayDataReference(batch.Extremes);
        ref byte ones = ref Unsafe.Add(ref MemoryMarshal.GetReference(Beyond), 32);
        EdgeLevels levels = first % 2 == 0 ? even : odd, others = first % 2 == 0 ? odd : even;
        // A code of a falling transition is counted from the other side, and so is what lies beyond the state that is reached.
        Vector256<byte> flips = Flips(levels), otherFlips = ~flips;
        Vector128<int> sides = Sides(levels), otherSides = Sides(others), zero = Vector128.Create(_scale.Zero);
        Vector256<double> step = Vector256.Create(_scale.Scale), atZero = Vector256.Create(_scale.AtZero);
        for (int k = first; k < to; k++)
        {
            nint from = Unsafe.Add(ref froms, k), after = Unsafe.Add(ref afters, k);
            if ((uint)Unsafe.Add(ref extents, k) >= 32 || after > latest)
                return k;
            Vector256<byte> left = Vector256.LoadUnsafe(ref Unsafe.Add(ref ones, from - Unsafe.Add(ref befores, k) - 1)), beyond = Vector256.LoadUnsafe(ref Unsafe.Add(ref ones, after - Unsafe.Add(ref tos, k)));
            Vector256<byte> leaving = Block(ref codes, from) ^ flips, reaching = Block(ref codes, after) ^ flips, opposite = Block(ref codes, after) ^ otherFlips;
            // Where it never arrives all are ones: a code beyond the state, and none short of it.
            nint arrival = BitOperations.TrailingZeroCount(Bits(reaching, levels.ReachedCode));
            Vector256<byte> transition = Vector256.LoadUnsafe(ref Unsafe.Add(ref ones, 32 - arrival));
            Vector128<int> lowest = Lowest(opposite | beyond, reaching | beyond | transition, leaving | left) ^ sides;
            Unsafe.Add(ref extremes, k) = new FourNumbers(Avx.ConvertToVector256Double(lowest - zero) * step + atZero);
            (flips, otherFlips) = (otherFlips, flips);
            (sides, otherSides) = (otherSides, sides);
            (levels, others) = (others, levels);
        }
        return to;
    }

    /// <summary>The samples at four places and those after them, each pair in an integer.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector128<int> Pairs(int[] places, int index, int off)
    {
        ref int place = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(places), index);
        ref byte codes = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_codes), _first + off);
        ulong some = Pair(ref codes, place) | Pair(ref codes, Unsafe.Add(ref place, 1)) << 32, others = Pair(ref codes, Unsafe.Add(ref place, 2)) | Pair(ref codes, Unsafe.Add(ref place, 3)) << 32;
        return Vector128.Create(some, others).AsInt32();

        static ulong Pair(ref byte codes, int at) => Unsafe.ReadUnaligned<ushort>(ref Unsafe.Add(ref codes, at));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Values(Vector128<int> pairs, double[] before, double[] after, int index)
    {
        ValuesOf(pairs & Vector128.Create(255)).Store(before, index);
        ValuesOf(pairs >>> 8).Store(after, index);
    }

    /// <summary>The values of codes as they are kept.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private FourNumbers ValuesOf(Vector128<int> raw) =>
        new(Avx.ConvertToVector256Double((raw ^ Vector128.Create((int)_flip)) - Vector128.Create(_scale.Zero)) * Vector256.Create(_scale.Scale) + Vector256.Create(_scale.AtZero));

    private Vector256<byte> Flips(EdgeLevels levels) => Vector256.Create((byte)(levels.IsRising ? _flip : ~_flip));

    private static Vector128<int> Sides(EdgeLevels levels) => levels.IsRising ? Vector128.Create(0, 255, 0, 0) : Vector128.Create(0, 0, 255, 255);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint Bits(Vector256<byte> codes, int code) => Vector256.GreaterThanOrEqual(codes, Vector256.Create((byte)code)).ExtractMostSignificantBits();
#endif

    internal void Extremes(int from, int to, out double lowest, out double highest)
    {
        lowest = Extreme(false, from, to);
        highest = Extreme(true, from, to);
    }

    /// <summary>The first code that is at or above a threshold when some of its bits are flipped: with all of them flipped, large codes are small.</summary>
    private int Next(byte flip, int threshold, int i, int end)
    {
#if NET8_0_OR_GREATER
        if (Avx2.IsSupported)
        {
            ref byte start = ref MemoryMarshal.GetArrayDataReference(_codes);
            Vector256<byte> flips = Vector256.Create(flip), thresholds = Vector256.Create((byte)threshold);
            for (; i + 32 <= end; i += 32)
            {
                uint at = Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips, thresholds).ExtractMostSignificantBits();
                if (at != 0)
                    return i + BitOperations.TrailingZeroCount(at);
            }
            if (i < end && i + 32 <= _codes.Length)
            {
                uint at = Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips, thresholds).ExtractMostSignificantBits() & ((1u << (end - i)) - 1);
                return at != 0 ? i + BitOperations.TrailingZeroCount(at) : end;
            }
        }
#endif
        while (i < end && (byte)(_codes[i] ^ flip) < threshold)
            i++;
        return i;
    }

    /// <summary>The lowest code when some bits are flipped.</summary>
    private int Lowest(byte flip, int i, int end)
    {
        int low = 255;
#if NET8_0_OR_GREATER
        if (Avx2.IsSupported && i + 32 <= end)
        {
            Vector256<byte> flips = Vector256.Create(flip), lows = Vector256<byte>.AllBitsSet;
            for (; i + 32 <= end; i += 32)
                lows = Vector256.Min(lows, Block(ref MemoryMarshal.GetArrayDataReference(_codes), i) ^ flips);
            low = Lowest(lows);
        }
#endif
        for (; i < end; i++)
            low = Math.Min(low, (byte)(_codes[i] ^ flip));
        return low;
    }

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<byte> Block(ref byte codes, nint i) => Vector256.LoadUnsafe(ref codes, (nuint)i);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Lowest(Vector256<byte> codes)
    {
        Vector128<byte> low = Vector128.Min(codes.GetLower(), codes.GetUpper());
        // Of each pair of bytes the lower one, above it a zero.
        Vector128<ushort> pairs = Vector128.Min(low, (low.AsUInt16() >> 8).AsByte()).AsUInt16();
        return Sse41.MinHorizontal(pairs).ToScalar();
    }

    /// <summary>The lowest code of each, in the second place and those after it; the first means nothing.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<int> Lowest(Vector256<byte> a, Vector256<byte> b, Vector256<byte> c)
    {
        Vector128<ulong> first = Vector128.Min(a.GetLower(), a.GetUpper()).AsUInt64(), second = Vector128.Min(b.GetLower(), b.GetUpper()).AsUInt64(), third = Vector128.Min(c.GetLower(), c.GetUpper()).AsUInt64();
        // Halves beside each other: of 16 codes each 8 remain, then 4, which are the bytes of an integer.
        Vector128<float> some = Vector128.Min(Sse2.UnpackLow(third, first).AsByte(), Sse2.UnpackHigh(third, first).AsByte()).AsSingle();
        Vector128<float> others = Vector128.Min(Sse2.UnpackLow(second, third).AsByte(), Sse2.UnpackHigh(second, third).AsByte()).AsSingle();
        Vector128<byte> low = Vector128.Min(Sse.Shuffle(some, others, 0b10_00_10_00).AsByte(), Sse.Shuffle(some, others, 0b11_01_11_01).AsByte());
        low = Vector128.Min(low, (low.AsUInt32() >> 16).AsByte());
        low = Vector128.Min(low, (low.AsUInt32() >> 8).AsByte());
        return low.AsInt32() & Vector128.Create(255);
    }
#endif
}
