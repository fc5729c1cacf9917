using System.Collections.Generic;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Reports;

/// <summary>Writes what a plot shows as JSON: axes, points, lines, bars.</summary>
internal static class JsonPlot
{
    internal static void Write(JsonWriter json, Plot plot)
    {
        PlotData data = PlotData.Of(plot);
        Axis(json, "x", data.X);
        Panel(json, data.Panels[0], data.X);
        if (data.Panels.Count < 2) return;
        json.BeginObject("below").Text("title", data.Panels[1].Title);
        Panel(json, data.Panels[1], data.X);
        json.EndObject();
    }

    private static void Panel(JsonWriter json, PanelData panel, AxisData x)
    {
        if (panel.Bars.Count > 0)
        {
            Bars(json, panel.Bars, x);
        }
        else
        {
            Axis(json, "y", panel.Y);
            json.BeginArray("series");
            foreach (SeriesData series in panel.Series) Series(json, series);
            json.EndArray();
        }
        Lines(json, "levels", panel.Levels);
        Lines(json, "marks", panel.Marks);
    }

    private static void Axis(JsonWriter json, string name, AxisData axis)
    {
        json.BeginObject(name).Text("label", axis.Label).OptionalText("kind", axis.Kind?.Name);
        if (axis.Kind is null) json.Text("unit", axis.Unit);
        else json.Text("siUnit", axis.Unit).OptionalText("ucum", Ucum.Of(axis.Unit));
        if (axis.IsLogarithmic) json.Truth("isLogarithmic", true);
        json.EndObject();
    }

    private static void Series(JsonWriter json, SeriesData series)
    {
        json.BeginObject().Text("name", series.Name).Text("style", series.Style).Numbers("x", series.X);
        if (series.XTo is { } right) json.Numbers("xTo", right);
        json.Numbers("y", series.Y);
        if (series.YTo is { } upper) json.Numbers("yTo", upper);
        json.EndObject();
    }

    private static void Lines(JsonWriter json, string name, IReadOnlyList<LineData> lines)
    {
        if (lines.Count == 0) return;
        json.BeginArray(name);
        foreach (LineData line in lines)
        {
            json.BeginObject().Text("name", line.Name).Number("at", line.At);
            if (line.From is { } from && line.To is { } to) json.Number("from", from).Number("to", to);
            json.EndObject();
        }
        json.EndArray();
    }

    private static void Bars(JsonWriter json, IReadOnlyList<Bar> bars, AxisData x)
    {
        json.BeginArray("bars");
        foreach (Bar bar in bars)
        {
            json.BeginObject().Text("name", bar.Name);
            if (bar.Fill is BarFill.Solid or BarFill.Hollow) json.Number("to", x.Of(bar.Value)).Truth("isFilled", bar.Fill == BarFill.Solid);
            if (bar.Uncertainty > 0) json.Number("uncertainty", x.Length(bar.Uncertainty));
            if (bar.Note.Length > 0) json.Text("note", bar.Note);
            json.EndObject();
        }
        json.EndArray();
    }
}
