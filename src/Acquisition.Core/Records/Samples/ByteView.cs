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
    /// <summary>Thirty-two bytes of zeros and as many of ones: read from 32 - n, ones from place n on.</summary>
    private static ReadOnlySpan<byte> Beyond =>
    [
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0,
        255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255,
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

    public double this[int index] => _values[_codes[_first + index]];

    public Level LevelOf(double value) => new(value, _scale.Threshold(value));

    public bool IsAtOrAbove(int index, in Level level) => (_codes[_first + index] ^ _flip) >= level.Code;

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
#endif
    public int NextAtOrAbove(in Level level, int from, int to)
    {
        if (level.Code is <= 0 or > 255)
            return level.Code == 0 ? Math.Min(from, to) : to;
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        if (StartsBlock(i))
        {
            uint at = Bits(Block(i) ^ Vector256.Create(_flip), level);
            if (at != 0)
                return Math.Min(i + BitOperations.TrailingZeroCount(at), end) - _first;
            i += 32;
        }
#endif
        return i < end ? Next(_flip, level.Code, i, end) - _first : to;
    }

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
#endif
    public int NextBelow(in Level level, int from, int to)
    {
        if (level.Code is <= 0 or > 255)
            return level.Code == 0 ? to : Math.Min(from, to);
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        if (StartsBlock(i))
        {
            uint at = ~Bits(Block(i) ^ Vector256.Create(_flip), level);
            if (at != 0)
                return Math.Min(i + BitOperations.TrailingZeroCount(at), end) - _first;
            i += 32;
        }
#endif
        return i < end ? Next((byte)~_flip, 256 - level.Code, i, end) - _first : to;
    }

    public double Extreme(bool highest, int from, int to)
    {
        byte flip = (byte)(highest ? ~_flip : _flip);
        int i = _first + from, count = to - from;
#if NET8_0_OR_GREATER
        if (count <= 32 && StartsBlock(i))
        {
            // What lies beyond the end is as if it were the largest code.
            return _values[Lowest(Block(i) ^ Vector256.Create(flip) | Ones(count)) ^ flip];
        }
#endif
        return _values[Lowest(flip, i, i + count) ^ flip];
    }

#if NET8_0_OR_GREATER
    public bool HasBits(EdgeLevels levels) => Avx2.IsSupported && levels.HighestCode < 256;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool HasBitsAround(int crossing) => crossing >= EdgeBits.Before && crossing <= Length - EdgeBits.Samples - 1 + EdgeBits.Before;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public EdgeBits BitsAround(int crossing, EdgeLevels levels)
    {
        ref byte first = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_codes), _first + crossing - EdgeBits.Before);
        Vector256<byte> flips = Vector256.Create(_flip), codes = Vector256.LoadUnsafe(ref first) ^ flips, next = Vector256.LoadUnsafe(ref first, 1) ^ flips;
        uint falls = levels.IsRising ? 0 : uint.MaxValue;
        uint onward = (levels.IsRising ? Vector256.GreaterThanOrEqual(next, codes) : Vector256.LessThanOrEqual(next, codes)).ExtractMostSignificantBits();
        return new EdgeBits(falls ^ Bits(codes, levels.Near), falls ^ Bits(codes, levels.Proximal), falls ^ Bits(codes, levels.Middle), falls ^ Bits(codes, levels.Distal), falls ^ Bits(codes, levels.Far), onward);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool TryRegions(EdgeLevels levels, int from, int before, int after, int to, out double pre, out double over, out double under)
    {
        int left = before + 1 - from, right = to - after;
        if (!((uint)(left - 1) < 32 && (uint)(right - 1) < 32 && StartsBlock(_first + from) && StartsBlock(_first + after)))
        {
            pre = over = under = double.NaN;
            return false;
        }
        byte flip = (byte)(levels.IsRising ? _flip : ~_flip);
        Vector256<byte> flips = Vector256.Create(flip), leaving = Block(_first + from) ^ flips, reaching = Block(_first + after) ^ flips, beyond = Ones(right);
        uint reached = Bits(Block(_first + after) ^ Vector256.Create(_flip), levels.Reached);
        int arrival = BitOperations.TrailingZeroCount(levels.IsRising ? reached : ~reached);
        pre = _values[Lowest(leaving | Ones(left)) ^ flip];
        over = _values[(255 - Lowest(~reaching | beyond)) ^ flip];
        under = arrival < right ? _values[Lowest(reaching | beyond | ~Ones(arrival)) ^ flip] : levels.Reached.Value;
        return true;
    }

    /// <summary>Ones from a place on.</summary>
    private static Vector256<byte> Ones(int from) => Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(Beyond), (nuint)(32 - from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint Bits(Vector256<byte> codes, in Level level) => Vector256.GreaterThanOrEqual(codes, Vector256.Create((byte)level.Code)).ExtractMostSignificantBits();
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
            int near = Math.Min(end, i + 160);
            while (true)
            {
                // The next edge is near in a dense train.
                for (; i + 32 <= near; i += 32)
                {
                    uint at = Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips, thresholds).ExtractMostSignificantBits();
                    if (at != 0)
                        return i + BitOperations.TrailingZeroCount(at);
                }
                if (near == end)
                    break;
                // A stretch without one is passed four vectors at a time, at the speed of memory.
                for (; i + 128 <= end; i += 128)
                {
                    Vector256<byte> a = Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips, b = Vector256.LoadUnsafe(ref start, (nuint)i + 32) ^ flips;
                    Vector256<byte> c = Vector256.LoadUnsafe(ref start, (nuint)i + 64) ^ flips, d = Vector256.LoadUnsafe(ref start, (nuint)i + 96) ^ flips;
                    if (Vector256.GreaterThanOrEqualAny(Vector256.Max(Vector256.Max(a, b), Vector256.Max(c, d)), thresholds))
                        break;
                }
                near = end;
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
                lows = Vector256.Min(lows, Block(i) ^ flips);
            low = Lowest(lows);
        }
#endif
        for (; i < end; i++)
            low = Math.Min(low, (byte)(_codes[i] ^ flip));
        return low;
    }

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool StartsBlock(int i) => Avx2.IsSupported && i >= 0 && i <= _codes.Length - 32;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<byte> Block(int i) => Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(_codes), (nuint)i);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Lowest(Vector256<byte> codes)
    {
        Vector128<byte> low = Vector128.Min(codes.GetLower(), codes.GetUpper());
        // Of each pair of bytes the lower one, above it a zero.
        Vector128<ushort> pairs = Vector128.Min(low, (low.AsUInt16() >> 8).AsByte()).AsUInt16();
        return Sse41.MinHorizontal(pairs).ToScalar();
    }
#endif
}
