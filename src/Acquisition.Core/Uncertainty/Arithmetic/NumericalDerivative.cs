using System;
using System.Globalization;

namespace Acquisition.Core.Uncertainty;

/// <summary>A derivative where none is declared: central differences, extrapolated to step zero by Ridders' method (C. J. F. Ridders 1982), with an estimate of the error that remains.</summary>
internal static class NumericalDerivative
{
    /// <summary>The relative error beyond which a derivative is refused rather than used.</summary>
    private const double Tolerance = 1e-5;

    private const int Rows = 10;
    private const double Shrink = 1.4;

    /// <param name="function">The function, in SI.</param>
    /// <param name="x">Where.</param>
    /// <param name="scale">A length over which the function is expected to be smooth: the standard uncertainty of x.</param>
    /// <param name="name">What x is, for the message.</param>
    internal static double Of(Func<double, double> function, double x, double scale, string name)
    {
        if (scale == 0) scale = Math.Abs(x) * 1e-3;
        if (scale == 0) scale = 1e-6;
        double derivative = 0, error = double.PositiveInfinity;
        // Where the first steps leave the function's domain or its smooth part, begin closer.
        foreach (double start in new[] { 1.0, 0.03, 1e-3 })
        {
            double candidate = Ridders(function, x, Math.Max(scale * start, Math.Abs(x) * 1e-9), out double candidateError);
            if (candidateError < error)
            {
                derivative = candidate;
                error = candidateError;
            }
            if (error <= Tolerance * 1e-4 * Math.Abs(derivative)) return derivative;
        }
        double floor = Math.Abs(Safe(function, x)) / scale * 1e-9;
        return error <= Tolerance * Math.Abs(derivative) + floor
            ? derivative
            : throw new InvalidOperationException(string.Format(CultureInfo.InvariantCulture, "the sensitivity to the {0} could not be found (best {1:G4} ± {2:G2} in SI units): the function is not smooth there; use Monte Carlo, or give its derivative", name, derivative, error));
    }

    private static double Ridders(Func<double, double> function, double x, double step, out double error)
    {
        var table = new double[Rows, Rows];
        error = double.PositiveInfinity;
        double best = 0;
        for (int i = 0; i < Rows; i++, step /= Shrink)
        {
            double high = x + step, low = x - step;
            table[0, i] = (Safe(function, high) - Safe(function, low)) / (high - low);
            double factor = Shrink * Shrink;
            for (int j = 1; j <= i; j++, factor *= Shrink * Shrink)
            {
                table[j, i] = (table[j - 1, i] * factor - table[j - 1, i - 1]) / (factor - 1);
                double estimate = Math.Max(Math.Abs(table[j, i] - table[j - 1, i]), Math.Abs(table[j, i] - table[j - 1, i - 1]));
                if (!(estimate <= error)) continue;
                error = estimate;
                best = table[j, i];
            }
            if (i > 0 && Math.Abs(table[i, i] - table[i - 1, i - 1]) >= 2 * error) break;
        }
        return best;
    }

    /// <summary>Outside its domain a function of strong quantities refuses its argument; here that only means: come closer.</summary>
    private static double Safe(Func<double, double> function, double x)
    {
        try
        {
            return function(x);
        }
        catch (ArgumentException)
        {
            return double.NaN;
        }
    }
}
