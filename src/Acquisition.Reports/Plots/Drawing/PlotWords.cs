using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace Acquisition.Reports;

/// <summary>A <see cref="Plot"/> in words and numbers, for those who do not see it.</summary>
internal static class PlotWords
{
    private const int MostNamed = 24;

    internal static string Describe(Plot plot)
    {
        var words = new StringBuilder(plot.Content.Lead);
        if (words.Length > 0) words.Append(' ');
        AxisOf(words, "Horizontal", plot.X, plot);
        if (plot.Content.Bars.Count > 0)
            Rows(words, plot);
        else
            Upright(words, plot);
        Limits(words, "Upright lines", plot.X, plot.Content.Vertical);
        if (plot.Content.Below is { } below)
        {
            words.Append(" Below, over the same horizontal axis: ").Append(below.Title).Append(". ");
            Upright(words, below);
        }
        return words.ToString().TrimEnd();
    }

    private static void Upright(StringBuilder words, Plot plot)
    {
        AxisOf(words, "Vertical", plot.Y, plot);
        foreach (Trace trace in plot.Content.Traces) Of(words, plot, trace);
        if (plot.Content.Traces.Count == 0) words.Append("There are no data. ");
        Limits(words, "Level lines", plot.Y, plot.Content.Horizontal);
    }

    private static void AxisOf(StringBuilder words, string direction, Axis axis, Plot plot)
    {
        bool isUpright = direction == "Vertical";
        if (!isUpright || plot.Content.Bars.Count == 0)
        {
            words.Append(direction).Append(" axis: ").Append(axis.Label);
            if (axis.HasRange) words.Append(" from ").Append(axis.Words(axis.Lower)).Append(" to ").Append(axis.Words(axis.Upper));
            words.Append(axis.IsLogarithmic ? ", logarithmic. " : ". ");
        }
    }

    private static void Of(StringBuilder words, Plot plot, Trace trace)
    {
        string name = trace.Name.Length > 0 ? trace.Name : Unnamed(trace.Style);
        words.Append(Capital(name)).Append(": ");
        if (trace.X.Count == 0)
        {
            words.Append("no points. ");
            return;
        }
        IEnumerable<double> x = trace.HasOtherX ? trace.X.Concat(trace.Other!) : trace.X, y = trace.HasOtherY ? trace.Y.Concat(trace.Other!) : trace.Y;
        words.Append(Count(trace.X.Count, Noun(trace.Style))).Append(", ").Append(plot.X.Label).Append(' ').Append(Range(plot.X, x)).Append(", ").Append(plot.Y.Label).Append(' ').Append(Range(plot.Y, y)).Append(". ");
    }

    private static void Rows(StringBuilder words, Plot plot)
    {
        foreach (Bar bar in plot.Content.Bars)
        {
            words.Append(bar.Name);
            if (bar.Fill == BarFill.Heading) words.Append(bar.Note.Length > 0 ? " (" + bar.Note + "): " : ": ");
            else words.Append(": ").Append(bar.Note.Length > 0 ? bar.Note : plot.X.Words(bar.Value)).Append(". ");
        }
    }

    private static void Limits(StringBuilder words, string kind, Axis axis, IReadOnlyList<PlotLimit> limits)
    {
        if (limits.Count == 0) return;
        words.Append(kind).Append(": ").Append(string.Join("; ", limits.Take(MostNamed).Select(Of)));
        if (limits.Count > MostNamed) words.Append("; ").Append((limits.Count - MostNamed).ToString(CultureInfo.InvariantCulture)).Append(" more");
        words.Append(". ");

        string Of(PlotLimit limit)
        {
            string at = axis.Words(limit.Value);
            string place = limit.Name.Contains(at) ? limit.Name : limit.Name + " at " + at;
            return limit.HasStrip ? place + ", strip from " + axis.Words(limit.From) + " to " + axis.Words(limit.To) : place;
        }
    }

    private static string Range(Axis axis, IEnumerable<double> values)
    {
        double lower = double.PositiveInfinity, upper = double.NegativeInfinity;
        foreach (double value in values)
        {
            lower = Math.Min(lower, value);
            upper = Math.Max(upper, value);
        }
        string low = axis.Words(lower), high = axis.Words(upper);
        return low == high ? low : "from " + low + " to " + high;
    }

    private static string Count(int count, string noun) => count == 1 ? "one " + noun : count.ToString(CultureInfo.InvariantCulture) + " " + noun + "s";

    private static string Noun(TraceStyle style) => style switch
    {
        TraceStyle.Stems => "line",
        TraceStyle.Pieces => "piece",
        TraceStyle.Columns => "column",
        _ => "point",
    };

    private static string Unnamed(TraceStyle style) => style switch
    {
        TraceStyle.Band => "band",
        TraceStyle.Columns => "columns",
        _ => "trace",
    };

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text.Substring(1);
}
