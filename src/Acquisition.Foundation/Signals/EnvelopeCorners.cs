using System;

namespace Acquisition.Core.Signals;

/// <summary>
/// Where the envelope of a pulse's spectrum bends, and the knees that are quoted for edges. Named rules: labels for "most energy lies below", none of them a bandwidth
/// requirement (handbook 4.4); for that ask a response for its amplitude error or its rise time.
/// </summary>
public static class EnvelopeCorners
{
    /// <summary>1/(π width): above it the envelope of a trapezoidal pulse falls by 20 dB per decade (C. R. Paul; handbook 4.4).</summary>
    /// <param name="width">The pulse width between the 50 % points.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="width"/> is not above 0 s.</exception>
    public static Frequency OfWidth(Duration width) => Frequency.FromSi(1 / (Math.PI * Above(width, nameof(width))), nameof(width));

    /// <summary>1/(π t), t the whole ramp from 0 % to 100 %, 1.25 times its 10 % to 90 % duration: above it the envelope falls by 40 dB per decade (C. R. Paul; handbook 4.4).</summary>
    /// <param name="riseTime">10 % to 90 % of a straight edge.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="riseTime"/> is not above 0 s.</exception>
    public static Frequency OfRiseTime(Duration riseTime) => Frequency.FromSi(0.8 / (Math.PI * Above(riseTime, nameof(riseTime))), nameof(riseTime));

    /// <summary>The knee 0.5/tr of digital edges (Johnson and Graham 1993, from memory; handbook 4.4).</summary>
    /// <param name="riseTime">10 % to 90 %.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="riseTime"/> is not above 0 s.</exception>
    public static Frequency Knee(Duration riseTime) => Frequency.FromSi(0.5 / Above(riseTime, nameof(riseTime)), nameof(riseTime));

    /// <summary>The bandwidth 0.35/tr that a single-pole response with this rise time has; common practice (handbook 2.4, 4.4).</summary>
    /// <param name="riseTime">10 % to 90 %.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="riseTime"/> is not above 0 s.</exception>
    public static Frequency SinglePoleKnee(Duration riseTime) => Frequency.FromSi(0.35 / Above(riseTime, nameof(riseTime)), nameof(riseTime));

    private static double Above(Duration value, string argument) => Refuse.UnlessAboveZero(value.SiValue, Duration.Kind, argument);
}
