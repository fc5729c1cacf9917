using System;
using System.Globalization;

namespace Acquisition.Core.Uncertainty;

/// <summary>Sources with known correlation coefficients, and the lower triangle that turns independent normal draws into correlated ones (JCGM 101 6.4.8, annex C.5).</summary>
internal sealed class CorrelatedSet
{
    internal CorrelatedSet(double[,] coefficients)
    {
        Coefficients = coefficients;
        Triangle = Cholesky(coefficients);
    }

    internal double[,] Coefficients { get; }

    internal double[,] Triangle { get; }

    internal int Count => Coefficients.GetLength(0);

    /// <summary>The lower triangle L with L Lᵀ = R; a singular but possible matrix (coefficients of ±1) is fine.</summary>
    private static double[,] Cholesky(double[,] r)
    {
        int n = r.GetLength(0);
        if (r.GetLength(1) != n) throw new ArgumentException($"a correlation matrix must be square; was {n} by {r.GetLength(1)}", nameof(r));
        var triangle = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            if (r[i, i] != 1) throw new ArgumentException(Text($"a correlation matrix has 1 on its diagonal; coefficient ({i + 1},{i + 1}) was {r[i, i]}"));
            for (int j = 0; j < i; j++)
            {
                if (!(Math.Abs(r[i, j]) <= 1)) throw new ArgumentException(Text($"a correlation coefficient must be from -1 to 1; coefficient ({i + 1},{j + 1}) was {r[i, j]}"));
                if (r[i, j] != r[j, i]) throw new ArgumentException(Text($"a correlation matrix must be symmetric; coefficient ({i + 1},{j + 1}) was {r[i, j]}, ({j + 1},{i + 1}) was {r[j, i]}"));
                double sum = r[i, j];
                for (int k = 0; k < j; k++) sum -= triangle[i, k] * triangle[j, k];
                if (triangle[j, j] > 0) triangle[i, j] = sum / triangle[j, j];
                else if (Math.Abs(sum) > 1e-7) throw Impossible(i, j);
            }
            double rest = 1;
            for (int k = 0; k < i; k++) rest -= triangle[i, k] * triangle[i, k];
            if (rest < -1e-9) throw Impossible(i, i);
            triangle[i, i] = rest < 1e-14 ? 0 : Math.Sqrt(rest);
        }
        return triangle;
    }

    private static ArgumentException Impossible(int row, int column) =>
        new(Text($"the correlation coefficients contradict each other (the matrix is not positive semidefinite; found at row {row + 1}, column {column + 1}); rounded coefficients often do: use the unrounded ones"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
