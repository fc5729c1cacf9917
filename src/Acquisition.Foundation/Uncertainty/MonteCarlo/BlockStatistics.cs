namespace Acquisition.Core.Uncertainty;

/// <summary>Count, mean and squared deviations of a block of results; blocks are joined in their order, so that the sum is the same on any number of threads.</summary>
internal struct BlockStatistics
{
    internal long Count;
    internal double Mean;
    internal double Squares;

    internal static BlockStatistics Of(double[] values, int start, int count)
    {
        double origin = values[start], sum = 0;
        int end = start + count;
        for (int i = start; i < end; i++) sum += values[i] - origin;
        double mean = origin + sum / count, rest = 0, squares = 0;
        for (int i = start; i < end; i++)
        {
            double deviation = values[i] - mean;
            rest += deviation;
            squares += deviation * deviation;
        }
        return new BlockStatistics { Count = count, Mean = mean + rest / count, Squares = squares - rest * rest / count };
    }

    internal void Join(BlockStatistics next)
    {
        long count = Count + next.Count;
        double step = next.Mean - Mean;
        Squares += next.Squares + step * step * ((double)Count * next.Count / count);
        Mean += step * next.Count / count;
        Count = count;
    }

    /// <summary>The standard deviation, denominator M - 1 (JCGM 101 7.6).</summary>
    internal readonly double StandardDeviation => Count < 2 ? 0 : System.Math.Sqrt(System.Math.Max(0, Squares) / (Count - 1));
}
