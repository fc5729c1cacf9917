using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace Acquisition.Reports;

/// <summary>Draws a <see cref="Plot"/>. Coordinates are rounded to hundredths by integer arithmetic, so that runtimes cannot differ in their text.</summary>
internal static class SvgWriter
{
    private const int Width = 800, Height = 450;
    private const int Left = 76, Right = 20, Top = 62, Bottom = 54;
    private const int FrameWidth = Width - Left - Right, FrameHeight = Height - Top - Bottom;

    /// <summary>Colours that stay apart for readers who see no red or no green; each comes with a dash pattern of its own.</summary>
    private static readonly string[] Colours = { "#14506e", "#c2571a", "#3d7d3a", "#7a4b8f", "#8a6d00", "#444444" };
    private static readonly string[] Dashes = { "", "8 4", "2 3", "10 3 2 3", "14 4", "4 2" };

    /// <param name="plot">The plot.</param>
    /// <param name="number">Its number in the document, since an HTML page with several pictures must not name two clip paths alike.</param>
    internal static string Write(Plot plot, int number = 1)
    {
        Scale x = plot.X.Over(plot.Traces.SelectMany(trace => trace.X).Concat(plot.VerticalLimits.Select(limit => limit.Value)));
        Scale y = plot.Y.Over(plot.Traces.SelectMany(trace => trace.Y).Concat(plot.HorizontalLimits.Select(limit => limit.Value)));
        var svg = new StringBuilder();
        Put(svg, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {Height}\" role=\"img\" font-family=\"sans-serif\" font-size=\"13\">\n");
        Put(svg, $"<title>{Escape(plot.Title)}</title>\n<rect width=\"{Width}\" height=\"{Height}\" fill=\"#ffffff\"/>\n");
        Put(svg, $"<clipPath id=\"frame-{number}\"><rect x=\"{Left}\" y=\"{Top}\" width=\"{FrameWidth}\" height=\"{FrameHeight}\"/></clipPath>\n");
        Text(svg, Left, 22, "start", plot.Title, "#000000", " font-size=\"15\" font-weight=\"bold\"");
        Legend(svg, plot);
        Grid(svg, x, y);
        foreach (KeyValuePair<string, double> limit in plot.HorizontalLimits) HorizontalLimit(svg, y, limit);
        foreach (KeyValuePair<string, double> limit in plot.VerticalLimits) VerticalLimit(svg, x, limit);
        Put(svg, $"<g clip-path=\"url(#frame-{number})\" fill=\"none\" stroke-width=\"1.8\" stroke-linejoin=\"round\">\n");
        for (int i = 0; i < plot.Traces.Count; i++) Draw(svg, plot.Traces[i], i, x, y);
        svg.Append("</g>\n");
        Put(svg, $"<rect x=\"{Left}\" y=\"{Top}\" width=\"{FrameWidth}\" height=\"{FrameHeight}\" fill=\"none\" stroke=\"#333333\"/>\n</svg>\n");
        return svg.ToString();
    }

    private static void Legend(StringBuilder svg, Plot plot)
    {
        int count = plot.Traces.Count;
        for (int i = 0; i < count; i++)
        {
            double at = Left + i * (double)FrameWidth / count;
            string mark = plot.Traces[i].Style == TraceStyle.Dots
                ? $"<circle cx=\"{Coordinate(at + 14)}\" cy=\"44\" r=\"3\" fill=\"{Colour(i)}\"/>"
                : $"<path d=\"M{Coordinate(at)} 44H{Coordinate(at + 28)}\" stroke=\"{Colour(i)}\" stroke-width=\"1.8\"{Dash(i)}/>";
            svg.Append(mark).Append('\n');
            Text(svg, at + 34, 48.5, "start", plot.Traces[i].Name, "#000000");
        }
    }

    private static void Grid(StringBuilder svg, Scale x, Scale y)
    {
        foreach (KeyValuePair<double, string> tick in x.Ticks)
        {
            double at = XOf(x, tick.Key);
            Put(svg, $"<path d=\"M{Coordinate(at)} {Top}V{Top + FrameHeight}\" stroke=\"{(tick.Value.Length > 0 ? "#cccccc" : "#ececec")}\"/>\n");
            if (tick.Value.Length > 0) Text(svg, at, Top + FrameHeight + 18, "middle", tick.Value, "#333333");
        }
        foreach (KeyValuePair<double, string> tick in y.Ticks)
        {
            double at = YOf(y, tick.Key);
            Put(svg, $"<path d=\"M{Left} {Coordinate(at)}H{Left + FrameWidth}\" stroke=\"{(tick.Value.Length > 0 ? "#cccccc" : "#ececec")}\"/>\n");
            if (tick.Value.Length > 0) Text(svg, Left - 8, at + 4.5, "end", tick.Value, "#333333");
        }
        Text(svg, Left + FrameWidth / 2.0, Height - 12, "middle", x.Title, "#000000");
        double middle = Top + FrameHeight / 2.0;
        Text(svg, 18, middle, "middle", y.Title, "#000000", $" transform=\"rotate(-90 18 {Coordinate(middle)})\"");
    }

    private static void HorizontalLimit(StringBuilder svg, Scale y, KeyValuePair<string, double> limit)
    {
        double place = y.PlaceOf(limit.Value);
        if (place < 0 || place > 1) return;
        double at = YOf(y, limit.Value);
        Put(svg, $"<path d=\"M{Left} {Coordinate(at)}H{Left + FrameWidth}\" stroke=\"#a01818\" stroke-dasharray=\"6 4\"/>\n");
        Text(svg, Left + FrameWidth - 6, place > 0.9 ? at + 15 : at - 5, "end", limit.Key, "#a01818");
    }

    private static void VerticalLimit(StringBuilder svg, Scale x, KeyValuePair<string, double> limit)
    {
        double place = x.PlaceOf(limit.Value);
        if (place < 0 || place > 1) return;
        double at = XOf(x, limit.Value);
        Put(svg, $"<path d=\"M{Coordinate(at)} {Top}V{Top + FrameHeight}\" stroke=\"#a01818\" stroke-dasharray=\"6 4\"/>\n");
        Text(svg, place > 0.7 ? at - 5 : at + 5, Top + 15, place > 0.7 ? "end" : "start", limit.Key, "#a01818");
    }

    private static void Draw(StringBuilder svg, Trace trace, int index, Scale x, Scale y)
    {
        if (trace.Style == TraceStyle.Dots)
        {
            Put(svg, $"<g fill=\"{Colour(index)}\">");
            foreach (KeyValuePair<double, double> point in trace.Visible(x.PlaceOf, FrameWidth))
                Put(svg, $"<circle cx=\"{Coordinate(XOf(x, point.Key))}\" cy=\"{Coordinate(YOf(y, point.Value))}\" r=\"3\"/>");
            svg.Append("</g>\n");
            return;
        }
        Put(svg, $"<path stroke=\"{Colour(index)}\"{Dash(index)} d=\"");
        char command = 'M';
        foreach (KeyValuePair<double, double> point in trace.Visible(x.PlaceOf, FrameWidth))
        {
            string px = Coordinate(XOf(x, point.Key)), py = Coordinate(YOf(y, point.Value));
            svg.Append(trace.Style == TraceStyle.Steps && command == 'L' ? "H" + px + "V" + py : command + px + " " + py);
            command = 'L';
        }
        svg.Append("\"/>\n");
    }

    private static double XOf(Scale scale, double value) => Left + FrameWidth * scale.PlaceOf(value);

    private static double YOf(Scale scale, double value) => Top + FrameHeight * (1 - scale.PlaceOf(value));

    private static string Colour(int index) => Colours[index % Colours.Length];

    private static string Dash(int index) => Dashes[index % Dashes.Length].Length == 0 ? "" : $" stroke-dasharray=\"{Dashes[index % Dashes.Length]}\"";

    private static void Text(StringBuilder svg, double x, double y, string anchor, string text, string colour, string attributes = "") =>
        Put(svg, $"<text x=\"{Coordinate(x)}\" y=\"{Coordinate(y)}\" text-anchor=\"{anchor}\" fill=\"{colour}\"{attributes}>{Escape(text)}</text>\n");

    private static void Put(StringBuilder svg, FormattableString text) => svg.Append(FormattableString.Invariant(text));

    /// <summary>A coordinate in hundredths; far outside the picture it stops, since the frame clips it there anyway.</summary>
    private static string Coordinate(double value)
    {
        long hundredths = (long)Math.Round(Math.Min(Math.Max(value, -20000), 20000) * 100);
        string sign = hundredths < 0 ? "-" : "";
        long magnitude = Math.Abs(hundredths);
        string whole = (magnitude / 100).ToString(CultureInfo.InvariantCulture);
        string rest = (magnitude % 100).ToString("00", CultureInfo.InvariantCulture).TrimEnd('0');
        return rest.Length == 0 ? sign + whole : $"{sign}{whole}.{rest}";
    }

    internal static string Escape(string text) =>
        text.Replace("&", "&amp;").Replace("<", "&lt;").Replace(">", "&gt;").Replace("\"", "&quot;");
}
