using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>What converters taking turns add to a spectrum: tones from their offsets, images from their gains and their skew (handbook 5.7; Black and Hodges 1980, from memory).</summary>
public static class Interleaving
{
    /// <summary>The image of a sine through two converters whose instants are off by <paramref name="skew"/>, relative to the sine: 20 lg tan(π f dt).</summary>
    /// <param name="frequency">The frequency of the sine, above 0 Hz.</param>
    /// <param name="skew">By how much the spacing of the two halves is off; above 0 s and below half a period.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static DecibelRatio SkewImage(Frequency frequency, Duration skew)
    {
        double f = Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency));
        double turns = f * Sampling.RequireTime(skew, nameof(skew));
        if (turns >= 0.5)
            throw Refuse.OutOfRange(skew.SiValue, Duration.Kind, nameof(skew), $"below half a period of {frequency}");
        return DecibelRatio.FromSi(20 * Math.Log10(Math.Tan(Math.PI * turns)), nameof(skew));
    }

    /// <summary>The image of a sine through two converters whose gains differ by <paramref name="mismatch"/>, relative to the sine: 20 lg(ε/2), to first order.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mismatch"/> is not above 0 and below 1.</exception>
    public static DecibelRatio GainImage(Ratio mismatch) =>
        mismatch.SiValue > 0 && mismatch.SiValue < 1
            ? DecibelRatio.FromSi(20 * Math.Log10(mismatch.SiValue / 2), nameof(mismatch))
            : throw Refuse.OutOfRange(mismatch.SiValue, Ratio.Kind, nameof(mismatch), "above 0 and below 1");

    /// <summary>Where the images of a sine appear below the Nyquist frequency: k fs/M ± f, folded, in rising order and without repeats.</summary>
    /// <param name="frequency">The frequency of the sine.</param>
    /// <param name="rate">The rate of all converters together.</param>
    /// <param name="converters">How many take turns: 2 to 256.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static IReadOnlyList<Frequency> ImageFrequencies(Frequency frequency, SampleRate rate, int converters)
    {
        double own = Aliasing.Fold(frequency, rate).SiValue, tolerance = 1e-12 * rate.SiValue;
        var found = new List<Frequency>();
        for (int k = 1; k < RequireConverters(converters); k++)
        {
            // k fs/M - f is the fold of (M-k) fs/M + f.
            Frequency folded = Aliasing.Fold(Frequency.FromSi(rate.SiValue * k / converters + frequency.SiValue, nameof(frequency)), rate);
            if (Math.Abs(folded.SiValue - own) > tolerance && !found.Exists(other => Math.Abs(other.SiValue - folded.SiValue) <= tolerance))
                found.Add(folded);
        }
        found.Sort();
        return found;
    }

    /// <summary>Where different offsets show as tones whatever the signal: k fs/M up to the Nyquist frequency, in rising order.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static IReadOnlyList<Frequency> OffsetTones(SampleRate rate, int converters)
    {
        double fs = Sampling.RequireRate(rate, nameof(rate));
        var tones = new List<Frequency>();
        for (int k = 1; 2 * k <= RequireConverters(converters); k++)
            tones.Add(Frequency.FromSi(fs * k / converters, nameof(rate)));
        return tones;
    }

    private static int RequireConverters(int converters) =>
        converters >= 2 && converters <= 256
            ? converters
            : throw new ArgumentOutOfRangeException(nameof(converters), FormattableString.Invariant($"converters must be 2 to 256; was {converters}"));
}
