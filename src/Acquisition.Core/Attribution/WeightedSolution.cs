using System;
using System.Collections.Generic;

namespace Acquisition.Core.Attribution;

/// <summary>Least squares of the log-additive model at one frequency: minimum-norm solution, covariance and weighted residuals (handbook 10.3).</summary>
internal sealed class WeightedSolution
{
    private readonly double[,] _covariance;
    private readonly double[,] _whitener;
    private readonly double[,] _u;

    /// <param name="rows">Which elements each row holds.</param>
    /// <param name="levels">What each row measured, in dB.</param>
    /// <param name="covariance">The covariance of the levels, positive definite.</param>
    /// <param name="rank">The rank of the rows.</param>
    internal WeightedSolution(IReadOnlyList<double[]> rows, double[] levels, double[,] covariance, int rank)
    {
        int j = rows.Count, n = rows[0].Length;
        _whitener = InverseOfLower(Cholesky(covariance));
        var a = new double[j, n];
        for (int r = 0; r < j; r++)
        {
            for (int c = 0; c < n; c++)
            {
                for (int k = 0; k <= r; k++)
                    a[r, c] += _whitener[r, k] * rows[k][c];
            }
        }
        double[] m = Whitened(levels);
        var svd = new SingularValues(a);
        Values = new double[n];
        _covariance = new double[n, n];
        _u = new double[j, rank];
        for (int k = 0; k < rank; k++)
        {
            double s = svd.Value(k), projection = 0;
            for (int r = 0; r < j; r++)
            {
                _u[r, k] = svd.U(r, k);
                projection += svd.U(r, k) * m[r];
            }
            for (int c = 0; c < n; c++)
            {
                Values[c] += svd.V(c, k) * projection / s;
                for (int d = 0; d < n; d++)
                    _covariance[c, d] += svd.V(c, k) * svd.V(d, k) / (s * s);
            }
        }
        WeightedResiduals = WithoutModel(m);
        foreach (double r in WeightedResiduals)
            ChiSquared += r * r;
        Residuals = new double[j];
        for (int r = 0; r < j; r++)
            Residuals[r] = levels[r] - NullSpace.Dot(rows[r], Values);
    }

    /// <summary>The minimum-norm solution: only combinations that the null space does not touch mean anything.</summary>
    internal double[] Values { get; }

    internal double ChiSquared { get; }

    internal double[] Residuals { get; }

    internal double[] WeightedResiduals { get; }

    internal double Level(double[] combination) => NullSpace.Dot(combination, Values);

    internal double Covariance(double[] one, double[] other)
    {
        double sum = 0;
        for (int c = 0; c < one.Length; c++)
        {
            for (int d = 0; d < other.Length; d++)
                sum += one[c] * _covariance[c, d] * other[d];
        }
        return sum;
    }

    /// <summary>How much one more column would explain: its coefficient, and by how much chi-squared would fall. False where the model holds the column already.</summary>
    internal bool Extra(double[] column, out double coefficient, out double gain)
    {
        double[] beyond = WithoutModel(Whitened(column));
        double norm = NullSpace.Dot(beyond, beyond), whole = NullSpace.Dot(Whitened(column), Whitened(column));
        coefficient = gain = 0;
        if (!(norm > 1e-9 * whole))
            return false;
        double projection = NullSpace.Dot(beyond, WeightedResiduals);
        coefficient = projection / norm;
        gain = projection * projection / norm;
        return true;
    }

    private double[] Whitened(double[] values)
    {
        var whitened = new double[values.Length];
        for (int r = 0; r < values.Length; r++)
        {
            for (int k = 0; k <= r; k++)
                whitened[r] += _whitener[r, k] * values[k];
        }
        return whitened;
    }

    private double[] WithoutModel(double[] values)
    {
        var rest = (double[])values.Clone();
        for (int k = 0; k < _u.GetLength(1); k++)
        {
            double projection = 0;
            for (int r = 0; r < rest.Length; r++)
                projection += _u[r, k] * values[r];
            for (int r = 0; r < rest.Length; r++)
                rest[r] -= projection * _u[r, k];
        }
        return rest;
    }

    private static double[,] Cholesky(double[,] c)
    {
        int n = c.GetLength(0);
        var l = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = c[i, j];
                for (int k = 0; k < j; k++)
                    sum -= l[i, k] * l[j, k];
                l[i, j] = i == j ? Math.Sqrt(sum > 0 ? sum : throw new InvalidOperationException("the uncertainties of the rows do not form a covariance")) : sum / l[j, j];
            }
        }
        return l;
    }

    private static double[,] InverseOfLower(double[,] l)
    {
        int n = l.GetLength(0);
        var inverse = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            inverse[i, i] = 1 / l[i, i];
            for (int j = 0; j < i; j++)
            {
                double sum = 0;
                for (int k = j; k < i; k++)
                    sum -= l[i, k] * inverse[k, j];
                inverse[i, j] = sum / l[i, i];
            }
        }
        return inverse;
    }
}
