using System;

namespace Acquisition.Core.Records;

/// <summary>
/// How the samples of a record are distributed, in cells from the smallest to the largest sample: one for each code where they are codes, else many narrow ones, each with
/// the sum of its samples. One pass over codes, two over numbers (the first finds the range).
/// </summary>
internal sealed class AmplitudeDistribution
{
    private AmplitudeDistribution(double minimum, double maximum, long[] counts, double[] sums)
    {
        Minimum = minimum;
        Maximum = maximum;
        Counts = counts;
        Sums = sums;
    }

    internal double Minimum { get; }

    internal double Maximum { get; }

    internal long[] Counts { get; }

    internal double[] Sums { get; }

    internal double MeanOf(int cell) => Sums[cell] / Counts[cell];

    /// <summary>The distribution of samples that are all finite.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="bins">The number of bins that the cells must nest in, where the samples are numbers.</param>
    /// <param name="call">Who watches; null where nobody does.</param>
    internal static AmplitudeDistribution Of(SampleStore samples, int bins, LongCall? call = null)
    {
        if (CodeCounts.Of(samples, call) is { } codes)
        {
            var counts = new long[codes.Last - codes.First + 1];
            var sums = new double[counts.Length];
            for (int i = 0; i < counts.Length; i++)
            {
                counts[i] = codes.Counts[codes.First + i];
                sums[i] = counts[i] * codes.ValueOf(codes.First + i);
            }
            return new AmplitudeDistribution(codes.ValueOf(codes.First), codes.ValueOf(codes.Last), counts, sums);
        }
        samples.Extremes(call?.Part(0, 0.3), out double minimum, out double maximum);
        int cells = minimum == maximum ? 1 : bins * Math.Max(1, 8192 / bins);
        var cellCounts = new long[cells];
        var cellSums = new double[cells];
        double scale = cells / (maximum - minimum);
        if (double.IsInfinity(scale) || scale == 0)
            scale = 0;
        var block = new double[4096];
        for (int from = 0, count; from < samples.Length; from += count)
        {
            if (from % SampleStore.SamplesPerLook == 0)
                call?.Reached(0.3 + 0.7 * from / samples.Length);
            count = Math.Min(block.Length, samples.Length - from);
            samples.Copy(from, block, 0, count);
            for (int i = 0; i < count; i++)
            {
                int cell = Math.Min(cells - 1, (int)((block[i] - minimum) * scale));
                cellCounts[cell]++;
                cellSums[cell] += block[i];
            }
        }
        return new AmplitudeDistribution(minimum, maximum, cellCounts, cellSums);
    }

    /// <summary>How many samples lie from one value to another, both included, cells taken at their mean.</summary>
    internal long CountBetween(double low, double high) => Between(low, high).Count;

    /// <summary>The moments of the samples from one value to another, both included, cells taken at their mean.</summary>
    internal RunningMoments Between(double low, double high)
    {
        var moments = default(RunningMoments);
        for (int i = 0; i < Counts.Length; i++)
        {
            if (Counts[i] > 0 && MeanOf(i) >= low && MeanOf(i) <= high)
                moments.Add(MeanOf(i), Counts[i]);
        }
        return moments;
    }

    /// <summary>Of the samples in the fullest cell near a level and of those beyond it, seen from the other state, the part that is beyond: none where the signal rests without noise.</summary>
    internal double PartBeyondFullest(double level, double reach, int direction)
    {
        int fullest = -1;
        for (int i = 0; i < Counts.Length; i++)
        {
            if (Counts[i] > 0 && Math.Abs(MeanOf(i) - level) <= reach && (fullest < 0 || Counts[i] > Counts[fullest]))
                fullest = i;
        }
        if (fullest < 0)
            return 1;
        long beyond = 0;
        for (int i = fullest + direction; i >= 0 && i < Counts.Length; i += direction)
            beyond += Counts[i];
        return (double)beyond / (beyond + Counts[fullest]);
    }

    /// <summary>The median distance from a level of the samples beyond it, seen from the other state: noise and nothing of the transitions.</summary>
    internal double MedianBeyond(double level, int direction)
    {
        long beyond = 0;
        for (int i = 0; i < Counts.Length; i++)
        {
            if (Counts[i] > 0 && direction * (MeanOf(i) - level) >= 0)
                beyond += Counts[i];
        }
        long half = 0;
        for (int n = 0; n < Counts.Length; n++)
        {
            // From the level outwards.
            int i = direction > 0 ? n : Counts.Length - 1 - n;
            if (Counts[i] == 0 || direction * (MeanOf(i) - level) < 0)
                continue;
            half += Counts[i];
            if (2 * half >= beyond)
                return direction * (MeanOf(i) - level);
        }
        return 0;
    }
}
