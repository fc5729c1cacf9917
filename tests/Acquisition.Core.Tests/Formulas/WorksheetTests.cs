using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Formulas;
using Acquisition.Core.Functions;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class WorksheetTests
{
    private const string Beacon = """
        # Beacon clock at the mixer board
        given  clock   = 24 MHz
        given  edge    = 2.8 ns ± 5 %
        let    front   = 0.34 / 200 MHz       # rise time of the front end
        let    seen    = sqrt(edge^2 + front^2)

        check  seen <= 1.10 * edge          else "the chain stretches the edge by more than 10 %"
        check  clock < 50 MHz
        show   seen in ns, 3 digits
        show   period(clock)
        """;

    // Rectangular half-widths over sqrt(3), times 2: U = 115 ps, 55 Hz and 1.15 mV, of which two digits are written, and the value as far as they reach (JCGM 100 7.2.6); without an uncertainty six digits.
    [Theory]
    [InlineData("let a = sqrt((2.8 ns)^2 + (2.3 ns)^2)", "a = 3.62353 ns")]
    [InlineData("let a = (2.7523825855461404 ns ± 100 ps) * 1", "a = 2.75 ns ± 120 ps (k=2)")]
    [InlineData("let a = 24.0001181234 MHz * (1 ± 2 ppm)", "a = 24.000118 MHz ± 55 Hz (k=2)")]
    [InlineData("let a = 1 Vpk ± 1 mVpk", "a = 1.0000 Vpk ± 1.2 mVpk (k=2)")]
    [InlineData("given a = 2.7523825855461404 ns", "a = 2.7523825855461404 ns")]
    [InlineData("let a = 1234567 pts", "a = 1.234567 Mpts")]
    [InlineData("show 10 ns / 3 in ps", "10 ns / 3 in ps: 3333.33 ps")]
    [InlineData("show 10 ns / 3 in ps, 8 digits", "10 ns / 3 in ps: 3333.3333 ps")]
    public void Values_AreWrittenWithAsManyDigitsAsTheyAreWorth(string line, string text) => Assert.Equal(text, Worksheet.Build(line).Evaluate().Entries[0].ToString());

    [Fact]
    public void Worksheet_GivesValuesVerdictsAndOutputsInOrder()
    {
        WorksheetResult result = Worksheet.Build(Beacon).Evaluate();
        Assert.Equal([2, 3, 4, 5, 7, 8, 9, 10], result.Entries.Select(entry => entry.Line));
        Assert.Equal(["clock", "edge", "front", "seen", "", "", "", ""], result.Entries.Select(entry => entry.Name));
        Assert.Equal(Math.Sqrt(2.8e-9 * 2.8e-9 + 1.7e-9 * 1.7e-9), result["seen"].SiValue, 1e-23);
        Assert.Equal("3.28 ns ± 0.14 ns (k=2)", result.Entries[6].Text);
        Assert.Equal(WorksheetVerdict.Failed, result.Entries[4].Verdict);
        Assert.Equal("the chain stretches the edge by more than 10 %", result.Entries[4].Message);
        Assert.Equal(WorksheetVerdict.Passed, result.Entries[5].Verdict);
        Assert.False(result.HasPassed);
    }

    /// <summary>A function that is cancelled has refused nothing: the sheet ends, instead of saying that a line has no value.</summary>
    [Theory]
    [InlineData("let a = ending(1)")]
    [InlineData("given x = 1\nlet a = ending(x)")]
    [InlineData("let a = ending(1 ± 0.1)")]
    [InlineData("check ending(1 ± 0.1) > 0")]
    public void CancellationInAFunction_GoesThrough(string sheet)
    {
        FunctionDefinition ending = FunctionDefinition.Named("ending", "It ends.", "common practice, no source").Takes("value", ValueKind.Number)
            .Returns(ValueKind.Number, (Func<double, double>)(_ => throw new OperationCanceledException()), _ => 1).Example("ending(1)", "");
        Assert.Throws<OperationCanceledException>(() => Worksheet.Build(sheet, FormulaContext.Standard.WithFunctions(ending)).Evaluate());
    }

    [Theory]
    [InlineData("")]
    [InlineData("# a remark")]
    [InlineData("given a = 1 V\nshow a in mV")]
    public void SheetThatChecksNothing_HasNotPassed(string sheet) => Assert.False(Worksheet.Build(sheet).Evaluate().HasPassed);

    [Fact]
    public void Check_CarriesItsMargin_AndWhetherExactlyEnoughIsEnough()
    {
        WorksheetResult result = Worksheet.Build(
            """
            given skew = 350 ps
            check skew <= 500 ps
            check skew > 1 ns
            check skew < 350 ps
            check skew >= 350 ps
            check skew < 1 ns and skew > 1 ps
            """).Evaluate();

        Assert.Equal([null, 150.0, -650, 0, 0, null], result.Entries.Select(entry => entry.Margin is { } margin ? Math.Round(margin.SiValue * 1e12, 6) : default(double?)));
        Assert.All(result.Entries.Where(entry => entry.Margin is not null), entry => Assert.Equal(QuantityKind.Duration, entry.Margin!.Value.Kind));
        Assert.Equal([false, false, true, true, false, false], result.Entries.Select(entry => entry.IsLowerLimitExcluded || entry.IsUpperLimitExcluded));
        foreach (WorksheetEntry entry in result.Entries.Where(entry => entry.Margin is not null))
            Assert.Equal(entry.Verdict == WorksheetVerdict.Passed, entry.Margin!.Value.SiValue > 0 || (entry.Margin.Value.SiValue == 0 && !entry.IsLowerLimitExcluded && !entry.IsUpperLimitExcluded));
    }

    [Theory]
    [InlineData("seen <= 3 ns", "2.8 ns < 3 ns")]
    [InlineData("3 ns >= seen", "2.8 ns < 3 ns")]
    [InlineData("seen > 2 ns", "2.8 ns > 2 ns")]
    [InlineData("2 ns < seen", "2.8 ns > 2 ns")]
    [InlineData("seen <= allowed", "2.8 ns < 4 ns")]
    [InlineData("allowed >= seen", "4 ns > 2.8 ns")]
    [InlineData("2 ns <= 3 ns", "2 ns < 3 ns")]
    public void Check_TellsWhatIsCheckedFromItsLimit(string check, string expected)
    {
        WorksheetEntry entry = Worksheet.Build("given seen = 2.8 ns\nlet allowed = 4 ns\ncheck " + check).Evaluate().Entries[2];

        Assert.Equal(expected, entry.Checked + (entry.UpperLimit is null ? " > " + entry.LowerLimit : " < " + entry.UpperLimit));
        Assert.Equal(Math.Abs(entry.Checked!.Value.SiValue - (entry.UpperLimit ?? entry.LowerLimit)!.Value.SiValue), entry.Margin!.Value.SiValue);
    }

    [Theory]
    [InlineData("seen <= 3.1 ns and edge >= 2 ns", WorksheetVerdict.Passed)]
    [InlineData("seen == 2.8 ns", WorksheetVerdict.Inconclusive)]
    [InlineData("edge <= 3 ns and edge >= 2 ns", WorksheetVerdict.Passed)]
    public void CheckOfNoOneComparison_HasNeitherValueNorLimit(string check, WorksheetVerdict verdict)
    {
        WorksheetEntry entry = Worksheet.Build("given seen = 2.8 ns ± 5 %\ngiven edge = 2.5 ns\ncheck " + check).Evaluate().Entries[2];

        Assert.Equal(verdict, entry.Verdict);
        Assert.Equal([null, null, null, null], new[] { entry.Checked, entry.LowerLimit, entry.UpperLimit, entry.Margin });
        Assert.Null(entry.Decision);
    }

    [Theory]
    [InlineData("seen <= 3.1 ns and seen >= 2 ns", 2e-9, 3.1e-9, 0.3e-9)]
    [InlineData("not (seen > 3.1 ns)", null, 3.1e-9, 0.3e-9)]
    [InlineData("2 ns <= seen and true", 2e-9, null, 0.8e-9)]
    public void CheckThatComesDownToLimitsOnOneValue_HasThem(string check, double? low, double? high, double margin)
    {
        WorksheetEntry entry = Worksheet.Build("given seen = 2.8 ns ± 5 %\ncheck " + check).Evaluate().Entries[1];

        Assert.Equal(WorksheetVerdict.Passed, entry.Verdict);
        Assert.Equal(2.8e-9, entry.Checked!.Value.SiValue);
        Assert.Equal(low, entry.LowerLimit?.SiValue);
        Assert.Equal(high, entry.UpperLimit?.SiValue);
        Assert.Equal(margin, entry.Margin!.Value.SiValue, 1e-20);
        Assert.NotNull(entry.Decision);
    }

    [Fact]
    public void CheckOfSidesThatDoNotMeet_IsRefusedOnce()
    {
        Worksheet.TryBuild("check 1 V <= 1 s\ncheck 1 V <= unknown", FormulaContext.Standard, out _, out IReadOnlyList<FormulaProblem> problems);
        Assert.Equal(2, problems.Count);
    }

    [Fact]
    public void Result_InWords_IsOneLineForEachEntryWithItsVerdictAndMessage()
    {
        string[] lines = Worksheet.Build(Beacon).Evaluate().ToString().Split('\n');
        Assert.Equal(8, lines.Length);
        Assert.Equal("   2  clock = 24 MHz", lines[0]);
        Assert.Equal("   7  seen <= 1.10 * edge: failed: the chain stretches the edge by more than 10 %", lines[4]);
        Assert.Equal("   8  clock < 50 MHz: passed", lines[5]);
    }

    [Fact]
    public void UncertainGiven_CarriesThroughTheLinesAsOneSource()
    {
        WorksheetResult result = Worksheet.Build("""
            given a = 10 V ± 0.3 V
            let   same = a - a
            let   double = a + a
            let   exact = 3 V
            """).Evaluate();
        Assert.Equal(0.3 / Math.Sqrt(3), result.Entries[0].StandardUncertaintyInSi!.Value, 1e-15);
        Assert.Null(result.Entries[1].StandardUncertaintyInSi);
        Assert.Equal(0.6 / Math.Sqrt(3), result.Entries[2].StandardUncertaintyInSi!.Value, 1e-15);
        Assert.Null(result.Entries[3].StandardUncertaintyInSi);
    }

    [Theory]
    [InlineData("10 V", WorksheetVerdict.Failed)]
    [InlineData("11.9 V", WorksheetVerdict.Inconclusive)]
    [InlineData("12.1 V", WorksheetVerdict.Inconclusive)]
    [InlineData("14 V", WorksheetVerdict.Passed)]
    public void VerdictUnderUncertainty_KeepsAGuardBand(string value, WorksheetVerdict verdict) =>
        Assert.Equal(verdict, Worksheet.Build($"given a = {value} ± 1 V (k=2)\ncheck a >= 12 V").Evaluate().Entries[1].Verdict);

    [Fact]
    public void Given_IsOverriddenByNameAndCountsAsExact()
    {
        Worksheet sheet = Worksheet.Build(Beacon);
        WorksheetResult result = sheet.Evaluate(new Dictionary<string, FormulaValue> { ["edge"] = Quantity.Parse("10 ns") });
        Assert.True(result.Entries[1].IsOverridden);
        Assert.Equal(10e-9, result["edge"].SiValue);
        Assert.Null(result.Entries[3].StandardUncertaintyInSi);
        Assert.Equal(WorksheetVerdict.Passed, result.Entries[4].Verdict);
        Assert.True(result.HasPassed);
        Assert.Equal(2.8e-9, sheet.Evaluate()["edge"].SiValue);
    }

    [Fact]
    public void OverrideOfAnotherKindOrName_IsRefused()
    {
        Worksheet sheet = Worksheet.Build(Beacon);
        Assert.StartsWith("'front' is not given in the worksheet; given are clock, edge", Assert.Throws<ArgumentException>(() => sheet.Evaluate(new Dictionary<string, FormulaValue> { ["front"] = Quantity.Parse("1 ns") })).Message, StringComparison.Ordinal);
        Assert.StartsWith("given edge: found a frequency (1 MHz), expected a duration", Assert.Throws<ArgumentException>(() => sheet.Evaluate(new Dictionary<string, FormulaValue> { ["edge"] = Quantity.Parse("1 MHz") })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryMistake_IsReportedWithLineAndColumn()
    {
        Worksheet.TryBuild("""
            given  clock   = 24 Mhz
            lett   x       = 3
            given  fs      = 2 GSa/s
            let    clock   = 3
            let    y       = z + 1 V
            check  y       else "no"
            check  1 V
            show   1 V, 99 digits
            let    = 3
            let    w
            show   1 V in ns
            """, FormulaContext.Standard, out Worksheet? sheet, out IReadOnlyList<FormulaProblem> problems);
        Assert.Null(sheet);
        Assert.Equal(
            [
                "line 1, column 21: 'Mhz' is not a unit; did you mean MHz or mHz?",
                "line 2, column 1: found 'lett', expected given, let, check or show; did you mean let?",
                "line 3, column 8: 'fs' is a unit and cannot be a name; did you mean fs_value?",
                "line 4, column 8: 'clock' is declared in line 1 already",
                "line 5, column 18: 'z' is not known",
                "line 7, column 8: found a voltage (1 V), expected a truth value, such as a comparison",
                "line 8, column 13: found '99 digits', expected how many digits to write, from 1 to 17, or 'value only' to leave its uncertainty out; did you mean 3 digits?",
                "line 9, column 8: found '=', expected a name after 'let'",
                "line 10, column 9: found the end of the line, expected '=' after w",
                "line 11, column 8: found a voltage (1 V), expected a duration before 'in ns'",
            ],
            problems.Select(problem => problem.ToString()));
    }

    [Fact]
    public void LineWithoutAValue_TakesOnlyItsDependentsWithIt()
    {
        WorksheetResult result = Worksheet.Build("""
            given  a = 1
            let    b = 1 / (a - 1)
            let    c = b + 1
            let    d = a + 1
            check  b > 3
            """).Evaluate();
        Assert.Equal("line 2, column 12: division by zero", result.Entries[1].Problem);
        Assert.Equal("'b' has no value", result.Entries[2].Problem);
        Assert.Equal(2, result["d"].SiValue);
        Assert.Equal(WorksheetVerdict.NotEvaluated, result.Entries[4].Verdict);
        Assert.False(result.HasPassed);
        Assert.Throws<InvalidOperationException>(() => result["c"]);
    }

    [Fact]
    public void ModelsAreValuesOfLines()
    {
        Worksheet sheet = Worksheet.Build("given n = 3\nlet l = line(\"plain\", n)\nlet w = width(l) + n\nshow l", FormulaContext.Standard.WithFunctions(Sketches.All));
        Assert.Equal(6, sheet.Evaluate()["w"].SiValue);
        Assert.Equal(10, sheet.Evaluate(new Dictionary<string, FormulaValue> { ["n"] = Quantity.Parse("5") })["w"].SiValue);
    }

    [Fact]
    public void Json_IsWhatTheSchemaSays()
    {
        using JsonDocument json = JsonDocument.Parse(Worksheet.Build(Beacon).Evaluate().ToJson());
        JsonElement entry = json.RootElement.GetProperty("entries")[1];
        Assert.False(json.RootElement.GetProperty("hasPassed").GetBoolean());
        Assert.Equal("given", entry.GetProperty("keyword").GetString());
        Assert.Equal("2.8 ns ± 5 %", entry.GetProperty("formula").GetString());
        Assert.Equal(2.8e-9, entry.GetProperty("siValue").GetDouble());
        Assert.Equal("s", entry.GetProperty("siUnit").GetString());
        Assert.Equal(0.14e-9 / Math.Sqrt(3), entry.GetProperty("siStandardUncertainty").GetDouble(), 1e-22);
        Assert.Equal("failed", json.RootElement.GetProperty("entries")[4].GetProperty("verdict").GetString());
    }
}
