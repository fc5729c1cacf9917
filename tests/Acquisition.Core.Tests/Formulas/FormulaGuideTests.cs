using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>The examples of docs/formulas.md, run.</summary>
public sealed class FormulaGuideTests
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(FunctionListTests.Root(), "docs", "formulas.md"));

    public static TheoryData<string, string> Rows()
    {
        var rows = new TheoryData<string, string>();
        foreach (string[] cells in Lines.Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => line.Split('|'))) rows.Add(cells[1].Trim().Trim('`'), cells[2].Trim());
        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void ExampleOfTheGuide_GivesWhatItSays(string formula, string result)
    {
        FormulaValue value = Formula.Build(formula).Evaluate();
        Quantity expected = Quantity.Parse(result);
        Assert.Equal(expected.Kind, value.Quantity.Kind);
        Assert.Equal(expected.SiValue, value.SiValue, Math.Abs(expected.SiValue) * 1e-12);
    }

    [Fact]
    public void WorksheetOfTheGuide_Runs()
    {
        int start = Array.IndexOf(Lines, "# Beacon clock at the mixer board");
        string sheet = string.Join("\n", Lines.Skip(start).TakeWhile(line => line != "```"));
        WorksheetResult result = Worksheet.Build(sheet).Evaluate();
        Assert.All(result.Entries, entry => Assert.Null(entry.Problem));
        Assert.Equal(WorksheetVerdict.Failed, result.Entries.Single(entry => entry.Verdict is not null).Verdict);
    }

    /// <summary>Every member that is written is one that the schema names.</summary>
    [Fact]
    public void Json_HasOnlyMembersOfTheSchema()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(FunctionListTests.Root(), "docs", "worksheet.schema.json")));
        string[] Named(string type) => schema.RootElement.GetProperty("$defs").GetProperty(type).GetProperty("properties").EnumerateObject().Select(member => member.Name).ToArray();
        using JsonDocument good = JsonDocument.Parse(TextFormulas.RunWorksheet("given a = 1 V ± 1 %\ngiven b = 2\nlet c = 1 / (b - 2)\ncheck a > 2 V else \"low\"\ncheck a > 0.5 V and a == 1 V\nshow \"x\"", "b = 2"));
        Assert.All(good.RootElement.GetProperty("entries").EnumerateArray().SelectMany(entry => entry.EnumerateObject()), member => Assert.Contains(member.Name, Named("entry")));
        Assert.All(good.RootElement.GetProperty("entries")[4].GetProperty("comparisons").EnumerateArray().SelectMany(entry => entry.EnumerateObject()), member => Assert.Contains(member.Name, Named("comparison")));
        using JsonDocument bad = JsonDocument.Parse(TextFormulas.RunWorksheet("given a = 1 Mhz"));
        Assert.All(bad.RootElement.GetProperty("problems").EnumerateArray().SelectMany(entry => entry.EnumerateObject()), member => Assert.Contains(member.Name, Named("problem")));
    }
}
