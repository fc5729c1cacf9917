using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>Samples that sit at a limit while the sine goes on beyond it.</summary>
internal sealed class ClippedSamples
{
    private ClippedSamples(int count, double low, double high, IReadOnlyList<SampleRun> kept)
    {
        Count = count;
        Low = low;
        High = high;
        Kept = kept;
    }

    internal int Count { get; }

    internal double Low { get; }

    internal double High { get; }

    /// <summary>The runs of samples between the limits.</summary>
    internal IReadOnlyList<SampleRun> Kept { get; }

    /// <summary>The clipped samples by the known limits of the converter, or else by what the fit says of the record's extremes.</summary>
    internal static ClippedSamples? Find(double[] x, SineSolution fit, double lowest, double highest, double? lowLimit, double? highLimit)
    {
        double low = lowLimit ?? Plateau(x, fit, lowest, -1) ?? double.NegativeInfinity;
        double high = highLimit ?? Plateau(x, fit, highest, 1) ?? double.PositiveInfinity;
        if (lowest > low && highest < high)
            return null;
        var kept = new List<SampleRun>();
        int count = 0, from = 0;
        for (int i = 0; i <= x.Length; i++)
        {
            bool clipped = i < x.Length && (x[i] <= low || x[i] >= high);
            if (!clipped && i < x.Length)
                continue;
            if (i > from)
                kept.Add(new SampleRun(from, i));
            from = i + 1;
            if (clipped)
                count++;
        }
        return count == 0 ? null : new ClippedSamples(count, low, high, kept);
    }

    /// <summary>
    /// The record's extreme, when several samples share it and the fitted sine runs beyond it by more than half a step there. The top code of a
    /// quantised sine is shared too, but holds the sine to within half a step.
    /// </summary>
    private static double? Plateau(double[] x, SineSolution fit, double end, int sign)
    {
        int shared = 0;
        foreach (double value in x)
        {
            if (value == end)
                shared++;
        }
        if (shared < 3)
            return null;
        double extreme = sign * end, next = double.NegativeInfinity;
        foreach (double value in x)
        {
            if (sign * value > next && sign * value < extreme)
                next = sign * value;
        }
        int sharedBeyond = 0, beyond = 0;
        double excess = 0;
        double[] fitted = fit.Values(x.Length);
        for (int i = 0; i < x.Length; i++)
        {
            double v = sign * fitted[i];
            if (v <= extreme)
                continue;
            beyond++;
            if (sign * x[i] != extreme)
                continue;
            sharedBeyond++;
            excess += v - extreme;
        }
        // A step that is a large part of the range is the gap of a two-level signal, not a code.
        double step = double.IsInfinity(next) || extreme - next > fit.Model.Amplitude / 2 ? 0 : extreme - next;
        bool clipped = sharedBeyond >= 3 && excess / sharedBeyond > 0.5 * step + 1e-9 * fit.Model.Amplitude && 2 * sharedBeyond >= beyond;
        return clipped ? sign * extreme : null;
    }
}
