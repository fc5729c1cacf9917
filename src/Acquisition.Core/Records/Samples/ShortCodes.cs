using System;
#if NET8_0_OR_GREATER
using System.Numerics;
using System.Runtime.InteropServices;
#endif

namespace Acquisition.Core.Records;

/// <summary>Codes of up to sixteen bits, two's complement or offset binary.</summary>
internal sealed class ShortCodes : CodeSamples
{
    private readonly short[] _codes;
    private readonly int _first, _flip;

    internal ShortCodes(short[] codes, bool signed, double scale, double atZero)
        : base(scale, atZero, signed ? 32768 : 0)
    {
        _codes = codes;
        Length = codes.Length;
        _flip = signed ? 0x8000 : 0;
    }

    private ShortCodes(ShortCodes whole, int first, int length)
        : base(whole.Scale, whole.AtZero, whole.Zero)
    {
        _codes = whole._codes;
        _flip = whole._flip;
        _first = first;
        Length = length;
    }

    internal override int Codes => 65536;

    internal override int Length { get; }

    internal override double this[int index] => ValueOf(CodeAt(_first + index));

    private int CodeAt(int place) => (ushort)_codes[place] ^ _flip;

    internal override void Copy(int from, double[] destination, int offset, int count)
    {
        for (int i = 0; i < count; i++)
            destination[offset + i] = ValueOf(CodeAt(_first + from + i));
    }

    internal override CodeCounts CountCodes()
    {
        var counts = new long[65536];
        for (int i = _first; i < _first + Length; i++)
            counts[CodeAt(i)]++;
        return new CodeCounts(counts, this);
    }

    internal override void Extremes(int from, int to, out double lowest, out double highest)
    {
        int low = 65535, high = 0;
        for (int i = _first + from; i < _first + to; i++)
        {
            int code = CodeAt(i);
            low = Math.Min(low, code);
            high = Math.Max(high, code);
        }
        lowest = ValueOf(low);
        highest = ValueOf(high);
    }

    private protected override int NextCodeAtOrAbove(int threshold, int from, int to)
    {
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        int width = Vector<ushort>.Count;
        var flip = new Vector<ushort>((ushort)_flip);
        var level = new Vector<ushort>((ushort)threshold);
        ReadOnlySpan<ushort> rest = MemoryMarshal.Cast<short, ushort>(_codes.AsSpan(i, end - i));
        int at = 0;
        while (at + width <= rest.Length && !Vector.GreaterThanOrEqualAny(new Vector<ushort>(rest.Slice(at)) ^ flip, level))
            at += width;
        i += at;
#endif
        while (i < end && CodeAt(i) < threshold)
            i++;
        return i - _first;
    }

    private protected override int NextCodeBelow(int threshold, int from, int to)
    {
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        int width = Vector<ushort>.Count;
        var flip = new Vector<ushort>((ushort)_flip);
        var level = new Vector<ushort>((ushort)threshold);
        ReadOnlySpan<ushort> rest = MemoryMarshal.Cast<short, ushort>(_codes.AsSpan(i, end - i));
        int at = 0;
        while (at + width <= rest.Length && !Vector.LessThanAny(new Vector<ushort>(rest.Slice(at)) ^ flip, level))
            at += width;
        i += at;
#endif
        while (i < end && CodeAt(i) >= threshold)
            i++;
        return i - _first;
    }

    internal override string ItemType => _flip == 0 ? "u2" : "i2";

    internal override void CopyItems(int from, byte[] destination, int count)
    {
        // Through a block of its own: the byte offset into a long array does not fit an int.
        var block = new short[count];
        Array.Copy(_codes, _first + from, block, 0, count);
        Buffer.BlockCopy(block, 0, destination, 0, 2 * count);
    }

    internal override SampleStore Slice(int from, int count) => new ShortCodes(this, _first + from, count);
}
