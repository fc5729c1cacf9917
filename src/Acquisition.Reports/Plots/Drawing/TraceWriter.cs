using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace Acquisition.Reports;

/// <summary>Draws traces and their swatches in the legend.</summary>
internal static class TraceWriter
{
    /// <summary>Beyond this distance a point is far outside of the frame, where lines are cut short at exact slopes.</summary>
    private const double Far = 9000;

    internal static void Draw(StringBuilder svg, Trace trace, Panel panel)
    {
        int[] shown = Columns.Visible(trace, panel.X.PlaceOf, (int)panel.Width).ToArray();
        if (shown.Length == 0) return;
        switch (trace.Style)
        {
            case TraceStyle.Line:
                Stroke(svg, trace, Polyline(shown.Select(i => (panel.XOf(trace.X[i]), panel.YOf(trace.Y[i])))));
                break;
            case TraceStyle.Steps:
                Stroke(svg, trace, Polyline(Held(trace, shown, panel)));
                break;
            case TraceStyle.Dots:
                Marks(svg, trace, shown.Select(i => (panel.XOf(trace.X[i]), panel.YOf(trace.Y[i]))).ToArray(), panel);
                break;
            case TraceStyle.Stems:
                Stems(svg, trace, shown, panel);
                break;
            case TraceStyle.Band:
                Area(svg, trace, Polyline(shown.Select(i => (panel.XOf(trace.X[i]), panel.YOf(trace.Y[i]))).Concat(Enumerable.Reverse(shown).Select(i => (panel.XOf(trace.X[i]), panel.YOf(trace.Other![i]))))) + "Z");
                break;
            case TraceStyle.Intervals:
                Intervals(svg, trace, shown, panel);
                break;
            case TraceStyle.Pieces:
                Stroke(svg, trace, string.Concat(shown.Select(i => Polyline(new[] { (panel.XOf(trace.X[i]), panel.YOf(trace.Y[i])), (panel.XOf(trace.Other![i]), panel.YOf(trace.Y[i])) }))), " stroke-width=\"4\" stroke-linecap=\"butt\"", dashed: false);
                break;
            case TraceStyle.Columns:
                Uprights(svg, trace, shown, panel);
                break;
        }
    }

    internal static void Swatch(StringBuilder svg, Trace trace, double x, double y, double width)
    {
        string level = $"M{SvgText.Number(x)} {SvgText.Number(y)}h{SvgText.Number(width)}", box = $"M{SvgText.Number(x)} {SvgText.Number(y - 6)}h{SvgText.Number(width)}v12h-{SvgText.Number(width)}Z";
        double middle = x + (width / 2);
        switch (trace.Style)
        {
            case TraceStyle.Line or TraceStyle.Steps:
                Stroke(svg, trace, level);
                break;
            case TraceStyle.Pieces:
                Stroke(svg, trace, level, " stroke-width=\"4\"", dashed: false);
                break;
            case TraceStyle.Band or TraceStyle.Columns:
                Area(svg, trace, box);
                break;
            case TraceStyle.Stems:
                Stroke(svg, trace, $"M{SvgText.Number(middle)} {SvgText.Number(y + 7)}V{SvgText.Number(y - 4)}", "", dashed: true);
                Mark(svg, trace, new[] { (middle, y - 4) }, 3.5);
                break;
            case TraceStyle.Intervals:
                Stroke(svg, trace, $"M{SvgText.Number(middle)} {SvgText.Number(y - 7)}v14", " stroke-width=\"1.2\"", dashed: false);
                Mark(svg, trace, new[] { (middle, y) }, 3.5);
                break;
            default:
                Mark(svg, trace, new[] { (middle, y) }, 3.5);
                break;
        }
    }

    private static IEnumerable<(double X, double Y)> Held(Trace trace, int[] shown, Panel panel)
    {
        for (int k = 0; k < shown.Length; k++)
        {
            double x = panel.XOf(trace.X[shown[k]]);
            if (k > 0) yield return (x, panel.YOf(trace.Y[shown[k - 1]]));
            yield return (x, panel.YOf(trace.Y[shown[k]]));
        }
    }

    private static void Stems(StringBuilder svg, Trace trace, int[] shown, Panel panel)
    {
        var tops = shown.Where(i => PlotLayout.IsInside(panel.X, trace.X[i]) && panel.Y.PlaceOf(trace.Y[i]) >= 0).Select(i => (X: panel.XOf(trace.X[i]), Y: panel.YOf(trace.Y[i]))).ToArray();
        Stroke(svg, trace, string.Concat(tops.Select(top => Polyline(new[] { (top.X, panel.Bottom), top }))), " stroke-width=\"1.4\"", dashed: true);
        Marks(svg, trace, tops, panel);
    }

    private static void Intervals(StringBuilder svg, Trace trace, int[] shown, Panel panel)
    {
        Stroke(svg, trace, string.Concat(shown.Select(i => Polyline(new[] { (panel.XOf(trace.X[i]), panel.YOf(trace.Y[i])), (panel.XOf(trace.X[i]), panel.YOf(trace.Other![i])) }))), " stroke-width=\"1.2\"", dashed: false);
        Marks(svg, trace, shown.Select(i => (panel.XOf(trace.X[i]), (panel.YOf(trace.Y[i]) + panel.YOf(trace.Other![i])) / 2)).ToArray(), panel);
    }

    private static void Uprights(StringBuilder svg, Trace trace, int[] shown, Panel panel)
    {
        double zero = Math.Min(Math.Max(panel.YOf(0), panel.Top), panel.Bottom);
        Area(svg, trace, string.Concat(shown.Select(i =>
        {
            double left = panel.XOf(trace.X[i]), right = panel.XOf(trace.Other![i]);
            return Polyline(new[] { (left, zero), (left, panel.YOf(trace.Y[i])), (right, panel.YOf(trace.Y[i])), (right, zero) }) + "Z";
        })));
    }

    private static void Marks(StringBuilder svg, Trace trace, (double X, double Y)[] places, Panel panel)
    {
        (double X, double Y)[] inside = places.Where(p => p.X > panel.Left - 9 && p.X < panel.Right + 9 && p.Y > panel.Top - 9 && p.Y < panel.Bottom + 9).ToArray();
        // Marks shrink where they would run into each other.
        double radius = inside.Length > 400 ? 1.2 : inside.Length > panel.Width / 9 ? 2.2 : 3.5;
        if (inside.Length > 0) Mark(svg, trace, inside, radius);
    }

    private static void Mark(StringBuilder svg, Trace trace, IEnumerable<(double X, double Y)> places, double radius)
    {
        int colour = Palette.ColourOf(trace.Look);
        var path = new StringBuilder();
        foreach ((double x, double y) in places) path.Append(Shape(trace.Look, x, y, radius));
        // Every other look is outlined, so that two marks of the same shape differ.
        bool isHollow = trace.Look % 2 == 1;
        svg.Append(isHollow
            ? $"<path class=\"paper s{Digit(colour)}\" d=\"{path}\" fill=\"{Palette.Paper}\" stroke=\"{Palette.Light[colour]}\" stroke-width=\"1.6\"/>\n"
            : $"<path class=\"f{Digit(colour)}\" d=\"{path}\" fill=\"{Palette.Light[colour]}\"/>\n");
    }

    private static string Shape(int look, double x, double y, double r)
    {
        string n(double value) => SvgText.Number(value);
        return (look % 4) switch
        {
            0 => $"M{n(x - r)} {n(y)}a{n(r)} {n(r)} 0 1 0 {n(2 * r)} 0a{n(r)} {n(r)} 0 1 0 {n(-2 * r)} 0Z",
            1 => $"M{n(x - r)} {n(y - r)}h{n(2 * r)}v{n(2 * r)}h{n(-2 * r)}Z",
            2 => $"M{n(x)} {n(y - (1.3 * r))}l{n(1.25 * r)} {n(2.2 * r)}h{n(-2.5 * r)}Z",
            _ => $"M{n(x)} {n(y - (1.4 * r))}l{n(1.4 * r)} {n(1.4 * r)}l{n(-1.4 * r)} {n(1.4 * r)}l{n(-1.4 * r)} {n(-1.4 * r)}Z",
        };
    }

    private static void Stroke(StringBuilder svg, Trace trace, string path, string attributes = "", bool dashed = true)
    {
        if (path.Length == 0) return;
        int colour = Palette.ColourOf(trace.Look);
        string dash = dashed ? Palette.Dashes[trace.Look % Palette.Dashes.Length] : "";
        if (attributes.IndexOf("stroke-width", StringComparison.Ordinal) < 0) attributes += trace.Look == 0 ? " stroke-width=\"1.8\"" : " stroke-width=\"1.6\"";
        if (dash.Length > 0) attributes += $" stroke-dasharray=\"{dash}\"";
        svg.Put($"<path class=\"s{Digit(colour)}\" d=\"{path}\" fill=\"none\" stroke=\"{Palette.Light[colour]}\"{attributes}/>\n");
    }

    private static void Area(StringBuilder svg, Trace trace, string path)
    {
        int colour = Palette.ColourOf(trace.Look);
        // Columns are outlined, since one stands beside the next.
        string outline = trace.Style == TraceStyle.Columns ? $" stroke=\"{Palette.Light[colour]}\" stroke-width=\"0.8\"" : "";
        string name = outline.Length > 0 ? "f" + Digit(colour) + " s" + Digit(colour) : "f" + Digit(colour);
        svg.Put($"<path class=\"{name}\" d=\"{path}\" fill=\"{Palette.Light[colour]}\" fill-opacity=\"0.22\"{outline}/>\n");
    }

    /// <summary>A path through points; of a piece that leads far outside only the part near the picture is written.</summary>
    private static string Polyline(IEnumerable<(double X, double Y)> all)
    {
        IEnumerable<(double X, double Y)> points = WithoutLevelMiddles(all);
        var path = new StringBuilder();
        bool isDown = false;
        (double X, double Y)? before = null;
        foreach ((double X, double Y) point in points)
        {
            if (before is { } from)
            {
                if (IsNear(from) && IsNear(point))
                {
                    if (!isDown) Move(path, from);
                    path.Append('L').Append(SvgText.Number(point.X)).Append(' ').Append(SvgText.Number(point.Y));
                    isDown = true;
                }
                else if (Cut(from, point) is { } piece)
                {
                    if (!isDown || !IsNear(from)) Move(path, piece.From);
                    path.Append('L').Append(SvgText.Number(piece.To.X)).Append(' ').Append(SvgText.Number(piece.To.Y));
                    isDown = IsNear(point);
                }
                else
                {
                    isDown = false;
                }
            }
            before = point;
        }
        // A single point is a dot by its round end.
        if (path.Length == 0 && before is { } only && IsNear(only)) path.Append('M').Append(SvgText.Number(only.X - 1)).Append(' ').Append(SvgText.Number(only.Y)).Append("h2");
        return path.ToString();
    }

    /// <summary>Of points at one height, each farther on than the last, the first and the last alone.</summary>
    private static IEnumerable<(double X, double Y)> WithoutLevelMiddles(IEnumerable<(double X, double Y)> points)
    {
        (double X, double Y)? before = null, held = null;
        foreach ((double X, double Y) point in points)
        {
            bool isLevel = before is { } a && held is { } b && Math.Abs(a.Y - b.Y) < 0.005 && Math.Abs(point.Y - a.Y) < 0.005 && a.X <= b.X && b.X <= point.X;
            if (!isLevel && held is { } kept)
            {
                yield return kept;
                before = kept;
            }
            held = point;
        }
        if (held is { } last) yield return last;
    }

    private static void Move(StringBuilder path, (double X, double Y) to) => path.Append('M').Append(SvgText.Number(to.X)).Append(' ').Append(SvgText.Number(to.Y));

    private static bool IsNear((double X, double Y) point) => Math.Abs(point.X) <= Far && Math.Abs(point.Y) <= Far;

    /// <summary>The part of a piece inside the square of <see cref="Far"/>, after Liang and Barsky (1984, from memory); null where none is.</summary>
    private static ((double X, double Y) From, (double X, double Y) To)? Cut((double X, double Y) from, (double X, double Y) to)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, start = 0, end = 1;
        foreach ((double step, double room) in new[] { (-dx, from.X + Far), (dx, Far - from.X), (-dy, from.Y + Far), (dy, Far - from.Y) })
        {
            if (step == 0 && room < 0) return null;
            if (step < 0) start = Math.Max(start, room / step);
            if (step > 0) end = Math.Min(end, room / step);
        }
        if (!(start <= end)) return null;
        return ((from.X + (start * dx), from.Y + (start * dy)), (from.X + (end * dx), from.Y + (end * dy)));
    }

    private static string Digit(int value) => value.ToString(CultureInfo.InvariantCulture);
}
