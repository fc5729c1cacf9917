using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Whether a record whose step nobody stated holds few values on which it dwells as noise does: a quiet level on two or three codes of a converter, read from a file. Independent noise leaves a level at
/// each sample with the same probability q, so that it dwells there for 1 / q samples with a standard deviation of sqrt(1 - q) / q (the geometric distribution); edges of a signal come otherwise.
/// </summary>
internal static class GridNoise
{
    /// <summary>Two states on so many codes are less than 4 steps apart or are told by more than 6 times the noise.</summary>
    private const int MostValues = 5;

    /// <summary>Fewer dwells do not tell noise from a signal.</summary>
    private const int LeastDwells = 8;

    /// <summary>The step between the values; null where they are many, or where the record dwells on them otherwise than noise does.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="distribution">Their distribution.</param>
    /// <param name="middle">Between the two states.</param>
    internal static double? Step(SampleStore samples, AmplitudeDistribution distribution, double middle)
    {
        double step = double.PositiveInfinity, before = double.NegativeInfinity;
        int values = 0;
        for (int i = 0; i < distribution.Counts.Length; i++)
        {
            if (distribution.Counts[i] == 0)
                continue;
            if (++values > MostValues)
                return null;
            step = Math.Min(step, distribution.MeanOf(i) - before);
            before = distribution.MeanOf(i);
        }
        return DwellsAsNoise(samples, middle) ? step : null;
    }

    private static bool DwellsAsNoise(SampleStore samples, double middle)
    {
        var low = default(RunningMoments);
        var high = default(RunningMoments);
        bool isHigh = samples[0] >= middle, isWhole = false;
        int since = 0;
        for (int i = 1; i < samples.Length; i++)
        {
            if (samples[i] >= middle == isHigh)
                continue;
            // The first dwell began before the record.
            if (isWhole && isHigh)
                high.Add(i - since);
            else if (isWhole)
                low.Add(i - since);
            isWhole = true;
            since = i;
            isHigh = !isHigh;
        }
        if (low.Count < LeastDwells || high.Count < LeastDwells)
            return false;
        RunningMoments longer = low.Mean > high.Mean ? low : high, shorter = low.Mean > high.Mean ? high : low;
        // Of independent samples, the part at one level is the probability of leaving the other.
        double leave = shorter.Mean / (low.Mean + high.Mean), scatter = Math.Min(0.9, 4 / Math.Sqrt(longer.Count));
        return Math.Abs(longer.Mean * leave - 1) < scatter
            && Math.Abs(longer.StandardDeviation * leave / Math.Sqrt(1 - leave) - 1) < Math.Max(0.3, scatter);
    }
}
