using System;

namespace Acquisition.Core;

/// <summary>How far the largest sample falls short of the crest of a sine, where nothing is interpolated (handbook 5.10).</summary>
public static class PeakReading
{
    /// <summary>The largest shortfall on one crest, relative to the amplitude: 1 - cos(π f/fs).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Ratio WorstShortfall(Frequency frequency, SampleRate rate) => Ratio.FromSi(InterpolationError.OneMinusCos(Math.PI * InterpolationError.Relative(frequency, rate)), nameof(frequency));

    /// <summary>The mean shortfall on one crest over all phases: 1 - sinc(f/fs).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Ratio MeanShortfall(Frequency frequency, SampleRate rate)
    {
        double x = Math.PI * InterpolationError.Relative(frequency, rate);
        // The series where the difference would cancel.
        double shortfall = x < 0.05 ? x * x / 6 * (1 - x * x / 20 * (1 - x * x / 42)) : 1 - Math.Sin(x) / x;
        return Ratio.FromSi(shortfall, nameof(frequency));
    }

    /// <summary>The lowest rate at which the largest sample on one crest is short by no more than an error: π f / acos(1 - e).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="worstShortfall"/> is not above 0 and at most 1, or <paramref name="frequency"/> is not above 0 Hz.</exception>
    public static SampleRate RateFor(Frequency frequency, Ratio worstShortfall)
    {
        double f = Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency)), e = worstShortfall.SiValue;
        if (!(e > 0 && e <= 1))
            throw Refuse.OutOfRange(e, Ratio.Kind, nameof(worstShortfall), "above 0 and at most 1");
        // acos(1 - e) = 2 asin(sqrt(e/2)), which keeps its digits for a small error.
        return SampleRate.FromSi(f * Math.PI / (2 * Math.Asin(Math.Sqrt(e / 2))), nameof(worstShortfall));
    }
}
