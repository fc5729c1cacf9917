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
