using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using Acquisition.Core;
using Json.Schema;
using Xunit;

namespace Acquisition.Reports.Tests;

public sealed class JsonTests
{
    private static readonly Lazy<JsonSchema> Schema = new(() => JsonSchema.FromText(File.ReadAllText(Path.Combine(LanternBuoy.Folder(), "docs", "report.schema.json"))));

    public static TheoryData<string> Names() => new(LanternBuoy.Reports.Keys);

    [Theory]
    [MemberData(nameof(Names))]
    public void Json_MeetsItsSchema(string name)
    {
        using JsonDocument document = JsonDocument.Parse(LanternBuoy.Reports[name].ToJson());
        AssertMeetsTheSchema(document);
    }

    internal static void AssertMeetsTheSchema(JsonDocument document)
    {
        EvaluationResults results = Schema.Value.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });

        Assert.True(results.IsValid, string.Join("\n", results.Details!.Where(x => x.Errors is { Count: > 0 }).Select(x => x.InstanceLocation + ": " + string.Join(", ", x.Errors!.Values))));
    }

    [Fact]
    public void Schema_RefusesWhatItDoesNotKnow()
    {
        string json = LanternBuoy.Reports["worksheet"].ToJson();
        foreach (string broken in new[] { json.Replace("\"version\": 2", "\"version\": 1", StringComparison.Ordinal), json.Replace("\"verdict\": \"pass\"", "\"verdict\": \"good\"", StringComparison.Ordinal), json.Replace("\"siUnit\"", "\"unit\"", StringComparison.Ordinal) })
        {
            Assert.NotEqual(json, broken);
            using JsonDocument document = JsonDocument.Parse(broken);
            Assert.False(Schema.Value.Evaluate(document.RootElement).IsValid);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryVerdict_FollowsFromTheNumbersBesideIt(string name)
    {
        using JsonDocument document = JsonDocument.Parse(LanternBuoy.Reports[name].ToJson());
        foreach (JsonElement verdict in Verdicts(document))
        {
            if (verdict.GetProperty("verdict").GetString() is "not evaluated") continue;
            Assert.Equal(verdict.GetProperty("verdict").GetString(), Rebuilt(verdict));
        }
    }

    [Fact]
    public void Verdicts_OfTheWorksheetAreOfEveryKind()
    {
        using JsonDocument document = JsonDocument.Parse(LanternBuoy.Reports["worksheet"].ToJson());
        Assert.Equal(
            ["not passed", "passed", "inconclusive", "passed", "failed", "failed", "passed"], Verdicts(document).Select(verdict => verdict.GetProperty("text").GetString()!));
        Assert.Contains(Verdicts(document), verdict => verdict.TryGetProperty("upperLimitIsExcluded", out _) && verdict.GetProperty("margin").GetProperty("siValue").GetDouble() == 0);
    }

    [Theory]
    [InlineData("supply >= 4.75 V", "5 V | 4.75 V |  | 250 mV")]
    [InlineData("supply <= 5.25 V", "5 V |  | 5.25 V | 250 mV")]
    [InlineData("4.75 V <= supply", "5 V | 4.75 V |  | 250 mV")]
    [InlineData("5.25 V > supply", "5 V |  | 5.25 V | 250 mV")]
    [InlineData("carrier >= -14 dBm", "-12.6 dBm | -14 dBm |  | 1.4 dB")]
    [InlineData("board <= 40 °C", "298.15 K |  | 313.15 K | 15 K")]
    [InlineData("board - room <= 5 K", "4 K |  | 5 K | 1 K")]
    [InlineData("rate * (1 ± 1 %) >= 3", "5.600(32) | 3 |  | 2.6")]
    [InlineData("supply < 5.25 V and supply > 4.75 V", "true |  |  | ")]
    public void Check_ShowsValueLimitsAndMargin(string check, string expected)
    {
        Report report = Core.Worksheet.Build($"given supply = 5 V\ngiven carrier = -12.6 dBm\ngiven board = 25 °C\ngiven room = 21 °C\ngiven rate = 5.6\ncheck {check}").Evaluate().ToReport();
        using JsonDocument document = JsonDocument.Parse(report.ToJson());
        JsonElement verdict = Verdicts(document).Last();

        Assert.Equal(expected, string.Join(" | ", new[] { "value", "lowerLimit", "upperLimit", "margin" }.Select(column => verdict.TryGetProperty(column, out JsonElement cell) ? cell.GetProperty("text").GetString() : "")));
        Assert.Equal("pass", Rebuilt(verdict));
    }

    [Fact]
    public void CheckWithAnUncertainLimit_IsDecidedByTheDifference()
    {
        Report report = Core.Worksheet.Build("given edge = 2.8 ns ± 5 %\ngiven allowed = 3.1 ns ± 0.1 ns (k=2)\ncheck edge <= allowed").Evaluate().ToReport();
        using JsonDocument document = JsonDocument.Parse(report.ToJson());
        JsonElement verdict = Verdicts(document).Last();

        Assert.Equal(["2.8 ns", "3.1 ns"], new[] { "value", "upperLimit" }.Select(column => verdict.GetProperty(column).GetProperty("text").GetString()));
        // JCGM 100 5.1.2 by hand: 5 % of 2.8 ns as limits, beside 50 ps.
        Assert.Equal(Math.Sqrt((0.14e-9 * 0.14e-9 / 3) + (0.05e-9 * 0.05e-9)), verdict.GetProperty("standardUncertainty").GetProperty("siValue").GetDouble(), 1e-20);
        Assert.Equal("pass", Rebuilt(verdict));
    }

    [Theory]
    [InlineData(-1.0, Verdict.Pass)]
    [InlineData(0.0, Verdict.Fail)]
    [InlineData(1.0, Verdict.ConditionalFail)]
    public void VerdictNearALimit_DependsOnTheGuardBand_AndCanBeRebuilt(double factor, Verdict expected)
    {
        UncertaintyBudget budget = Uncertain.Of(Voltage.FromVolts(1.05), Spread.Standard(Voltage.FromVolts(0.05)), "reading").Budget();
        ConformityDecision decision = DecisionRule.Guarded(factor).Decide(budget, new Quantity(0, QuantityKind.Voltage), new Quantity(1, QuantityKind.Voltage));

        Assert.Equal(expected, decision.Verdict);
        using JsonDocument document = JsonDocument.Parse(decision.ToReport().ToJson());
        Assert.Equal(ReportVerdict.InWords(expected), Rebuilt(Verdicts(document).Single()));
    }

    [Fact]
    public void OneValue_GoesUnchangedThroughAllFormats()
    {
        Report report = LanternBuoy.Worksheet().ToReport("Mixer board");
        const string Shown = "350 ps";

        Assert.Equal(Shown, LanternBuoy.Worksheet().Entries.Single(entry => entry.Formula == "skew in ps").Text);
        Assert.Contains($"| skew in ps | {Shown} |", report.ToMarkdown(), StringComparison.Ordinal);
        Assert.Contains($">{Shown}</td>", report.ToHtml(), StringComparison.Ordinal);
        Assert.Contains($">{Shown}</td>", report.ToHtmlFragment(), StringComparison.Ordinal);
        Assert.Contains(report.ToText().Split('\n'), line => line.Contains("skew in ps", StringComparison.Ordinal) && line.EndsWith(Shown, StringComparison.Ordinal));
        Assert.Contains($",value,{Shown},3.5E-10,s,s\r\n", report.ToCsv(), StringComparison.Ordinal);
        using JsonDocument document = JsonDocument.Parse(report.ToJson());
        JsonElement[] rows = [.. document.RootElement.GetProperty("blocks").EnumerateArray().Single(block => block.TryGetProperty("name", out JsonElement name) && name.GetString() == "lines").GetProperty("rows").EnumerateArray()];
        JsonElement cell = rows.Single(row => row[2].GetProperty("text").GetString() == "skew in ps")[3];
        Assert.Equal(Shown, cell.GetProperty("text").GetString());
        Assert.Equal(350e-12, cell.GetProperty("siValue").GetDouble());
        Assert.Equal("s", cell.GetProperty("siUnit").GetString());
    }

    /// <summary>Clauses 8.2 and 8.3 of JCGM 106, written from the schema's words.</summary>
    private static string Rebuilt(JsonElement verdict)
    {
        JsonElement value = verdict.GetProperty("value");
        if (value.TryGetProperty("truth", out JsonElement truth)) return truth.GetBoolean() ? "pass" : "fail";
        double y = value.GetProperty("siValue").GetDouble();
        double low = Si(verdict, "lowerLimit", double.NegativeInfinity), high = Si(verdict, "upperLimit", double.PositiveInfinity), g = Si(verdict, "guardBand", 0), w = Math.Abs(g);
        bool within = (verdict.TryGetProperty("lowerLimitIsExcluded", out _) ? y > low : y >= low) && (verdict.TryGetProperty("upperLimitIsExcluded", out _) ? y < high : y <= high);
        bool surely = y >= low + w && y <= high - w, nearly = y >= low - w && y <= high + w;
        if (g < 0) return nearly ? "pass" : "fail";
        return within ? surely ? "pass" : "conditional pass" : nearly && w > 0 ? "conditional fail" : "fail";
    }

    private static double Si(JsonElement verdict, string name, double otherwise) => verdict.TryGetProperty(name, out JsonElement cell) ? cell.GetProperty("siValue").GetDouble() : otherwise;

    private static IEnumerable<JsonElement> Verdicts(JsonDocument document) => document.RootElement.GetProperty("blocks").EnumerateArray()
        .Where(block => block.GetProperty("type").GetString() == "verdicts").SelectMany(block => block.GetProperty("verdicts").EnumerateArray());
}
