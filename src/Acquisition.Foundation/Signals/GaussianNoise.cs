using System;

namespace Acquisition.Core.Signals;

/// <summary>The peak-to-peak value of Gaussian noise: unbounded, so that it means something only with a probability or a number of samples (handbook 1.5).</summary>
public static class GaussianNoise
{
    /// <summary>The peak-to-peak band, centred, within which the noise stays for a share of the time: 6.58 times the rms for 99.9 %.</summary>
    /// <param name="rms">The rms of the noise.</param>
    /// <param name="share">The share of the time, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is not above 0 and below 1.</exception>
    public static PeakToPeakVoltage BandFor(RmsVoltage rms, Ratio share)
    {
        if (!(share.SiValue > 0 && share.SiValue < 1))
            throw Refuse.OutOfRange(share.SiValue, Ratio.Kind, nameof(share), "above 0 and below 1");
        return PeakToPeakVoltage.FromSi(-2 * ErrorFunction.NormalQuantile(0.5 * (1 - share.SiValue)) * rms.SiValue, nameof(rms));
    }

    /// <summary>The share of the time that the noise spends outside a centred band.</summary>
    /// <param name="rms">The rms of the noise.</param>
    /// <param name="band">The band, from edge to edge.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rms"/> is not above 0 V.</exception>
    public static Ratio ShareOutside(RmsVoltage rms, PeakToPeakVoltage band) =>
        Ratio.FromSi(ErrorFunction.Complement(band.SiValue / (2 * Math.Sqrt(2) * Refuse.UnlessAboveZero(rms.SiValue, RmsVoltage.Kind, nameof(rms)))), nameof(band));

    /// <summary>The peak-to-peak value to expect of so many independent samples, on average over many such records; it grows with their number.</summary>
    /// <param name="rms">The rms of the noise.</param>
    /// <param name="samples">The number of independent samples, at least 2.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="samples"/> is below 2.</exception>
    public static PeakToPeakVoltage ExpectedPeakToPeak(RmsVoltage rms, PointCount samples)
    {
        if (samples.SiValue < 2)
            throw Refuse.OutOfRange(samples.SiValue, PointCount.Kind, nameof(samples), "at least 2 pts");
        // The mean of the largest of n: the integral of 1 - Φ^n above zero, less that of Φ^n below it; twice, for both ends.
        double count = samples.SiValue, sum = 0;
        const int panels = 240;
        const double reach = 12;
        for (int i = 0; i < panels; i++)
        {
            double low = -reach + 2 * reach * i / panels, high = -reach + 2 * reach * (i + 1) / panels;
            sum += low >= 0 ? Quadrature.Of(x => -Power(x, count, true), low, high) : -Quadrature.Of(x => Power(x, count, false), low, high);
        }
        return PeakToPeakVoltage.FromSi(2 * sum * rms.SiValue, nameof(samples));
    }

    /// <summary>Φ(x)^n, or that less 1, without loss where Φ is close to 1.</summary>
    private static double Power(double x, double count, bool lessOne)
    {
        double above = 0.5 * ErrorFunction.Complement(x / Math.Sqrt(2));
        double exponent = count * (above < 1e-4 ? -above * (1 + above / 2 * (1 + above / 1.5)) : Math.Log(1 - above));
        if (!lessOne)
            return Math.Exp(exponent);
        return Math.Abs(exponent) < 1e-5 ? exponent * (1 + exponent / 2) : Math.Exp(exponent) - 1;
    }
}
