using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>Where everything of a picture stands: title, legend rows, frames; the margins are as wide as their texts need, and the picture grows where it would be too low.</summary>
internal sealed class PlotLayout
{
    internal const double Pad = 12, LegendRow = 20, Swatch = 28;

    private const double LeastFrame = 120, LeastLowerFrame = 72, BetweenPanels = 16, AxisTexts = 50;

    private readonly List<Panel> _panels = new();
    private readonly List<PlacedText> _texts = new();
    private readonly List<(Trace Trace, double X, double Y)> _legend = new();

    private PlotLayout(Plot plot)
    {
        Width = plot.Content.Width;
        double y = Titles(plot.Title);
        y = Legend(plot, y);
        Plot[] plots = plot.Content.Below is { } below ? new[] { plot, below } : new[] { plot };
        double right = Math.Max(20, plots.Max(RightOf));
        double left = 0, wantedLeft = Pad + 16;
        // Texts of the upright axis need the height of the frame, that the rows of names, those the width of the frame, and that the texts of the upright axis.
        for (int round = 0; round < 5 && wantedLeft > left; round++)
        {
            left = wantedLeft;
            Place(plots, y, left, Width - left - right);
            wantedLeft = Math.Max(left, _panels.Max(LeftOf));
        }
        if (wantedLeft > left) Place(plots, y, wantedLeft, Width - wantedLeft - right);
    }

    internal double Width { get; }

    internal double Height { get; private set; }

    internal IReadOnlyList<Panel> Panels => _panels;

    internal IReadOnlyList<PlacedText> Texts => _texts;

    /// <summary>The entries of the legend with the left end and the middle of their swatches.</summary>
    internal IReadOnlyList<(Trace Trace, double X, double Y)> Swatches => _legend;

    internal static PlotLayout Of(Plot plot) => new(plot);

    private double Titles(string title)
    {
        double y = Pad;
        string line = SvgText.OneLine(title);
        foreach (string part in TextExtent.Wrap(line, Width - (2 * Pad), PlacedText.Title, 3))
        {
            _texts.Add(new PlacedText(part, Pad, y + (PlacedText.Title * TextExtent.Ascent), size: PlacedText.Title, whole: part[part.Length - 1] == '…' ? line : null));
            y += PlacedText.Title * 1.3;
        }
        return y + 6;
    }

    private double Legend(Plot plot, double top)
    {
        IEnumerable<Trace> traces = plot.Content.Traces.Concat(plot.Content.Below?.Content.Traces ?? Array.Empty<Trace>()).Where(trace => trace.Name.Length > 0);
        double x = Pad, y = top;
        foreach (Trace trace in traces)
        {
            string name = SvgText.OneLine(trace.Name), text = TextExtent.Fit(name, Width - (2 * Pad) - Swatch - 6, PlacedText.Usual);
            double width = Swatch + 6 + TextExtent.Width(text, PlacedText.Usual);
            if (x > Pad && x + width > Width - Pad)
            {
                x = Pad;
                y += LegendRow;
            }
            _legend.Add((trace, x, y + (LegendRow / 2)));
            _texts.Add(new PlacedText(text, x + Swatch + 6, y + (LegendRow / 2) + 4.5, whole: name));
            x += width + 18;
        }
        return (_legend.Count > 0 ? y + LegendRow : y) + 6;
    }

    private void Place(Plot[] plots, double top, double left, double width)
    {
        _panels.Clear();
        width = Math.Max(width, 60);
        Scale x = plots[0].X.Over(Panel.XValues(plots[0]), width, false);
        Flags[] flags = plots.Select(plot => Flags.Of(
            plot.Content.Vertical.Where(limit => IsInside(x, limit.Value)).Select(limit => new KeyValuePair<string, double>(SvgText.OneLine(limit.Name), left + (width * x.PlaceOf(limit.Value)))),
            left, Width - Pad)).ToArray();
        double taken = top + flags.Sum(rows => rows.Rows * Flags.RowHeight) + (plots.Length - 1) * BetweenPanels + 8 + AxisTexts;
        double room = plots[0].Content.Height - taken;
        double[] heights = plots.Length == 1 ? new[] { Math.Max(LeastFrame, room) } : new[] { Math.Max(LeastFrame, room * 0.68), Math.Max(LeastLowerFrame, room * 0.32) };
        if (plots[0].Content.Bars.Count > 0) heights[0] = (plots[0].Content.Bars.Count * Panel.RowHeight) + (2 * Panel.RowPad);
        double y = top + 8;
        for (int i = 0; i < plots.Length; i++)
        {
            y += flags[i].Rows * Flags.RowHeight + (i > 0 ? BetweenPanels : 0);
            Scale upright = plots[i].Y.Over(Panel.YValues(plots[i]), heights[i], true);
            _panels.Add(new Panel(plots[i], x, upright, left, y, width, heights[i], flags[i], i == plots.Length - 1));
            y += heights[i];
        }
        Height = y + AxisTexts;
    }

    internal static bool IsInside(Scale scale, double value)
    {
        double place = scale.PlaceOf(value);
        return place >= -1e-9 && place <= 1 + 1e-9;
    }

    private double RightOf(Plot plot)
    {
        IEnumerable<string> names = plot.Content.Horizontal.Select(limit => limit.Name).Concat(plot.Content.Bars.Where(bar => bar.Fill != BarFill.Heading).Select(bar => bar.Note));
        double widest = names.Select(name => TextExtent.Width(SvgText.OneLine(name), PlacedText.Small)).DefaultIfEmpty(0).Max();
        if (plot.Content.Horizontal.Count > 20) widest = Math.Max(widest, TextExtent.Width("+0000000 more", PlacedText.Small));
        return widest == 0 ? 0 : Math.Min(widest, Width * 0.3) + 16 + Pad;
    }

    private double LeftOf(Panel panel)
    {
        if (panel.Content.Bars.Count > 0)
        {
            double widest = panel.Content.Bars.Where(bar => bar.Fill != BarFill.Heading).Select(bar => TextExtent.Width(SvgText.OneLine(bar.Name), PlacedText.Usual)).DefaultIfEmpty(0).Max();
            return Pad + Math.Min(widest, Width * 0.3) + 10;
        }
        return Pad + 22 + panel.Y.Ticks.Select(tick => TextExtent.Width(tick.Text, PlacedText.Usual)).DefaultIfEmpty(0).Max() + 8;
    }
}
