using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>A plot with the frame in which it is drawn.</summary>
internal sealed class Panel(Plot plot, Scale x, Scale y, double left, double top, double width, double height, Flags flags, bool isLast)
{
    private static readonly double[] Zero = { 0 };

    internal const double RowHeight = 22, RowPad = 4;

    internal Plot Plot { get; } = plot;

    internal PlotContent Content => Plot.Content;

    internal Scale X { get; } = x;

    internal Scale Y { get; } = y;

    internal double Left { get; } = left;

    internal double Top { get; } = top;

    internal double Width { get; } = width;

    internal double Height { get; } = height;

    internal double Right => Left + Width;

    internal double Bottom => Top + Height;

    internal Flags Flags { get; } = flags;

    /// <summary>Whether the texts of the horizontal axis stand below it.</summary>
    internal bool IsLast { get; } = isLast;

    internal double XOf(double value) => Left + (Width * X.PlaceOf(value));

    internal double YOf(double value) => Top + (Height * (1 - Y.PlaceOf(value)));

    /// <summary>The middle of a row of bars.</summary>
    internal double RowOf(int index) => Top + RowPad + (RowHeight * (index + 0.5));

    internal static IEnumerable<double> XValues(Plot plot)
    {
        PlotContent content = plot.Content;
        IEnumerable<double> values = content.Traces.SelectMany(trace => trace.HasOtherX ? trace.X.Concat(trace.Other!) : trace.X).Concat(content.Vertical.Select(limit => limit.Value))
            .Concat(content.Vertical.Where(limit => limit.HasStrip).SelectMany(limit => new[] { limit.From, limit.To }));
        if (content.Bars.Count > 0)
            values = values.Concat(Zero).Concat(content.Bars.Where(bar => bar.Fill is BarFill.Solid or BarFill.Hollow).SelectMany(bar => new[] { bar.Value - bar.Uncertainty, bar.Value + bar.Uncertainty }));
        return content.Below is { } below ? values.Concat(XValues(below)) : values;
    }

    internal static IEnumerable<double> YValues(Plot plot)
    {
        IEnumerable<double> values = plot.Content.Traces.SelectMany(trace => trace.HasOtherY ? trace.Y.Concat(trace.Other!) : trace.Y).Concat(plot.Content.Horizontal.Select(limit => limit.Value));
        return !plot.Y.IsLogarithmic && plot.Content.Traces.Any(trace => trace.Style == TraceStyle.Columns) ? values.Concat(Zero) : values;
    }
}
