using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Formulas;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

// Guarded acceptance (JCGM 106 8.3.2) holds for each comparison, however the check is put together. u = 10 mV/√3 = 5.77 mV, U = 11.55 mV.
public sealed class WorksheetGuardBandTests
{
    private const string Sheet = """
        given v = 5.02 V ± 10 mV
        given w = 1 V ± 1 mV
        given exact = 3 V
        given agreed = true
        let ok = v <= 5.025 V
        let error = abs(v - 5 V)
        let step = if v > 5.025 V then 2 V else 1 V
        let sure = if v > 4 V then 2 V else 1 / 0 V * 1 V^2
        """;

    private static WorksheetEntry Check(string check, string sheet = Sheet, DecisionRule? rule = null, IReadOnlyDictionary<string, FormulaValue>? overrides = null)
    {
        IReadOnlyList<WorksheetEntry> entries = Worksheet.Build(sheet + "\ncheck " + check).Evaluate(overrides ?? new Dictionary<string, FormulaValue>(), rule ?? DecisionRule.GuardedAcceptance).Entries;
        return entries[entries.Count - 1];
    }

    [Theory]
    [InlineData("v <= 5.025 V")]
    [InlineData("v >= 4.9 V and v <= 5.025 V")]
    [InlineData("v <= 5.025 V and v >= 4.9 V")]
    [InlineData("4.9 V <= v and 5.025 V >= v")]
    [InlineData("not (v > 5.025 V)")]
    [InlineData("not not (v <= 5.025 V)")]
    [InlineData("not (v > 5.025 V or v < 4.9 V)")]
    [InlineData("v > 5.025 V or v < 1 V")]
    [InlineData("if true then v <= 5.025 V else true")]
    [InlineData("if v > 5.025 V then false else true")]
    [InlineData("if v > 5.025 V then w < 2 V else w < 3 V")]
    [InlineData("ok")]
    [InlineData("not ok")]
    [InlineData("ok and w < 2 V")]
    [InlineData("ok == true")]
    [InlineData("ok != false")]
    [InlineData("agreed == ok")]
    [InlineData("step <= 1.5 V")]
    [InlineData("2 * step + exact <= 5.5 V")]
    [InlineData("(if v > 5.025 V then \"high\" else \"low\") == \"low\"")]
    [InlineData("v == 5.02 V")]
    [InlineData("v != 5.02 V")]
    [InlineData("v != 5.015 V")]
    [InlineData("error <= 25 mV")]
    [InlineData("abs(v - 5.02 V) <= 5 mV")]
    [InlineData("abs(v - 5.02 V) < 5 mV and w < 2 V")]
    [InlineData("max(v, 5.019 V) <= 5.025 V")]
    [InlineData("min(v, 5.021 V) >= 5.0195 V")]
    public void WhatLiesInTheGuardBand_IsInconclusiveHoweverItIsAsked(string check) =>
        Assert.Equal(WorksheetVerdict.Inconclusive, Check(check).Verdict);

    [Theory]
    [InlineData("v <= 5.04 V and v >= 5 V", WorksheetVerdict.Passed)]
    [InlineData("v <= 5.04 V and w < 2 V and exact == 3 V", WorksheetVerdict.Passed)]
    [InlineData("not (v > 5.04 V)", WorksheetVerdict.Passed)]
    [InlineData("v <= 5.025 V or w < 2 V", WorksheetVerdict.Passed)]
    [InlineData("v <= 5.025 V and w > 2 V", WorksheetVerdict.Failed)]
    [InlineData("v > 5.04 V or v < 5 V", WorksheetVerdict.Failed)]
    [InlineData("if v > 5 V then w < 2 V else 1 V / 0 > 2 V", WorksheetVerdict.Passed)]
    [InlineData("if exact > 2 V then v < 6 V else false", WorksheetVerdict.Passed)]
    [InlineData("exact == 3 V or 1 / abs(exact - 3 V) > 1 / v", WorksheetVerdict.Passed)]
    [InlineData("v == v", WorksheetVerdict.Passed)]
    [InlineData("v == 4 V", WorksheetVerdict.Failed)]
    [InlineData("v != 0 V", WorksheetVerdict.Passed)]
    [InlineData("agreed", WorksheetVerdict.Passed)]
    [InlineData("agreed and exact > 2 V", WorksheetVerdict.Passed)]
    [InlineData("abs(v - 5.02 V) <= 25 mV", WorksheetVerdict.Passed)]
    [InlineData("abs(v - 5.02 V) >= 25 mV", WorksheetVerdict.Failed)]
    [InlineData("error <= 45 mV", WorksheetVerdict.Passed)]
    [InlineData("max(v, w) <= 5.04 V", WorksheetVerdict.Passed)]
    [InlineData("min(v, w) >= 0.9 V", WorksheetVerdict.Passed)]
    [InlineData("sure <= 3 V", WorksheetVerdict.Passed)]
    public void WhatIsDecided_IsDecided(string check, WorksheetVerdict verdict) => Assert.Equal(verdict, Check(check).Verdict);

    // exactly at the limit: < leaves it out, whatever the rule, and the decision says the same as the verdict.
    [Theory]
    [InlineData("v < 5.02 V", Verdict.Fail, WorksheetVerdict.Failed)]
    [InlineData("v <= 5.02 V", Verdict.Pass, WorksheetVerdict.Passed)]
    [InlineData("5.02 V > v", Verdict.Fail, WorksheetVerdict.Failed)]
    [InlineData("not (v >= 5.02 V)", Verdict.Fail, WorksheetVerdict.Failed)]
    [InlineData("v >= 4 V and v < 5.02 V", Verdict.Fail, WorksheetVerdict.Failed)]
    [InlineData("v > 5.02 V and v <= 6 V", Verdict.Fail, WorksheetVerdict.Failed)]
    [InlineData("v >= 5.02 V and v < 6 V", Verdict.Pass, WorksheetVerdict.Passed)]
    public void ALimitThatIsLeftOut_IsLeftOutBySimpleAcceptanceToo(string check, Verdict decided, WorksheetVerdict verdict)
    {
        WorksheetEntry entry = Check(check, rule: DecisionRule.SimpleAcceptance);

        Assert.Equal(decided, entry.Decision!.Verdict);
        Assert.Equal(verdict, entry.Verdict);
        Assert.Equal(verdict == WorksheetVerdict.Passed, entry.Value!.Value.IsTrue);
        Assert.Equal(entry.Decision.IsUpperLimitExcluded, entry.IsUpperLimitExcluded);
        Assert.Equal(entry.Decision.IsLowerLimitExcluded, entry.IsLowerLimitExcluded);
    }

    [Fact]
    public void TwoLimitsOnOneQuantity_AreTheTwoSidedToleranceOfJcgm106()
    {
        // Of the rectangle from 5.01 V to 5.03 V, 13 mV of 20 mV are between the limits.
        ConformityDecision decision = Check("v >= 5.012 V and w < 2 V and v <= 5.025 V and true").Comparisons[0].Decision!;

        Assert.Equal(5.012, decision.LowerLimit!.Value.SiValue);
        Assert.Equal(5.025, decision.UpperLimit!.Value.SiValue);
        Assert.Equal(0.65, decision.ConformanceProbability.Fraction, 1e-9);
        Assert.Equal("v >= 5.012 V and v <= 5.025 V", Check("v >= 5.012 V and w < 2 V and v <= 5.025 V").Comparisons[0].Formula);
        Assert.Equal(0.65, Check("abs(v - 5.0185 V) <= 6.5 mV").Decision!.ConformanceProbability.Fraction, 1e-9);
        Assert.Equal("abs(v - 5.0185 V) <= 6.5 mV", Check("abs(v - 5.0185 V) <= 6.5 mV").Comparisons.Single().Formula);
    }

    [Fact]
    public void OneLimit_IsTheToleranceLimitOfTheMeasuredValue()
    {
        ConformityDecision decision = Check("5.025 V >= v").Decision!;

        Assert.Equal(5.02, decision.Measured.Value.SiValue);
        Assert.Equal(5.025, decision.UpperLimit!.Value.SiValue);
        Assert.Null(decision.LowerLimit);
        // The root-sum-square rule needs the distance of the limit from zero, which a margin has lost.
        Assert.Equal(WorksheetVerdict.Passed, Check("5.025 V >= v", rule: DecisionRule.RootSumSquare).Verdict);
        Assert.Contains("needs an expanded uncertainty below the tolerance", Check("v >= w", rule: DecisionRule.RootSumSquare).Comparisons[0].Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void JoinedComparisons_AreListed_AndNoProbabilityIsClaimedForTheWhole()
    {
        WorksheetEntry entry = Check("not (v > 5.025 V) and w <= 1.5 V");

        Assert.Null(entry.Decision);
        Assert.Equal(["v <= 5.025 V", "w <= 1.5 V"], entry.Comparisons.Select(comparison => comparison.Formula));
        Assert.Equal([Verdict.ConditionalPass, Verdict.Pass], entry.Comparisons.Select(comparison => comparison.Verdict));
        Assert.All(entry.Comparisons, comparison => Assert.NotNull(comparison.Decision));
    }

    [Fact]
    public void EqualityOfUncertainValues_SaysWhatToWriteInstead()
    {
        Assert.Equal("values known within ± 12 mV cannot be shown to be equal or not; write limits, or abs(a - b) <= a tolerance", Check("v == 5.02 V").Comparisons.Single().Remark);
        Assert.Equal("it rests on a condition that is not decided: v > 5.025 V", Check("step <= 1.5 V").Comparisons.Single().Remark);
    }

    [Fact]
    public void Result_TellsWhyACheckIsNotDecided()
    {
        WorksheetResult result = Worksheet.Build("given v = 5 V ± 1 mV\ncheck v == 5 V and v < 6 V else \"off\"").Evaluate();

        Assert.Contains("inconclusive: off (values known within ± 1.2 mV cannot be shown to be equal or not; write limits, or abs(a - b) <= a tolerance)", result.ToString(), StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(result.ToJson());
        JsonElement entry = json.RootElement.GetProperty("entries")[1];
        Assert.False(json.RootElement.GetProperty("hasPassed").GetBoolean());
        Assert.Equal("inconclusive", entry.GetProperty("verdict").GetString());
        Assert.False(entry.TryGetProperty("conformanceProbability", out _));
        Assert.Equal("conditional pass", entry.GetProperty("comparisons")[0].GetProperty("verdict").GetString());
        Assert.Equal(1, entry.GetProperty("comparisons")[1].GetProperty("conformanceProbability").GetDouble(), 1e-12);
    }

    [Fact]
    public void EqualityThatOnlyRoundingWouldLose_IsKept()
    {
        WorksheetEntry entry = Check("v == 0.1 V + 0.2 V", "given v = 0.3 V");

        Assert.Equal(WorksheetVerdict.Passed, entry.Verdict);
        Assert.Equal(WorksheetVerdict.Failed, Check("v != 0.1 V + 0.2 V", "given v = 0.3 V").Verdict);
        Assert.Equal(WorksheetVerdict.Failed, Check("v == 0.3000000000001 V", "given v = 0.3 V").Verdict);
        Assert.Null(entry.Margin);
    }

    [Fact]
    public void GivenOfTheHost_IsExactInsideACompoundToo()
    {
        var exactly = new Dictionary<string, FormulaValue> { ["v"] = Quantity.Parse("5.02 V") };

        Assert.Equal(WorksheetVerdict.Passed, Check("v >= 4.9 V and v <= 5.025 V", overrides: exactly).Verdict);
        Assert.Equal(WorksheetVerdict.Passed, Check("ok and step <= 1.5 V", overrides: exactly).Verdict);
        Assert.Empty(Check("ok", overrides: exactly).Comparisons);
    }

    [Fact]
    public void GivenVerdict_IsGuardedUnlessTheHostGivesIt()
    {
        const string sheet = "given v = 5.02 V ± 10 mV\ngiven fits = v <= 5.025 V";

        Assert.Equal(WorksheetVerdict.Inconclusive, Check("fits", sheet).Verdict);
        Assert.Equal(WorksheetVerdict.Failed, Check("fits", sheet, overrides: new Dictionary<string, FormulaValue> { ["fits"] = FormulaValue.Of(false) }).Verdict);
    }

    [Fact]
    public void LineThatFails_DoesNotTakeTheGuardBandsOfOthersWithIt()
    {
        WorksheetResult result = Worksheet.Build("given v = 5.02 V ± 10 mV\ngiven n = 0\nlet broken = rise_time(gaussian(n * 1 Hz))\ncheck v <= 5.025 V\nshow broken").Evaluate();

        Assert.NotNull(result.Entries[2].Problem);
        Assert.NotNull(result.Entries[0].StandardUncertaintyInSi);
        Assert.Equal(WorksheetVerdict.Inconclusive, result.Entries[3].Verdict);
    }

    [Fact]
    public void DeepChainsOfVerdicts_AreDecided()
    {
        var lines = new List<string> { "given v = 5.02 V ± 10 mV", "let b0 = v <= 5.025 V" };
        for (int i = 1; i < 900; i++) lines.Add(FormattableString.Invariant($"let b{i} = b{i - 1} and (b{i - 1} == b{i - 1} or not b{i - 1})"));

        Assert.Equal(WorksheetVerdict.Inconclusive, Check("b899", string.Join("\n", lines)).Verdict);
    }

    private static readonly DecisionRule[] Rules =
        [DecisionRule.GuardedAcceptance, DecisionRule.SimpleAcceptance, DecisionRule.GuardedRejection, DecisionRule.Guarded(0.5), DecisionRule.ForConformance(Ratio.FromPercent(99))];

    private static string Sheeted(int value, int width) => string.Format(CultureInfo.InvariantCulture, "given v = {0} mV ± {1} mV\ngiven w = {1} mV ± {0} mV", 1 + Math.Abs(value % 50), 1 + Math.Abs(width % 20));

    private static int Rank(WorksheetEntry entry) => entry.Verdict switch { WorksheetVerdict.Passed => 0, WorksheetVerdict.Inconclusive => 1, _ => 2 };

    [Property(MaxTest = 60)]
    public void And_IsAsGoodAsItsWorstPart_OrAsItsBest(int value, int width, int low, int high, byte rule)
    {
        string sheet = Sheeted(value, width);
        DecisionRule by = Rules[rule % Rules.Length];
        string first = FormattableString.Invariant($"v >= {low % 50} mV"), second = FormattableString.Invariant($"w < {high % 50} mV"), third = FormattableString.Invariant($"v <= {high % 50} mV");

        foreach (string other in new[] { second, third })
        {
            int one = Rank(Check(first, sheet, by)), two = Rank(Check(other, sheet, by));
            Assert.Equal(Math.Max(one, two), Rank(Check($"{first} and {other}", sheet, by)));
            Assert.Equal(Math.Min(one, two), Rank(Check($"{first} or {other}", sheet, by)));
            Assert.Equal(Math.Max(one, two), Rank(Check($"if {first} then {other} else false", sheet, by)));
        }
    }

    [Property(MaxTest = 60)]
    public void Not_AsksForTheOppositeComparison_SoTheGuardBandStays(int value, int width, int limit, byte rule)
    {
        string sheet = Sheeted(value, width);
        DecisionRule by = Rules[rule % Rules.Length];
        foreach ((string op, string opposite) in new[] { ("<", ">="), ("<=", ">"), (">", "<="), (">=", "<") })
            Assert.Equal(Check(FormattableString.Invariant($"v {opposite} {limit % 50} mV"), sheet, by).Verdict, Check(FormattableString.Invariant($"not (v {op} {limit % 50} mV)"), sheet, by).Verdict);
    }

    [Property(MaxTest = 60)]
    public void UnderGuardedAcceptance_AComparisonAndItsOppositeNeverBothPass(int value, int width, int limit)
    {
        string sheet = Sheeted(value, width), comparison = FormattableString.Invariant($"v <= {limit % 50} mV");
        Assert.False(Check(comparison, sheet).Verdict == WorksheetVerdict.Passed && Check($"not ({comparison})", sheet).Verdict == WorksheetVerdict.Passed);
    }

    [Property(MaxTest = 60)]
    public void MagnitudeWithinATolerance_IsDecidedAsTwoLimits(int value, int width, int middle, byte rule)
    {
        string sheet = Sheeted(value, width), m = FormattableString.Invariant($"{middle % 50} mV");
        DecisionRule by = Rules[rule % Rules.Length];
        Assert.Equal(Check($"v - {m} <= 7 mV and v - {m} >= -7 mV", sheet, by).Verdict, Check($"abs(v - {m}) <= 7 mV", sheet, by).Verdict);
    }
}
