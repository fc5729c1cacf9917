using System;

namespace Acquisition.Core;

/// <summary>
/// A sine that fits a whole number of times into a record, J periods in M samples with no common factor: M different phases, no leakage, no window needed
/// (handbook 9.6; IEEE 1057/1241).
/// </summary>
/// <remarks>Generator and sample clock must share a reference: an offset of d bins leaves leakage of about 20 lg(d/k) dB at k bins from the line. Immutable.</remarks>
public sealed class CoherentSampling
{
    private CoherentSampling(long cycles, PointCount points, SampleRate rate)
    {
        Cycles = cycles;
        Points = points;
        Rate = rate;
    }

    /// <summary>Whole periods in the record (J).</summary>
    public long Cycles { get; }

    /// <summary>Samples in the record (M).</summary>
    public PointCount Points { get; }

    /// <summary>Sample rate.</summary>
    public SampleRate Rate { get; }

    /// <summary>The frequency to set: J fs / M.</summary>
    public Frequency Frequency => Frequency.FromSi(Cycles * Rate.SiValue / Points.Points, "frequency");

    /// <summary>The coherent frequency nearest to a wanted one; above half the sample rate it is coherent as well, and shows as its alias.</summary>
    /// <param name="wanted">The frequency wanted, above 0.</param>
    /// <param name="rate">Sample rate, above 0.</param>
    /// <param name="points">Samples in the record, at least 3.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not in its range.</exception>
    public static CoherentSampling Near(Frequency wanted, SampleRate rate, PointCount points)
    {
        double f = Refuse.UnlessAboveZero(wanted.SiValue, Frequency.Kind, nameof(wanted));
        double fs = Refuse.UnlessAboveZero(rate.SiValue, SampleRate.Kind, nameof(rate));
        long m = points.Points >= 3 ? points.Points : throw Refuse.OutOfRange(points.Points, PointCount.Kind, nameof(points), "at least 3 pts");
        double ideal = f / fs * m;
        if (!(ideal < 1L << 53))
            throw Refuse.OutOfRange(f, Frequency.Kind, nameof(wanted), "below 2^53 bins of the record");
        long below = (long)Math.Floor(ideal), above = below + 1;
        while (below >= 1 && !Coprime(below, m))
            below--;
        while (!Coprime(above, m))
            above++;
        return new CoherentSampling(below >= 1 && ideal - below <= above - ideal ? below : above, points, rate);
    }

    private static bool Coprime(long a, long b)
    {
        while (b != 0)
            (a, b) = (b, a % b);
        return a == 1;
    }

    /// <summary>Frequency, periods and points in one line.</summary>
    public override string ToString() => $"{Frequency.InWords(10)}: {Cycles} periods in {Points} at {Rate.InWords(7)}";
}
