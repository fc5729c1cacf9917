using System;

namespace Acquisition.Core.Records;

/// <summary>Samples that sit at a limit while the sine goes on beyond it.</summary>
internal sealed class ClippedSamples
{
    /// <summary>
    /// How many times as many samples a round top has at its last code than at the one before: sqrt(f) to sqrt(1 + f) - sqrt(f), where the top reaches the part f of a step into the last code,
    /// is at most 2.4. A distorted sine that a fit runs beyond keeps it; a clipped one has a flat top.
    /// </summary>
    private const double MostOfRoundTop = 3;

    private ClippedSamples(int count, double low, double high)
    {
        Count = count;
        Low = low;
        High = high;
    }

    internal int Count { get; }

    internal double Low { get; }

    internal double High { get; }

    /// <summary>Whether a sample is one of them.</summary>
    internal bool Holds(double value) => value <= Low || value >= High;

    /// <summary>The clipped samples by the known limits of the converter, or else by what the fit says of the record's extremes.</summary>
    internal static ClippedSamples? Find(SamplePasses x, SineSolution fit, double lowest, double highest, double? lowLimit, double? highLimit)
    {
        double low = lowLimit ?? Plateau(x, fit, lowest, -1) ?? double.NegativeInfinity;
        double high = highLimit ?? Plateau(x, fit, highest, 1) ?? double.PositiveInfinity;
        if (lowest > low && highest < high)
            return null;
        int count = 0;
        for (int at = 0; at < x.Length;)
        {
            SampleBlock block = x.Next(at, x.Length);
            for (; at < block.To; at++)
            {
                if (block[at] <= low || block[at] >= high)
                    count++;
            }
        }
        return count == 0 ? null : new ClippedSamples(count, low, high);
    }

    /// <summary>
    /// The record's extreme, when several samples share it and the fitted sine runs beyond it by more than half a step there. The top code of a
    /// quantised sine is shared too, but holds the sine to within half a step.
    /// </summary>
    private static double? Plateau(SamplePasses x, SineSolution fit, double end, int sign)
    {
        int shared = 0;
        for (int at = 0; at < x.Length;)
        {
            SampleBlock block = x.Next(at, x.Length);
            for (; at < block.To; at++)
            {
                if (block[at] == end)
                    shared++;
            }
        }
        if (shared < 3)
            return null;
        double extreme = sign * end, next = double.NegativeInfinity;
        int sharedBeyond = 0, beyond = 0, sharedNext = 0;
        double excess = 0;
        var fitted = new double[SamplePasses.BlockLength];
        for (int at = 0; at < x.Length;)
        {
            SampleBlock block = x.Next(at, x.Length);
            fit.Values(block, fitted);
            for (; at < block.To; at++)
            {
                double v = sign * fitted[at - block.From], value = sign * block[at];
                if (value == next)
                    sharedNext++;
                else if (value > next && value < extreme)
                    (next, sharedNext) = (value, 1);
                if (v <= extreme)
                    continue;
                beyond++;
                if (value != extreme)
                    continue;
                sharedBeyond++;
                excess += v - extreme;
            }
        }
        // A step that is a large part of the range is the gap of a two-level signal, not a code.
        double step = double.IsInfinity(next) || extreme - next > fit.Model.Amplitude / 2 ? 0 : extreme - next;
        bool clipped = (step == 0 || shared > MostOfRoundTop * sharedNext) && sharedBeyond >= 3 && excess / sharedBeyond > 0.5 * step + 1e-9 * fit.Model.Amplitude && 2 * sharedBeyond >= beyond;
        return clipped ? sign * extreme : null;
    }
}
