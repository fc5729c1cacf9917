using System;

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

    internal override string ItemType => _flip == 0 ? "u1" : "i1";

    internal override double this[int index] => _values[_codes[_first + index]];

    internal ByteView View => new(this, _codes, _first, _flip, _values);

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

    internal override void Extremes(int from, int to, out double lowest, out double highest) => View.Extremes(from, to, out lowest, out highest);

    internal override EdgeScan ScanEdges(StateLevels states, PulseSettings settings, double step) => new EdgeScan<ByteView>(View, states, settings, step);

    internal override void CopyItems(int from, byte[] destination, int count) => Buffer.BlockCopy(_codes, _first + from, destination, 0, count);

    internal override SampleStore Slice(int from, int count) => new ByteCodes(this, _first + from, count);
}
