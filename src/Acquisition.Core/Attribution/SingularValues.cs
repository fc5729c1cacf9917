using System;
using MathNet.Numerics.Providers.LinearAlgebra;

namespace Acquisition.Core.Attribution;

/// <summary>Singular value decomposition A = U S V^T of a small matrix, by MathNet's managed provider called directly (its process-wide switch has no say).</summary>
internal sealed class SingularValues
{
    private readonly double[] _u;
    private readonly double[] _s;
    private readonly double[] _vt;

    /// <param name="a">The matrix, rows first; all finite.</param>
    internal SingularValues(double[,] a)
    {
        Rows = a.GetLength(0);
        Columns = a.GetLength(1);
        var byColumn = new double[Rows * Columns];
        for (int j = 0; j < Columns; j++)
        {
            for (int i = 0; i < Rows; i++)
                byColumn[j * Rows + i] = a[i, j];
        }
        _s = new double[Math.Min(Rows, Columns)];
        _u = new double[Rows * Rows];
        _vt = new double[Columns * Columns];
        ManagedLinearAlgebraProvider.Instance.SingularValueDecomposition(true, byColumn, Rows, Columns, _s, _u, _vt);
    }

    internal int Rows { get; }

    internal int Columns { get; }

    internal double Value(int k) => _s[k];

    internal double U(int row, int k) => _u[k * Rows + row];

    internal double V(int column, int k) => _vt[column * Columns + k];
}
