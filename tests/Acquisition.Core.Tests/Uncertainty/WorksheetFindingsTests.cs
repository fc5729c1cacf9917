using System;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>A verdict whose first-order budget is not to be trusted says so wherever it is read: √(3.0² - 2.95²) ns bends strongly over its inputs' ± 0.1 ns (JCGM 100 5.1.2, note).</summary>
public sealed class WorksheetFindingsTests
{
    private const string Sheet = """
        given edge = 3.0 ns ± 0.1 ns (k=2)
        given chain = 2.95 ns ± 0.1 ns (k=2)
        let own = sqrt(edge^2 - chain^2)
        show own in ns
        check own <= 1.5 ns
        check own <= 1.5 ns and own >= 0 ns and edge > 1 ns
        """;

    private static readonly WorksheetResult Result = Worksheet.Build(Sheet).Evaluate();

    [Fact]
    public void TheFindingsOfADecision_AreThoseOfItsCheck()
    {
        WorksheetEntry check = Result.Entries[4];

        Assert.Equal(check.Decision!.Findings.Select(finding => finding.Code), check.Findings.Select(finding => finding.Code));
        Assert.Contains(check.Findings, finding => finding.Code == "nonlinear-model");
        Assert.Contains(Result.Entries[5].Findings, finding => finding.Code == "nonlinear-model");
        Assert.Equal(Result.Entries[5].Findings.Count, Result.Entries[5].Findings.Select(finding => finding.ToString()).Distinct().Count());
    }

    [Fact]
    public void LetAndShow_HaveThoseOfTheirBudget_AndWhatIsGivenHasNone()
    {
        Assert.Contains(Result.Entries[2].Findings, finding => finding.Code == "nonlinear-model");
        Assert.Contains(Result.Entries[3].Findings, finding => finding.Code == "nonlinear-model");
        Assert.Empty(Result.Entries[0].Findings);
        Assert.Empty(Worksheet.Build("given v = 5 V\ncheck v <= 6 V").Evaluate().Entries[1].Findings);
    }

    [Fact]
    public void TextAndJson_ShowThem()
    {
        Assert.Contains("passed\n      Warning nonlinear-model: ", Result.Entries[4].ToString(), StringComparison.Ordinal);
        Assert.Contains("own <= 1.5 ns: passed\n      Warning nonlinear-model: ", Result.ToString(), StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Result.ToJson());
        JsonElement finding = json.RootElement.GetProperty("entries")[4].GetProperty("findings").EnumerateArray().First(each => each.GetProperty("code").GetString() == "nonlinear-model");
        Assert.Equal("warning", finding.GetProperty("severity").GetString());
        Assert.StartsWith("propagate", finding.GetProperty("remedy").GetString(), StringComparison.Ordinal);
        Assert.False(json.RootElement.GetProperty("entries")[0].TryGetProperty("findings", out _));
    }
}
