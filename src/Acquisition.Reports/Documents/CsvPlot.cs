using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>What a plot shows as a table for CSV: a row for each point, line and bar, in SI.</summary>
internal static class CsvPlot
{
    private static readonly string[] Note = { "note" };

    internal static IEnumerable<string[]> Rows(Plot plot)
    {
        PlotData data = PlotData.Of(plot);
        bool hasBars = data.Panels[0].Bars.Count > 0;
        yield return new[] { "series", "style", Head(data.X), Head(data.X) + ", to" }.Concat(hasBars ? Note : data.Panels.SelectMany(panel => new[] { Head(panel.Y), Head(panel.Y) + ", to" })).ToArray();
        foreach (Bar bar in data.Panels[0].Bars)
        {
            string end = bar.Fill is BarFill.Solid or BarFill.Hollow ? Number(data.X.Of(bar.Value)) : "";
            yield return new[] { bar.Name, "bar", end.Length > 0 ? "0" : "", end, bar.Note };
        }
        for (int i = 0; i < data.Panels.Count && !hasBars; i++)
        {
            foreach (string[] row in Rows(data.Panels[i], i, data.Panels.Count)) yield return row;
        }
    }

    private static IEnumerable<string[]> Rows(PanelData panel, int index, int panels)
    {
        foreach (SeriesData series in panel.Series)
        {
            for (int i = 0; i < series.X.Count; i++)
                yield return Row(series.Name, series.Style, Number(series.X[i]), series.XTo is { } right ? Number(right[i]) : "", Number(series.Y[i]), series.YTo is { } upper ? Number(upper[i]) : "");
        }
        foreach (LineData line in panel.Levels) yield return Row(line.Name, "level", "", "", Number(line.At), "");
        foreach (LineData line in panel.Marks)
        {
            yield return Row(line.Name, "mark", Number(line.At), "", "", "");
            if (line.From is { } from && line.To is { } to) yield return Row(line.Name, "strip", Number(from), Number(to), "", "");
        }

        string[] Row(string name, string style, string x, string xTo, string y, string yTo)
        {
            string[] row = Enumerable.Repeat("", 4 + (2 * panels)).ToArray();
            (row[0], row[1], row[2], row[3], row[4 + (2 * index)], row[5 + (2 * index)]) = (name, style, x, xTo, y, yTo);
            return row;
        }
    }

    private static string Head(AxisData axis) => axis.Label + " / " + (axis.Unit.Length == 0 ? "1" : axis.Unit);

    private static string Number(double value) => new Quantity(value, QuantityKind.Ratio).ToString();
}
