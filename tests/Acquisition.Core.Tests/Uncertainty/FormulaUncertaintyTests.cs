using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class FormulaUncertaintyTests
{
    [Theory]
    [InlineData("0 V ± 5 %", "column 7: found a ratio (5 %), expected a voltage, because a part of zero is none")]
    [InlineData("(1 V - 1 V) ± 5 % (k=2)", "expected a voltage, because a part of zero is none")]
    public void PartOfZero_IsRefusedWhereItIsWritten(string text, string expected) =>
        Assert.Contains(expected, Assert.Throws<FormulaException>(() => Formula.Build(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void PartOfZero_IsSaidWhereItIsComputed()
    {
        Formula formula = FormulaContext.Standard.WithInput("v", QuantityKind.Voltage).Build("v ± 5 % + (1 V ± 1 mV)");

        Assert.Contains(formula.Budget(Uncertain.Exact(0.V())).Findings, finding => finding.Code == "part-of-zero" && finding.Message.StartsWith("v ± 5 % is a part of 0 V here", StringComparison.Ordinal));
        Assert.DoesNotContain(formula.Budget(Uncertain.Exact(1.V())).Findings, finding => finding.Code == "part-of-zero");
        Assert.Equal("0 V", TextFormulas.Evaluate("0 V ± 0 %"));
    }

    [Fact]
    public void SpreadOfAPartOfZero_IsRefused_WithTheRemedy()
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => Uncertain.Of(0.V(), Spread.Bound(5.Percent())));
        Assert.Equal("a spread of 5 % of 0 V is none; state its width in V, such as percent of the range", refusal.Message);
        Assert.Equal(0, Uncertain.Of(0.V(), Spread.Bound(0.Percent())).StandardUncertainty.SiValue);
    }

    private static readonly Formula Power = FormulaContext.Standard.WithInput("v", QuantityKind.Voltage).WithInput("r", QuantityKind.Resistance).Build("v^2 / r");
    private static readonly Uncertain<Voltage> V = Uncertain.Of(5.V(), Spread.Standard(30.mV(), 9), "v");
    private static readonly Uncertain<Resistance> R = Uncertain.Of(50.Ohm(), Spread.Bound(1.Percent()), "r");

    [Fact]
    public void ValueWithLimitsInTheText_IsRectangular()
    {
        UncertaintyBudget budget = Formula.Build("0.35 / (100 MHz ± 5 %)").Budget();

        Assert.Equal(3.5e-9, budget.Value.SiValue, 1e-20);
        Assert.Equal(3.5e-9 * 0.05 / Math.Sqrt(3), budget.StandardUncertainty.SiValue, 1e-22);
        Assert.Equal("rectangular", budget.Lines.Single().Distribution);
        Assert.Equal("100 MHz ± 5 %", budget.Lines.Single().Name);
        Assert.Equal(100e6, budget.Lines.Single().Estimate.SiValue);
        Assert.Contains(budget.Findings, finding => finding.Code == "dominant-input-not-normal");
    }

    [Fact]
    public void ExpandedUncertaintyInTheText_IsNormal()
    {
        UncertaintyBudget budget = Formula.Build("(10 V ± 0.1 V (k=2)) / 50 ohm").Budget();

        Assert.Equal(0.001, budget.StandardUncertainty.SiValue, 1e-15);
        Assert.Equal("normal", budget.Lines.Single().Distribution);
        Assert.Equal("(200.0 ± 2.0) mA, k = 2, p = 95.45 %", budget.ToString());
    }

    [Fact]
    public void Formula_AgreesWithTheArithmeticOfUncertainValues()
    {
        UncertaintyBudget formula = Power.Budget(V, R), arithmetic = (V * (V / R)).Budget();

        Assert.Equal(arithmetic.Value.SiValue, formula.Value.SiValue, 1e-15);
        Assert.Equal(arithmetic.StandardUncertainty.SiValue, formula.StandardUncertainty.SiValue, 1e-15);
        Assert.Equal(arithmetic.EffectiveDegreesOfFreedom, formula.EffectiveDegreesOfFreedom, 1e-9);
        Assert.Equal(arithmetic.CoverageFactor, formula.CoverageFactor, 1e-12);
        Assert.Equal(["v", "r"], formula.Lines.Select(line => line.Name));
        Assert.DoesNotContain(formula.Findings, finding => finding.Code == "numerical-sensitivity");
    }

    [Fact]
    public void Result_StaysCorrelatedWithItsInputs()
    {
        Uncertain<Power> power = Power.EvaluateUncertain(V, R).As<Power>();

        Assert.Equal(0, (power - V * (V / R)).StandardUncertainty.SiValue, 1e-15);
        Assert.InRange(power.CorrelationWith(V), 0.8, 0.95);
    }

    [Fact]
    public void InputsThatShareASource_Cancel()
    {
        Formula difference = FormulaContext.Standard.WithInput("a", QuantityKind.Voltage).WithInput("b", QuantityKind.Voltage).Build("a - b");

        Assert.Equal(0, difference.Budget(V, V).StandardUncertainty.SiValue);
        Assert.Equal(0, difference.PropagateDistributions(MonteCarloOptions.Default.WithTrials(10_000), V, V).StandardUncertainty.SiValue, 1e-15);
    }

    [Fact]
    public void ImpedanceOfTheGuide_H2_AsAFormula()
    {
        CheckValue data = CheckValue.All["H2-30"];
        (Uncertain<Voltage> v, Uncertain<Current> i, Uncertain<Angle> phi) = TypeA.Simultaneous(
            data.Numbers("V").Select(Voltage.FromVolts).ToArray(), data.Numbers("I").Select(Current.FromAmperes).ToArray(), data.Numbers("phi").Select(Angle.FromRadians).ToArray());
        Formula resistance = FormulaContext.Standard.WithInput("v", QuantityKind.Voltage).WithInput("i", QuantityKind.Current).WithInput("phi", QuantityKind.Angle).Build("v / i * cos(phi)");

        data.Confirm(resistance.Budget(v, i, phi).StandardUncertainty.SiValue);
    }

    [Fact]
    public void MassCalibration_9_3_AddsSecondOrderByItself()
    {
        Formula mass = new[] { "mr", "delta", "air", "weight", "ref" }.Aggregate(FormulaContext.Standard, (context, name) => context.WithInput(name, QuantityKind.Ratio))
            .Build("(mr + delta) * (1 + (air - 1.2) * (1 / weight - 1 / ref)) - 100000");
        UncertainQuantity[] inputs = [N(100000, S(0.05)), N(1.234, S(0.02)), N(1.2, B(0.1)), N(8000, B(1000)), N(8000, B(50))];

        UncertaintyBudget budget = mass.Budget(inputs);

        CheckValue.All["S1-M3"].Confirm(budget.StandardUncertainty.SiValue);
        Assert.True(budget.IncludesSecondOrder);
        Assert.Contains(budget.Findings, finding => finding.Code == "zero-sensitivity" && finding.Message.EndsWith("so second-order terms were added", StringComparison.Ordinal));
        MonteCarloResult trials = mass.PropagateDistributions(inputs);
        Assert.Equal(CheckValue.All["S1-M4"].Expected, trials.StandardUncertainty.SiValue, 3e-4);
        Assert.Equal(CheckValue.All["S1-M6"].Expected, trials.ShortestInterval().Low.SiValue, 2e-3);
    }

    [Fact]
    public void ProductAtZero_InTheText_HasItsSecondOrderUncertainty()
    {
        UncertaintyBudget budget = Formula.Build("(0 V ± 0.2 V (k=2)) * (0 A ± 0.1 A (k=2))").Budget();

        CheckValue.All["LP-03"].Confirm(budget.StandardUncertainty.SiValue);
        Assert.Equal(1, budget.SecondOrderShare.Fraction, 1e-12);
    }

    [Fact]
    public void FunctionWithoutDerivative_IsNamedInAFinding()
    {
        Formula k = FormulaContext.Standard.WithInput("p", QuantityKind.Ratio).Build("coverage_factor(p, 10)");

        UncertaintyBudget budget = k.Budget(N(0.95, S(0.001)));

        Assert.Contains(budget.Findings, finding => finding.Code == "numerical-sensitivity");
        double density = Math.Exp(Math.Log(StudentT.Cumulative(2.228138852 + 1e-5, 10) - StudentT.Cumulative(2.228138852 - 1e-5, 10)) - Math.Log(2e-5));
        Assert.Equal(0.001 / 2 / density, budget.StandardUncertainty.SiValue, 1e-8);
    }

    [Fact]
    public void Trials_AgreeWithTheBudgetOfANearlyLinearFormula()
    {
        Uncertain<Voltage> v = Uncertain.Of(5.V(), Spread.Standard(3.mV()), "v");
        Uncertain<Resistance> r = Uncertain.Of(50.Ohm(), Spread.Standard(0.02.Ohm()), "r");

        MonteCarloResult trials = Power.PropagateDistributions(v, r);

        Assert.True(FirstOrderValidation.Of(Power.Budget(v, r), trials, 1).IsValidated);
    }

    [Fact]
    public void Trials_OfTermsInTheText_FillTheLimits()
    {
        double[] sorted = Formula.Build("100 MHz ± 5 %").PropagateDistributions(MonteCarloOptions.Default.WithTrials(100_000)).SortedResultsInSi();

        Assert.InRange(sorted[0], 95e6, 95.01e6);
        Assert.InRange(sorted[^1], 104.99e6, 105e6);
    }

    [Fact]
    public void Trials_OfAFormula_AreTheSameOnAnyNumberOfThreads()
    {
        double[] one = Power.PropagateDistributions(MonteCarloOptions.Default.WithTrials(100_000).WithThreads(1), V, R).SortedResultsInSi();

        Assert.Equal(one, Power.PropagateDistributions(MonteCarloOptions.Default.WithTrials(100_000), V, R).SortedResultsInSi());
    }

    [Fact]
    public void FormulaThatBends_IsFlagged()
    {
        Formula reciprocal = FormulaContext.Standard.WithInput("t", QuantityKind.Duration).Build("1 / t");
        Uncertain<Duration> wide = Uncertain.Of(10.ns(), Spread.Standard(3.ns()), "t"), narrow = Uncertain.Of(10.ns(), Spread.Standard(0.1.ns()), "t");

        Assert.Contains(reciprocal.Budget(wide).Findings, finding => finding.Code == "nonlinear-model" && finding.Message.StartsWith("over ± one standard uncertainty of t", StringComparison.Ordinal));
        Assert.DoesNotContain(reciprocal.Budget(narrow).Findings, finding => finding.Code == "nonlinear-model");
    }

    [Fact]
    public void InputsByName_MixExactAndUncertainOnes()
    {
        UncertaintyBudget budget = Power.Budget(
            new Dictionary<string, UncertainQuantity> { ["v"] = V }, new Dictionary<string, FormulaValue> { ["r"] = FormulaValue.Of(50.Ohm().ToQuantity()) });

        Assert.Equal("v", budget.Lines.Single().Name);
    }

    [Fact]
    public void SecondOrderTerms_AreRefusedAcrossAKink()
    {
        // |x| of x = 0 has slopes -1 and 1 and none between: a difference quotient there grows without end as its step shrinks.
        UncertaintyBudget budget = Formula.Build("abs(0 V ± 1 V)").Budget();

        Assert.Contains(budget.Findings, finding => finding.Code == "second-order-not-evaluated" && finding.Message.Contains("kink", StringComparison.Ordinal));
        Assert.False(budget.IncludesSecondOrder);
        // The square has a slope that only vanishes.
        Assert.True(Formula.Build("(0 V ± 1 V)^2").Budget().IncludesSecondOrder);
    }

    [Fact]
    public void TrialsOfAFormula_NeedNoOptions()
    {
        MonteCarloResult trials = Formula.Build("0.35 / (100 MHz ± 5 %)").PropagateDistributions();

        Assert.Equal(Formula.Build("0.35 / (100 MHz ± 5 %)").Budget().StandardUncertainty.SiValue, trials.StandardUncertainty.SiValue, 1e-12);
    }

    [Fact]
    public void TermOfALevel_IsListedInItsOwnUnit()
    {
        BudgetLine level = Formula.Build("-10 dBm ± 0.5 dB").Budget().Lines.Single();

        Assert.Equal("-10 dBm", level.Estimate.ToString());
        Assert.Equal(QuantityKind.DecibelRatio, level.StandardUncertainty.Kind);
        Assert.Equal(QuantityKind.Temperature, Formula.Build("20 °C ± 1 K").Budget().Lines.Single().Estimate.Kind);
        Assert.Contains(" -10 dBm ", Formula.Build("-10 dBm ± 0.5 dB").Budget().ToTable(), StringComparison.Ordinal);
    }

    [Fact]
    public void DominantInput_HasOneShare_InTableAndFinding()
    {
        UncertaintyBudget budget = Formula.Build("(1 V ± 0.25 V) + (1 V ± 0.1 V)").Budget();

        // 0.25² / (0.25² + 0.1²).
        Assert.Equal(86.2069, budget.Lines[0].Share.Percent, 1e-4);
        Assert.Contains(budget.Findings, finding => finding.Message.Contains("brings 86 % of the combined variance", StringComparison.Ordinal));
    }

    [Fact]
    public void InputOfTheWrongKind_IsRefusedByName()
    {
        var exception = Assert.Throws<ArgumentException>(() => Power.Budget(R, V));

        Assert.StartsWith("input v: found a resistance", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FormulaWithoutUncertainty_IsExact()
    {
        UncertaintyBudget budget = Formula.Build("0.35 / 100 MHz").Budget();

        Assert.Equal(0, budget.StandardUncertainty.SiValue);
        Assert.Equal("3.5 ns (exact)", budget.ToString());
    }

    private static Uncertain<Ratio> N(double value, Spread spread) => Uncertain.Of(Ratio.FromFraction(value), spread);

    private static Spread S(double u) => Spread.Standard(Ratio.FromFraction(u));

    private static Spread B(double halfWidth) => Spread.Bound(Ratio.FromFraction(halfWidth));
}
