using System;
#if NET8_0_OR_GREATER
using System.Numerics;
#endif

namespace Acquisition.Core.Records;

/// <summary>Numbers as the scan for transitions looks at them.</summary>
internal readonly struct NumberView<T, TPrecision> : ISampleView
    where T : struct
    where TPrecision : struct, IPrecision<T>
{
    private readonly T[] _values;
    private readonly int _first;

    internal NumberView(T[] values, int first, int length)
    {
        _values = values;
        _first = first;
        Length = length;
    }

    public int Length { get; }

    public int Codes => 0;

    public double this[int index] => default(TPrecision).ToDouble(_values[_first + index]);

    public Level LevelOf(double value) => new(value);

    public bool IsAtOrAbove(int index, in Level level) => this[index] >= level.Value;

    public int NextAtOrAbove(in Level level, int from, int to)
    {
        int i = from;
#if NET8_0_OR_GREATER
        int width = Vector<T>.Count;
        var threshold = new Vector<T>(default(TPrecision).Ceiling(level.Value));
        while (i + width <= to && !Vector.GreaterThanOrEqualAny(new Vector<T>(_values, _first + i), threshold))
            i += width;
#endif
        while (i < to && !(this[i] >= level.Value))
            i++;
        return i;
    }

    public int NextBelow(in Level level, int from, int to)
    {
        int i = from;
#if NET8_0_OR_GREATER
        int width = Vector<T>.Count;
        var threshold = new Vector<T>(default(TPrecision).Ceiling(level.Value));
        while (i + width <= to && !Vector.LessThanAny(new Vector<T>(_values, _first + i), threshold))
            i += width;
#endif
        while (i < to && !(this[i] < level.Value))
            i++;
        return i;
    }

    public void Read(EdgeBatch batch, int first) => EdgeSamples.Read(this, batch, first, batch.Count);

    public int Crossings(in Level level, int from, int to, int[] places, out int count) => Records.Crossings.OneByOne(this, level, from, to, places, out count);

#if NET8_0_OR_GREATER
    // A vector holds few numbers: walking along an edge is as fast.
    public bool HasBits => false;

    public void Compare(int[] crossings, int count, EdgeLevels first, EdgeLevels next, EdgeBits[] bits)
    {
    }

    public int Extremes(EdgeBatch batch, EdgeLevels even, EdgeLevels odd, int first, int to) => first;
#endif

    public double Extreme(bool highest, int from, int to)
    {
        Extremes(from, to, out double low, out double high);
        return highest ? high : low;
    }

    internal void Extremes(int from, int to, out double lowest, out double highest)
    {
        lowest = double.PositiveInfinity;
        highest = double.NegativeInfinity;
        int i = from;
#if NET8_0_OR_GREATER
        int width = Vector<T>.Count;
        if (to - i >= width)
        {
            Vector<T> low = new(_values, _first + i), high = low, numbers = Vector.Equals(low, low);
            for (i += width; i + width <= to; i += width)
            {
                var v = new Vector<T>(_values, _first + i);
                low = Vector.Min(low, v);
                high = Vector.Max(high, v);
                numbers &= Vector.Equals(v, v);
            }
            if (!Vector.EqualsAll(Vector.OnesComplement(numbers).As<T, byte>(), Vector<byte>.Zero))
            {
                lowest = highest = double.NaN;
                return;
            }
            for (int k = 0; k < width; k++)
            {
                lowest = Math.Min(lowest, default(TPrecision).ToDouble(low[k]));
                highest = Math.Max(highest, default(TPrecision).ToDouble(high[k]));
            }
        }
#endif
        for (; i < to; i++)
        {
            double v = this[i];
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
}
