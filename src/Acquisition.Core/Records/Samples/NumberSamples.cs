using System;

namespace Acquisition.Core.Records;

/// <summary>Samples as numbers, in double or single precision.</summary>
internal static class NumberSamples
{
    internal static SampleStore Of(double[] values) => new NumberSamples<double, DoublePrecision>(values, 0, values.Length);

    internal static SampleStore Of(float[] values) => new NumberSamples<float, SinglePrecision>(values, 0, values.Length);
}

/// <summary>Samples as numbers of a precision.</summary>
internal sealed class NumberSamples<T, TPrecision> : SampleStore
    where T : struct
    where TPrecision : struct, IPrecision<T>
{
    private readonly T[] _values;
    private readonly int _first;

    internal NumberSamples(T[] values, int first, int length)
    {
        _values = values;
        _first = first;
        Length = length;
    }

    internal override int Length { get; }

    internal override string ItemType => default(TPrecision).ItemType;

    internal override double this[int index] => default(TPrecision).ToDouble(_values[_first + index]);

    internal NumberView<T, TPrecision> View => new(_values, _first, Length);

    internal override bool InPlace(out double[]? items, out int first)
    {
        items = _values as double[];
        first = _first;
        return items is not null;
    }

    internal override void Copy(int from, double[] destination, int offset, int count)
    {
        if (_values is double[] same)
        {
            Array.Copy(same, _first + from, destination, offset, count);
            return;
        }
        for (int i = 0; i < count; i++)
            destination[offset + i] = default(TPrecision).ToDouble(_values[_first + from + i]);
    }

    internal override void Extremes(int from, int to, out double lowest, out double highest) => View.Extremes(from, to, out lowest, out highest);

    internal override EdgeScan ScanEdges(StateLevels states, PulseSettings settings, double step) => new EdgeScan<NumberView<T, TPrecision>>(View, states, settings, step);

    internal override void CopyItems(int from, byte[] destination, int count)
    {
        // Through a block of its own: the byte offset into a long array does not fit an int.
        var block = new T[count];
        Array.Copy(_values, _first + from, block, 0, count);
        Buffer.BlockCopy(block, 0, destination, 0, Buffer.ByteLength(block));
    }

    internal override SampleStore Slice(int from, int count) => new NumberSamples<T, TPrecision>(_values, _first + from, count);

    internal override int FirstNotFinite()
    {
        for (int i = 0; i < Length; i++)
        {
            if (!(Math.Abs(this[i]) <= double.MaxValue))
                return i;
        }
        return -1;
    }
}

/// <summary>How numbers are kept.</summary>
internal interface IPrecision<T>
{
    /// <summary>Letter and size in bytes.</summary>
    string ItemType { get; }

    double ToDouble(T value);

#if NET8_0_OR_GREATER
    /// <summary>The lowest number of this precision that is at or above a level: numbers compare with it as they do with the level.</summary>
    T Ceiling(double level);
#endif
}

internal readonly struct DoublePrecision : IPrecision<double>
{
    public string ItemType => "f8";

    public double ToDouble(double value) => value;

#if NET8_0_OR_GREATER
    public double Ceiling(double level) => level;
#endif
}

internal readonly struct SinglePrecision : IPrecision<float>
{
    public string ItemType => "f4";

    public double ToDouble(float value) => value;

#if NET8_0_OR_GREATER
    public float Ceiling(double level) => (float)level < level ? MathF.BitIncrement((float)level) : (float)level;
#endif
}
