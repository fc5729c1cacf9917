using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>What a plot shows, as numbers in JSON and CSV.</summary>
public sealed class PlotDataTests
{
    [Fact]
    public void SweepPlot_CarriesLevelsCrossingAndResiduals()
    {
        double[] hertz = [1e6, 10e6, 50e6, 100e6, 200e6], decibels = [0, -0.0432, -0.9691, -3.0103, -6.9897];
        Sweep sweep = Sweep.OfDecibels(hertz, decibels, [0.02, 0.02, 0.02, 0.02, 0.02]);
        using JsonDocument document = Json(SweepPlot.Of(sweep, sweep.FitTo(Response.SinglePole)));
        JsonElement plot = Plot(document), measured = plot.GetProperty("series")[0];

        Assert.Equal(("frequency", "Hz", true), (plot.GetProperty("x").GetProperty("kind").GetString(), plot.GetProperty("x").GetProperty("ucum").GetString(), plot.GetProperty("x").GetProperty("isLogarithmic").GetBoolean()));
        Assert.Equal(("decibel ratio", "dB"), (plot.GetProperty("y").GetProperty("kind").GetString(), plot.GetProperty("y").GetProperty("siUnit").GetString()));
        Assert.Equal(hertz, Numbers(measured, "x"));
        Assert.All(decibels.Zip(Numbers(measured, "y"), Numbers(measured, "yTo")), point =>
        {
            Assert.Equal(point.First - 0.02, point.Second, 1e-5);
            Assert.Equal(point.First + 0.02, point.Third, 1e-5);
        });
        Assert.Equal(sweep.Bandwidth().Upper!.Frequency.Hertz, plot.GetProperty("marks")[0].GetProperty("at").GetDouble(), 1);
        Assert.Equal(["reference", "−3.01 dB"], plot.GetProperty("levels").EnumerateArray().Select(line => line.GetProperty("name").GetString()!));
        Assert.Equal(hertz, Numbers(plot.GetProperty("below").GetProperty("series")[0], "x"));
    }

    [Theory]
    [InlineData("%", "ratio", "", "1", 0.5)]
    [InlineData("", "ratio", "", "1", 50)]
    [InlineData("V", "voltage", "V", "V", 50)]
    [InlineData("mV", "voltage", "V", "V", 0.05)]
    [InlineData("°C", "temperature", "K", "K", 323.15)]
    [InlineData("dBm", "power level", "dBm", null, 50)]
    public void Axis_IsInSi(string unit, string kind, string symbol, string? ucum, double expected)
    {
        using JsonDocument document = Json(new Plot("p", Axis.Linear("time", "s"), Axis.Linear("level", unit)).WithLine("a", [0, 1], [0, 50]));
        JsonElement y = Plot(document).GetProperty("y");

        Assert.Equal((kind, symbol), (y.GetProperty("kind").GetString(), y.GetProperty("siUnit").GetString()));
        Assert.Equal(ucum, y.TryGetProperty("ucum", out JsonElement code) ? code.GetString() : null);
        Assert.Equal(expected, Numbers(Plot(document).GetProperty("series")[0], "y")[1], 1e-9);
    }

    [Fact]
    public void UnitThatTheLibraryDoesNotKnow_IsNamedAsItIs()
    {
        using JsonDocument document = Json(new Plot("p", Axis.Linear("time", "s"), Axis.Linear("height", "bananas")).WithLine("a", [0, 1], [0, 3]));
        JsonElement y = Plot(document).GetProperty("y");

        Assert.Equal("bananas", y.GetProperty("unit").GetString());
        Assert.False(y.TryGetProperty("siUnit", out _));
        Assert.Equal([0, 3], Numbers(Plot(document).GetProperty("series")[0], "y"));
    }

    [Fact]
    public void LongTrace_KeepsItsExtremes_AndFewPoints()
    {
        double[] x = Enumerable.Range(0, 100_000).Select(i => i * 1e-9).ToArray(), y = x.Select(t => Math.Sin(1e5 * t)).ToArray();
        y[77_777] = 5;
        using JsonDocument document = Json(new Plot("p", Axis.Linear("time", "s"), Axis.Linear("voltage", "V")).WithLine("a", x, y));
        double[] shown = Numbers(Plot(document).GetProperty("series")[0], "x"), values = Numbers(Plot(document).GetProperty("series")[0], "y");

        Assert.InRange(shown.Length, 1000, 4 * 800);
        Assert.Equal(5, values.Max());
        Assert.Equal(77.777e-6, shown[Array.IndexOf(values, 5)], 1e-10);
    }

    [Fact]
    public void TimesFarFromZero_KeepTheirDifferences()
    {
        double[] x = Enumerable.Range(0, 11).Select(i => 1 + (i * 1e-9)).ToArray();
        using JsonDocument document = Json(new Plot("p", Axis.Linear("time", "s").Tight(), Axis.Linear("voltage", "V")).WithLine("a", x, x));

        Assert.All(Numbers(Plot(document).GetProperty("series")[0], "x").Zip(x), pair => Assert.Equal(pair.Second, pair.First, 1e-14));
    }

    [Fact]
    public void Bars_HaveEndsAndNotes()
    {
        UncertaintyBudget budget = Uncertain.Of(1.V(), Spread.Standard(30.mV()), "reading").Budget();
        using JsonDocument document = Json(BudgetPlot.Of(budget));
        JsonElement bar = Plot(document).GetProperty("bars")[0];

        Assert.Equal("reading", bar.GetProperty("name").GetString());
        Assert.Equal(0.03, bar.GetProperty("to").GetDouble(), 1e-9);
    }

    [Fact]
    public void CsvTable_OfAPlot_HasARowForEachPointAndLine()
    {
        Report report = new Report("r").WithPlot(new Plot("p", Axis.Linear("time", "s"), Axis.Linear("level", "%")).WithLine("a, b", [0, 1e-9], [0, 100]).WithHorizontalLimit("half", 50).WithVerticalLimit("=edge", 0.5e-9))
            .WithPlot(new Plot("q", Axis.Linear("time", "s"), Axis.Linear("voltage", "V")));

        IReadOnlyList<KeyValuePair<string, string>> tables = report.CsvTables();
        Assert.Equal(["plot", "plot-2"], tables.Select(table => table.Key));
        Assert.Equal(
            "series,style,time / s,\"time / s, to\",level / 1,\"level / 1, to\"\r\n\"a, b\",line,0,,0,\r\n\"a, b\",line,1E-09,,1,\r\nhalf,level,,,0.5,\r\n'=edge,mark,5E-10,,,\r\n", tables[0].Value);
    }

    private static JsonDocument Json(Plot plot)
    {
        JsonDocument document = JsonDocument.Parse(new Report("r").WithPlot(plot).ToJson());
        JsonTests.AssertMeetsTheSchema(document);
        return document;
    }

    private static JsonElement Plot(JsonDocument document) => document.RootElement.GetProperty("blocks").EnumerateArray().Single();

    private static double[] Numbers(JsonElement series, string name) => series.GetProperty(name).EnumerateArray().Select(number => number.GetDouble()).ToArray();
}
