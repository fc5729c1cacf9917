using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>What a <see cref="Plot"/> shows as numbers in SI, for software: the points that are drawn, each rounded to far less than the picture can tell.</summary>
internal sealed class PlotData
{
    private PlotData(AxisData x, IReadOnlyList<PanelData> panels)
    {
        X = x;
        Panels = panels;
    }

    internal AxisData X { get; }

    /// <summary>The picture, and the one below it where there is one.</summary>
    internal IReadOnlyList<PanelData> Panels { get; }

    internal static PlotData Of(Plot plot)
    {
        IReadOnlyList<Panel> panels = PlotLayout.Of(plot).Panels;
        var x = new AxisData(plot.X, panels[0].X);
        return new PlotData(x, panels.Select(panel => new PanelData(panel, x)).ToArray());
    }
}

/// <summary>One frame of a plot as numbers.</summary>
internal sealed class PanelData
{
    internal PanelData(Panel panel, AxisData x)
    {
        Title = panel.Plot.Title;
        Y = new AxisData(panel.Plot.Y, panel.Y);
        Series = panel.Content.Traces.Select(trace => new SeriesData(trace, Columns.Visible(trace, panel.X.PlaceOf, (int)panel.Width).ToArray(), x, Y)).ToArray();
        Levels = panel.Content.Horizontal.Select(limit => new LineData(limit, Y)).ToArray();
        Marks = panel.Content.Vertical.Select(limit => new LineData(limit, x)).ToArray();
        Bars = panel.Content.Bars;
    }

    internal string Title { get; }

    internal AxisData Y { get; }

    internal IReadOnlyList<SeriesData> Series { get; }

    /// <summary>The level lines.</summary>
    internal IReadOnlyList<LineData> Levels { get; }

    /// <summary>The upright lines.</summary>
    internal IReadOnlyList<LineData> Marks { get; }

    /// <summary>The rows of bars, on the horizontal axis.</summary>
    internal IReadOnlyList<Bar> Bars { get; }
}

/// <summary>A trace as numbers.</summary>
internal sealed class SeriesData
{
    internal SeriesData(Trace trace, int[] shown, AxisData x, AxisData y)
    {
        Name = trace.Name;
        Style = trace.Style.ToString().ToLowerInvariant();
        X = shown.Select(i => x.Of(trace.X[i])).ToArray();
        Y = shown.Select(i => y.Of(trace.Y[i])).ToArray();
        if (trace.HasOtherX) XTo = shown.Select(i => x.Of(trace.Other![i])).ToArray();
        if (trace.HasOtherY) YTo = shown.Select(i => y.Of(trace.Other![i])).ToArray();
    }

    internal string Name { get; }

    internal string Style { get; }

    internal IReadOnlyList<double> X { get; }

    internal IReadOnlyList<double> Y { get; }

    /// <summary>The right ends of pieces and columns; null for others.</summary>
    internal IReadOnlyList<double>? XTo { get; }

    /// <summary>The upper ends of bands and intervals; null for others.</summary>
    internal IReadOnlyList<double>? YTo { get; }
}

/// <summary>A line across a plot as numbers.</summary>
internal sealed class LineData
{
    internal LineData(PlotLimit limit, AxisData axis)
    {
        Name = limit.Name;
        At = axis.Of(limit.Value);
        if (limit.HasStrip) (From, To) = (axis.Of(limit.From), axis.Of(limit.To));
    }

    internal string Name { get; }

    internal double At { get; }

    /// <summary>The ends of the strip around it; null where there is none.</summary>
    internal double? From { get; }

    internal double? To { get; }
}
