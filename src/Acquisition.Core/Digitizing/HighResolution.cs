using System;

namespace Acquisition.Core;

/// <summary>
/// The high-resolution mode: each stored point is the mean of M raw samples (a boxcar). It trades bandwidth for noise: half a bit for each doubling of M,
/// where the noise is white and at least about half an LSB; distortion and a noise-free quantisation error stay (handbook 5.5).
/// </summary>
public static class HighResolution
{
    /// <summary>The bits gained on white noise: ½ ld M.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is below 1.</exception>
    public static BitDepth BitsGained(int rawPerStored) => BitDepth.FromSi(0.5 * Math.Log(Length(rawPerStored)) / Math.Log(2), nameof(rawPerStored));

    /// <summary>The magnitude of the boxcar at a frequency: |sin(π M f/fs) / (M sin(π f/fs))|, fs being the raw rate.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is below 1, <paramref name="frequency"/> negative or <paramref name="rawRate"/> 0 Sa/s.</exception>
    public static Ratio AmplitudeRatio(int rawPerStored, SampleRate rawRate, Frequency frequency)
    {
        double r = Aliasing.Fold(frequency, rawRate).SiValue / rawRate.SiValue;
        return Ratio.FromSi(Boxcar(Length(rawPerStored), r), nameof(frequency));
    }

    /// <summary>The half-power bandwidth of the boxcar: 0.5 of the stored rate for M = 2, towards 0.442946 for many (handbook 5.5).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is below 2, for one raw sample is no filter; or <paramref name="rawRate"/> is 0 Sa/s.</exception>
    public static Frequency Bandwidth(int rawPerStored, SampleRate rawRate)
    {
        if (rawPerStored < 2)
            throw new ArgumentOutOfRangeException(nameof(rawPerStored), FormattableString.Invariant($"rawPerStored must be at least 2 for the mean to have a bandwidth; was {rawPerStored}"));
        // The gain falls from 1 at 0 to 0 at 1/M: bisect to the last bit.
        double low = 0, high = 1.0 / rawPerStored;
        for (int i = 0; i < 80; i++)
        {
            double middle = 0.5 * (low + high);
            if (Boxcar(rawPerStored, middle) > Math.Sqrt(0.5))
                low = middle;
            else
                high = middle;
        }
        return Frequency.FromSi(0.5 * (low + high) * Sampling.RequireRate(rawRate, nameof(rawRate)), nameof(rawRate));
    }

    /// <summary>The first frequency that the boxcar does not pass: the stored rate fs/M. Beyond it its sidelobes are only 13 dB down, so that it is a poor guard against aliases.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is below 1, or <paramref name="rawRate"/> is 0 Sa/s.</exception>
    public static Frequency FirstNull(int rawPerStored, SampleRate rawRate) => Frequency.FromSi(Sampling.RequireRate(rawRate, nameof(rawRate)) / Length(rawPerStored), nameof(rawRate));

    /// <summary>The stored rate fs/M.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is below 1, or <paramref name="rawRate"/> is 0 Sa/s.</exception>
    public static SampleRate StoredRate(int rawPerStored, SampleRate rawRate) => SampleRate.FromSi(Sampling.RequireRate(rawRate, nameof(rawRate)) / Length(rawPerStored), nameof(rawRate));

    private static double Boxcar(int length, double r)
    {
        double low = Math.Sin(Math.PI * r);
        return low == 0 ? 1 : Math.Abs(Math.Sin(Math.PI * length * r) / (length * low));
    }

    private static int Length(int rawPerStored) =>
        rawPerStored >= 1 ? rawPerStored : throw new ArgumentOutOfRangeException(nameof(rawPerStored), FormattableString.Invariant($"rawPerStored must be at least 1; was {rawPerStored}"));
}
