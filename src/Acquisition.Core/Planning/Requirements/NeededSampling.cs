using System;

namespace Acquisition.Core.Planning;

/// <summary>The sample rate that a demand needs (handbook 12.2); the bits are <see cref="EffectiveResolution.Needed"/>.</summary>
public static class NeededSampling
{
    /// <summary>The rate that puts so many sample intervals on an edge; 3 to 5 are common practice (handbook 5.13).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Rise time or number is not above 0.</exception>
    public static SampleRate RateForEdge(Duration riseTime, double numberOfIntervals) =>
        SampleRate.FromSi(Refuse.UnlessAboveZero(numberOfIntervals, Ratio.Kind, nameof(numberOfIntervals)) / Refuse.UnlessAboveZero(riseTime.SiValue, Duration.Kind, nameof(riseTime)), nameof(riseTime));
}
