using System;
using System.Linq;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class BudgetTests
{
    /// <summary>The lantern buoy's lamp driver: current from the voltage across a shunt.</summary>
    private static UncertaintyBudget LampCurrent()
    {
        Uncertain<Voltage> reading = Uncertain.Of(0.5.V(), Spread.Standard(1.mV(), 9), "reading");
        Uncertain<Voltage> gain = Uncertain.Of(0.V(), Spread.Bound(5.mV()), "gain");
        Uncertain<Resistance> shunt = Uncertain.Of(1.Ohm(), Spread.Expanded(0.01.Ohm(), 2), "shunt");
        return ((reading + gain) / shunt).Budget();
    }

    [Fact]
    public void Table_ShowsEveryInputAndTheResult()
    {
        string[] lines = LampCurrent().ToTable().Split('\n');

        Assert.Equal("input    value   distribution  standard uncertainty  dof     sensitivity (SI)  contribution  share", lines[0]);
        Assert.Equal("reading  500 mV  t             1 mV                  9       1                 1 mA          6.4 %", lines[1]);
        Assert.Equal("gain     0 V     rectangular   2.89 mV               ∞       1                 2.89 mA       53.5 %", lines[2]);
        Assert.Equal("shunt    1 Ω     normal        5 mΩ                  ∞       -0.5              -2.5 mA       40.1 %", lines[3]);
        Assert.StartsWith("result   500 mA                3.95 mA", lines[4], StringComparison.Ordinal);
        Assert.Equal("(500.0 ± 7.9) mA, k = 2, p = 95.45 %", lines[5]);
    }

    [Fact]
    public void Shares_OfIndependentInputs_AddUpToOne() => Assert.Equal(1, LampCurrent().Lines.Sum(line => line.Share.Fraction), 1e-12);

    [Fact]
    public void FixedCoverageFactor_HasTheProbabilityOfItsDegreesOfFreedom()
    {
        UncertaintyBudget budget = Uncertain.Of(1.V(), Spread.Standard(10.mV(), 4)).Budget(Coverage.WithFactor(2));

        Assert.Equal(2, budget.CoverageFactor);
        Assert.Equal(1 - 0.116117, budget.CoverageProbability.Fraction, 1e-6); // two-sided tail of t = 2 at 4 degrees of freedom, table value
        Assert.Contains(budget.Findings, finding => finding.Code == "few-degrees-of-freedom");
    }

    [Fact]
    public void NormalAndWellKnownInputs_RaiseNoFinding() =>
        Assert.Empty((Uncertain.Of(1.V(), Spread.Standard(1.mV())) / Uncertain.Of(50.Ohm(), Spread.Standard(0.1.Ohm()))).Budget().Findings);

    [Fact]
    public void ValueCloseToZero_IsNoted() =>
        Assert.Contains(Uncertain.Of(1.mV(), Spread.Standard(1.mV())).Budget().Findings, finding => finding.Code == "value-near-zero" && finding.Severity == Severity.Note);

    [Fact]
    public void EveryFinding_NamesItsRemedyAndSource()
    {
        foreach (Finding finding in LampCurrent().Findings.Concat(Uncertain.Of(0.dB(), Spread.Standard(3.dB(), 3)).Budget().Findings))
        {
            Assert.NotNull(finding.Remedy);
            Assert.NotNull(finding.Source);
        }
    }

    [Property]
    public bool EffectiveDegreesOfFreedom_LieBetweenTheLeastAndTheSum(PositiveInt a, PositiveInt b, byte ratio)
    {
        double first = a.Get, second = b.Get;
        Uncertain<Voltage> x = Uncertain.Of(1.V(), Spread.Standard(1.V(), first)), y = Uncertain.Of(1.V(), Spread.Standard(Voltage.FromVolts((ratio + 1) / 100.0), second));
        double effective = (x + y).Budget().EffectiveDegreesOfFreedom;
        return effective >= Math.Min(first, second) * (1 - 1e-9) && effective <= (first + second) * (1 + 1e-9);
    }

    /// <summary>With correlation r the variance runs linearly between the limits of r = -1 and r = +1.</summary>
    [Property]
    public bool VarianceOfASum_IsLinearInTheCorrelation(sbyte hundredths)
    {
        double r = Math.Max(-100, Math.Min(100, (int)hundredths)) / 100.0;
        (Uncertain<Ratio> a, Uncertain<Ratio> b) = Uncertain.Correlated(UncertainArithmeticTests.Number(1, 0.3), UncertainArithmeticTests.Number(1, 0.4), r);
        double u = (a + b).StandardUncertainty.SiValue;
        return Math.Abs(u * u - (0.25 + 0.24 * r)) < 1e-12;
    }
}
