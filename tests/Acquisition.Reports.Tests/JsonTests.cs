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
        EvaluationResults results = Schema.Value.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });

        Assert.True(results.IsValid, string.Join("\n", results.Details!.Where(x => x.Errors is { Count: > 0 }).Select(x => x.InstanceLocation + ": " + string.Join(", ", x.Errors!.Values))));
    }

    [Fact]
    public void Schema_RefusesWhatItDoesNotKnow()
    {
        string json = LanternBuoy.Reports["worksheet"].ToJson();
        foreach (string broken in new[] { json.Replace("\"version\": 1", "\"version\": 2", StringComparison.Ordinal), json.Replace("\"verdict\": \"pass\"", "\"verdict\": \"good\"", StringComparison.Ordinal), json.Replace("\"siUnit\"", "\"unit\"", StringComparison.Ordinal) })
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
        Assert.Contains(Verdicts(document), verdict => verdict.TryGetProperty("limitsAreExcluded", out _) && verdict.GetProperty("value").GetProperty("siValue").GetDouble() == 0);
    }

    [Theory]
    [InlineData(-1.0, Verdict.ConditionalPass)]
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
        bool isStrict = verdict.TryGetProperty("limitsAreExcluded", out _);
        bool within = isStrict ? y > low && y < high : y >= low && y <= high;
        bool surely = y >= low + w && y <= high - w, nearly = y >= low - w && y <= high + w;
        if (g < 0) return surely ? "pass" : nearly ? "conditional pass" : "fail";
        return within ? surely ? "pass" : "conditional pass" : nearly && w > 0 ? "conditional fail" : "fail";
    }

    private static double Si(JsonElement verdict, string name, double otherwise) => verdict.TryGetProperty(name, out JsonElement cell) ? cell.GetProperty("siValue").GetDouble() : otherwise;

    private static IEnumerable<JsonElement> Verdicts(JsonDocument document) => document.RootElement.GetProperty("blocks").EnumerateArray()
        .Where(block => block.GetProperty("type").GetString() == "verdicts").SelectMany(block => block.GetProperty("verdicts").EnumerateArray());
}
