using System;

namespace Acquisition.Core.Uncertainty;

/// <summary>
/// The second-order terms of the law of propagation for independent inputs with symmetric distributions (JCGM 100 5.1.2, note):
/// the sum over all i, j of [f_ij²/2 + f_i f_ijj] u_i² u_j². Derivatives of the gradient are found by central differences, extrapolated to step zero.
/// </summary>
internal static class SecondOrder
{
    private const int Rows = 5;

    /// <summary>Over the rows the step shrinks sixteenfold, and with it what a smooth slope changes by; across a kink the slope jumps by the same whatever the step.</summary>
    private const double LeastShrinkage = 0.5;

    /// <summary>A jump of the slopes that is this small a part of them is rounding.</summary>
    private const double Rounding = 1e-6;

    /// <summary>How the model moves with each input, at a place.</summary>
    /// <param name="x">The inputs.</param>
    /// <param name="gradient">Where the derivatives go; not a number where the model has none.</param>
    internal delegate void Gradient(double[] x, double[] gradient);

    /// <summary>The variance that the second-order terms add; not a number where the model cannot be followed over the inputs' uncertainties, or has a kink at the estimates.</summary>
    internal static double Variance(Gradient model, double[] estimates, double[] standardUncertainties)
    {
        int n = estimates.Length;
        double[] slope = new double[n], x = (double[])estimates.Clone();
        model(x, slope);
        double variance = 0;
        for (int j = 0; j < n; j++)
        {
            if (standardUncertainties[j] == 0) continue;
            (double[] bend, double[] bendOfSlope) = Derivatives(model, x, j, standardUncertainties, slope);
            for (int i = 0; i < n; i++)
            {
                double product = standardUncertainties[i] * standardUncertainties[j];
                variance += (bend[i] * bend[i] / 2 + slope[i] * bendOfSlope[i]) * product * product;
            }
        }
        return variance;
    }

    /// <summary>The first and second derivatives of the whole gradient with respect to input j.</summary>
    private static (double[] First, double[] Second) Derivatives(Gradient model, double[] x, int j, double[] standardUncertainties, double[] slope)
    {
        int n = x.Length;
        double at = x[j], u = standardUncertainties[j];
        double[] high = new double[n], low = new double[n];
        // Where the model ends within one standard uncertainty, it is followed over less.
        for (double reach = u; reach > u * 1e-6; reach /= 10)
        {
            var first = new double[Rows, n];
            var second = new double[Rows, n];
            var jump = new double[Rows, n];
            double largest = 0;
            bool followed = true;
            for (int row = 0; row < Rows && followed; row++)
            {
                double above = at + reach / (1 << row), below = at - (above - at), step = above - at;
                x[j] = above;
                model(x, high);
                x[j] = below;
                model(x, low);
                for (int i = 0; i < n; i++)
                {
                    jump[row, i] = Math.Max(Math.Abs(high[i] - low[i]), Math.Abs(high[i] - 2 * slope[i] + low[i])) * standardUncertainties[i];
                    largest = Math.Max(largest, Math.Max(Math.Abs(high[i]), Math.Abs(low[i])) * standardUncertainties[i]);
                    first[row, i] = (high[i] - low[i]) / (2 * step);
                    second[row, i] = (high[i] - 2 * slope[i] + low[i]) / (step * step);
                    followed &= Math.Abs(first[row, i]) <= double.MaxValue && Math.Abs(second[row, i]) <= double.MaxValue;
                }
            }
            x[j] = at;
            if (followed) return HasKink(jump, largest, n) ? (NotNumbers(n), NotNumbers(n)) : (Extrapolated(first, n), Extrapolated(second, n));
        }
        return (NotNumbers(n), NotNumbers(n));
    }

    /// <summary>Whether a slope jumps at the estimate, where it has no derivative: the difference across the estimate does not shrink with the step.</summary>
    private static bool HasKink(double[,] jump, double largest, int n)
    {
        for (int i = 0; i < n; i++)
        {
            double last = jump[Rows - 1, i];
            if (last > Rounding * largest && last > LeastShrinkage * jump[0, i]) return true;
        }
        return false;
    }

    /// <summary>Richardson's extrapolation for each component, stopped where the next column no longer comes closer.</summary>
    private static double[] Extrapolated(double[,] table, int n)
    {
        var result = new double[n];
        for (int i = 0; i < n; i++)
        {
            var column = new double[Rows];
            for (int row = 0; row < Rows; row++) column[row] = table[row, i];
            double best = column[0], error = double.PositiveInfinity;
            double factor = 4;
            for (int level = 1; level < Rows; level++, factor *= 4)
            {
                double[] previous = (double[])column.Clone();
                for (int row = Rows - 1; row >= level; row--) column[row] = (factor * previous[row] - previous[row - 1]) / (factor - 1);
                for (int row = level; row < Rows; row++)
                {
                    double estimate = Math.Max(Math.Abs(column[row] - previous[row]), Math.Abs(column[row] - previous[row - 1]));
                    if (!(estimate < error)) continue;
                    error = estimate;
                    best = column[row];
                }
            }
            result[i] = best;
        }
        return result;
    }

    private static double[] NotNumbers(int n)
    {
        var none = new double[n];
        for (int i = 0; i < n; i++) none[i] = double.NaN;
        return none;
    }
}
