using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Responses;

namespace Acquisition.Core.Chain;

/// <summary>
/// One line without loss between lumped ends, as the bounce diagram of the textbooks draws it: what passes at once after one delay, and an echo two delays after each arrival, smaller by
/// both reflections. Every arrival is a ratio of polynomials with a delay, whose step is exact, however long the line (handbook 7.7).
/// </summary>
internal static class BounceDiagram
{
    private const int MostEchoes = 24, MostPlainEchoes = 600;
    private const double Gone = 1e-12;

    /// <summary>The response, or null where echoes do not die away within the first few.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="gain">A factor on all of it.</param>
    /// <param name="towardsSource">A and B of the chain matrix from the source to the line, over one denominator: source voltage = (A v + B i)/D.</param>
    /// <param name="load">Voltage and current at the end of the line for 1 V at the output, over one denominator.</param>
    /// <param name="ohms">The characteristic impedance.</param>
    /// <param name="seconds">The delay.</param>
    internal static Response? Of(
        string name, double gain, (double[] A, double[] B, double[] Denominator) towardsSource, (double[] Voltage, double[] Current, double[] Denominator) load, double ohms, double seconds)
    {
        // Forward and backward wave at each end, but for the denominators and a half.
        double[] sent = Wave(towardsSource.A, towardsSource.B, 1 / ohms), returned = Wave(towardsSource.A, towardsSource.B, -1 / ohms);
        double[] arriving = Wave(load.Voltage, load.Current, ohms), reflected = Wave(load.Voltage, load.Current, -ohms);
        double[] bottom = Polynomial.Product(sent, arriving), both = Polynomial.Product(returned, reflected);
        Factors arrival = RationalFactors.FromPolynomials(Scaled(Polynomial.Product(towardsSource.Denominator, load.Denominator), 2 * gain), bottom);
        var branches = new List<Factors> { Delayed(arrival, seconds) };
        if (!Array.TrueForAll(both, coefficient => coefficient == 0))
        {
            Factors echo = RationalFactors.FromPolynomials(Scaled(both, -1), bottom);
            double largest = Largest(echo, bottom), size = 1;
            for (int k = 1; (size *= largest) > Gone; k++)
            {
                if (k > (echo.Order == 0 ? MostPlainEchoes : MostEchoes))
                    return null;
                arrival = arrival.Then(echo);
                branches.Add(Delayed(arrival, (2 * k + 1) * seconds));
            }
        }
        return branches.Count == 1 ? new FactoredResponse(name, branches[0]) : new SumResponse(name, branches.ToArray());
    }

    /// <summary>The largest part that comes back, of any frequency: looked for from far below the corners to far above.</summary>
    private static double Largest(Factors echo, double[] bottom)
    {
        double largest = Complex.Abs(echo.At(0));
        double lowest = double.PositiveInfinity, highest = 0;
        foreach (Complex pole in PolynomialRoots.Of(bottom))
        {
            lowest = Math.Min(lowest, Complex.Abs(pole));
            highest = Math.Max(highest, Complex.Abs(pole));
        }
        for (double omega = 1e-3 * lowest; omega < 1e4 * highest; omega *= 1.05)
            largest = Math.Max(largest, Complex.Abs(echo.At(omega)));
        return largest;
    }

    private static Factors Delayed(Factors factors, double seconds) => factors.Then(new Factors(1, Array.Empty<Section>(), 0, seconds));

    private static double[] Wave(double[] first, double[] second, double factor) => Polynomial.Trim(Polynomial.Sum(first, Scaled(second, factor)));

    private static double[] Scaled(double[] polynomial, double factor) => Array.ConvertAll(polynomial, coefficient => factor * coefficient);
}
