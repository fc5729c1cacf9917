using System;

namespace Acquisition.Core;

/// <summary>How well sampled edges tell a time interval; standard uncertainties (handbook 5.12, 6.12).</summary>
public static class TimeIntervalAccuracy
{
    /// <summary>An interval read in whole samples, clock and signal unsynchronised, averaged over phase: Ts/√6. A single reading is within ± Ts.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Duration WithoutInterpolation(SampleRate rate) => Duration.FromSi(Sampling.SampleInterval(rate).SiValue / Math.Sqrt(6), nameof(rate));

    /// <summary>One given interval read in whole samples: Ts √(F (1-F)), F being its fraction of a sample interval; at most Ts/2.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s, or <paramref name="interval"/> is negative.</exception>
    public static Duration WithoutInterpolation(SampleRate rate, Duration interval)
    {
        if (interval.SiValue < 0)
            throw Refuse.OutOfRange(interval.SiValue, Duration.Kind, nameof(interval), "at least 0 s");
        double intervals = interval.SiValue * Sampling.RequireRate(rate, nameof(rate)), fraction = intervals - Math.Floor(intervals);
        return Duration.FromSi(Math.Sqrt(fraction * (1 - fraction)) / rate.SiValue, nameof(interval));
    }

    /// <summary>The instant of an interpolated edge: noise / slope at the threshold, to first order; for noise well below the swing.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="slope"/> is 0 V/s.</exception>
    public static Duration OfEdge(RmsVoltage noise, SlewRate slope)
    {
        double s = Math.Abs(slope.SiValue);
        return Duration.FromSi(noise.SiValue / Refuse.UnlessAboveZero(s, SlewRate.Kind, nameof(slope)), nameof(slope));
    }

    /// <summary>The instant of a ramp-like edge: σ tr / (0.8 A), A being its swing and tr its 10 % to 90 % rise time.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="swing"/> or <paramref name="riseTime"/> is not above zero.</exception>
    public static Duration OfEdge(RmsVoltage noise, Voltage swing, Duration riseTime)
    {
        double volts = Refuse.UnlessAboveZero(Math.Abs(swing.SiValue), Voltage.Kind, nameof(swing));
        return Duration.FromSi(noise.SiValue * Sampling.RequireTime(riseTime, nameof(riseTime)) / (0.8 * volts), nameof(swing));
    }

    /// <summary>How far a timebase may be off over an interval: the limit grows with the interval.</summary>
    /// <param name="interval">The interval.</param>
    /// <param name="timebaseLimit">The relative limit of the timebase, such as 2.5 ppm.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative.</exception>
    public static Duration TimebaseLimit(Duration interval, Ratio timebaseLimit)
    {
        if (timebaseLimit.SiValue < 0)
            throw Refuse.OutOfRange(timebaseLimit.SiValue, Ratio.Kind, nameof(timebaseLimit), "at least 0");
        return Duration.FromSi(Math.Abs(interval.SiValue) * timebaseLimit.SiValue, nameof(interval));
    }

    /// <summary>
    /// All together: √(2 u_edge² + 2 u_jitter² + a²/3 + u_skew²), where a is the <see cref="TimebaseLimit"/>, taken as rectangular. The two edges are independent.
    /// </summary>
    /// <param name="edge">The standard uncertainty of one edge.</param>
    /// <param name="clockJitter">The rms jitter of the sample clock.</param>
    /// <param name="timebaseLimit">The limit of the timebase over the interval.</param>
    /// <param name="skew">The standard uncertainty of the skew between two channels; 0 s on one channel.</param>
    public static Duration Combined(Duration edge, Duration clockJitter, Duration timebaseLimit, Duration skew) => Duration.FromSi(
        Math.Sqrt(2 * edge.SiValue * edge.SiValue + 2 * clockJitter.SiValue * clockJitter.SiValue + timebaseLimit.SiValue * timebaseLimit.SiValue / 3 + skew.SiValue * skew.SiValue), nameof(edge));
}
