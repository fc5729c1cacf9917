using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>Where a frequency appears once it has been sampled, and which rates take a band down without overlap (handbook 5.2, 5.3).</summary>
public static class Aliasing
{
    /// <summary>
    /// The apparent frequency, |f - fs round(f/fs)|: 0 Hz to half the rate. A frequency below the Nyquist frequency appears as itself. One at a multiple of the
    /// rate reads as DC whose value depends on the phase.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Frequency Fold(Frequency frequency, SampleRate rate)
    {
        double f = NotNegative(frequency), fs = Sampling.RequireRate(rate, nameof(rate));
        // The remainder is exact in floating point, f - fs*round(f/fs) would not be.
        double rest = f % fs;
        return Frequency.FromSi(Math.Min(rest, fs - rest), nameof(frequency));
    }

    /// <summary>The Nyquist zone that a frequency lies in: 1 below half the rate, 2 from there to the rate, and so on (handbook 5.2).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or more than 2^30 zones up, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static int NyquistZone(Frequency frequency, SampleRate rate)
    {
        double zone = Math.Floor(2 * NotNegative(frequency) / Sampling.RequireRate(rate, nameof(rate))) + 1;
        return zone <= 1 << 30
            ? (int)zone
            : throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), $"within 2^30 Nyquist zones of {rate}");
    }

    /// <summary>Whether the spectrum appears turned round at a frequency: in even zones a rising frequency shows as a falling one (handbook 5.2).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static bool IsInverted(Frequency frequency, SampleRate rate) => NyquistZone(frequency, rate) % 2 == 0;

    /// <summary>
    /// Every range of sample rates that folds a band from <paramref name="lowest"/> to <paramref name="highest"/> to below the Nyquist frequency without overlap:
    /// 2 fH/n to 2 fL/(n-1) for each zone n, in falling order of rate (handbook 5.3; Vaughan, Scott and White 1991). The band has to be filtered before it is
    /// sampled, the front end has to pass fH, and the noise of all folded zones adds.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequencies are not 0 &lt;= lowest &lt; highest, or the band is so narrow that it has more than 100 000 ranges.</exception>
    public static IReadOnlyList<BandPassSampling> BandPassRates(Frequency lowest, Frequency highest)
    {
        double low = NotNegative(lowest, nameof(lowest)), high = highest.SiValue;
        if (!(high > low))
            throw Refuse.OutOfRange(high, Frequency.Kind, nameof(highest), $"above the lowest frequency {lowest}");
        const int most = 100_000;
        // A quotient such as 25/(25-20) is 5 exactly; forgive its last bits.
        double zones = Math.Floor(high / (high - low) * (1 + 1e-13));
        if (zones > most)
            throw Refuse.OutOfRange(low, Frequency.Kind, nameof(lowest), $"lower for a band that ends at {highest}", "the band is so narrow that a list of rates helps nobody");
        var ranges = new List<BandPassSampling>((int)zones);
        for (int n = 1; n <= zones; n++)
        {
            SampleRate? upper = n == 1 ? null : SampleRate.FromSi(2 * low / (n - 1), nameof(lowest));
            ranges.Add(new BandPassSampling(n, SampleRate.FromSi(2 * high / n, nameof(highest)), upper));
        }
        return ranges;
    }

    private static double NotNegative(Frequency frequency, string argument = "frequency") =>
        frequency.SiValue >= 0 ? frequency.SiValue : throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, argument, "at least 0 Hz");
}
