using System;

namespace Acquisition.Core.Records;

/// <summary>The shortest interval that holds half of the values: floor(n/2) + 1 of them (Rousseeuw and Leroy 1987; handbook 8.2). Its mean is called the shorth; its midpoint is another estimator.</summary>
internal readonly struct ShortestHalf
{
    private ShortestHalf(double mean, double midpoint)
    {
        Mean = mean;
        Midpoint = midpoint;
    }

    internal double Mean { get; }

    internal double Midpoint { get; }

    /// <summary>Of sorted values, the first of equally short intervals.</summary>
    internal static ShortestHalf OfSorted(double[] values, int from, int to)
    {
        int k = (to - from) / 2 + 1, best = from;
        for (int i = from; i + k <= to; i++)
        {
            if (values[i + k - 1] - values[i] < values[best + k - 1] - values[best])
                best = i;
        }
        double sum = 0;
        for (int i = best; i < best + k; i++)
            sum += values[i] - values[best];
        return new ShortestHalf(values[best] + sum / k, 0.5 * (values[best] + values[best + k - 1]));
    }

    /// <summary>Of the codes from one cell of a distribution to before another, each as often as it occurs.</summary>
    internal static ShortestHalf OfCodes(AmplitudeDistribution codes, int from, int to)
    {
        long total = 0;
        for (int i = from; i < to; i++)
            total += codes.Counts[i];
        long k = total / 2 + 1, inside = 0;
        double width = double.PositiveInfinity;
        ShortestHalf best = default;
        for (int low = from, high = from; low < to; low++)
        {
            if (codes.Counts[low] == 0)
                continue;
            while (high < to && inside < k)
                inside += codes.Counts[high++];
            if (inside < k)
                break;
            double first = codes.MeanOf(low), last = codes.MeanOf(high - 1);
            if (last - first < width)
            {
                width = last - first;
                // The top code takes part only as often as is needed to make a half.
                double sum = -(inside - k) * (last - first);
                for (int i = low; i < high; i++)
                {
                    if (codes.Counts[i] > 0)
                        sum += codes.Counts[i] * (codes.MeanOf(i) - first);
                }
                best = new ShortestHalf(first + sum / k, 0.5 * (first + last));
            }
            inside -= codes.Counts[low];
        }
        return best;
    }
}
