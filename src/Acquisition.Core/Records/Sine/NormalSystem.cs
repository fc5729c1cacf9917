using System;

namespace Acquisition.Core.Records;

/// <summary>A small symmetric positive definite system, solved by Cholesky after its columns are scaled to equal length.</summary>
internal sealed class NormalSystem
{
    private readonly double[] _scale;
    private readonly double[] _lower;

    private NormalSystem(int size)
    {
        Size = size;
        _scale = new double[size];
        _lower = new double[size * size];
    }

    internal int Size { get; }

    /// <summary>The smallest share of a column that the columns before it do not explain: 1 for orthogonal columns, 0 for a singular system.</summary>
    internal double Independence { get; private set; }

    /// <summary>Factors the matrix (row by row); null when a column is zero or explained by the others to within 1e-13.</summary>
    internal static NormalSystem? Factor(double[] matrix, int size)
    {
        var system = new NormalSystem(size) { Independence = 1 };
        double[] l = system._lower;
        for (int i = 0; i < size; i++)
        {
            double diagonal = matrix[i * size + i];
            if (!(diagonal > 0) || double.IsInfinity(diagonal))
                return null;
            system._scale[i] = 1 / Math.Sqrt(diagonal);
        }
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = matrix[i * size + j] * system._scale[i] * system._scale[j];
                for (int k = 0; k < j; k++)
                    sum -= l[i * size + k] * l[j * size + k];
                if (i == j)
                {
                    if (!(sum > 1e-13))
                        return null;
                    system.Independence = Math.Min(system.Independence, sum);
                    l[i * size + i] = Math.Sqrt(sum);
                }
                else
                {
                    l[i * size + j] = sum / l[j * size + j];
                }
            }
        }
        return system;
    }

    internal double[] Solve(double[] right)
    {
        var y = new double[Size];
        for (int i = 0; i < Size; i++)
        {
            double sum = right[i] * _scale[i];
            for (int k = 0; k < i; k++)
                sum -= _lower[i * Size + k] * y[k];
            y[i] = sum / _lower[i * Size + i];
        }
        for (int i = Size - 1; i >= 0; i--)
        {
            double sum = y[i];
            for (int k = i + 1; k < Size; k++)
                sum -= _lower[k * Size + i] * y[k];
            y[i] = sum / _lower[i * Size + i];
        }
        for (int i = 0; i < Size; i++)
            y[i] *= _scale[i];
        return y;
    }

    /// <summary>The inverse, row by row: the covariance for unit variance of the samples.</summary>
    internal double[] Inverse()
    {
        var inverse = new double[Size * Size];
        var unit = new double[Size];
        for (int j = 0; j < Size; j++)
        {
            Array.Clear(unit, 0, Size);
            unit[j] = 1;
            double[] column = Solve(unit);
            for (int i = 0; i < Size; i++)
                inverse[i * Size + j] = column[i];
        }
        return inverse;
    }
}
