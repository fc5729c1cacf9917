using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// All roots of a real polynomial at once (Aberth's method on a polynomial scaled to roots of about 1), polished by Newton's method. Simple roots come out to
/// the last digits; an m-fold one to about the m-th root of that, as in any method.
/// </summary>
internal static class PolynomialRoots
{
    /// <param name="coefficients">Of s to the power 0, 1, 2 ...; first and last not 0.</param>
    internal static Complex[] Of(double[] coefficients)
    {
        int order = coefficients.Length - 1;
        var roots = new Complex[order];
        if (order == 0)
            return roots;
        // With s = scale · z the first and last coefficients are alike.
        double scale = Math.Pow(Math.Abs(coefficients[0] / coefficients[order]), 1.0 / order), power = 1;
        var scaled = new double[order + 1];
        for (int k = 0; k <= order; k++)
        {
            scaled[k] = coefficients[k] / coefficients[0] * power;
            power *= scale;
        }
        for (int i = 0; i < order; i++)
            roots[i] = Complex.FromPolarCoordinates(1 + 0.1 * i / order, Math.PI / 2 + 2 * Math.PI * (i + 0.25) / order);
        for (int round = 0; round < 500; round++)
        {
            double change = 0;
            for (int i = 0; i < order; i++)
            {
                Complex value = Value(scaled, roots[i], out Complex slope);
                if (value == Complex.Zero)
                    continue;
                Complex newton = value / slope, repulsion = Complex.Zero;
                for (int j = 0; j < order; j++)
                {
                    if (j != i)
                        repulsion += 1 / (roots[i] - roots[j]);
                }
                Complex step = newton / (1 - newton * repulsion);
                if (double.IsNaN(step.Real + step.Imaginary))
                    continue;
                roots[i] -= step;
                change = Math.Max(change, Complex.Abs(step) / Math.Max(Complex.Abs(roots[i]), 1e-300));
            }
            if (change < 1e-15)
                break;
        }
        for (int i = 0; i < order; i++)
        {
            // Real coefficients: what is real to rounding is real.
            if (Math.Abs(roots[i].Imaginary) < 1e-12 * Math.Abs(roots[i].Real))
                roots[i] = new Complex(roots[i].Real, 0);
            roots[i] *= scale;
        }
        return roots;
    }

    private static Complex Value(double[] coefficients, Complex at, out Complex slope)
    {
        Complex value = Complex.Zero;
        slope = Complex.Zero;
        for (int k = coefficients.Length - 1; k >= 0; k--)
        {
            slope = slope * at + value;
            value = value * at + coefficients[k];
        }
        return value;
    }
}
