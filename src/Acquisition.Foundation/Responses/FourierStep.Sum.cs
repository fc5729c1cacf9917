using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

// The sum over the odd harmonics. Each is the one before turned by twice the angle; where the machine has lanes, each lane turns by as many harmonics as there are lanes.
internal sealed partial class FourierStep
{
#if NET8_0_OR_GREATER
    /// <summary>The lines with the empty ones that fill the last vector.</summary>
    private static int RoundedUp(int lines) => (lines + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count;

    private double Sum(double angle, out double rate)
    {
        int lanes = Vector<double>.Count;
        Span<double> reals = stackalloc double[lanes], imaginaries = stackalloc double[lanes], orders = stackalloc double[lanes];
        (double sine, double cosine) = Math.SinCos(angle);
        (double turnImaginary, double turnReal) = Math.SinCos(2 * angle);
        for (int k = 0; k < lanes; k++)
        {
            (reals[k], imaginaries[k], orders[k]) = (cosine, sine, 2 * k + 1);
            (cosine, sine) = (cosine * turnReal - sine * turnImaginary, cosine * turnImaginary + sine * turnReal);
        }
        for (int turned = 1; turned < lanes; turned *= 2)
            (turnReal, turnImaginary) = (turnReal * turnReal - turnImaginary * turnImaginary, 2 * turnReal * turnImaginary);

        Vector<double> real = new(reals), imaginary = new(imaginaries), order = new(orders), values = Vector<double>.Zero, rates = Vector<double>.Zero;
        Vector<double> step = new(2.0 * lanes), lineTurnReal = new(turnReal), lineTurnImaginary = new(turnImaginary);
        for (int k = 0; k < _real.Length; k += lanes)
        {
            Vector<double> lineReal = new(_real, k), lineImaginary = new(_imaginary, k);
            values += lineImaginary * real + lineReal * imaginary;
            rates += order * (lineReal * real - lineImaginary * imaginary);
            order += step;
            (real, imaginary) = (real * lineTurnReal - imaginary * lineTurnImaginary, real * lineTurnImaginary + imaginary * lineTurnReal);
        }
        rate = Vector.Sum(rates);
        return Vector.Sum(values);
    }
#else
    private static int RoundedUp(int lines) => lines;

    private double Sum(double angle, out double rate)
    {
        double real = Math.Cos(angle), imaginary = Math.Sin(angle), turnReal = Math.Cos(2 * angle), turnImaginary = Math.Sin(2 * angle), value = 0;
        rate = 0;
        for (int k = 0; k < _real.Length; k++)
        {
            value += _imaginary[k] * real + _real[k] * imaginary;
            rate += (2 * k + 1) * (_real[k] * real - _imaginary[k] * imaginary);
            (real, imaginary) = (real * turnReal - imaginary * turnImaginary, real * turnImaginary + imaginary * turnReal);
        }
        return value;
    }
#endif
}
