using System;

namespace Acquisition.Core;

/// <summary>The trio of rate, record length and window, and what they mean on the signal (handbook 5.1, 5.4, 5.14).</summary>
/// <remarks>The window is N intervals long, since N samples own N intervals; the span from the first sample to the last is one interval shorter, and named so.</remarks>
public static class Sampling
{
    /// <summary>The Nyquist rate of a signal: twice its highest content. The sample rate must lie above it, not at it (handbook 5.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="highestContent"/> is not above 0 Hz.</exception>
    public static SampleRate NyquistRate(Frequency highestContent) =>
        SampleRate.FromSi(2 * Refuse.UnlessAboveZero(highestContent.SiValue, Frequency.Kind, nameof(highestContent)), nameof(highestContent));

    /// <summary>The Nyquist frequency of a sampler: half its rate. Content must lie below it, not at it (handbook 5.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Frequency NyquistFrequency(SampleRate rate) => Frequency.FromSi(RequireRate(rate, nameof(rate)) / 2, nameof(rate));

    /// <summary>The time from one sample to the next, 1 / rate.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Duration SampleInterval(SampleRate rate) => Duration.FromSi(1 / RequireRate(rate, nameof(rate)), nameof(rate));

    /// <summary>The points that a window needs at a rate: N = fs T (handbook 5.4), in whole points.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> or <paramref name="window"/> is not above zero.</exception>
    public static PointCount RecordLength(SampleRate rate, Duration window)
    {
        RequireRate(rate, nameof(rate));
        RequireTime(window, nameof(window));
        return rate * window;
    }

    /// <summary>The rate that fills a window with so many points: fs = N / T (handbook 5.4). The last bits are forgiven, so that 14 000 points in 140 ms are 100 kSa/s.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="recordLength"/> or <paramref name="window"/> is not above zero.</exception>
    public static SampleRate Rate(PointCount recordLength, Duration window)
    {
        RequirePoints(recordLength, nameof(recordLength));
        RequireTime(window, nameof(window));
        double rate = recordLength.Points / window.SiValue, nearest = Math.Round(rate);
        return SampleRate.FromSi(Math.Abs(rate - nearest) <= 4 * 2.220446049250313e-16 * rate ? nearest : rate, nameof(window));
    }

    /// <summary>The window that so many points fill at a rate: T = N / fs, N intervals (handbook 5.4).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="recordLength"/> or <paramref name="rate"/> is not above zero.</exception>
    public static Duration Window(PointCount recordLength, SampleRate rate)
    {
        RequirePoints(recordLength, nameof(recordLength));
        RequireRate(rate, nameof(rate));
        return recordLength / rate;
    }

    /// <summary>The time from the first sample to the last, (N - 1) / fs: one interval less than the window (handbook 5.4).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="recordLength"/> or <paramref name="rate"/> is not above zero.</exception>
    public static Duration FirstToLastSample(PointCount recordLength, SampleRate rate)
    {
        RequirePoints(recordLength, nameof(recordLength));
        return Duration.FromSi((recordLength.Points - 1) / RequireRate(rate, nameof(rate)), nameof(recordLength));
    }

    /// <summary>The highest rate that memory allows over a window: the smaller of the converter's rate and memory / window (handbook 5.4).</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero.</exception>
    public static SampleRate MemoryLimitedRate(SampleRate maximumRate, PointCount memory, Duration window)
    {
        RequireRate(maximumRate, nameof(maximumRate));
        SampleRate allowed = Rate(memory, window);
        return allowed < maximumRate ? allowed : maximumRate;
    }

    /// <summary>Samples per period of a sine, fs / f.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is not above 0 Hz.</exception>
    public static Ratio SamplesPerPeriod(SampleRate rate, Frequency frequency)
    {
        Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency));
        return rate / frequency;
    }

    /// <summary>Sample intervals on an edge, tr fs. Three to five are the usual demand (common practice; handbook 5.13).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="riseTime"/> is not above 0 s.</exception>
    public static Ratio IntervalsOnEdge(SampleRate rate, Duration riseTime) =>
        Ratio.FromSi(RequireTime(riseTime, nameof(riseTime)) * rate.SiValue, nameof(riseTime));

    internal static double RequireRate(SampleRate rate, string argument) => Refuse.UnlessAboveZero(rate.SiValue, SampleRate.Kind, argument);

    internal static double RequireTime(Duration time, string argument) => Refuse.UnlessAboveZero(time.SiValue, Duration.Kind, argument);

    internal static double RequirePoints(PointCount count, string argument) => Refuse.UnlessAboveZero(count.SiValue, PointCount.Kind, argument);
}
