using System;
#if NET8_0_OR_GREATER
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
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
        _flip = flip;
        _values = values;
    }

    public int Length => _scale.Length;

    public double this[int index] => _values[_codes[_first + index]];

    public Level LevelOf(double value) => new(value, _scale.Threshold(value));

    public bool IsAtOrAbove(int index, in Level level) => (_codes[_first + index] ^ _flip) >= level.Code;

    public int NextAtOrAbove(in Level level, int from, int to) =>
        level.Code is > 0 and < 256 ? Next(_flip, level.Code, _first + from, _first + to) - _first : level.Code == 0 ? Math.Min(from, to) : to;

    public int NextBelow(in Level level, int from, int to) =>
        level.Code is > 0 and < 256 ? Next((byte)~_flip, 256 - level.Code, _first + from, _first + to) - _first : level.Code == 0 ? to : Math.Min(from, to);

    public double Extreme(bool highest, int from, int to)
    {
        byte flip = (byte)(highest ? ~_flip : _flip);
        return _values[Lowest(flip, _first + from, _first + to) ^ flip];
    }

    internal void Extremes(int from, int to, out double lowest, out double highest)
    {
        lowest = Extreme(false, from, to);
        highest = Extreme(true, from, to);
    }

    /// <summary>The first code that is at or above a threshold when some of its bits are flipped: with all of them flipped, large codes are small.</summary>
    private int Next(byte flip, int threshold, int i, int end)
    {
#if NET8_0_OR_GREATER
        if (Vector256.IsHardwareAccelerated)
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
#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
#endif
    private int Lowest(byte flip, int i, int end)
    {
        int low = 255;
#if NET8_0_OR_GREATER
        if (Vector256.IsHardwareAccelerated && i + 32 <= _codes.Length)
        {
            ref byte start = ref MemoryMarshal.GetArrayDataReference(_codes);
            Vector256<byte> flips = Vector256.Create(flip), lows = Vector256<byte>.AllBitsSet;
            for (; i + 32 <= end; i += 32)
                lows = Vector256.Min(lows, Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips);
            if (i < end && i + 32 <= _codes.Length)
            {
                // What lies beyond the end is as if it were the largest code.
                Vector256<byte> beyond = Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(Beyond), (nuint)(32 - (end - i)));
                lows = Vector256.Min(lows, Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips | beyond);
                i = end;
            }
            Vector128<byte> halves = Vector128.Min(lows.GetLower(), lows.GetUpper());
            halves = Vector128.Min(halves, Vector128.Create(halves.AsUInt64().GetElement(1), 0).AsByte());
            halves = Vector128.Min(halves, Vector128.ShiftRightLogical(halves.AsUInt64(), 32).AsByte());
            halves = Vector128.Min(halves, Vector128.ShiftRightLogical(halves.AsUInt64(), 16).AsByte());
            low = Vector128.Min(halves, Vector128.ShiftRightLogical(halves.AsUInt64(), 8).AsByte()).ToScalar();
        }
#endif
        for (; i < end; i++)
            low = Math.Min(low, (byte)(_codes[i] ^ flip));
        return low;
    }
}
