using System;
using System.Collections.Generic;

namespace Acquisition.Reports;

/// <summary>Which points of a long trace are drawn: where many share one column of the picture, the first, lowest, highest and last of it, so that no peak is lost and the file stays small.</summary>
internal static class Columns
{
    /// <summary>The indices to draw, in order. Points whose x does not rise are kept as they are.</summary>
    internal static IEnumerable<int> Visible(Trace trace, Func<double, double> placeOfX, int columns)
    {
        if (trace.X.Count <= 4 * columns || !Rises(trace.X))
        {
            for (int i = 0; i < trace.X.Count; i++) yield return i;
            yield break;
        }
        for (int i = 0; i < trace.X.Count;)
        {
            double column = ColumnOf(trace.X[i]);
            int first = i, low = i, high = i;
            for (; i < trace.X.Count && ColumnOf(trace.X[i]) == column; i++)
            {
                if (trace.Y[i] < trace.Y[low]) low = i;
                if (High(trace, i) > High(trace, high)) high = i;
            }
            int previous = -1;
            foreach (int index in new[] { first, Math.Min(low, high), Math.Max(low, high), i - 1 })
            {
                if (index > previous) yield return index;
                previous = Math.Max(previous, index);
            }
        }

        // What lies left or right of the picture is one column each.
        double ColumnOf(double x) => Math.Min(Math.Max(Math.Floor(placeOfX(x) * columns), -1), columns + 1);
    }

    private static double High(Trace trace, int index) => trace.HasOtherY ? trace.Other![index] : trace.Y[index];

    private static bool Rises(IReadOnlyList<double> x)
    {
        for (int i = 1; i < x.Count; i++)
        {
            if (x[i] <= x[i - 1]) return false;
        }
        return true;
    }
}
