using System;

namespace Acquisition.Core.Planning;

/// <summary>The bandwidth that a demand needs from the whole chain, probe and input together (handbook 12.1).</summary>
public static class NeededBandwidth
{
    /// <summary>So that the amplitude at a frequency is short by no more than a tolerance: f / (f/f3 of the shape for that error) (handbook 12.1, 4.6).</summary>
    /// <param name="frequency">The frequency: of a sine, or of the highest harmonic that matters.</param>
    /// <param name="tolerance">The tolerated shortfall, above 0 and below 1.</param>
    /// <param name="shape">How the chain falls off.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not above 0 Hz, or the tolerance not between 0 and 1.</exception>
    public static Frequency ForAmplitude(Frequency frequency, Ratio tolerance, ResponseShape shape)
    {
        Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency));
        if (!(tolerance.SiValue > 0 && tolerance.SiValue < 1))
            throw Refuse.OutOfRange(tolerance.SiValue, Ratio.Kind, nameof(tolerance), "above 0 and below 1 (100 %)");
        return Frequency.FromSi(Specifier.BandwidthForAmplitude(shape ?? throw new ArgumentNullException(nameof(shape)), frequency.SiValue, tolerance.SiValue), nameof(frequency));
    }

    /// <summary>So that the chain alone has a rise time: k / rise time, with the k of the shape (handbook 2.2).</summary>
    /// <param name="riseTime">The rise time of the chain, 10 % to 90 %.</param>
    /// <param name="shape">How the chain falls off.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rise time is not above 0 s.</exception>
    public static Frequency ForRiseTime(Duration riseTime, ResponseShape shape) =>
        Frequency.FromSi((shape ?? throw new ArgumentNullException(nameof(shape))).RiseTimeProduct / Refuse.UnlessAboveZero(riseTime.SiValue, Duration.Kind, nameof(riseTime)), nameof(riseTime));

    /// <summary>So that an edge is shown slower by no more than a tolerance, computed from the edge and the shape (handbook 2.6); the root-sum-square rule is <see cref="SystemRiseTime"/>.</summary>
    /// <param name="edge">The edge, with a rise time above 0 s.</param>
    /// <param name="tolerance">The tolerated slowing, above 0.</param>
    /// <param name="shape">How the chain falls off.</param>
    /// <exception cref="ArgumentOutOfRangeException">Rise time or tolerance is not above 0.</exception>
    public static Frequency ForEdge(Edge edge, Ratio tolerance, ResponseShape shape)
    {
        if (edge is null)
            throw new ArgumentNullException(nameof(edge));
        Refuse.UnlessAboveZero(edge.RiseTime.SiValue, Duration.Kind, nameof(edge));
        Refuse.UnlessAboveZero(tolerance.SiValue, Ratio.Kind, nameof(tolerance));
        return Frequency.FromSi(Specifier.BandwidthForEdge(edge, tolerance.SiValue, shape ?? throw new ArgumentNullException(nameof(shape))), nameof(edge));
    }

    /// <summary>The rise time a chain may have so that an edge is shown slower by no more than a tolerance, by the root-sum-square rule: tr √((1 + e)² - 1) (handbook 12.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Rise time or tolerance is not above 0.</exception>
    public static Duration SystemRiseTime(Duration riseTime, Ratio tolerance) => Duration.FromSi(
        EdgeThrough.SystemRiseTime(Refuse.UnlessAboveZero(riseTime.SiValue, Duration.Kind, nameof(riseTime)), Refuse.UnlessAboveZero(tolerance.SiValue, Ratio.Kind, nameof(tolerance))), nameof(riseTime));

    /// <summary>The fastest edge that a chain shows slower by no more than a tolerance, by the root-sum-square rule: tr of the chain / √((1 + e)² - 1) (handbook 12.8).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Rise time or tolerance is not above 0.</exception>
    public static Duration FastestEdge(Duration systemRiseTime, Ratio tolerance) => Duration.FromSi(
        Refuse.UnlessAboveZero(systemRiseTime.SiValue, Duration.Kind, nameof(systemRiseTime)) / EdgeThrough.SystemRiseTime(1, Refuse.UnlessAboveZero(tolerance.SiValue, Ratio.Kind, nameof(tolerance))),
        nameof(systemRiseTime));
}
