using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// A function of angular frequency on one panel, as a Legendre series: its Fourier integral over the panel is then exact at any time, however fast exp(jωt)
/// turns there, because the transform of a Legendre polynomial is a spherical Bessel function (Filon's idea).
/// </summary>
internal sealed class LegendrePanel
{
    internal const int Terms = 12;

    private static readonly double[] Projection = Project();

    private readonly double _middle, _half;
    private readonly double[] _real = new double[Terms], _imaginary = new double[Terms], _slopeReal = new double[Terms], _slopeImaginary = new double[Terms];

    /// <param name="function">The function; what it gives is the spectrum of the slope, the panel holds that over jω.</param>
    /// <param name="low">Lower end, rad/s.</param>
    /// <param name="high">Upper end, rad/s.</param>
    internal LegendrePanel(Func<double, Complex> function, double low, double high)
    {
        Low = low;
        High = high;
        _middle = 0.5 * (low + high);
        _half = 0.5 * (high - low);
        int points = GaussLegendre.Nodes.Length;
        double biggest = 0, rest = 0;
        for (int i = 0; i < points; i++)
        {
            double omega = _middle + _half * GaussLegendre.Nodes[i];
            Complex slope = function(omega), value = slope / new Complex(0, omega);
            for (int k = 0; k < Terms; k++)
            {
                double weight = Projection[k * points + i] * _half;
                _real[k] += weight * value.Real;
                _imaginary[k] += weight * value.Imaginary;
                _slopeReal[k] += weight * slope.Real;
                _slopeImaginary[k] += weight * slope.Imaginary;
            }
        }
        for (int k = 0; k < Terms; k++)
        {
            double size = Math.Abs(_real[k]) + Math.Abs(_imaginary[k]);
            biggest = Math.Max(biggest, size);
            if (k >= Terms - 2)
                rest = Math.Max(rest, size);
        }
        Size = biggest;
        Remainder = rest;
        for (int k = 0; k < Terms; k++)
        {
            Turn(k, _real, _imaginary);
            Turn(k, _slopeReal, _slopeImaginary);
        }
    }

    /// <summary>Lower end, rad/s.</summary>
    internal double Low { get; }

    /// <summary>Upper end, rad/s.</summary>
    internal double High { get; }

    /// <summary>The largest term: about what the panel contributes.</summary>
    internal double Size { get; }

    /// <summary>The last terms: about what the series leaves out.</summary>
    internal double Remainder { get; }

    /// <summary>Adds the real part of the panel's Fourier integral, and of that of its slope.</summary>
    internal void Add(double seconds, double[] bessel, ref double value, ref double slope)
    {
        SphericalBessel.Fill(_half * seconds, bessel);
        double vr = 0, vi = 0, sr = 0, si = 0;
        for (int k = 0; k < Terms; k++)
        {
            vr += _real[k] * bessel[k];
            vi += _imaginary[k] * bessel[k];
            sr += _slopeReal[k] * bessel[k];
            si += _slopeImaginary[k] * bessel[k];
        }
        double angle = _middle * seconds, cosine = Math.Cos(angle), sine = Math.Sin(angle);
        value += vr * cosine - vi * sine;
        slope += sr * cosine - si * sine;
    }

    /// <summary>The panel's Fourier integral, its middle frequency taken out.</summary>
    internal void Amplitude(double seconds, double[] bessel, out double real, out double imaginary)
    {
        SphericalBessel.Fill(_half * seconds, bessel);
        real = imaginary = 0;
        for (int k = 0; k < Terms; k++)
        {
            real += _real[k] * bessel[k];
            imaginary += _imaginary[k] * bessel[k];
        }
    }

    /// <summary>The real part of the panel's Fourier integral.</summary>
    internal double Value(double seconds, double[] bessel)
    {
        Amplitude(seconds, bessel, out double real, out double imaginary);
        double angle = _middle * seconds;
        return real * Math.Cos(angle) - imaginary * Math.Sin(angle);
    }

    /// <summary>Multiplies term k by 2 j^k, which the transform of its polynomial brings.</summary>
    private static void Turn(int k, double[] real, double[] imaginary)
    {
        double r = 2 * real[k], i = 2 * imaginary[k];
        (real[k], imaginary[k]) = (k % 4) switch
        {
            0 => (r, i),
            1 => (-i, r),
            2 => (-r, -i),
            _ => (i, -r),
        };
    }

    /// <summary>(2k + 1)/2 · weight · P_k(node): turns samples at the nodes into Legendre coefficients.</summary>
    private static double[] Project()
    {
        int points = GaussLegendre.Nodes.Length;
        var projection = new double[Terms * points];
        for (int i = 0; i < points; i++)
        {
            double x = GaussLegendre.Nodes[i], before = 0, value = 1;
            for (int k = 0; k < Terms; k++)
            {
                projection[k * points + i] = 0.5 * (2 * k + 1) * GaussLegendre.Weights[i] * value;
                (before, value) = (value, ((2 * k + 1) * x * value - k * before) / (k + 1));
            }
        }
        return projection;
    }
}
