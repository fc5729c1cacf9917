using System.Numerics;
using MathNet.Numerics.Providers.FourierTransform;

namespace Acquisition.Core.Responses;

/// <summary>One period of a harmonic series at evenly spaced times, by an inverse FFT.</summary>
internal static class HarmonicSum
{
    /// <param name="mean">The mean.</param>
    /// <param name="coefficients">Of exp(j 2π n t), n from 1.</param>
    /// <param name="length">Samples in a period: a power of two, more than twice the highest n.</param>
    internal static double[] Over(double mean, Complex[] coefficients, int length)
    {
        var spectrum = new Complex[length];
        spectrum[0] = mean;
        for (int i = 0; i < coefficients.Length; i++)
        {
            spectrum[i + 1] = coefficients[i];
            spectrum[length - 1 - i] = Complex.Conjugate(coefficients[i]);
        }
        ManagedFourierTransformProvider.Instance.Backward(spectrum, FourierTransformScaling.NoScaling);
        var samples = new double[length];
        for (int i = 0; i < length; i++)
            samples[i] = spectrum[i].Real;
        return samples;
    }
}
