using System;

namespace Acquisition.Core.Uncertainty;

/// <summary>Mean and scatter of readings (JCGM 100 4.2.1 to 4.2.3), in two passes with a correction, so that a large common part does not eat the digits of the scatter.</summary>
internal readonly struct ReadingStatistics
{
    private ReadingStatistics(int count, double mean, double sumOfSquares)
    {
        Count = count;
        Mean = mean;
        SumOfSquares = sumOfSquares;
    }

    internal int Count { get; }

    internal double Mean { get; }

    /// <summary>The sum of squared deviations from the mean.</summary>
    internal double SumOfSquares { get; }

    /// <summary>The experimental standard deviation s, denominator n - 1.</summary>
    internal double StandardDeviation => Math.Sqrt(SumOfSquares / (Count - 1));

    internal double StandardDeviationOfMean => StandardDeviation / Math.Sqrt(Count);

    internal static ReadingStatistics Of(double[] values)
    {
        // Deviations are taken from the first value: readings share their leading digits, so these differences are nearly exact.
        double origin = values[0], sum = 0;
        foreach (double value in values) sum += value - origin;
        double offset = sum / values.Length, rest = 0, squares = 0;
        foreach (double value in values)
        {
            double deviation = value - origin - offset;
            rest += deviation;
            squares += deviation * deviation;
        }
        return new ReadingStatistics(values.Length, origin + (offset + rest / values.Length), Math.Max(0, squares - rest * rest / values.Length));
    }

    /// <summary>The correlation coefficient of two columns of simultaneous readings (JCGM 100 5.2.3, equation 17); 0 where one does not vary.</summary>
    internal static double Correlation(double[] a, ReadingStatistics ofA, double[] b, ReadingStatistics ofB)
    {
        double product = 0;
        for (int i = 0; i < a.Length; i++) product += (a[i] - ofA.Mean) * (b[i] - ofB.Mean);
        double scale = Math.Sqrt(ofA.SumOfSquares * ofB.SumOfSquares);
        return scale == 0 ? 0 : Math.Max(-1, Math.Min(1, product / scale));
    }
}
