using System;
#if NET8_0_OR_GREATER
using System.Numerics;
#endif

namespace Acquisition.Core.Records;

/// <summary>Samples as single-precision numbers, half the memory of doubles.</summary>
internal sealed class FloatSamples : SampleStore
{
    private readonly float[] _values;
    private readonly int _first;

    internal FloatSamples(float[] values)
        : this(values, 0, values.Length)
    {
    }

    private FloatSamples(float[] values, int first, int length)
    {
        _values = values;
        _first = first;
        Length = length;
    }

    internal override int Length { get; }

    internal override double this[int index] => _values[_first + index];

    internal override void Copy(int from, double[] destination, int offset, int count)
    {
        for (int i = 0; i < count; i++)
            destination[offset + i] = _values[_first + from + i];
    }

    internal override void Extremes(int from, int to, out double lowest, out double highest)
    {
        float low = float.PositiveInfinity, high = float.NegativeInfinity;
        for (int i = _first + from; i < _first + to; i++)
        {
            float v = _values[i];
            if (float.IsNaN(v))
            {
                lowest = highest = double.NaN;
                return;
            }
            if (v < low)
                low = v;
            if (v > high)
                high = v;
        }
        lowest = low;
        highest = high;
    }

    internal override int NextAtOrAbove(double level, int from, int to)
    {
        int i = _first + from, end = _first + to;
#if NET8_0_OR_GREATER
        // The rounded level may lie a little above the level itself: a block is skipped only on what holds for both.
        var threshold = new Vector<float>(MathF.BitDecrement((float)level));
        for (int width = Vector<float>.Count; i + width <= end; i += width)
        {
            if (Vector.GreaterThanOrEqualAny(new Vector<float>(_values, i), threshold) && AnyAtOrAbove(i, width, level))
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
        var threshold = new Vector<float>(MathF.BitIncrement((float)level));
        for (int width = Vector<float>.Count; i + width <= end; i += width)
        {
            if (Vector.LessThanAny(new Vector<float>(_values, i), threshold) && AnyBelow(i, width, level))
                break;
        }
#endif
        while (i < end && !(_values[i] < level))
            i++;
        return i - _first;
    }

#if NET8_0_OR_GREATER
    private bool AnyAtOrAbove(int at, int width, double level)
    {
        for (int i = at; i < at + width; i++)
        {
            if (_values[i] >= level)
                return true;
        }
        return false;
    }

    private bool AnyBelow(int at, int width, double level)
    {
        for (int i = at; i < at + width; i++)
        {
            if (_values[i] < level)
                return true;
        }
        return false;
    }
#endif

    internal override string ItemType => "f4";

    internal override void CopyItems(int from, byte[] destination, int count)
    {
        // Through a block of its own: the byte offset into a long array does not fit an int.
        var block = new float[count];
        Array.Copy(_values, _first + from, block, 0, count);
        Buffer.BlockCopy(block, 0, destination, 0, 4 * count);
    }

    internal override SampleStore Slice(int from, int count) => new FloatSamples(_values, _first + from, count);

    internal override int FirstNotFinite()
    {
        for (int i = 0; i < Length; i++)
        {
            if (!(Math.Abs(_values[_first + i]) <= float.MaxValue))
                return i;
        }
        return -1;
    }
}
