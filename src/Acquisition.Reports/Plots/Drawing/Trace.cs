using System.Collections.Generic;

namespace Acquisition.Reports;

/// <summary>How a <see cref="Trace"/> is drawn.</summary>
internal enum TraceStyle
{
    /// <summary>Points joined by straight lines.</summary>
    Line,

    /// <summary>Marks alone.</summary>
    Dots,

    /// <summary>Each point held until the next.</summary>
    Steps,

    /// <summary>An upright from the foot of the picture to a mark.</summary>
    Stems,

    /// <summary>The area between two values.</summary>
    Band,

    /// <summary>Marks with an upright from one value to another.</summary>
    Intervals,

    /// <summary>Level pieces, each from one horizontal value to another.</summary>
    Pieces,

    /// <summary>Upright bars from 0, each from one horizontal value to another.</summary>
    Columns,
}

/// <summary>One set of points in a <see cref="Plot"/>.</summary>
internal sealed class Trace
{
    internal Trace(string name, TraceStyle style, int look, IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double>? other = null)
    {
        Name = name;
        Style = style;
        Look = look;
        X = x;
        Y = y;
        Other = other;
    }

    /// <summary>The name in the legend; empty where it needs none.</summary>
    internal string Name { get; }

    internal TraceStyle Style { get; }

    /// <summary>Which colour, dash pattern and mark it takes.</summary>
    internal int Look { get; }

    internal IReadOnlyList<double> X { get; }

    internal IReadOnlyList<double> Y { get; }

    /// <summary>The second value of each point: the upper end of bands and intervals (Y is the lower one), the right end of pieces and columns (X is the left one).</summary>
    internal IReadOnlyList<double>? Other { get; }

    internal bool HasOtherX => Other is not null && Style is TraceStyle.Pieces or TraceStyle.Columns;

    internal bool HasOtherY => Other is not null && Style is TraceStyle.Band or TraceStyle.Intervals;
}
