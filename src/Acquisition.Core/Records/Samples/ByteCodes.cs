using System;
#if NET8_0_OR_GREATER
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
#endif

namespace Acquisition.Core.Records;

/// <summary>Eight-bit codes, offset binary or two's complement.</summary>
internal sealed class ByteCodes : CodeSamples
{
    private readonly byte[] _codes;
    private readonly int _first;
    private readonly byte _flip;
    private readonly double[] _values;

    internal ByteCodes(byte[] codes, bool signed, double scale, double atZero)
        : base(scale, atZero, signed ? 128 : 0)
    {
        _codes = codes;
        Length = codes.Length;
        _flip = (byte)(signed ? 0x80 : 0);
        _values = new double[256];
        for (int raw = 0; raw < 256; raw++)
            _values[raw] = ValueOf(raw ^ _flip);
    }

    private ByteCodes(ByteCodes whole, int first, int length)
        : base(whole.Scale, whole.AtZero, whole.Zero)
    {
        _codes = whole._codes;
        _flip = whole._flip;
        _values = whole._values;
        _first = first;
        Length = length;
    }

    internal override int Codes => 256;

    internal override int Length { get; }

    internal override double this[int index] => _values[_codes[_first + index]];

    internal override void Copy(int from, double[] destination, int offset, int count)
    {
        for (int i = 0; i < count; i++)
            destination[offset + i] = _values[_codes[_first + from + i]];
    }

    internal override CodeCounts CountCodes()
    {
        var raw = new long[256];
        ByteHistogram.Count(_codes, _first, Length, raw);
        var counts = new long[256];
        for (int i = 0; i < 256; i++)
            counts[i ^ _flip] = raw[i];
        return new CodeCounts(counts, this);
    }

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
#endif
    internal override void Extremes(int from, int to, out double lowest, out double highest)
    {
        byte low = 255, high = 0;
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        int width = Vector<byte>.Count;
        if (end - i >= width)
        {
            var flip = new Vector<byte>(_flip);
            var lows = new Vector<byte>((byte)255);
            var highs = Vector<byte>.Zero;
            for (; i + width <= end; i += width)
            {
                Vector<byte> v = new Vector<byte>(_codes, i) ^ flip;
                lows = Vector.Min(lows, v);
                highs = Vector.Max(highs, v);
            }
            for (int k = 0; k < width; k++)
            {
                low = Math.Min(low, lows[k]);
                high = Math.Max(high, highs[k]);
            }
        }
#endif
        for (; i < end; i++)
        {
            byte v = (byte)(_codes[i] ^ _flip);
            low = Math.Min(low, v);
            high = Math.Max(high, v);
        }
        lowest = ValueOf(low);
        highest = ValueOf(high);
    }

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
#endif
    private protected override int NextCodeAtOrAbove(int threshold, int from, int to)
    {
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        if (Vector.IsHardwareAccelerated)
        {
            // Four vectors at a time: a stretch without a crossing is passed at the speed of memory.
            int width = Vector<byte>.Count;
            var flip = new Vector<byte>(_flip);
            var level = new Vector<byte>((byte)threshold);
            ReadOnlySpan<byte> rest = _codes.AsSpan(i, end - i);
            int at = 0;
            for (; at + 4 * width <= rest.Length; at += 4 * width)
            {
                ReadOnlySpan<Vector<byte>> v = MemoryMarshal.Cast<byte, Vector<byte>>(rest.Slice(at, 4 * width));
                Vector<byte> highest = Vector.Max(Vector.Max(v[0] ^ flip, v[1] ^ flip), Vector.Max(v[2] ^ flip, v[3] ^ flip));
                if (Vector.GreaterThanOrEqualAny(highest, level))
                    break;
            }
            i += at;
        }
#endif
        while (i < end && (_codes[i] ^ _flip) < threshold)
            i++;
        return i - _first;
    }

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
#endif
    private protected override int NextCodeBelow(int threshold, int from, int to)
    {
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        if (Vector.IsHardwareAccelerated)
        {
            int width = Vector<byte>.Count;
            var flip = new Vector<byte>(_flip);
            var level = new Vector<byte>((byte)threshold);
            ReadOnlySpan<byte> rest = _codes.AsSpan(i, end - i);
            int at = 0;
            for (; at + 4 * width <= rest.Length; at += 4 * width)
            {
                ReadOnlySpan<Vector<byte>> v = MemoryMarshal.Cast<byte, Vector<byte>>(rest.Slice(at, 4 * width));
                Vector<byte> lowest = Vector.Min(Vector.Min(v[0] ^ flip, v[1] ^ flip), Vector.Min(v[2] ^ flip, v[3] ^ flip));
                if (Vector.LessThanAny(lowest, level))
                    break;
            }
            i += at;
        }
#endif
        while (i < end && (_codes[i] ^ _flip) >= threshold)
            i++;
        return i - _first;
    }

    internal override string ItemType => _flip == 0 ? "u1" : "i1";

    internal override void CopyItems(int from, byte[] destination, int count) => Buffer.BlockCopy(_codes, _first + from, destination, 0, count);

    internal override SampleStore Slice(int from, int count) => new ByteCodes(this, _first + from, count);
}
