using System;
using System.Globalization;

namespace Acquisition.Core.Uncertainty;

/// <summary>
/// The derivative of a function that declares none: central differences of shrinking step, extrapolated to step zero, the best of them chosen by its
/// estimated error. Source: C. J. F. Ridders, Adv. Eng. Software 4 (1982) 75-76 (from memory).
/// </summary>
internal static class NumericalDerivative
{
    /// <summary>The relative error beyond which a derivative is refused rather than used.</summary>
    private const double Tolerance = 1e-5;

    private const double Shrinking = 1.4;
    private const int MostSteps = 12;

    /// <summary>The derivative at <paramref name="x"/>, refused where the function is not smooth there.</summary>
    /// <param name="function">The function, in SI.</param>
    /// <param name="x">The place.</param>
    /// <param name="scale">A length over which the function is expected to be smooth: the standard uncertainty of x.</param>
    /// <param name="name">What x is, for the message.</param>
    /// <exception cref="InvalidOperationException">No derivative was found.</exception>
    internal static double Of(Func<double, double> function, double x, double scale, string name)
    {
        if (scale == 0) scale = Math.Abs(x) * 1e-3;
        if (scale == 0) scale = 1e-6;
        double derivative = double.NaN, error = double.PositiveInfinity;
        // Where the first steps leave the smooth part of the function, begin closer.
        foreach (double start in Starts)
        {
            double candidate = At(function, x, Math.Max(scale * start, Math.Abs(x) * 1e-9), out double candidateError);
            if (candidateError < error) (derivative, error) = (candidate, candidateError);
            if (error <= Tolerance * 1e-4 * Math.Abs(derivative)) return derivative;
        }
        double floor = Math.Abs(Value(function, x)) / scale * 1e-9;
        return error <= Tolerance * Math.Abs(derivative) + floor
            ? derivative
            : throw new InvalidOperationException(string.Format(CultureInfo.InvariantCulture, "the sensitivity to the {0} could not be found (best {1:G4} ± {2:G2} in SI units): the function is not smooth there; use Monte Carlo, or give its derivative", name, derivative, error));
    }

    /// <summary>The derivative at <paramref name="x"/>; not a number where none is found.</summary>
    /// <param name="function">The function; where it has no value it gives NaN or throws.</param>
    /// <param name="x">The place.</param>
    /// <param name="step">The first and greatest step.</param>
    /// <param name="error">An estimate of the absolute error.</param>
    internal static double At(Func<double, double> function, double x, double step, out double error)
    {
        var table = new double[MostSteps, MostSteps];
        double best = double.NaN;
        error = double.PositiveInfinity;
        int rows = 0;
        for (int attempt = 0; attempt < 3 * MostSteps && rows < MostSteps; attempt++, step /= Shrinking)
        {
            double above = x + step, below = x - step;
            double difference = (Value(function, above) - Value(function, below)) / (above - below);
            if (!(Math.Abs(difference) <= double.MaxValue))
            {
                // The step leaves the function's domain: begin again inside it.
                rows = 0;
                continue;
            }
            table[rows, 0] = difference;
            double factor = Shrinking * Shrinking;
            for (int j = 1; j <= rows; j++, factor *= Shrinking * Shrinking)
            {
                table[rows, j] = (table[rows, j - 1] * factor - table[rows - 1, j - 1]) / (factor - 1);
                double estimate = Math.Max(Math.Abs(table[rows, j] - table[rows, j - 1]), Math.Abs(table[rows, j] - table[rows - 1, j - 1]));
                if (estimate > error) continue;
                error = estimate;
                best = table[rows, j];
            }
            if (rows > 0 && Math.Abs(table[rows, rows] - table[rows - 1, rows - 1]) >= 2 * error) break;
            rows++;
        }
        return best;
    }

    private static readonly double[] Starts = { 1.0, 0.03, 1e-3 };

    private static double Value(Func<double, double> function, double x)
    {
        try
        {
            return function(x);
        }
        catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
        {
            return double.NaN;
        }
    }
}
