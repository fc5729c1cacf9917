using System;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// The derivative of a function that declares none: central differences of shrinking step, extrapolated to step zero, the best of them chosen by its
/// estimated error. Source: C. J. F. Ridders, Adv. Eng. Software 4 (1982) 75-76 (from memory).
/// </summary>
internal static class NumericalDerivative
{
    private const double Shrinking = 1.4;
    private const int MostSteps = 12;

    /// <summary>The derivative at <paramref name="x"/>.</summary>
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
            if (!Arithmetic.IsFinite(difference))
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

    private static double Value(Func<double, double> function, double x)
    {
        try
        {
            return function(x);
        }
        catch (Exception refusal) when (refusal is not OutOfMemoryException)
        {
            return double.NaN;
        }
    }
}
