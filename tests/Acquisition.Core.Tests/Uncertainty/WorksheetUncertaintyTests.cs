using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class WorksheetUncertaintyTests
{
    private static readonly Worksheet Edge = Worksheet.Build(
        """
        # Beacon clock at the mixer board
        given  edge   = 2.8 ns ± 5 %
        given  front  = 1.75 ns ± 0.1 ns (k=2)
        let    seen   = sqrt(edge^2 + front^2)
        let    again  = seen - seen
        check  seen <= 3.6 ns   else "the chain stretches the edge"
        check  seen <= 3.31 ns
        check  seen <= 3.0 ns
        check  edge == edge
        """);

    [Fact]
    public void Budget_OfALine_NamesTheTermsOfTheText()
    {
        UncertaintyBudget budget = Edge.Budget("seen");

        double seen = Math.Sqrt(2.8 * 2.8 + 1.75 * 1.75), first = 2.8 / seen * 0.14 / Math.Sqrt(3), second = 1.75 / seen * 0.05;
        Assert.Equal(Math.Sqrt(first * first + second * second) * 1e-9, budget.StandardUncertainty.SiValue, 1e-20);
        Assert.Equal(["2.8 ns ± 5 %", "1.75 ns ± 0.1 ns (k=2)"], budget.Lines.Select(line => line.Name));
    }

    [Fact]
    public void LineLessItself_IsExactlyZero()
    {
        UncertaintyBudget budget = Edge.Budget("again");

        Assert.Equal(0, budget.StandardUncertainty.SiValue);
        Assert.Empty(budget.Lines);
        Assert.Empty(budget.Findings);
    }

    [Fact]
    public void Trials_OfALine_AgreeWithItsBudget() =>
        Assert.Equal(Edge.Budget("seen").StandardUncertainty.SiValue, Edge.PropagateDistributions("seen").StandardUncertainty.SiValue, 0.01e-10);

    [Fact]
    public void Checks_WithUncertainInputs_SayTheirRule()
    {
        WorksheetEntry[] checks = Edge.Evaluate().Entries.Where(entry => entry.Keyword == WorksheetKeyword.Check).ToArray();

        Assert.Equal([Verdict.Pass, Verdict.ConditionalPass, Verdict.Fail], checks.Take(3).Select(check => check.Decision!.Verdict));
        Assert.Equal([WorksheetVerdict.Passed, WorksheetVerdict.Inconclusive, WorksheetVerdict.Failed], checks.Take(3).Select(check => check.Verdict!.Value));
        Assert.All(checks.Take(3), check => Assert.Equal("guarded acceptance, w = U", check.Decision!.Rule.Name));
        Assert.Null(checks[3].Decision);
        Assert.Equal(WorksheetVerdict.Passed, checks[3].Verdict);
    }

    [Fact]
    public void Check_IsDecidedByTheCheckedValueAgainstItsLimit()
    {
        ConformityDecision decision = Edge.Evaluate().Entries.First(entry => entry.Keyword == WorksheetKeyword.Check).Decision!;

        Assert.Equal(Edge.Budget("seen").Value, decision.Measured.Value);
        Assert.Equal(3.6e-9, decision.UpperLimit!.Value.SiValue);
        Assert.Null(decision.LowerLimit);
    }

    [Fact]
    public void CheckWithAnUncertainLimit_IsDecidedByItsMargin()
    {
        ConformityDecision decision = Worksheet.Build("given a = 10 V ± 0.3 V\nlet limit = 0.9 * a\ncheck a >= limit").Evaluate().Entries[2].Decision!;

        // What both sides have in common cancels: 10 % of the uncertainty of a is left.
        Assert.Equal(0.03 / Math.Sqrt(3), decision.Measured.StandardUncertainty.SiValue, 1e-15);
        Assert.Equal(1, decision.Measured.Value.SiValue, 1e-12);
        Assert.Equal(0, decision.LowerLimit!.Value.SiValue);
    }

    [Fact]
    public void GuardBandThatGoesByTheTolerance_KnowsTheLimit()
    {
        // Limit 4 V, U = 0.4 V: 4 - √(16 - 0.16).
        ConformityDecision decision = Worksheet.Build("given a = 5 V ± 0.4 V (k=2)\ncheck a >= 4 V").Evaluate(new Dictionary<string, FormulaValue>(), DecisionRule.RootSumSquare).Entries[1].Decision!;

        Assert.Equal(4 - Math.Sqrt(15.84), decision.GuardBand.SiValue, 1e-12);
    }

    [Fact]
    public void HostChoosesTheRule()
    {
        WorksheetResult result = Edge.Evaluate(new Dictionary<string, FormulaValue>(), DecisionRule.SimpleAcceptance);

        WorksheetEntry narrow = result.Entries.Single(entry => entry.Formula.Contains("3.31", StringComparison.Ordinal));
        Assert.Equal(Verdict.Pass, narrow.Decision!.Verdict);
        Assert.Contains("\"rule\":\"simple acceptance, w = 0\"", result.ToJson().Replace(": ", ":", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void GivenOfTheHost_CountsAsExact()
    {
        var overrides = new Dictionary<string, FormulaValue> { ["edge"] = FormulaValue.Of(2.8.ns().ToQuantity()) };

        Assert.Equal(["1.75 ns ± 0.1 ns (k=2)"], Edge.Budget("seen", overrides).Lines.Select(line => line.Name));
    }

    [Fact]
    public void UnknownName_IsRefused() => Assert.Throws<ArgumentException>(() => Edge.Budget("nothing"));
}
