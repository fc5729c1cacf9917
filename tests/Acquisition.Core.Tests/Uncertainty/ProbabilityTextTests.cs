using System;
using System.Globalization;
using Acquisition.Core.Literals;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class ProbabilityTextTests
{
    [Theory]
    [InlineData(0.9772, "97.72 %")]
    [InlineData(0.5, "50 %")]
    [InlineData(0.99994, "99.99 %")]
    [InlineData(0.99996, "> 99.99 %")]
    [InlineData(0.9999999999999999, "> 99.99 %")]
    [InlineData(1.0, "100 %")]
    [InlineData(0.00004, "< 0.01 %")]
    [InlineData(1e-300, "< 0.01 %")]
    [InlineData(0.0, "0 %")]
    public void Probability_IsNeverRoundedToACertainty(double probability, string expected) => Assert.Equal(expected, ProbabilityText.Of(Ratio.FromFraction(probability)));

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(1.0000001)]
    public void WhatIsNoProbability_IsRefused(double number) =>
        Assert.Contains("from 0 to 1", Assert.Throws<ArgumentOutOfRangeException>(() => ProbabilityText.Of(Ratio.FromFraction(number))).Message, StringComparison.Ordinal);

    [Property]
    public bool OnlyCertainties_AreWrittenAsSuch(ushort step)
    {
        double p = Math.Pow(step / 65535.0, 8);
        string text = ProbabilityText.Of(Ratio.FromFraction(p)), rest = ProbabilityText.Of(Ratio.FromFraction(1 - p));
        double written = double.Parse(text.TrimStart('<', '>', ' ').TrimEnd('%', ' '), NumberStyles.Float, CultureInfo.InvariantCulture);
        return (text == "0 %") == (p == 0) && (rest == "100 %") == (1 - p == 1) && Math.Abs(written - 100 * p) <= 0.0100001;
    }

    [Theory]
    [InlineData(50)]
    [InlineData(-50)]
    public void WhatIsUncertain_IsNeitherCertainNorImpossible(double volts)
    {
        ConformityDecision decision = DecisionRule.GuardedAcceptance.Decide(Uncertain.Of(volts.V(), Spread.Standard(50.mV())), ToleranceLimits.AtMost(1.V()));

        Assert.InRange(decision.ConformanceProbability.Fraction, double.Epsilon, 1 - 1e-16);
        Assert.InRange(decision.SpecificRisk.Fraction, double.Epsilon, 1 - 1e-16);
        Assert.EndsWith(volts > 1 ? "conformance < 0.01 %" : "conformance > 99.99 %", decision.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void CoverageOfALargeFactor_IsNoCertainty()
    {
        UncertaintyBudget budget = Uncertain.Of(1.V(), Spread.Standard(50.mV())).Budget(Coverage.WithFactor(5));

        Assert.Equal("(1.00 ± 0.25) V, k = 5, p > 99.99 %", budget.ToString());
        Assert.Equal("p > 99.9999 %", Coverage.WithProbability(Ratio.FromFraction(0.99999999)).ToString());
        Assert.Equal("p = 99.5 %", Coverage.WithProbability(Ratio.FromFraction(0.995)).ToString());
    }
}
