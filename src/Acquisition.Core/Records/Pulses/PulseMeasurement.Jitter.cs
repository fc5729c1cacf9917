using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

// Whether jitter is that of the signal or that of the record.
public sealed partial class PulseMeasurement
{
    /// <summary>Below this part of the variance, what the record adds is not worth a word.</summary>
    private const double LeastPart = 0.1;

    /// <summary>
    /// What there is to say where noise makes much of the period jitter, or all of it; null where it does not, or cannot be told. White errors of single edges leave the variance of n periods a relative
    /// standard deviation of sqrt(3 / n): neighbouring periods share an edge and are correlated by -1/2, so that 2 / n grows by 1 + 2 (1/2)^2.
    /// </summary>
    private Finding? NoiseInJitter(in RunningMoments periods)
    {
        double squares = 0;
        int asked = 0;
        for (int k = 0, stride = Math.Max(1, Transitions.Count / (2 * MostAsked)) | 1; k < Transitions.Count; k += stride)
        {
            if (!Transitions[k].IsRising || Interval(k, Transitions[k], 2) is not { HasValue: true } one)
                continue;
            squares += one.Value.RandomSquareSi + one.Value.InterpolationSi * one.Value.InterpolationSi;
            asked++;
        }
        double jitter = periods.StandardDeviation, variance = jitter * jitter;
        if (asked == 0 || !(squares / asked >= LeastPart * variance) || variance == 0)
            return null;
        double own = squares / asked, scatter = Math.Sqrt(3.0 / periods.Count);
        return variance > own * (1 + 2 * scatter)
            ? PulseFindings.JitterHoldsNoise(jitter, Math.Sqrt(own), Math.Sqrt(variance - own))
            : PulseFindings.JitterIsNoise(jitter, Math.Sqrt(own), Math.Sqrt(Bound(variance, own, scatter)));
    }

    /// <summary>Of the variance of the signal, one-sided 95 %. Where there is less jitter than the record should make, its noise is not known well enough to be subtracted.</summary>
    private static double Bound(double variance, double own, double scatter) =>
        own > variance * (1 + 2 * scatter) ? variance : Math.Max(0, variance - own) + 1.645 * scatter * variance;
}
