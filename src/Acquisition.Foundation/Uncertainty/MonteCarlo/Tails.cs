using System;
using System.Threading.Tasks;

namespace Acquisition.Core.Uncertainty;

/// <summary>
/// The smallest and the largest results in order. Coverage intervals look at no others (the shortest 95 % interval begins among the lowest 5 % and ends among the
/// highest), so sorting the ends is enough: cut-offs from a small sample, one pass that picks what lies beyond them, two short sorts.
/// </summary>
internal sealed class Tails
{
    private const int SampleCount = 8192;

    /// <summary>Below this many results, or when the ends are most of them, sorting all is as quick.</summary>
    private const int SortAllBelow = 4 * SampleCount;

    private Tails(double[] lowest, double[] highest, int count)
    {
        Lowest = lowest;
        Highest = highest;
        Count = count;
    }

    /// <summary>The lowest results, ascending.</summary>
    internal double[] Lowest { get; }

    /// <summary>The highest results, ascending.</summary>
    internal double[] Highest { get; }

    /// <summary>How many results each end holds.</summary>
    internal int Count { get; }

    internal static Tails Of(double[] values, int start, int length, int count, bool parallel)
    {
        if (length >= SortAllBelow && count <= length / 5)
        {
            Tails? picked = Pick(values, start, length, count, parallel);
            if (picked is not null) return picked;
        }
        var sorted = new double[length];
        Array.Copy(values, start, sorted, 0, length);
        Array.Sort(sorted);
        var lowest = new double[count];
        var highest = new double[count];
        Array.Copy(sorted, 0, lowest, 0, count);
        Array.Copy(sorted, length - count, highest, 0, count);
        return new Tails(lowest, highest, count);
    }

    /// <summary>Null where the sample misjudged a cut-off, which five standard deviations of margin make next to impossible for independent trials.</summary>
    private static Tails? Pick(double[] values, int start, int length, int count, bool parallel)
    {
        var sample = new double[SampleCount];
        long stride = length / SampleCount;
        for (int i = 0; i < SampleCount; i++) sample[i] = values[start + i * stride];
        Array.Sort(sample);
        double part = (double)count / length;
        int place = (int)(SampleCount * part + 5 * Math.Sqrt(SampleCount * part * (1 - part)) + 2);
        if (place >= SampleCount / 2) return null;
        double lowCut = sample[place], highCut = sample[SampleCount - 1 - place];

        int capacity = Math.Min(length, (int)(1.5 * length * ((double)place / SampleCount)) + 1024);
        double[] low = new double[capacity], high = new double[capacity];
        int lowCount = 0, highCount = 0, end = start + length;
        for (int i = start; i < end; i++)
        {
            double value = values[i];
            if (value <= lowCut)
            {
                if (lowCount == capacity) return null;
                low[lowCount++] = value;
            }
            if (value >= highCut)
            {
                if (highCount == capacity) return null;
                high[highCount++] = value;
            }
        }
        if (lowCount < count || highCount < count) return null;
        if (parallel) Parallel.Invoke(() => Array.Sort(low, 0, lowCount), () => Array.Sort(high, 0, highCount));
        else
        {
            Array.Sort(low, 0, lowCount);
            Array.Sort(high, 0, highCount);
        }
        Array.Resize(ref low, count);
        var highest = new double[count];
        Array.Copy(high, highCount - count, highest, 0, count);
        return new Tails(low, highest, count);
    }

    /// <summary>The probabilistically symmetric interval (JCGM 101 7.7.2): y(r) to y(r + q), counted from 1, with q results spanned and r = (M - q)/2, halves up.</summary>
    internal (double Low, double High) Symmetric()
    {
        int r = (Count + 1) / 2;
        return (Lowest[r - 1], Highest[r - 1]);
    }

    /// <summary>The shortest interval (JCGM 101 7.7.2 and 5.3.4); of several equally short ones, the lowest.</summary>
    internal (double Low, double High) Shortest()
    {
        int best = 0;
        double width = double.PositiveInfinity;
        for (int r = 0; r < Count; r++)
        {
            double candidate = Highest[r] - Lowest[r];
            if (!(candidate < width)) continue;
            width = candidate;
            best = r;
        }
        return (Lowest[best], Highest[best]);
    }
}
