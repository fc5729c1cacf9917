using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>
/// The worked examples of JCGM 101 clause 9. First-order figures must agree to the last digits; Monte Carlo figures within what a million trials
/// scatter, five standard errors or the allowance that handbook 11.8 states. The expected values were found by convolution and quadrature, not by trials.
/// </summary>
public sealed class SupplementExamplesTests
{
    private static readonly Lazy<MonteCarloResult> FourNormal = new(() => Sum(Enumerable.Repeat(Standard(1), 4)));
    private static readonly Lazy<MonteCarloResult> FourRectangular = new(() => Sum(Enumerable.Repeat(Bound(Math.Sqrt(3)), 4)));
    private static readonly Lazy<MonteCarloResult> OneWideRectangular = new(() => Sum([Bound(Math.Sqrt(3)), Bound(Math.Sqrt(3)), Bound(Math.Sqrt(3)), Bound(10 * Math.Sqrt(3))]));
    private static readonly Lazy<MonteCarloResult> Mass = new(() => MonteCarlo.Run(MassInputs(), MassKernel, QuantityKind.Ratio));
    private static readonly Lazy<MonteCarloResult> GaugeBlock = new(() => MonteCarlo.Run(GaugeInputs(), GaugeKernel, QuantityKind.Ratio, MonteCarloOptions.Default.WithTrials(2_000_000)));

    [Theory]
    [HandbookData("S1-A")]
    public void AdditiveModel_9_2(string id)
    {
        CheckValue value = CheckValue.All[id];
        UncertaintyBudget wide = OneWideBudget();
        switch (id)
        {
            case "S1-A1": Near(value, HalfWidth(FourNormal.Value), 0.02); break;
            case "S1-A2": Near(value, HalfWidth(FourRectangular.Value), 0.02); break;
            case "S1-A3":
                value.Confirm(wide.StandardUncertainty.SiValue);
                Near(value, OneWideRectangular.Value.StandardUncertainty.SiValue, 0.02);
                break;
            case "S1-A4": value.Confirm(wide.ExpandedUncertainty.SiValue); break;
            case "S1-A5": Near(value, HalfWidth(OneWideRectangular.Value), 0.03); break;
            default: throw new InvalidOperationException(id + " is new");
        }
    }

    [Fact]
    public void OneWideRectangularInput_IsFlaggedAndNotValidated()
    {
        Assert.Contains(OneWideBudget().Findings, finding => finding.Code == "dominant-input-not-normal");
        Assert.False(FirstOrderValidation.Of(OneWideBudget(), OneWideRectangular.Value).IsValidated);
        UncertaintyBudget normal = Enumerable.Range(0, 4).Select(_ => N(0, Standard(1))).Aggregate((a, b) => a + b).Budget(Coverage.WithProbability(Ratio.FromPercent(95)));
        Assert.DoesNotContain(normal.Findings, finding => finding.Severity > Severity.Note);
        Assert.True(FirstOrderValidation.Of(normal, FourNormal.Value).IsValidated);
    }

    private static UncertaintyBudget OneWideBudget() =>
        (N(0, Bound(Math.Sqrt(3))) + N(0, Bound(Math.Sqrt(3))) + N(0, Bound(Math.Sqrt(3))) + N(0, Bound(10 * Math.Sqrt(3)))).Budget(Coverage.WithProbability(Ratio.FromPercent(95)));

    [Theory]
    [HandbookData("S1-M")]
    public void MassCalibration_9_3(string id)
    {
        CheckValue value = CheckValue.All[id];
        Uncertain<Ratio> first = MassModel(MassInputs());
        double second = Math.Sqrt(first.Combination.Variance() + SecondOrder.Variance(MassGradient, Estimates(MassInputs()), Uncertainties(MassInputs())));
        double k = Coverage.WithProbability(Ratio.FromPercent(95)).CoverageFactorFor(double.PositiveInfinity);
        switch (id)
        {
            case "S1-M1": value.Confirm(first.Value.Fraction); break;
            case "S1-M2": value.Confirm(first.StandardUncertainty.SiValue); break;
            case "S1-M3": value.Confirm(second); break;
            case "S1-M4": Near(value, Mass.Value.StandardUncertainty.SiValue, 3e-4); break;
            case "S1-M5-1": value.Confirm(first.Budget(Coverage.WithProbability(Ratio.FromPercent(95))).Value.SiValue + k * first.StandardUncertainty.SiValue); break;
            case "S1-M5-2": value.Confirm(first.Value.Fraction + k * second); break;
            case "S1-M6": Near(value, Mass.Value.ShortestInterval().Low.SiValue, 2e-3); break;
            case "S1-M7": Near(value, Mass.Value.ShortestInterval().High.SiValue, 2e-3); break;
            default: throw new InvalidOperationException(id + " is new");
        }
    }

    [Theory]
    [HandbookData("S1-L")]
    public void ComparisonLoss_9_4(string id)
    {
        CheckValue value = CheckValue.All[id];
        double u = value.Number("u"), r = value.Number("r");
        Uncertain<Ratio> x1 = N(value.Number("x1"), Standard(u)), x2 = N(value.Number("x2"), Standard(u));
        if (r != 0) (x1, x2) = Uncertain.Correlated(x1, x2, r);
        if (value.Has("framework"))
        {
            value.Confirm((x1 * x1 + x2 * x2).StandardUncertainty.SiValue);
            return;
        }
        MonteCarloResult result = MonteCarlo.Run(
            [x1, x2],
            (x, y, count) =>
            {
                for (int i = 0; i < count; i++) y[i] = x[0][i] * x[0][i] + x[1][i] * x[1][i];
            },
            QuantityKind.Ratio);
        double deviation = result.StandardUncertainty.SiValue;
        switch (value.Unit)
        {
            case "mean": Near(value, result.Estimate.SiValue, 5e-3 * deviation); break;
            case "u(y)": Near(value, deviation, 6e-3 * deviation); break;
            case "shortest interval, lower": Near(value, result.ShortestInterval().Low.SiValue, 0.02 * deviation); break;
            case "shortest interval, upper": Near(value, result.ShortestInterval().High.SiValue, 0.03 * deviation); break;
            default: throw new InvalidOperationException(value.Unit + " is new");
        }
    }

    [Theory]
    [HandbookData("S1-G")]
    public void GaugeBlock_9_5(string id)
    {
        CheckValue value = CheckValue.All[id];
        MonteCarloResult result = GaugeBlock.Value;
        Ratio p = Ratio.FromPercent(99);
        switch (id)
        {
            case "S1-G1":
                value.Confirm(GaugeModel(GaugeInputs()).Value.Fraction);
                Near(value, result.Estimate.SiValue, 0.15);
                break;
            case "S1-G2": Near(value, result.StandardUncertainty.SiValue, 0.1); break;
            case "S1-G3": Near(value, result.ShortestInterval(p).Low.SiValue, 1.5); break;
            case "S1-G4": Near(value, result.ShortestInterval(p).High.SiValue, 1.5); break;
            case "S1-G5":
                // The first-order budget of the standard takes the two differences as rectangular, as H.1 does, and the nominal length in the products.
                Uncertain<Ratio>[] x = GaugeInputs();
                Uncertain<Ratio> expansion = N(0, Bound(1e-6)) * (x[5] + x[6]) + x[4] * N(0, Bound(0.05));
                value.Confirm((x[0] + x[1] + x[2] + x[3] - NominalLength * expansion).StandardUncertainty.SiValue);
                break;
            case "S1-G6": Near(value, result.SymmetricInterval(p).Low.SiValue, 1); break;
            case "S1-G7": Near(value, result.SymmetricInterval(p).High.SiValue, 1); break;
            default: throw new InvalidOperationException(id + " is new");
        }
    }

    private static Uncertain<Ratio>[] MassInputs() =>
    [
        N(100000, Standard(0.05)), N(1.234, Standard(0.02)), N(1.2, Bound(0.1)), N(8000, Bound(1000)), N(8000, Bound(50)),
    ];

    private static Uncertain<Ratio> MassModel(Uncertain<Ratio>[] x) =>
        (x[0] + x[1]) * (One + (x[2] - Ratio.FromFraction(1.2)) * (One / x[3] - One / x[4])) - Ratio.FromFraction(100000);

    private static readonly Uncertain<Ratio> One = Uncertain.Exact(Ratio.FromFraction(1));

    private static void MassKernel(double[][] x, double[] y, int count)
    {
        for (int i = 0; i < count; i++) y[i] = (x[0][i] + x[1][i]) * (1 + (x[2][i] - 1.2) * (1 / x[3][i] - 1 / x[4][i])) - 100000;
    }

    /// <summary>The exact gradient from the arithmetic of uncertain values themselves.</summary>
    private static void MassGradient(double[] x, double[] gradient)
    {
        Uncertain<Ratio>[] inputs = x.Select(value => N(value, Standard(1))).ToArray();
        LinearCombination combination = MassModel(inputs).Combination;
        for (int i = 0; i < x.Length; i++) gradient[i] = combination.Sensitivities[Array.IndexOf(combination.Sources, inputs[i].Combination.Sources[0])];
    }

    private const double NominalLength = 50_000_000;

    /// <summary>L_s, D, d1, d2 in nm, α_s, θ0, Δ, δα, δθ (JCGM 101 table 9, inputs as in check-values.json).</summary>
    private static Uncertain<Ratio>[] GaugeInputs() =>
    [
        N(50000623, Standard(25, 18)), N(215, Standard(6, 24)), N(0, Standard(4, 5)), N(0, Standard(7, 8)),
        N(11.5e-6, Bound(2e-6)), N(-0.1, Standard(0.2)), N(0, Spread.Arcsine(Ratio.FromFraction(0.5))),
        N(0, Spread.CurvilinearTrapezoid(Ratio.FromFraction(1e-6), Ratio.FromFraction(0.1e-6))), N(0, Spread.CurvilinearTrapezoid(Ratio.FromFraction(0.05), Ratio.FromFraction(0.025))),
    ];

    private static Uncertain<Ratio> GaugeModel(Uncertain<Ratio>[] x) =>
        x[0] + x[1] + x[2] + x[3] - x[0] * (x[7] * (x[5] + x[6]) + x[4] * x[8]) - Ratio.FromFraction(NominalLength);

    private static void GaugeKernel(double[][] x, double[] y, int count)
    {
        for (int i = 0; i < count; i++)
            y[i] = x[0][i] + x[1][i] + x[2][i] + x[3][i] - x[0][i] * (x[7][i] * (x[5][i] + x[6][i]) + x[4][i] * x[8][i]) - NominalLength;
    }

    private static MonteCarloResult Sum(IEnumerable<Spread> spreads) =>
        MonteCarlo.Run(
            spreads.Select(spread => N(0, spread)).ToArray(),
            (x, y, count) =>
            {
                for (int i = 0; i < count; i++) y[i] = x[0][i] + x[1][i] + x[2][i] + x[3][i];
            },
            QuantityKind.Ratio);

    private static double HalfWidth(MonteCarloResult result)
    {
        CoverageInterval interval = result.SymmetricInterval();
        return (interval.High.SiValue - interval.Low.SiValue) / 2;
    }

    private static void Near(CheckValue value, double actual, double allowance) =>
        Assert.True(Math.Abs(actual - value.Expected) <= Math.Max(allowance, value.Tolerance), FormattableString.Invariant($"{value.Id}: expected {value.Expected:R} within {allowance:G3}, was {actual:R}"));

    private static double[] Estimates(Uncertain<Ratio>[] inputs) => Array.ConvertAll(inputs, input => input.SiEstimate);

    private static double[] Uncertainties(Uncertain<Ratio>[] inputs) => Array.ConvertAll(inputs, input => input.SiStandardUncertainty);

    private static Uncertain<Ratio> N(double value, Spread spread) => Uncertain.Of(Ratio.FromFraction(value), spread);

    private static Spread Standard(double u, double dof = double.PositiveInfinity) => Spread.Standard(Ratio.FromFraction(u), dof);

    private static Spread Bound(double halfWidth) => Spread.Bound(Ratio.FromFraction(halfWidth));
}
