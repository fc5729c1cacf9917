using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>
/// The rule √(t1² + t2² + ...) for rise times. Exact for Gaussian steps only: up to 13 % too short for RC stages, up to 15 % too long for steep filters (handbook 2.5).
/// Where the responses are known, <see cref="Response.RiseTimeOf(Edge)"/> computes what this rule estimates.
/// </summary>
public static class RootSumOfSquares
{
    /// <summary>Below this ratio of measured to system rise time what is left is mostly uncertainty (handbook 2.5).</summary>
    private const double LeastRatio = 1.2;

    private static readonly string[] NearlyGaussian = { "signal and system both have nearly Gaussian steps" };

    /// <summary>The rise time that several together are estimated to have.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="riseTimes"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">One of them is negative.</exception>
    public static Duration Combine(params Duration[] riseTimes)
    {
        double sum = 0;
        foreach (Duration riseTime in riseTimes ?? throw new ArgumentNullException(nameof(riseTimes)))
        {
            if (!(riseTime.SiValue >= 0))
                throw Refuse.OutOfRange(riseTime.SiValue, Duration.Kind, nameof(riseTimes), "at least 0 s");
            sum += riseTime.SiValue * riseTime.SiValue;
        }
        return Duration.FromSi(Math.Sqrt(sum), nameof(riseTimes));
    }

    /// <summary>The rise time of the signal, from the measured one and that of the measuring system: √(measured² - system²).</summary>
    /// <param name="measured">The rise time read.</param>
    /// <param name="system">The rise time of probe and instrument together.</param>
    /// <returns>The estimate, with the finding <c>system-too-slow</c> where the two are so close that the difference is mostly uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="system"/> is negative, or <paramref name="measured"/> is not above it.</exception>
    public static Explained<Duration> Remove(Duration measured, Duration system)
    {
        double m = measured.SiValue, s = RequireFaster(measured, system);
        var findings = new List<Finding>();
        if (m < LeastRatio * s)
        {
            findings.Add(new Finding(
                "system-too-slow",
                Severity.Warning,
                $"the measured rise time {measured.InWords()} is only {FewDigits.Number(m / s)} times the system's {system.InWords()}: what is left is mostly uncertainty",
                $"use a system with a rise time below {Duration.FromSi(m / 2, "system").InWords()}",
                "handbook 2.5"));
        }
        return new Explained<Duration>(
            "rise time of the signal",
            Duration.FromSi(Math.Sqrt((m - s) * (m + s)), nameof(measured)),
            "√(measured² - system²)",
            "handbook 2.5",
            new[] { new KeyValuePair<string, string>("measured", measured.ToString()), new KeyValuePair<string, string>("system", system.ToString()) },
            assumptions: NearlyGaussian,
            findings: findings);
    }

    /// <summary>The standard uncertainty of what <see cref="Remove"/> gives: √((m u(m))² + (s u(s))²) / result (handbook 2.5).</summary>
    /// <param name="measured">The rise time read.</param>
    /// <param name="measuredUncertainty">Its standard uncertainty.</param>
    /// <param name="system">The rise time of the system.</param>
    /// <param name="systemUncertainty">Its standard uncertainty.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="system"/> or an uncertainty is negative, or <paramref name="measured"/> is not above the system's.</exception>
    public static Duration UncertaintyOfRemoved(Duration measured, Duration measuredUncertainty, Duration system, Duration systemUncertainty)
    {
        double m = measured.SiValue, s = RequireFaster(measured, system);
        if (!(measuredUncertainty.SiValue >= 0))
            throw Refuse.OutOfRange(measuredUncertainty.SiValue, Duration.Kind, nameof(measuredUncertainty), "at least 0 s");
        if (!(systemUncertainty.SiValue >= 0))
            throw Refuse.OutOfRange(systemUncertainty.SiValue, Duration.Kind, nameof(systemUncertainty), "at least 0 s");
        double first = m * measuredUncertainty.SiValue, second = s * systemUncertainty.SiValue;
        return Duration.FromSi(Math.Sqrt((first * first + second * second) / ((m - s) * (m + s))), nameof(measured));
    }

    /// <summary>How many times slower than the system a signal must be for its rise time to read long by no more than an error: 1/√((1+e)² - 1) (handbook 4.7).</summary>
    /// <param name="error">The tolerated reading error, such as 2 %.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="error"/> is not above 0.</exception>
    public static Ratio SignalToSystemFor(Ratio error)
    {
        double e = Refuse.UnlessAboveZero(error.SiValue, Ratio.Kind, nameof(error));
        return Ratio.FromSi(1 / Math.Sqrt(e * (2 + e)), nameof(error));
    }

    private static double RequireFaster(Duration measured, Duration system)
    {
        if (!(system.SiValue >= 0))
            throw Refuse.OutOfRange(system.SiValue, Duration.Kind, nameof(system), "at least 0 s");
        if (!(measured.SiValue > system.SiValue))
            throw Refuse.OutOfRange(measured.SiValue, Duration.Kind, nameof(measured), $"above the system's {system}", "a reading as fast as the system only says that the signal is faster");
        return system.SiValue;
    }
}
