using System;

namespace Acquisition.Core;

public abstract partial class Response
{
    /// <summary>The integral of |H|² over frequency from 0 Hz up, Hz; null where it has no end.</summary>
    private protected abstract double? PowerIntegral();

    /// <summary>
    /// The noise bandwidth: that of the brick wall which passes as much white noise with the <see cref="ReferenceGain"/> in its band; ∫|H|² df / |H(ref)|²
    /// (handbook 6.6). For a single pole π/2 times the half-power bandwidth.
    /// </summary>
    /// <exception cref="InvalidOperationException">The gain does not fall fast enough for the integral to end: an attenuator, a high-pass.</exception>
    public Frequency NoiseBandwidth => PowerIntegral() is { } integral
        ? Frequency.FromSi(integral / (ReferenceMagnitude * ReferenceMagnitude), "noise bandwidth")
        : throw new InvalidOperationException($"{Name} passes noise without end: its gain does not fall at high frequencies, so that it has no noise bandwidth");
}
