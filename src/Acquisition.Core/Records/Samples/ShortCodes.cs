using System;

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

    internal override string ItemType => _flip == 0 ? "u2" : "i2";

    internal override double this[int index] => ValueOf(CodeAt(index));

    internal ShortView View => new(this, _codes, _first, _flip);

    internal override void Copy(int from, double[] destination, int offset, int count)
    {
        for (int i = 0; i < count; i++)
            destination[offset + i] = ValueOf(CodeAt(from + i));
    }

    internal override CodeCounts CountCodes()
    {
        var counts = new long[65536];
        for (int i = 0; i < Length; i++)
            counts[CodeAt(i)]++;
        return new CodeCounts(counts, this);
    }

    internal override void Extremes(int from, int to, out double lowest, out double highest) => View.Extremes(from, to, out lowest, out highest);

    internal override EdgeScan ScanEdges(StateLevels states, PulseSettings settings, double step) => new EdgeScan<ShortView>(View, states, settings, step);

    internal override void CopyItems(int from, byte[] destination, int count)
    {
        // Through a block of its own: the byte offset into a long array does not fit an int.
        var block = new short[count];
        Array.Copy(_codes, _first + from, block, 0, count);
        Buffer.BlockCopy(block, 0, destination, 0, 2 * count);
    }

    internal override SampleStore Slice(int from, int count) => new ShortCodes(this, _first + from, count);

    private int CodeAt(int index) => (ushort)_codes[_first + index] ^ _flip;
}
