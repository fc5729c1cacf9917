using System;
#if NET8_0_OR_GREATER
using System.Numerics;
#endif

namespace Acquisition.Core.Records;

/// <summary>Samples as doubles.</summary>
internal sealed class DoubleSamples : SampleStore
{
    private readonly double[] _values;
    private readonly int _first;

    internal DoubleSamples(double[] values)
        : this(values, 0, values.Length)
    {
    }

    private DoubleSamples(double[] values, int first, int length)
    {
        _values = values;
        _first = first;
        Length = length;
    }

    internal override int Length { get; }

    internal override double this[int index] => _values[_first + index];

    internal override void Copy(int from, double[] destination, int offset, int count) => Array.Copy(_values, _first + from, destination, offset, count);

    internal override void Extremes(int from, int to, out double lowest, out double highest)
    {
        lowest = double.PositiveInfinity;
        highest = double.NegativeInfinity;
        int i = from;
#if NET8_0_OR_GREATER
        int width = Vector<double>.Count;
        if (to - from >= width)
        {
            var low = new Vector<double>(double.PositiveInfinity);
            var high = new Vector<double>(double.NegativeInfinity);
            var numbers = Vector<long>.AllBitsSet;
            for (; i + width <= to; i += width)
            {
                var v = new Vector<double>(_values, _first + i);
                low = Vector.Min(low, v);
                high = Vector.Max(high, v);
                numbers &= Vector.Equals(v, v);
            }
            if (!Vector.EqualsAll(numbers, Vector<long>.AllBitsSet))
            {
                lowest = highest = double.NaN;
                return;
            }
            for (int k = 0; k < width; k++)
            {
                lowest = Math.Min(lowest, low[k]);
                highest = Math.Max(highest, high[k]);
            }
        }
#endif
        for (; i < to; i++)
        {
            double v = _values[_first + i];
            if (double.IsNaN(v))
            {
                lowest = highest = double.NaN;
                return;
            }
            if (v < lowest)
                lowest = v;
            if (v > highest)
                highest = v;
        }
    }

    internal override int NextAtOrAbove(double level, int from, int to)
    {
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        int width = Vector<double>.Count;
        var threshold = new Vector<double>(level);
        for (; i + 2 * width <= end; i += 2 * width)
        {
            var reached = Vector.GreaterThanOrEqual(new Vector<double>(_values, i), threshold) | Vector.GreaterThanOrEqual(new Vector<double>(_values, i + width), threshold);
            if (!Vector.EqualsAll(reached, Vector<long>.Zero))
                break;
        }
#endif
        while (i < end && !(_values[i] >= level))
            i++;
        return i - _first;
    }

    internal override int NextBelow(double level, int from, int to)
    {
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        int width = Vector<double>.Count;
        var threshold = new Vector<double>(level);
        for (; i + 2 * width <= end; i += 2 * width)
        {
            var reached = Vector.LessThan(new Vector<double>(_values, i), threshold) | Vector.LessThan(new Vector<double>(_values, i + width), threshold);
            if (!Vector.EqualsAll(reached, Vector<long>.Zero))
                break;
        }
#endif
        while (i < end && !(_values[i] < level))
            i++;
        return i - _first;
    }

    internal override string ItemType => "f8";

    internal override void CopyItems(int from, byte[] destination, int count)
    {
        // Through a block of its own: the byte offset into a long array does not fit an int.
        var block = new double[count];
        Array.Copy(_values, _first + from, block, 0, count);
        Buffer.BlockCopy(block, 0, destination, 0, 8 * count);
    }

    internal override SampleStore Slice(int from, int count) => new DoubleSamples(_values, _first + from, count);

    internal override int FirstNotFinite()
    {
        for (int i = 0; i < Length; i++)
        {
            if (!(Math.Abs(_values[_first + i]) <= double.MaxValue))
                return i;
        }
        return -1;
    }
}
