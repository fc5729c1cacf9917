using System;
#if NET8_0_OR_GREATER
using System.Numerics;
#endif

namespace Acquisition.Core.Responses;

/// <summary>What a band of frequencies does on a stretch of time, its middle frequency taken out: complex values at Chebyshev nodes, which a polynomial joins.</summary>
internal sealed class Band
{
    private const int Nodes = PiecewisePolynomial.Terms;

    /// <summary>From values at the nodes of a stretch to those at the nodes of its halves: what node k of the whole gives to all nodes of a half stands together.</summary>
    private static readonly double[] ToEarly = MakeHalf(-0.5), ToLate = MakeHalf(0.5);

    /// <param name="low">Where the band begins, rad/s.</param>
    /// <param name="high">Where it ends, rad/s.</param>
    internal Band(double low, double high)
    {
        Low = low;
        High = high;
    }

    internal double Low { get; }

    internal double High { get; }

    internal double Middle => 0.5 * (Low + High);

    internal double[] Real { get; } = new double[Nodes];

    internal double[] Imaginary { get; } = new double[Nodes];

    /// <summary>Adds a band within this one, on the same stretch.</summary>
    internal void Add(Band band, Phasors turned)
    {
        turned.Fill(band.Middle - Middle);
        for (int i = 0; i < Nodes; i++)
        {
            Real[i] += band.Real[i] * turned.Cosines[i] - band.Imaginary[i] * turned.Sines[i];
            Imaginary[i] += band.Real[i] * turned.Sines[i] + band.Imaginary[i] * turned.Cosines[i];
        }
    }

    /// <summary>Adds the real part, its middle frequency put back, to values at the nodes.</summary>
    internal void AddTo(double[] values, Phasors turned)
    {
        turned.Fill(Middle);
        for (int i = 0; i < Nodes; i++)
            values[i] += Real[i] * turned.Cosines[i] - Imaginary[i] * turned.Sines[i];
    }

    /// <summary>The same band on one half of the stretch.</summary>
    internal Band OnHalf(bool isLate)
    {
        double[] matrix = isLate ? ToLate : ToEarly;
        var half = new Band(Low, High);
        Multiply(matrix, Real, half.Real);
        Multiply(matrix, Imaginary, half.Imaginary);
        return half;
    }

    private static void Multiply(double[] matrix, double[] values, double[] products)
    {
#if NET8_0_OR_GREATER
        int lanes = Vector<double>.Count;
        for (int i = 0; i < Nodes; i += lanes)
        {
            Vector<double> sum = Vector<double>.Zero;
            for (int k = 0; k < Nodes; k++)
                sum += new Vector<double>(matrix, k * Nodes + i) * values[k];
            sum.CopyTo(products, i);
        }
#else
        for (int k = 0; k < Nodes; k++)
        {
            double value = values[k];
            for (int i = 0; i < Nodes; i++)
                products[i] += matrix[k * Nodes + i] * value;
        }
#endif
    }

    /// <summary>The polynomial that is 1 at node k and 0 at the others, at the nodes of the half about a middle.</summary>
    private static double[] MakeHalf(double middle)
    {
        var matrix = new double[Nodes * Nodes];
        for (int k = 0; k < Nodes; k++)
        {
            double own = Math.Acos(PiecewisePolynomial.Nodes[k]);
            for (int i = 0; i < Nodes; i++)
            {
                double at = Math.Acos(middle + 0.5 * PiecewisePolynomial.Nodes[i]), sum = 1;
                for (int n = 1; n < Nodes; n++)
                    sum += 2 * Math.Cos(n * own) * Math.Cos(n * at);
                matrix[k * Nodes + i] = sum / Nodes;
            }
        }
        return matrix;
    }
}
