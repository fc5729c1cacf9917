using System;

namespace Acquisition.Core;

/// <summary>A record put together over many triggers of a repetitive signal. The bandwidth is that of the sampling gate and the jitter, not of the clock (handbook 5.6).</summary>
public static class EquivalentTime
{
    /// <summary>The effective rate of sequential sampling, one sample per trigger, each later by <paramref name="delayStep"/>: 1 / step.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="delayStep"/> is not above 0 s.</exception>
    public static SampleRate SequentialRate(Duration delayStep) => SampleRate.FromSi(1 / Sampling.RequireTime(delayStep, nameof(delayStep)), nameof(delayStep));

    /// <summary>How long a sequential record takes: one trigger per point.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="points"/> is no points, or <paramref name="triggerRate"/> is not above 0 Hz.</exception>
    public static Duration SequentialTime(PointCount points, Frequency triggerRate) => Duration.FromSi(
        Sampling.RequirePoints(points, nameof(points)) / Refuse.UnlessAboveZero(triggerRate.SiValue, Frequency.Kind, nameof(triggerRate)), nameof(triggerRate));

    /// <summary>The mean number of triggers until random sampling has filled every bin, one hit in one of the equally likely bins per trigger: n (1 + 1/2 + ... + 1/n).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bins"/> is no points.</exception>
    public static double MeanNumberOfTriggers(PointCount bins) => Sampling.RequirePoints(bins, nameof(bins)) * Harmonic(bins.Points);

    /// <summary>The chance that random sampling has filled every bin after so many triggers, (1 - (1 - 1/n)^k)^n: the bins taken as independent, which is close for more than a few.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bins"/> is no points, or <paramref name="triggers"/> is negative.</exception>
    public static Ratio ChanceOfAFullRecord(PointCount bins, long triggers)
    {
        double n = Sampling.RequirePoints(bins, nameof(bins));
        if (triggers < 0)
            throw new ArgumentOutOfRangeException(nameof(triggers), FormattableString.Invariant($"triggers must be at least 0; was {triggers}"));
        if (triggers < n)
            return Ratio.FromFraction(0);
        double empty = n == 1 ? 0 : Math.Exp(triggers * Log1Minus(1 / n));
        return Ratio.FromSi(Math.Exp(n * Log1Minus(empty)), nameof(triggers));
    }

    private static double Harmonic(long n)
    {
        if (n <= 10_000)
        {
            double sum = 0;
            for (long k = n; k >= 1; k--)
                sum += 1.0 / k;
            return sum;
        }
        // Euler-Maclaurin: the next term is below 1e-18 here.
        double x = n;
        return Math.Log(x) + 0.57721566490153286 + 1 / (2 * x) - 1 / (12 * x * x);
    }

    /// <summary>ln(1 - x) without loss of digits for small x.</summary>
    internal static double Log1Minus(double x)
    {
        if (x > 0.01)
            return Math.Log(1 - x);
        double sum = 0, power = x;
        for (int k = 1; k <= 12; k++, power *= x)
            sum -= power / k;
        return sum;
    }
}
