using System;

namespace Acquisition.Core;

/// <summary>The averaging mode: the mean of N records at equal times from the trigger. For repetitive signals; DC errors, gain errors and spurs locked to the trigger stay (handbook 6.9).</summary>
public static class Averaging
{
    /// <summary>By how much uncorrelated noise falls: 10 lg N.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="records"/> is below 1.</exception>
    public static DecibelRatio NoiseReduction(int records) => DecibelRatio.FromSi(10 * Math.Log10(Count(records)), nameof(records));

    /// <summary>The bits gained on uncorrelated noise: ½ ld N, so half a bit for each doubling.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="records"/> is below 1.</exception>
    public static BitDepth BitsGained(int records) => BitDepth.FromSi(0.5 * Math.Log(Count(records)) / Math.Log(2), nameof(records));

    /// <summary>The noise that is left of <paramref name="noise"/>: σ √((1 + (N-1) ρ)/N). With a correlation ρ it never falls below σ √ρ however many are averaged.</summary>
    /// <param name="noise">The noise of one record.</param>
    /// <param name="records">How many are averaged.</param>
    /// <param name="correlation">The correlation between the noise of any two records: 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="records"/> is below 1, or <paramref name="correlation"/> is not 0 to 1.</exception>
    public static RmsVoltage Noise(RmsVoltage noise, int records, Ratio correlation)
    {
        double rho = correlation.SiValue;
        if (!(rho >= 0 && rho <= 1))
            throw Refuse.OutOfRange(rho, Ratio.Kind, nameof(correlation), "from 0 to 1");
        return RmsVoltage.FromSi(noise.SiValue * Math.Sqrt((1 + (Count(records) - 1.0) * rho) / records), nameof(noise));
    }

    /// <summary>
    /// The bandwidth that Gaussian trigger jitter leaves: averaging over jittered edges is a Gaussian low-pass of f3 = √ln 2 / (2π σ), in cascade with
    /// the chain.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="triggerJitter"/> is not above 0 s.</exception>
    public static Frequency TriggerJitterBandwidth(Duration triggerJitter) =>
        Frequency.FromSi(Math.Sqrt(Math.Log(2)) / (2 * Math.PI * Sampling.RequireTime(triggerJitter, nameof(triggerJitter))), nameof(triggerJitter));

    private static int Count(int records) =>
        records >= 1 ? records : throw new ArgumentOutOfRangeException(nameof(records), FormattableString.Invariant($"records must be at least 1; was {records}"));
}
