using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Reports;

/// <summary>Draws rows of level bars with their names and notes.</summary>
internal static class BarWriter
{
    private const double Thickness = 12;

    internal static void Draw(StringBuilder svg, Panel panel)
    {
        IReadOnlyList<Bar> bars = panel.Content.Bars;
        if (bars.Count == 0) return;
        double zero = Clamped(panel, panel.XOf(0));
        for (int i = 0; i < bars.Count; i++)
        {
            if (bars[i].Fill is BarFill.Solid or BarFill.Hollow) Draw(svg, panel, bars[i], zero, panel.RowOf(i));
        }
        SvgWriter.Line(svg, "s0", Palette.Light[0], $"M{SvgText.Number(zero)} {SvgText.Number(panel.Top)}V{SvgText.Number(panel.Bottom)}", " stroke-width=\"1.4\"");
    }

    internal static void Names(StringBuilder svg, Panel panel, double width)
    {
        IReadOnlyList<Bar> bars = panel.Content.Bars;
        for (int i = 0; i < bars.Count; i++)
        {
            double y = panel.RowOf(i);
            string name = SvgText.OneLine(bars[i].Name), note = SvgText.OneLine(bars[i].Note);
            if (bars[i].Fill == BarFill.Heading)
            {
                string whole = note.Length > 0 ? name + " · " + note : name;
                // The heading takes the whole line, over the lines of the scale, and a line of its own parts it from what is above.
                double top = i == 0 ? panel.Top - 1 : y - 11;
                svg.Put($"<rect class=\"paper\" x=\"0\" y=\"{SvgText.Number(top)}\" width=\"{SvgText.Number(width)}\" height=\"{SvgText.Number(y + 11 - top)}\" fill=\"{Palette.Paper}\"/>\n");
                if (i > 0) SvgWriter.Line(svg, "soft", Palette.Soft, $"M{SvgText.Number(PlotLayout.Pad)} {SvgText.Number(y - 11)}H{SvgText.Number(width - PlotLayout.Pad)}");
                SvgWriter.Text(svg, new PlacedText(TextExtent.Fit(whole, width - (2 * PlotLayout.Pad), PlacedText.Usual), PlotLayout.Pad, y + 4.5, whole: whole));
                continue;
            }
            SvgWriter.Text(svg, new PlacedText(TextExtent.Fit(name, panel.Left - PlotLayout.Pad - 10, PlacedText.Usual), panel.Left - 10, y + 4.5, "end", whole: name));
            SvgWriter.Text(svg, new PlacedText(TextExtent.Fit(note, width - panel.Right - 14 - PlotLayout.Pad, PlacedText.Small), panel.Right + 14, y + 4.2, size: PlacedText.Small, whole: note));
        }
    }

    private static void Draw(StringBuilder svg, Panel panel, Bar bar, double zero, double middle)
    {
        double end = Clamped(panel, panel.XOf(bar.Value)), left = Math.Min(zero, end), length = Math.Max(Math.Abs(end - zero), 1);
        int colour = Palette.ColourOf(bar.Look);
        string digit = colour.ToString(CultureInfo.InvariantCulture);
        string box = $"x=\"{SvgText.Number(left)}\" y=\"{SvgText.Number(middle - (Thickness / 2))}\" width=\"{SvgText.Number(length)}\" height=\"{SvgText.Number(Thickness)}\"";
        svg.Append(bar.Fill == BarFill.Hollow
            ? $"<rect class=\"paper s{digit}\" {box} fill=\"{Palette.Paper}\" stroke=\"{Palette.Light[colour]}\" stroke-width=\"1.6\"/>\n"
            : $"<rect class=\"f{digit}\" {box} fill=\"{Palette.Light[colour]}\"/>\n");
        if (!PlotLayout.IsInside(panel.X, bar.Value)) Beyond(svg, end, middle, bar.Value > 0 ? 1 : -1, colour);
        if (bar.Uncertainty > 0)
        {
            double from = Clamped(panel, panel.XOf(bar.Value - bar.Uncertainty)), to = Clamped(panel, panel.XOf(bar.Value + bar.Uncertainty));
            string reach = $"M{SvgText.Number(from)} {SvgText.Number(middle)}H{SvgText.Number(to)}M{SvgText.Number(from)} {SvgText.Number(middle - 4)}v8M{SvgText.Number(to)} {SvgText.Number(middle - 4)}v8";
            SvgWriter.Line(svg, "under", Palette.Paper, reach, " stroke-width=\"4\"");
            SvgWriter.Line(svg, "s0", Palette.Light[0], reach, " stroke-width=\"1.5\"");
        }
    }

    /// <summary>A bar that goes on beyond the frame ends in an arrow head.</summary>
    private static void Beyond(StringBuilder svg, double end, double middle, int direction, int colour)
    {
        string head = $"M{SvgText.Number(end - (direction * 12))} {SvgText.Number(middle - 10)}l{SvgText.Number(direction * 14)} 10l{SvgText.Number(-direction * 14)} 10Z";
        svg.Put($"<path class=\"f{colour.ToString(CultureInfo.InvariantCulture)}\" d=\"{head}\" fill=\"{Palette.Light[colour]}\"/>\n");
    }

    private static double Clamped(Panel panel, double x) => Math.Min(Math.Max(x, panel.Left), panel.Right);
}
