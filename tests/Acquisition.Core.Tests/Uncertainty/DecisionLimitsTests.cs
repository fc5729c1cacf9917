using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Conventions;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>Decisions at a lower limit, at both and at the very limits; coverage at its ends; second-order terms against the exact moments of the normal distribution.</summary>
public sealed class DecisionLimitsTests
{
    private static Uncertain<Voltage> Reading(double volts) => Uncertain.Of(Voltage.FromVolts(volts), Spread.Expanded(0.1.V(), 2));

    private static ConformityDecision At(double volts, DecisionRule rule, ToleranceLimits<Voltage> limits) => rule.Decide(Reading(volts), limits);

    public static TheoryData<Refusal> Refusals => new(
        new("certain coverage", () => Coverage.WithProbability(100.Percent()), "probability", "below 1"),
        new("no coverage", () => Coverage.WithProbability(default), "probability", "above 0"),
        new("coverage factor 0", () => Coverage.WithFactor(0), "coverageFactor", "above 0"),
        new("infinite coverage factor", () => Coverage.WithFactor(double.PositiveInfinity), "coverageFactor", "above 0"),
        new("factor for no degrees of freedom", () => Coverage.Usual.CoverageFactorFor(0), "effectiveDegreesOfFreedom", "above 0"),
        new("probability for no degrees of freedom", () => Coverage.Usual.CoverageProbabilityFor(-1), "effectiveDegreesOfFreedom", "above 0"),
        new("infinite guard band", () => DecisionRule.Guarded(double.PositiveInfinity), "factor", "finite"),
        new("conformance below 50 %", () => DecisionRule.ForConformance(49.Percent()), "probability", "0.5"),
        new("certain conformance", () => DecisionRule.ForConformance(100.Percent()), "probability", "below 1"),
        new("equal limits", () => ToleranceLimits.Between(1.V(), 1.V()), "upper", "above the lower"),
        new("limits of a budget upside down", () => DecisionRule.SimpleAcceptance.Decide(Reading(1).Budget(), new Quantity(2, QuantityKind.Voltage), new Quantity(1, QuantityKind.Voltage)), "upper", "above the lower"),
        new("limit of another kind", () => DecisionRule.SimpleAcceptance.Decide(Reading(1).Budget(), new Quantity(2, QuantityKind.Current), null), "lower", "current"),
        new("no budget", () => DecisionRule.SimpleAcceptance.Decide(null!, null, null), "measured", "measured"),
        new("no reading", () => DecisionRule.SimpleAcceptance.Decide<Voltage>(null!, ToleranceLimits.AtMost(1.V())), "measured", "measured"),
        new("no limits", () => DecisionRule.SimpleAcceptance.Decide(Reading(1), null!), "limits", "limits"),
        new("risk without limits", () => GlobalRisk.Of<Voltage>(1.V(), 1.V(), 1.V(), null!, DecisionRule.SimpleAcceptance), "limits", "limits"),
        new("risk without a rule", () => GlobalRisk.Of(1.V(), 1.V(), 1.V(), ToleranceLimits.AtMost(1.V()), null!), "rule", "rule"),
        new("risk of a production without spread", () => GlobalRisk.Of(1.V(), default, 1.V(), ToleranceLimits.AtMost(1.V()), DecisionRule.SimpleAcceptance), "processStandardDeviation", "0 V"),
        new("risk without uncertainty", () => GlobalRisk.Of(1.V(), 1.V(), default, ToleranceLimits.AtMost(1.V()), DecisionRule.SimpleAcceptance), "standardUncertainty", "0 V"),
        new("risk with factor 0", () => GlobalRisk.Of(1.V(), 1.V(), 1.V(), ToleranceLimits.AtMost(1.V()), DecisionRule.SimpleAcceptance, 0), "coverageFactor", "above 0"));

    [Theory, MemberData(nameof(Refusals))]
    public void WhatLiesOutside_IsRefusedByName(Refusal refusal) => refusal.Confirm();

    [Fact]
    public void ADecisionWithoutLimits_IsRefused() =>
        Assert.Throws<ArgumentException>(() => DecisionRule.SimpleAcceptance.Decide(Reading(1).Budget(), null, null));

    // U is 0.1 V; JCGM 106 8.3.2 and 8.3.3 turned round for a lower limit.
    [Theory]
    [InlineData(1.15, Verdict.Pass, Verdict.Pass, Verdict.Pass)]
    [InlineData(1.05, Verdict.ConditionalPass, Verdict.Pass, Verdict.Pass)]
    [InlineData(0.95, Verdict.ConditionalFail, Verdict.Fail, Verdict.Pass)]
    [InlineData(0.85, Verdict.Fail, Verdict.Fail, Verdict.Fail)]
    public void ALowerLimit_IsJudgedAsAnUpperOne(double volts, Verdict guarded, Verdict simple, Verdict lenient)
    {
        ToleranceLimits<Voltage> limits = ToleranceLimits.AtLeast(1.V());
        Assert.Equal(guarded, At(volts, DecisionRule.GuardedAcceptance, limits).Verdict);
        Assert.Equal(simple, At(volts, DecisionRule.SimpleAcceptance, limits).Verdict);
        Assert.Equal(lenient, At(volts, DecisionRule.GuardedRejection, limits).Verdict);
    }

    [Fact]
    public void AReadingExactlyAtALimit_IsWithin()
    {
        foreach (ToleranceLimits<Voltage> limits in new[] { ToleranceLimits.AtLeast(1.V()), ToleranceLimits.AtMost(1.V()), ToleranceLimits.Between(1.V(), 2.V()), ToleranceLimits.Between(0.V(), 1.V()) })
        {
            Assert.Equal(Verdict.Pass, At(1, DecisionRule.SimpleAcceptance, limits).Verdict);
            Assert.Equal(Verdict.ConditionalPass, At(1, DecisionRule.GuardedAcceptance, limits).Verdict);
        }
    }

    // x < 1 V leaves 1 V out: what JCGM 106 3.3.4 counts as conforming is excluded by the one who writes the limit.
    [Theory]
    [InlineData(1.0, Verdict.Fail, Verdict.ConditionalFail)]
    [InlineData(0.875, Verdict.Pass, Verdict.ConditionalPass)]
    public void ALimitThatIsExcluded_IsNotKeptByAReadingExactlyAtIt(double volts, Verdict simple, Verdict guarded)
    {
        foreach ((ToleranceLimits<Voltage> limits, double reading) in new[] { (ToleranceLimits.Below(1.V()), volts), (ToleranceLimits.Above(-(1.V())), -volts) })
        {
            // A width in 1/16 V, so that sums with it are exact.
            Uncertain<Voltage> measured = Uncertain.Of(Voltage.FromVolts(reading), Spread.Expanded(Voltage.FromVolts(0.1875), 2));
            Assert.Equal(simple, DecisionRule.SimpleAcceptance.Decide(measured, limits).Verdict);
            Assert.Equal(guarded, DecisionRule.GuardedAcceptance.Decide(measured, limits).Verdict);
            Assert.Equal(Verdict.Pass, DecisionRule.GuardedRejection.Decide(measured, limits).Verdict);
        }
    }

    [Fact]
    public void AnExactValueAtAnExcludedLimit_FailsForCertain()
    {
        ConformityDecision decision = DecisionRule.GuardedAcceptance.Decide(Uncertain.Exact(5.V()), ToleranceLimits.Below(5.V()));

        Assert.Equal(Verdict.Fail, decision.Verdict);
        Assert.Equal(0, decision.ConformanceProbability.Fraction);
        Assert.True(decision.IsUpperLimitExcluded);
        Assert.False(decision.IsLowerLimitExcluded);
        Assert.Contains("limits below 5 V", decision.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void BothLimits_KeepTheirGuardBandsInside()
    {
        ConformityDecision decision = At(1.5, DecisionRule.GuardedAcceptance, ToleranceLimits.Between(1.V(), 2.V()));
        Assert.Equal(1.1, decision.LowerAcceptanceLimit!.Value.SiValue, 12);
        Assert.Equal(1.9, decision.UpperAcceptanceLimit!.Value.SiValue, 12);
        Assert.Equal(5, decision.TestUncertaintyRatio!.Value, 12);
        Assert.Equal(1, decision.ConformanceProbability.Fraction, 1e-12);
        Assert.Null(At(1.5, DecisionRule.GuardedAcceptance, ToleranceLimits.AtMost(2.V())).TestUncertaintyRatio);
        Assert.Null(At(1.5, DecisionRule.GuardedAcceptance, ToleranceLimits.AtLeast(1.V())).TestUncertaintyRatio);
        Assert.Null(At(1.5, DecisionRule.GuardedAcceptance, ToleranceLimits.AtLeast(1.V())).UpperAcceptanceLimit);
        Assert.Null(DecisionRule.SimpleAcceptance.Decide(Uncertain.Exact(1.5.V()), ToleranceLimits.Between(1.V(), 2.V())).TestUncertaintyRatio);
    }

    // The normal distribution's 97.725 % within two standard deviations of one side (table value).
    [Fact]
    public void TheRiskOfAVerdict_IsTheChanceThatItIsWrong()
    {
        ConformityDecision accepted = At(0.9, DecisionRule.SimpleAcceptance, ToleranceLimits.AtMost(1.V())), rejected = At(1.1, DecisionRule.SimpleAcceptance, ToleranceLimits.AtMost(1.V()));
        Assert.Equal(0.97725, accepted.ConformanceProbability.Fraction, 5);
        Assert.Equal(0.02275, accepted.SpecificRisk.Fraction, 5);
        Assert.Equal(0.02275, rejected.SpecificRisk.Fraction, 5);
    }

    // NCSL's rule with T the distance of a single limit from zero (from memory): √(1² - 0.1²) = 0.994987.
    [Fact]
    public void TheRootSumSquareRule_TakesASingleLimitsDistanceFromZero()
    {
        Assert.Equal(0.994987, At(0.5, DecisionRule.RootSumSquare, ToleranceLimits.AtMost(1.V())).UpperAcceptanceLimit!.Value.SiValue, 6);
        Assert.Equal(-0.994987, At(0.5, DecisionRule.RootSumSquare, ToleranceLimits.AtLeast(-(1.V()))).LowerAcceptanceLimit!.Value.SiValue, 6);
        Assert.Equal(2.994987, At(2, DecisionRule.RootSumSquare, ToleranceLimits.Between(1.V(), 3.V())).UpperAcceptanceLimit!.Value.SiValue, 6);
        Assert.Equal(0, DecisionRule.RootSumSquare.GuardBand(0, 1, 0, 0));
    }

    [Fact]
    public void LimitsAndRules_AreSaidInWords()
    {
        Assert.Equal("at most 1 V", ToleranceLimits.AtMost(1.V()).ToString());
        Assert.Equal("at least 1 V", ToleranceLimits.AtLeast(1.V()).ToString());
        Assert.Equal("below 1 V", ToleranceLimits.Below(1.V()).ToString());
        Assert.Equal("above 1 V", ToleranceLimits.Above(1.V()).ToString());
        Assert.True(ToleranceLimits.Below(1.V()) is { IsUpperExcluded: true, IsLowerExcluded: false });
        Assert.True(ToleranceLimits.Above(1.V()) is { IsUpperExcluded: false, IsLowerExcluded: true });
        Assert.Equal("from 1 V to 2 V", ToleranceLimits.Between(1.V(), 2.V()).ToString());
        Assert.Contains("limits at least 1 V", At(1.5, DecisionRule.SimpleAcceptance, ToleranceLimits.AtLeast(1.V())).ToString(), StringComparison.Ordinal);
        Assert.Contains("limits at most 2 V", At(1.5, DecisionRule.SimpleAcceptance, ToleranceLimits.AtMost(2.V())).ToString(), StringComparison.Ordinal);
        Assert.Contains("limits from 1 V to 2 V", At(1.5, DecisionRule.SimpleAcceptance, ToleranceLimits.Between(1.V(), 2.V())).ToString(), StringComparison.Ordinal);
        Assert.Equal("conformance with at least 95 %, w = 1.645 u", DecisionRule.ForConformance(95.Percent()).ToString());
        Assert.Equal("k = 2.5", Coverage.WithFactor(2.5).ToString());
        Assert.Equal("p = 95 %", Coverage.WithProbability(95.Percent()).ToString());
        Assert.Null(ToleranceLimits.AtMost(1.V()).Lower);
        Assert.Null(ToleranceLimits.AtLeast(1.V()).Upper);
        Assert.Equal(1.V(), ToleranceLimits.AtLeast(1.V()).Lower);
    }

    [Fact]
    public void ATestUncertaintyRatioOfFour_IsNotFlagged()
    {
        Assert.Empty(At(1.5, DecisionRule.SimpleAcceptance, ToleranceLimits.Between(1.V(), 1.9.V())).Findings);
        Assert.Contains(At(1.5, DecisionRule.SimpleAcceptance, ToleranceLimits.Between(1.V(), 1.7.V())).Findings, finding => finding.Code == "low-test-uncertainty-ratio");
        Assert.Contains(At(1.05, DecisionRule.GuardedAcceptance, ToleranceLimits.Between(1.V(), 1.1.V())).Findings, finding => finding.Code == "no-acceptance-interval");
    }

    // JCGM 100 table G.2: 12.71 for one degree of freedom and 95 %; truncated downwards, but not to none (t for half a degree of freedom, below 1, is larger still).
    [Fact]
    public void DegreesOfFreedom_AreTruncated_ButNotToNone()
    {
        Coverage coverage = Coverage.WithProbability(95.Percent());
        Assert.Equal(12.71, coverage.CoverageFactorFor(1), 2);
        Assert.Equal(12.71, coverage.CoverageFactorFor(1.99), 2);
        Assert.Equal(4.30, coverage.CoverageFactorFor(2), 2);
        Assert.True(coverage.CoverageFactorFor(0.5) > 100);
        Assert.Equal(0.5, Coverage.WithFactor(1).CoverageProbabilityFor(1).Fraction, 1e-12);
    }

    [Fact]
    public void WithoutACeiling_NothingIsTooHigh()
    {
        // The risks of one limit are those of two of which the other is far away.
        GlobalRisk one = GlobalRisk.Of(10.V(), 1.V(), 0.3.V(), ToleranceLimits.AtMost(11.V()), DecisionRule.GuardedAcceptance);
        GlobalRisk far = GlobalRisk.Of(10.V(), 1.V(), 0.3.V(), ToleranceLimits.Between(-100.V(), 11.V()), DecisionRule.GuardedAcceptance);
        Assert.Equal(far.FalseAcceptance.Fraction, one.FalseAcceptance.Fraction, 1e-12);
        Assert.Equal(far.FalseRejection.Fraction, one.FalseRejection.Fraction, 1e-12);
        Assert.Equal(0.841345, one.ConformingPart.Fraction, 6);
        Assert.Contains("conforming 84.13 %", one.ToString(), StringComparison.Ordinal);
    }

    // Var (1+e)³ = 9u² + 36u⁴ + 15u⁶ and Var x²y = 4u² + v² + 2u⁴ + 6u²v² + ...: the fourth-order parts are what second order must add.
    [Fact]
    public void SecondOrderTerms_AreTheFourthOrderPartsOfTheExactVariance()
    {
        const double u = 0.1, v = 0.2;
        Assert.Equal(36 * Math.Pow(u, 4), SecondOrder.Variance((x, slope) => slope[0] = 3 * x[0] * x[0], [1], [u]), 36e-4 * 1e-6);
        double product = SecondOrder.Variance((x, slope) => (slope[0], slope[1]) = (2 * x[0] * x[1], x[0] * x[0]), [1, 1], [u, v]);
        double expected = 2 * Math.Pow(u, 4) + 6 * u * u * v * v;
        Assert.Equal(expected, product, expected * 1e-6);
        Assert.Equal(0, SecondOrder.Variance((x, slope) => slope[0] = 3, [1], [u]), 1e-15);
        Assert.Equal(36 * Math.Pow(u, 4), SecondOrder.Variance((x, slope) => (slope[0], slope[1]) = (3 * x[0] * x[0], 1), [1, 1], [u, 0]), 36e-4 * 1e-6);
    }

    // ln x around 1: f' = 1, f'' = -1, f''' = 2, so that (1/2 + 2) u⁴ is added; it ends at 0, within the uncertainty of 2.
    [Fact]
    public void AModelThatEndsWithinTheUncertainty_IsFollowedOverLess() =>
        Assert.Equal(40, SecondOrder.Variance((x, slope) => slope[0] = x[0] > 0 ? 1 / x[0] : double.NaN, [1], [2]), 0.01);

    [Fact]
    public void AKinkAtTheEstimate_HasNoSecondOrder()
    {
        Assert.True(double.IsNaN(SecondOrder.Variance((x, slope) => slope[0] = Math.Sign(x[0]), [0], [1])));
        Assert.True(double.IsNaN(SecondOrder.Variance((x, slope) => (slope[0], slope[1]) = (1, x[1] > 0 ? 2 : 1), [1, 0], [1, 1])));
        Assert.True(double.IsNaN(SecondOrder.Variance((_, slope) => slope[0] = double.NaN, [1], [1])));
    }

    // Two readings of the same meter, fully correlated, and their sum: u adds straight, 3 mV, not 2.236 mV; r = -1 leaves the difference.
    [Theory]
    [InlineData(1, 3)]
    [InlineData(-1, 1)]
    [InlineData(0, 2.2360679775)]
    public void CorrelatedContributions_AddByTheirCoefficient(double coefficient, double millivolts)
    {
        Uncertain<Voltage>[] both = Uncertain.Correlated([Uncertain.Of(1.V(), Spread.Standard(1.mV())), Uncertain.Of(1.V(), Spread.Standard(2.mV()))], new[,] { { 1, coefficient }, { coefficient, 1 } }).ToArray();
        UncertaintyBudget budget = (both[0] + both[1]).Budget();
        Assert.Equal(millivolts, budget.StandardUncertainty.SiValue * 1e3, 8);
        Assert.Same(budget.Lines, budget.Lines);
        Assert.Same(budget.Findings, budget.Findings);
    }
}
