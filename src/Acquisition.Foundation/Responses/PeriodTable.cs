using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// One period of a harmonic series as a table, so fine that a polynomial through twelve neighbours gives the series anywhere: a value costs the same however many
/// harmonics there are.
/// </summary>
/// <remarks>
/// The remainder of that polynomial for a line which turns by θ from sample to sample is at most (0.5 · 1.5 · ... · 5.5)² / 12! · θ¹² of the line (Lagrange's remainder at the
/// middle). The table is made long enough for the sum of these over all lines to be below 1e-9 of the strongest line, or 2²⁰ samples.
/// </remarks>
internal sealed class PeriodTable
{
    private const int Points = 12, Shortest = 2048, Longest = 1 << 20;
    private const double Remainder = 5.508e-5, Tolerance = 1e-9;

    /// <summary>Barycentric weights of twelve evenly spaced nodes: binomials of 11 with alternating signs, over 11!.</summary>
    private static readonly double[] Weights = MakeWeights();

    /// <param name="mean">The mean.</param>
    /// <param name="coefficients">Of exp(j 2π n t/T), n from 1.</param>
    internal PeriodTable(double mean, Complex[] coefficients)
    {
        int length = Shortest;
        while (length < 8 * coefficients.Length || (length < Longest && !IsFineEnough(coefficients, length)))
            length *= 2;
        Samples = HarmonicSum.Over(mean, coefficients, length);
    }

    /// <summary>The samples of one period.</summary>
    internal double[] Samples { get; }

    /// <summary>The value so many turns after the beginning, at least 0 and below 1.</summary>
    internal double Value(double turns)
    {
        double[] samples = Samples;
        int mask = samples.Length - 1;
        double place = turns * samples.Length;
        int index = (int)place;
        double within = place - index;
        if (within == 0)
            return samples[index & mask];
        double product = 1, sum = 0;
        for (int k = 0; k < Points; k++)
        {
            double apart = within + (Points / 2 - 1 - k);
            product *= apart;
            sum += Weights[k] / apart * samples[(index + k - (Points / 2 - 1)) & mask];
        }
        return product * sum;
    }

    private static bool IsFineEnough(Complex[] coefficients, int length)
    {
        double error = 0, strongest = 0;
        for (int i = 0; i < coefficients.Length; i++)
        {
            double size = Complex.Abs(coefficients[i]), angle = 2 * Math.PI * (i + 1) / length, square = angle * angle, fourth = square * square;
            error += size * fourth * fourth * fourth;
            strongest = Math.Max(strongest, size);
        }
        return error * Remainder <= Tolerance * strongest;
    }

    private static double[] MakeWeights()
    {
        var weights = new double[Points];
        double factorial = 1, binomial = 1;
        for (int i = 2; i < Points; i++)
            factorial *= i;
        for (int k = 0; k < Points; k++)
        {
            weights[k] = (k % 2 == 0 ? -1 : 1) * binomial / factorial;
            binomial = binomial * (Points - 1 - k) / (k + 1);
        }
        return weights;
    }
}
