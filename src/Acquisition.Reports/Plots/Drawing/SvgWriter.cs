using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace Acquisition.Reports;

/// <summary>Draws a <see cref="Plot"/>: frame, ticks, names and texts here, what lies inside the frame by <see cref="TraceWriter"/> and <see cref="BarWriter"/>.</summary>
internal static class SvgWriter
{
    internal static string Write(Plot plot)
    {
        PlotLayout layout = PlotLayout.Of(plot);
        string width = SvgText.Number(layout.Width), height = SvgText.Number(Math.Ceiling(layout.Height));
        var svg = new StringBuilder();
        svg.Put($"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"{Palette.Root}\" role=\"img\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\" style=\"max-width:100%;height:auto\" font-family=\"sans-serif\">\n");
        svg.Put($"<title>{SvgText.Escape(plot.Title)}</title>\n<desc>{SvgText.Escape(plot.Description)}</desc>\n<style>{Palette.Style()}</style>\n");
        svg.Put($"<rect class=\"paper\" width=\"{width}\" height=\"{height}\" fill=\"{Palette.Paper}\"/>\n");
        foreach (PlacedText text in layout.Texts) Text(svg, text);
        foreach ((Trace trace, double x, double y) in layout.Swatches) TraceWriter.Swatch(svg, trace, x, y, PlotLayout.Swatch);
        foreach (Panel panel in layout.Panels) Draw(svg, panel, layout);
        return svg.Append("</svg>\n").ToString();
    }

    private static void Draw(StringBuilder svg, Panel panel, PlotLayout layout)
    {
        Grid(svg, panel);
        // A picture inside the picture cuts off what leaves the frame; unlike a clip path it needs no identifier.
        string box = $"x=\"{SvgText.Number(panel.Left - 4)}\" y=\"{SvgText.Number(panel.Top - 4)}\" width=\"{SvgText.Number(panel.Width + 8)}\" height=\"{SvgText.Number(panel.Height + 8)}\"";
        svg.Put($"<svg {box} viewBox=\"{SvgText.Number(panel.Left - 4)} {SvgText.Number(panel.Top - 4)} {SvgText.Number(panel.Width + 8)} {SvgText.Number(panel.Height + 8)}\" fill=\"none\" stroke-linejoin=\"round\">\n");
        foreach (PlotLimit limit in panel.Content.Vertical) Strip(svg, panel, limit);
        foreach (Trace trace in panel.Content.Traces.Where(trace => trace.Style is TraceStyle.Band or TraceStyle.Columns)) TraceWriter.Draw(svg, trace, panel);
        LimitLines(svg, panel);
        foreach (Trace trace in panel.Content.Traces.Where(trace => trace.Style is not (TraceStyle.Band or TraceStyle.Columns))) TraceWriter.Draw(svg, trace, panel);
        BarWriter.Draw(svg, panel);
        svg.Append("</svg>\n");
        Names(svg, panel, layout);
        if (panel.Content.Bars.Count > 0) BarWriter.Names(svg, panel, layout.Width);
        else if (panel.Content.Traces.All(trace => trace.X.Count == 0)) Text(svg, new PlacedText("no data", (panel.Left + panel.Right) / 2, (panel.Top + panel.Bottom) / 2, "middle"));
    }

    private static void Grid(StringBuilder svg, Panel panel)
    {
        bool hasRows = panel.Content.Bars.Count > 0;
        string left = SvgText.Number(panel.Left), right = SvgText.Number(panel.Right), top = SvgText.Number(panel.Top), bottom = SvgText.Number(panel.Bottom);
        foreach (Tick tick in panel.X.Ticks)
        {
            string x = SvgText.Number(panel.XOf(tick.Value));
            if (tick.IsMajor) Line(svg, "soft", Palette.Soft, $"M{x} {top}V{bottom}");
            if (panel.IsLast) Line(svg, "guide", Palette.Guide, $"M{x} {bottom}v{(tick.IsMajor ? "5" : "3")}");
        }
        foreach (Tick tick in panel.Y.Ticks.Where(_ => !hasRows))
        {
            string y = SvgText.Number(panel.YOf(tick.Value));
            if (tick.IsMajor) Line(svg, "soft", Palette.Soft, $"M{left} {y}H{right}");
            Line(svg, "guide", Palette.Guide, $"M{left} {y}h{(tick.IsMajor ? "-5" : "-3")}");
        }
        Line(svg, "guide", Palette.Guide, hasRows ? $"M{left} {bottom}H{right}" : $"M{left} {top}V{bottom}H{right}");
    }

    private static void Strip(StringBuilder svg, Panel panel, PlotLimit limit)
    {
        if (!limit.HasStrip) return;
        double from = panel.Left + (panel.Width * Clamp(panel.X.PlaceOf(limit.From))), to = panel.Left + (panel.Width * Clamp(panel.X.PlaceOf(limit.To)));
        svg.Put($"<rect class=\"f1\" x=\"{SvgText.Number(from)}\" y=\"{SvgText.Number(panel.Top)}\" width=\"{SvgText.Number(Math.Max(to - from, 1))}\" height=\"{SvgText.Number(panel.Height)}\" fill=\"{Palette.Light[1]}\" fill-opacity=\"0.16\"/>\n");
    }

    private static void LimitLines(StringBuilder svg, Panel panel)
    {
        foreach (PlotLimit limit in panel.Content.Horizontal.Where(limit => PlotLayout.IsInside(panel.Y, limit.Value)))
            Line(svg, "guide", Palette.Guide, $"M{SvgText.Number(panel.Left)} {SvgText.Number(panel.YOf(limit.Value))}H{SvgText.Number(panel.Right)}", " stroke-dasharray=\"5 4\"");
        foreach (PlotLimit limit in panel.Content.Vertical.Where(limit => PlotLayout.IsInside(panel.X, limit.Value)))
            Line(svg, "guide", Palette.Guide, $"M{SvgText.Number(panel.XOf(limit.Value))} {SvgText.Number(panel.Top)}V{SvgText.Number(panel.Bottom)}", " stroke-dasharray=\"5 4\"");
    }

    private static void Names(StringBuilder svg, Panel panel, PlotLayout layout)
    {
        foreach (Flags.Flag flag in panel.Flags.All)
            Line(svg, "guide", Palette.Guide, $"M{SvgText.Number(flag.Pole)} {SvgText.Number(panel.Top)}V{SvgText.Number(FlagBase(panel, flag.Row) - 9)}");
        foreach (Flags.Flag flag in panel.Flags.All)
        {
            double y = FlagBase(panel, flag.Row);
            if (panel.Flags.All.Any(other => other.Row > flag.Row && other.Pole > flag.From - 1 && other.Pole < flag.From + flag.Width + 1))
                svg.Put($"<rect class=\"paper\" x=\"{SvgText.Number(flag.From - 1)}\" y=\"{SvgText.Number(y - 11)}\" width=\"{SvgText.Number(flag.Width + 2)}\" height=\"14\" fill=\"{Palette.Paper}\"/>\n");
            Text(svg, new PlacedText(flag.Text, flag.From, y, size: PlacedText.Small, whole: flag.Whole));
        }
        if (panel.Flags.Left > 0) Text(svg, new PlacedText(More(panel.Flags.Left), panel.Left, FlagBase(panel, panel.Flags.Rows - 1), size: PlacedText.Small));
        Sides(svg, panel, layout.Width);
        TickTexts(svg, panel, layout.Width);
    }

    private static double FlagBase(Panel panel, int row) => panel.Top - 9 - (row * Flags.RowHeight);

    private static void Sides(StringBuilder svg, Panel panel, double width)
    {
        PlotLimit[] limits = panel.Content.Horizontal.Where(limit => PlotLayout.IsInside(panel.Y, limit.Value)).OrderByDescending(limit => limit.Value).ToArray();
        double top = panel.Top + 5, bottom = panel.Bottom - 5;
        int room = SideLabels.Room(top, bottom), shown = limits.Length <= room ? limits.Length : room - 1;
        double[] wanted = limits.Take(shown).Select(limit => panel.YOf(limit.Value)).Concat(shown < limits.Length ? new[] { bottom } : Array.Empty<double>()).ToArray();
        double[] places = SideLabels.Spread(wanted, top, bottom);
        for (int i = 0; i < places.Length; i++)
        {
            if (i == shown)
            {
                Text(svg, new PlacedText(More(limits.Length - shown), panel.Right + 14, places[i] + 4.2, size: PlacedText.Small));
                break;
            }
            string name = SvgText.OneLine(limits[i].Name);
            if (name.Length == 0) continue;
            Line(svg, "guide", Palette.Guide, $"M{SvgText.Number(panel.Right)} {SvgText.Number(panel.YOf(limits[i].Value))}L{SvgText.Number(panel.Right + 10)} {SvgText.Number(places[i])}");
            Text(svg, new PlacedText(TextExtent.Fit(name, width - panel.Right - 14 - PlotLayout.Pad, PlacedText.Small), panel.Right + 14, places[i] + 4.2, size: PlacedText.Small, whole: name));
        }
    }

    private static void TickTexts(StringBuilder svg, Panel panel, double width)
    {
        foreach (Tick tick in panel.Y.Ticks.Where(tick => tick.IsMajor && panel.Content.Bars.Count == 0)) Text(svg, new PlacedText(tick.Text, panel.Left - 9, panel.YOf(tick.Value) + 4.5, "end"));
        if (panel.Content.Bars.Count == 0)
        {
            string title = SvgText.OneLine(panel.Y.Title);
            Text(svg, new PlacedText(WithUnit(title, panel.Height), PlotLayout.Pad + 12, (panel.Top + panel.Bottom) / 2, "middle", isUpright: true, whole: title));
        }
        if (!panel.IsLast) return;
        double end = double.NegativeInfinity;
        foreach (Tick tick in panel.X.Ticks.Where(tick => tick.IsMajor))
        {
            double half = TextExtent.Width(tick.Text, PlacedText.Usual) / 2, x = Math.Min(Math.Max(panel.XOf(tick.Value), half + 2), width - half - 2);
            if (x - half < end + 6) continue;
            Text(svg, new PlacedText(tick.Text, x, panel.Bottom + 20, "middle"));
            end = x + half;
        }
        string whole = SvgText.OneLine(panel.X.Title), level = TextExtent.Fit(whole, width - (2 * PlotLayout.Pad), PlacedText.Usual);
        double room = TextExtent.Width(level, PlacedText.Usual) / 2, middle = Math.Min(Math.Max((panel.Left + panel.Right) / 2, PlotLayout.Pad + room), width - PlotLayout.Pad - room);
        Text(svg, new PlacedText(level, middle, panel.Bottom + 41, "middle", whole: whole));
    }

    internal static void Text(StringBuilder svg, PlacedText text)
    {
        if (text.Text.Length == 0) return;
        string x = SvgText.Number(text.X), y = SvgText.Number(text.Baseline);
        svg.Put($"<text class=\"text\" x=\"{x}\" y=\"{y}\" font-size=\"{SvgText.Number(text.Size)}\" fill=\"{Palette.Text}\"");
        if (text.Anchor != "start") svg.Put($" text-anchor=\"{text.Anchor}\"");
        if (text.IsUpright) svg.Put($" transform=\"rotate(-90 {x} {y})\"");
        svg.Append('>').Append(SvgText.Escape(text.Text));
        if (text.Whole != text.Text) svg.Put($"<title>{SvgText.Escape(text.Whole)}</title>");
        svg.Append("</text>\n");
    }

    internal static void Line(StringBuilder svg, string name, string colour, string path, string attributes = "") =>
        svg.Put($"<path class=\"{name}\" d=\"{path}\" stroke=\"{colour}\" fill=\"none\"{attributes}/>\n");

    internal static string Escape(string text) => SvgText.Escape(text);

    /// <summary>The title of an axis, shortened in its name and not in its unit as far as that is possible.</summary>
    private static string WithUnit(string title, double room)
    {
        int slash = title.LastIndexOf(" / ", StringComparison.Ordinal);
        string unit = slash < 0 ? "" : title.Substring(slash);
        double left = room - TextExtent.Width(unit, PlacedText.Usual);
        return left < 40 || unit.Length == 0 ? TextExtent.Fit(title, room, PlacedText.Usual) : TextExtent.Fit(title.Substring(0, slash), left, PlacedText.Usual) + unit;
    }

    private static string More(int count) => "+" + count.ToString(System.Globalization.CultureInfo.InvariantCulture) + " more";

    private static double Clamp(double place) => Math.Min(Math.Max(place, 0), 1);
}
