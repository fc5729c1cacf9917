using System;
using System.Numerics;

namespace Acquisition.Core.Chain;

/// <summary>Arithmetic on real polynomials in s, held as coefficients of s to the power 0, 1, 2 ...</summary>
internal static class Polynomial
{
    internal static readonly double[] One = { 1 };

    internal static double[] Sum(double[] left, double[] right)
    {
        var sum = new double[Math.Max(left.Length, right.Length)];
        for (int i = 0; i < sum.Length; i++)
            sum[i] = (i < left.Length ? left[i] : 0) + (i < right.Length ? right[i] : 0);
        return sum;
    }

    internal static double[] Product(double[] left, double[] right)
    {
        var product = new double[left.Length + right.Length - 1];
        for (int i = 0; i < left.Length; i++)
        {
            for (int k = 0; k < right.Length; k++)
                product[i + k] += left[i] * right[k];
        }
        return product;
    }

    internal static Complex Value(double[] coefficients, Complex s)
    {
        Complex value = Complex.Zero;
        for (int i = coefficients.Length - 1; i >= 0; i--)
            value = value * s + coefficients[i];
        return value;
    }

    /// <summary>Without the zeros that stand for powers that are not there.</summary>
    internal static double[] Trim(double[] coefficients)
    {
        int length = coefficients.Length;
        while (length > 1 && coefficients[length - 1] == 0)
            length--;
        if (length == coefficients.Length)
            return coefficients;
        var trimmed = new double[length];
        Array.Copy(coefficients, trimmed, length);
        return trimmed;
    }
}
