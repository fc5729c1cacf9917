using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// The poles of a Bessel response (maximally flat delay, W. E. Thomson 1949): roots of the reverse Bessel polynomial
/// sum (2n-k)! / (2^(n-k) k! (n-k)!) s^k, scaled so that the half-power frequency is 1 rad/s (handbook 2.2).
/// </summary>
internal static class BesselPoles
{
    private static readonly Lazy<Section[]>[] ByOrder = Array.ConvertAll(new[] { 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 }, order => new Lazy<Section[]>(() => Compute(order)));

    internal static Section[] Sections(int order) => ByOrder[order].Value;

    private static Section[] Compute(int order)
    {
        Complex[] roots = PolynomialRoots.Of(Coefficients(order));
        var sections = new Section[(order + 1) / 2];
        int count = 0;
        foreach (Complex root in roots)
        {
            if (root.Imaginary > 1e-9)
                sections[count++] = Section.FromPole(root);
        }
        foreach (Complex root in roots)
        {
            if (Math.Abs(root.Imaginary) <= 1e-9)
                sections[count++] = Section.FromPole(new Complex(root.Real, 0));
        }
        double halfPower = HalfPower(new Factors(1, sections, 0, 0));
        for (int i = 0; i < sections.Length; i++)
            sections[i] = sections[i].Scaled(1 / halfPower);
        return sections;
    }

    private static double[] Coefficients(int order)
    {
        // Highest power is 1; each lower one follows from its neighbour, all exact integers up to order 10.
        var coefficients = new double[order + 1];
        coefficients[order] = 1;
        for (int k = order - 1; k >= 0; k--)
            coefficients[k] = coefficients[k + 1] * (2.0 * order - k) * (k + 1) / (2.0 * (order - k));
        return coefficients;
    }

    private static double HalfPower(Factors factors)
    {
        double low = 0.1, high = 10;
        while (high - low > 1e-16 * high)
        {
            double middle = 0.5 * (low + high);
            if (middle == low || middle == high)
                break;
            if (factors.PowerAt(middle) > 0.5)
                low = middle;
            else
                high = middle;
        }
        return 0.5 * (low + high);
    }
}
