using System;
#if NET8_0_OR_GREATER
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
#endif

namespace Acquisition.Core.Records;

/// <summary>Codes of up to sixteen bits as the scan for transitions looks at them.</summary>
internal readonly struct ShortView : ISampleView
{
    private readonly CodeSamples _scale;
    private readonly short[] _codes;
    private readonly int _first, _flip;

    internal ShortView(CodeSamples scale, short[] codes, int first, int flip)
    {
        _scale = scale;
        _codes = codes;
        _first = first;
        Length = scale.Length;
        _flip = flip;
    }

    public int Length { get; }

    public int Codes => 65536;

    public double this[int index] => _scale.ValueOf(CodeAt(_first + index));

    public Level LevelOf(double value) => new(value, _scale.Threshold(value));

    public bool IsAtOrAbove(int index, in Level level) => CodeAt(_first + index) >= level.Code;

    public int NextAtOrAbove(in Level level, int from, int to) =>
        level.Code is > 0 and < 65536 ? Next(_flip, level.Code, from, to) : level.Code == 0 ? Math.Min(from, to) : to;

    public int NextBelow(in Level level, int from, int to) =>
        level.Code is > 0 and < 65536 ? Next(_flip ^ 0xFFFF, 65536 - level.Code, from, to) : level.Code == 0 ? to : Math.Min(from, to);

    public void Read(EdgeBatch batch, int first) => EdgeSamples.Read(this, batch, first, batch.Count);

    public int Crossings(in Level level, int from, int to, int[] places, out int count) => Records.Crossings.OneByOne(this, level, from, to, places, out count);

    public double Extreme(bool highest, int from, int to)
    {
        Extremes(from, to, out double low, out double high);
        return highest ? high : low;
    }

#if NET8_0_OR_GREATER
    public bool HasBits => Vector256.IsHardwareAccelerated;

    public void Compare(int[] crossings, int count, EdgeLevels first, EdgeLevels next, EdgeBits[] bits)
    {
        for (int k = 0; k < count; k++)
            bits[k] = EdgeBits.Fit(crossings[k], Length) ? BitsAround(crossings[k], k % 2 == 0 ? first : next) : default;
    }

    private EdgeBits BitsAround(int crossing, EdgeLevels levels)
    {
        ref ushort first = ref Unsafe.As<short, ushort>(ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_codes), _first + crossing - EdgeBits.Before));
        Vector256<ushort> flips = Vector256.Create((ushort)(levels.IsRising ? _flip : ~_flip)), a = Vector256.LoadUnsafe(ref first) ^ flips, b = Vector256.LoadUnsafe(ref first, 16) ^ flips;
        Vector256<ushort> afterA = Vector256.LoadUnsafe(ref first, 1) ^ flips, afterB = Vector256.LoadUnsafe(ref first, 17) ^ flips;
        uint onward = Bits(Vector256.GreaterThanOrEqual(afterA, a), Vector256.GreaterThanOrEqual(afterB, b));
        return new EdgeBits(Bits(a, b, levels.ProximalCode), Bits(a, b, levels.DistalCode), Bits(a, b, levels.FarCode), onward);
    }

    public int Extremes(EdgeBatch batch, EdgeLevels even, EdgeLevels odd, int first, int to) => first;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint Bits(Vector256<ushort> a, Vector256<ushort> b, int code)
    {
        Vector256<ushort> threshold = Vector256.Create((ushort)code);
        return Bits(Vector256.GreaterThanOrEqual(a, threshold), Vector256.GreaterThanOrEqual(b, threshold));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint Bits(Vector256<ushort> a, Vector256<ushort> b) => Vector256.Narrow(a, b).ExtractMostSignificantBits();
#endif

    internal void Extremes(int from, int to, out double lowest, out double highest)
    {
        int low = 65535, high = 0;
        for (int i = _first + from; i < _first + to; i++)
        {
            int code = CodeAt(i);
            low = Math.Min(low, code);
            high = Math.Max(high, code);
        }
        lowest = _scale.ValueOf(low);
        highest = _scale.ValueOf(high);
    }

    /// <summary>The first code that is at or above a threshold when some of its bits are flipped: with all of them flipped, large codes are small.</summary>
    private int Next(int flip, int threshold, int from, int to)
    {
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        int width = Vector<ushort>.Count;
        Vector<ushort> flips = new((ushort)flip), thresholds = new((ushort)threshold);
        ReadOnlySpan<ushort> rest = MemoryMarshal.Cast<short, ushort>(_codes.AsSpan(i, end - i));
        int at = 0;
        while (at + width <= rest.Length && !Vector.GreaterThanOrEqualAny(new Vector<ushort>(rest.Slice(at)) ^ flips, thresholds))
            at += width;
        i += at;
#endif
        while (i < end && ((ushort)_codes[i] ^ flip) < threshold)
            i++;
        return i - _first;
    }

    private int CodeAt(int place) => (ushort)_codes[place] ^ _flip;
}
