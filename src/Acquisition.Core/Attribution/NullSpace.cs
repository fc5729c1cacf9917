using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Attribution;

/// <summary>
/// The changes of the elements that no measured combination notices (handbook 10.3): a basis in small whole numbers by elimination, so that it can be put into words.
/// </summary>
internal sealed class NullSpace
{
    private readonly List<double[]> _basis = new();

    internal NullSpace(IReadOnlyList<double[]> rows, int elements)
    {
        var a = rows.Select(r => (double[])r.Clone()).ToList();
        var pivots = new List<int>();
        int next = 0;
        // Columns from the last to the first, so that the free ones, about which the words are built, come first in the user's order.
        for (int column = elements - 1; column >= 0 && next < a.Count; column--)
        {
            int best = next;
            for (int i = next + 1; i < a.Count; i++)
            {
                if (Math.Abs(a[i][column]) > Math.Abs(a[best][column]))
                    best = i;
            }
            if (Math.Abs(a[best][column]) < 1e-9)
                continue;
            (a[next], a[best]) = (a[best], a[next]);
            double pivot = a[next][column];
            for (int j = 0; j < elements; j++)
                a[next][j] /= pivot;
            for (int i = 0; i < a.Count; i++)
            {
                double factor = a[i][column];
                if (i == next || factor == 0)
                    continue;
                for (int j = 0; j < elements; j++)
                    a[i][j] -= factor * a[next][j];
            }
            pivots.Add(column);
            next++;
        }
        Rank = pivots.Count;
        for (int free = 0; free < elements; free++)
        {
            if (pivots.Contains(free))
                continue;
            var vector = new double[elements];
            vector[free] = 1;
            for (int i = 0; i < pivots.Count; i++)
                vector[pivots[i]] = -a[i][free];
            _basis.Add(Clean(vector));
        }
    }

    internal int Rank { get; }

    internal IReadOnlyList<double[]> Basis => _basis;

    /// <summary>Whether a combination of elements is the same for every solution: orthogonal to every vector of the null space.</summary>
    internal bool Determines(double[] combination) => _basis.TrueForAll(v => Math.Abs(Dot(v, combination)) < 1e-9 * (1 + combination.Max(Math.Abs)));

    internal static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }

    private static double[] Clean(double[] vector) => vector.Select(v => Math.Abs(v - Math.Round(v)) < 1e-9 ? Math.Round(v) : v).ToArray();
}
