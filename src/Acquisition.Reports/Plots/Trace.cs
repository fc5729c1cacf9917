using System;
using System.Collections.Generic;

namespace Acquisition.Reports;

/// <summary>How a <see cref="Trace"/> is drawn.</summary>
internal enum TraceStyle
{
    Line,
    Dots,
    Steps,
}

/// <summary>One set of points in a <see cref="Plot"/>.</summary>
internal sealed class Trace
{
    internal Trace(string name, TraceStyle style, IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        Name = name;
        Style = style;
        X = x;
        Y = y;
    }

    internal string Name { get; }

    internal TraceStyle Style { get; }

    internal IReadOnlyList<double> X { get; }

    internal IReadOnlyList<double> Y { get; }

    /// <summary>
    /// The points that can be seen: where many share one column of the picture, the first, lowest, highest and last of it, so that no peak is lost.
    /// Points whose x does not rise are kept as they are.
    /// </summary>
    internal IEnumerable<KeyValuePair<double, double>> Visible(Func<double, double> placeOfX, int columns)
    {
        if (X.Count <= 4 * columns || !Rises()) return All();
        return Reduced(placeOfX, columns);
    }

    private IEnumerable<KeyValuePair<double, double>> All()
    {
        for (int i = 0; i < X.Count; i++) yield return new KeyValuePair<double, double>(X[i], Y[i]);
    }

    private IEnumerable<KeyValuePair<double, double>> Reduced(Func<double, double> placeOfX, int columns)
    {
        for (int i = 0; i < X.Count;)
        {
            int column = (int)Math.Floor(placeOfX(X[i]) * columns);
            int first = i, low = i, high = i;
            for (; i < X.Count && (int)Math.Floor(placeOfX(X[i]) * columns) == column; i++)
            {
                if (Y[i] < Y[low]) low = i;
                if (Y[i] > Y[high]) high = i;
            }
            int previous = -1;
            foreach (int index in new[] { first, Math.Min(low, high), Math.Max(low, high), i - 1 })
            {
                if (index != previous) yield return new KeyValuePair<double, double>(X[index], Y[index]);
                previous = index;
            }
        }
    }

    private bool Rises()
    {
        for (int i = 1; i < X.Count; i++)
        {
            if (X[i] <= X[i - 1]) return false;
        }
        return true;
    }
}
