using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>Brings poles and zeros, or polynomials, into sections.</summary>
internal static class RationalFactors
{
    internal static Factors FromPolynomials(double[] numerator, double[] denominator)
    {
        int top = Degree(numerator, nameof(numerator)), bottom = Degree(denominator, nameof(denominator));
        if (denominator[0] == 0)
            throw new ArgumentException("denominator must not begin with 0: a pole at DC is an integrator, whose step never ends", nameof(denominator));
        if (top > bottom)
            throw new ArgumentException($"numerator must not be of higher degree ({top}) than the denominator ({bottom}): such a gain grows without bound", nameof(numerator));
        int atZero = 0;
        while (numerator[atZero] == 0 && atZero < top)
            atZero++;
        var shifted = new double[top - atZero + 1];
        Array.Copy(numerator, atZero, shifted, 0, shifted.Length);
        double gain = shifted[0] / denominator[0];
        return Combine(PolynomialRoots.Of(shifted), PolynomialRoots.Of(Trim(denominator, bottom)), gain, atZero);
    }

    internal static Factors FromRoots(Complex[] zeros, Complex[] poles, double gain)
    {
        foreach (Complex zero in zeros)
        {
            if (zero == Complex.Zero)
                throw new ArgumentException("zeros must not contain 0, which blocks DC: cascade a HighPass instead", nameof(zeros));
        }
        if (zeros.Length > poles.Length)
            throw new ArgumentException($"zeros must not outnumber the poles ({zeros.Length} against {poles.Length}): such a gain grows without bound", nameof(zeros));
        return Combine(zeros, poles, gain, 0);
    }

    /// <param name="zeros">The zeros other than 0.</param>
    /// <param name="poles">The poles.</param>
    /// <param name="gain">The ratio of the lowest coefficients: the gain at DC where there is no zero at 0.</param>
    /// <param name="atZero">The number of zeros at 0.</param>
    private static Factors Combine(Complex[] zeros, Complex[] poles, double gain, int atZero)
    {
        foreach (Complex pole in poles)
        {
            if (!(pole.Real < 0))
                throw new ArgumentException(FormattableString.Invariant($"poles must lie in the left half-plane, or the response is not stable; one is {pole.Real} + j {pole.Imaginary} rad/s"), nameof(poles));
        }
        var tops = Quadratics(zeros, nameof(zeros));
        var bottoms = Quadratics(poles, nameof(poles));
        // Zeros at 0 come in pairs as s², or alone as s; scaled to a pole so that no coefficient runs away.
        for (int left = atZero; left > 0; left -= 2)
            tops.Add(left >= 2 ? (0, 0, 1) : (0, 1, 0));
        tops.Sort((x, y) => Order(y).CompareTo(Order(x)));
        bottoms.Sort((x, y) => Order(y).CompareTo(Order(x)));
        var sections = new List<Section>();
        int next = 0;
        foreach (var bottom in bottoms)
        {
            (double C0, double C1, double C2) top = (1, 0, 0);
            if (next < tops.Count && Order(tops[next]) <= Order(bottom))
                top = tops[next++];
            sections.Add(new Section(top.C0, top.C1, top.C2, bottom.C1, bottom.C2));
        }
        // What is left over are single zeros: two of them share a pair of poles, or a pair of zeros stands over two single poles.
        if (next < tops.Count)
            sections = Spread(tops, bottoms);
        return new Factors(gain, sections.ToArray(), 0, 0);
    }

    /// <summary>All single factors merged into as few quadratics as the count of poles allows.</summary>
    private static List<Section> Spread(List<(double C0, double C1, double C2)> tops, List<(double C0, double C1, double C2)> bottoms)
    {
        MergeSingles(tops);
        MergeSingles(bottoms);
        var sections = new List<Section>();
        for (int i = 0; i < bottoms.Count; i++)
        {
            var top = i < tops.Count ? tops[i] : (1, 0, 0);
            sections.Add(new Section(top.C0, top.C1, top.C2, bottoms[i].C1, bottoms[i].C2));
        }
        return sections;
    }

    private static void MergeSingles(List<(double C0, double C1, double C2)> factors)
    {
        var singles = factors.FindAll(factor => factor.C2 == 0);
        factors.RemoveAll(factor => factor.C2 == 0);
        for (int i = 0; i + 1 < singles.Count; i += 2)
        {
            var (a0, a1, _) = singles[i];
            var (b0, b1, _) = singles[i + 1];
            factors.Add((a0 * b0, a0 * b1 + a1 * b0, a1 * b1));
        }
        if (singles.Count % 2 == 1)
            factors.Add(singles[singles.Count - 1]);
    }

    private static int Order((double C0, double C1, double C2) factor) => factor.C2 != 0 ? 2 : 1;

    /// <summary>Factors 1 - s/r, and 1 - 2 Re(r)/|r|² s + s²/|r|² for conjugate pairs.</summary>
    private static List<(double C0, double C1, double C2)> Quadratics(Complex[] roots, string argument)
    {
        var factors = new List<(double, double, double)>();
        var waiting = new List<Complex>();
        foreach (Complex root in roots)
        {
            if (double.IsNaN(root.Real + root.Imaginary) || double.IsInfinity(root.Real) || double.IsInfinity(root.Imaginary))
                throw new ArgumentException($"{argument} must be finite", argument);
            if (root.Imaginary == 0)
            {
                factors.Add((1, -1 / root.Real, 0));
                continue;
            }
            int match = waiting.FindIndex(other => Complex.Abs(other - Complex.Conjugate(root)) <= 1e-9 * Complex.Abs(root));
            if (match < 0)
            {
                waiting.Add(root);
                continue;
            }
            waiting.RemoveAt(match);
            double square = root.Real * root.Real + root.Imaginary * root.Imaginary;
            factors.Add((1, -2 * root.Real / square, 1 / square));
        }
        if (waiting.Count > 0)
            throw new ArgumentException(FormattableString.Invariant($"{argument} must come in conjugate pairs: {waiting[0].Real} + j {waiting[0].Imaginary} rad/s stands alone"), argument);
        return factors;
    }

    private static int Degree(double[] polynomial, string argument)
    {
        int degree = -1;
        for (int i = 0; i < polynomial.Length; i++)
        {
            if (double.IsNaN(polynomial[i]) || double.IsInfinity(polynomial[i]))
                throw new ArgumentException($"{argument} must be finite; coefficient {i} is {polynomial[i].ToString(System.Globalization.CultureInfo.InvariantCulture)}", argument);
            if (polynomial[i] != 0)
                degree = i;
        }
        return degree >= 0 ? degree : throw new ArgumentException($"{argument} must not be all zeros", argument);
    }

    private static double[] Trim(double[] polynomial, int degree)
    {
        var trimmed = new double[degree + 1];
        Array.Copy(polynomial, trimmed, degree + 1);
        return trimmed;
    }
}
