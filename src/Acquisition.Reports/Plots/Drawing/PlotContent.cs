using System;
using System.Collections.Generic;

namespace Acquisition.Reports;

/// <summary>A line across the picture with its name outside of the frame.</summary>
internal sealed class PlotLimit(string name, double value, double from, double to)
{
    internal string Name { get; } = name;

    internal double Value { get; } = value;

    /// <summary>A strip around the line, such as its uncertainty; both NaN for none.</summary>
    internal double From { get; } = from;

    internal double To { get; } = to;

    internal bool HasStrip => !double.IsNaN(From);
}

/// <summary>Everything a <see cref="Plot"/> holds.</summary>
internal sealed record PlotContent
{
    internal IReadOnlyList<Trace> Traces { get; init; } = Array.Empty<Trace>();

    internal IReadOnlyList<PlotLimit> Horizontal { get; init; } = Array.Empty<PlotLimit>();

    internal IReadOnlyList<PlotLimit> Vertical { get; init; } = Array.Empty<PlotLimit>();

    /// <summary>Rows of level bars, from the top; then there is no vertical scale.</summary>
    internal IReadOnlyList<Bar> Bars { get; init; } = Array.Empty<Bar>();

    /// <summary>What a factory says of its picture, before the general description.</summary>
    internal string Lead { get; init; } = "";

    internal int Width { get; init; } = 800;

    internal int Height { get; init; } = 450;

    /// <summary>A second picture below, over the same horizontal axis.</summary>
    internal Plot? Below { get; init; }
}
