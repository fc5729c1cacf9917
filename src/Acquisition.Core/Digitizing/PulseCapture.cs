using System;

namespace Acquisition.Core;

/// <summary>Whether a single narrow pulse leaves a trace: how many samples fall on it (handbook 5.5). Peak detect keeps what the raw rate catches, whatever rate is stored.</summary>
public static class PulseCapture
{
    /// <summary>The chance that at least one sample falls on a pulse that comes at any time: width × rate, at most 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="width"/> is not above 0 s, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Ratio ChanceOfASample(Duration width, SampleRate rate) => Ratio.FromSi(Math.Min(1, Intervals(width, rate)), nameof(width));

    /// <summary>The fewest samples that can fall on the pulse: the whole intervals it is wide.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="width"/> is not above 0 s, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static PointCount FewestSamples(Duration width, SampleRate rate) => PointCount.FromProduct(Intervals(width, rate), nameof(width));

    /// <summary>The narrowest pulse on which at least so many samples always fall: count / rate.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Duration NarrowestPulseWith(PointCount samples, SampleRate rate) => Duration.FromSi(samples.Points / Sampling.RequireRate(rate, nameof(rate)), nameof(samples));

    private static double Intervals(Duration width, SampleRate rate) => Sampling.RequireTime(width, nameof(width)) * Sampling.RequireRate(rate, nameof(rate));
}
