using System;
using System.Numerics;
using MathNet.Numerics.Providers.FourierTransform;

namespace Acquisition.Core.Records;

/// <summary>The discrete Fourier transform <c>X_k = sum x_n e^(-2 pi i k n / N)</c>, unscaled, of real samples: bins 0 to N/2.</summary>
/// <remarks>
/// MathNet's managed transform, called directly so that its process-wide provider switch has no say; any length (powers of two are fastest). An even
/// number of real samples goes in as half as many complex ones.
/// </remarks>
internal static class Fourier
{
    internal static Complex[] OfReal(double[] x)
    {
        int n = x.Length;
        var bins = new Complex[n / 2 + 1];
        if (n == 1)
        {
            bins[0] = x[0];
            return bins;
        }
        if (n % 2 != 0)
        {
            var whole = new Complex[n];
            for (int i = 0; i < n; i++)
                whole[i] = x[i];
            Forward(whole);
            Array.Copy(whole, bins, bins.Length);
            return bins;
        }
        int half = n / 2;
        var packed = new Complex[half];
        for (int i = 0; i < half; i++)
            packed[i] = new Complex(x[2 * i], x[2 * i + 1]);
        Forward(packed);
        // The packed transform holds even and odd samples: Z = E + iO, E and O hermitian; X_k = E_k + e^(-2 pi i k/N) O_k.
        for (int k = 0; k <= half; k++)
        {
            Complex z = packed[k % half], mirrored = Complex.Conjugate(packed[(half - k) % half]);
            Complex even = (z + mirrored) / 2, odd = (z - mirrored) / new Complex(0, 2);
            double angle = -2 * Math.PI * k / n;
            bins[k] = even + new Complex(Math.Cos(angle), Math.Sin(angle)) * odd;
        }
        return bins;
    }

    private static void Forward(Complex[] samples)
    {
        if (samples.Length > 1)
            ManagedFourierTransformProvider.Instance.Forward(samples, FourierTransformScaling.NoScaling);
    }
}
