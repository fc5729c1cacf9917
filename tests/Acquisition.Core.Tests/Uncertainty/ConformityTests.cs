using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class ConformityTests
{
    [Theory]
    [HandbookData("CF-")]
    public void ConformityFigures(string id)
    {
        CheckValue value = CheckValue.All[id];
        if (value.Has("reading_at"))
        {
            // U = 1 and one upper limit at 0, read exactly at the acceptance limit.
            string rule = value.Text("rule");
            DecisionRule decision = rule == "simple acceptance" ? DecisionRule.SimpleAcceptance
                : rule == "w=U" ? DecisionRule.GuardedAcceptance
                : DecisionRule.Guarded(double.Parse(rule[2..^1], System.Globalization.CultureInfo.InvariantCulture));
            double w = decision.GuardBand(double.NegativeInfinity, 0, 1 / value.Number("k"), 1);
            // The complement of the conformance probability, formed without cancellation: reading and limit change places.
            value.Confirm(ConformityRisk.Conformance(0, 1 / value.Number("k"), double.PositiveInfinity, double.NegativeInfinity, -w));
        }
        else if (value.Has("p_conform"))
        {
            DecisionRule rule = DecisionRule.ForConformance(Ratio.FromFraction(value.Number("p_conform")));
            double k = value.Has("k") ? value.Number("k") : 1;
            value.Confirm(rule.GuardBand(double.NegativeInfinity, 0, 1 / k, 1));
        }
        else if (value.Has("y"))
        {
            Uncertain<Ratio> y = Uncertain.Of(N("y"), Spread.Standard(N("u")));
            value.Confirm(DecisionRule.SimpleAcceptance.Decide(y, ToleranceLimits.Between(N("TL"), N("TU"))).ConformanceProbability.Fraction);
        }
        else if (value.Has("w"))
        {
            Uncertain<Ratio> y = Uncertain.Of(Ratio.FromFraction(0.5), Spread.Expanded(N("U"), 2));
            value.Confirm(DecisionRule.GuardedAcceptance.Decide(y, ToleranceLimits.AtMost(N("TU"))).UpperAcceptanceLimit!.Value.SiValue);
        }
        else
        {
            Uncertain<Ratio> y = Uncertain.Of(Ratio.FromFraction(0), Spread.Expanded(N("U"), 2));
            ToleranceLimits<Ratio> limits = ToleranceLimits.Between(-N("T"), N("T"));
            value.Confirm(value.Has("rule")
                ? DecisionRule.RootSumSquare.Decide(y, limits).UpperAcceptanceLimit!.Value.SiValue
                : DecisionRule.SimpleAcceptance.Decide(y, limits).TestUncertaintyRatio!.Value);
        }

        Ratio N(string name) => Ratio.FromFraction(value.Number(name));
    }

    [Theory]
    [InlineData(0.80, Verdict.Pass)]
    [InlineData(0.95, Verdict.ConditionalPass)]
    [InlineData(1.00, Verdict.ConditionalPass)]
    [InlineData(1.05, Verdict.ConditionalFail)]
    [InlineData(1.15, Verdict.Fail)]
    public void GuardedAcceptance_HasFourVerdicts(double volts, Verdict expected) =>
        Assert.Equal(expected, DecisionRule.GuardedAcceptance.Decide(Reading(volts), ToleranceLimits.AtMost(1.V())).Verdict);

    [Theory]
    [InlineData(0.99, Verdict.Pass)]
    [InlineData(1.01, Verdict.Fail)]
    public void SimpleAcceptance_HasTwoVerdicts(double volts, Verdict expected) =>
        Assert.Equal(expected, DecisionRule.SimpleAcceptance.Decide(Reading(volts), ToleranceLimits.AtMost(1.V())).Verdict);

    [Theory]
    [InlineData(0.95, Verdict.Pass)]
    [InlineData(1.05, Verdict.Pass)]
    [InlineData(1.10, Verdict.Pass)]
    [InlineData(1.15, Verdict.Fail)]
    public void GuardedRejection_AcceptsWhatIsBeyondTheLimitByLessThanU(double volts, Verdict expected) =>
        Assert.Equal(expected, DecisionRule.GuardedRejection.Decide(Reading(volts), ToleranceLimits.AtMost(1.V())).Verdict);

    // JCGM 106 8.3.3: w = -U = -50 mV makes acceptance limits of 4.85 V and 5.15 V out of 4.9 V and 5.1 V. The probability below 5.1 V and above 4.9 V of a normal value
    // at 4.87 V with u = 25 mV is that above 1.2 standard deviations, 11.507 % by the table of the normal distribution.
    [Fact]
    public void GuardedRejection_PassesBeyondTheLimit_AndSaysSo()
    {
        ConformityDecision decision = DecisionRule.GuardedRejection.Decide(Uncertain.Of(4.87.V(), Spread.Expanded(50.mV(), 2)), ToleranceLimits.Between(4.9.V(), 5.1.V()));

        Assert.Equal(Verdict.Pass, decision.Verdict);
        Assert.Equal(4.85, decision.LowerAcceptanceLimit!.Value.SiValue, 12);
        Assert.Equal(0.11507, decision.ConformanceProbability.Fraction, 5);
        Assert.Equal(0.88493, decision.SpecificRisk.Fraction, 5);
        Assert.Contains(decision.Findings, finding => finding.Code == "accepted-beyond-limit" && finding.Message.Contains("11.51 %", StringComparison.Ordinal));
        Assert.DoesNotContain(DecisionRule.GuardedRejection.Decide(Uncertain.Of(4.93.V(), Spread.Expanded(50.mV(), 2)), ToleranceLimits.Between(4.9.V(), 5.1.V())).Findings, finding => finding.Code == "accepted-beyond-limit");
    }

    // Acceptance limits belong to what is accepted (JCGM 106 8.2 and 8.3): 4.95 V less 50 mV is 4.9 V, though 4.95 - 0.05 is 4.9000000000000004 in binary, and 0.1 + 0.2 is not 0.3 there.
    [Theory]
    [InlineData(4.95, 4.9, 0.05)]
    [InlineData(0.35, 0.3, 0.05)]
    [InlineData(0.30000000000000004, 0.1, 0.2)]
    public void AReadingExactlyAtAnAcceptanceLimit_IsAccepted(double volts, double limit, double expanded)
    {
        Uncertain<Voltage> above = Uncertain.Of(Voltage.FromVolts(volts), Spread.Expanded(Voltage.FromVolts(expanded), 2)), below = Uncertain.Of(Voltage.FromVolts(-volts), Spread.Expanded(Voltage.FromVolts(expanded), 2));

        Assert.Equal(Verdict.Pass, DecisionRule.GuardedAcceptance.Decide(above, ToleranceLimits.AtLeast(Voltage.FromVolts(limit))).Verdict);
        Assert.Equal(Verdict.Pass, DecisionRule.GuardedAcceptance.Decide(below, ToleranceLimits.AtMost(Voltage.FromVolts(-limit))).Verdict);
        Assert.Equal(Verdict.ConditionalPass, DecisionRule.GuardedAcceptance.Decide(above - Uncertain.Exact(Voltage.FromVolts(1e-14)), ToleranceLimits.AtLeast(Voltage.FromVolts(limit))).Verdict);
    }

    [Fact]
    public void AnExactReadingThatRoundingKeepsFromItsLimit_IsAtIt()
    {
        Uncertain<Voltage> sum = Uncertain.Exact(Voltage.FromVolts(0.1 + 0.2));

        Assert.Equal(Verdict.Pass, DecisionRule.SimpleAcceptance.Decide(sum, ToleranceLimits.AtMost(0.3.V())).Verdict);
        Assert.Equal(Verdict.Fail, DecisionRule.SimpleAcceptance.Decide(sum, ToleranceLimits.Above(0.3.V())).Verdict);
    }

    [Fact]
    public void ReadingWithoutUncertainty_IsJudgedByTheLimitAlone()
    {
        ConformityDecision decision = DecisionRule.GuardedAcceptance.Decide(Uncertain.Exact(1.V()), ToleranceLimits.Between(0.V(), 1.V()));

        Assert.Equal(Verdict.Pass, decision.Verdict);
        Assert.Equal(1, decision.ConformanceProbability.Fraction);
    }

    [Fact]
    public void Decision_StatesItsRule()
    {
        ConformityDecision decision = DecisionRule.GuardedAcceptance.Decide(Reading(0.95), ToleranceLimits.AtMost(1.V()));

        Assert.Equal("conditional pass: (950 ± 100) mV, k = 2, p = 95.45 %, limits at most 1 V, guarded acceptance, w = U, conformance 84.13 %", decision.ToString());
    }

    [Fact]
    public void GuardBandsThatMeet_LeaveNothingToAccept()
    {
        ConformityDecision decision = DecisionRule.GuardedAcceptance.Decide(Reading(1), ToleranceLimits.Between(0.95.V(), 1.05.V()));

        Assert.Contains(decision.Findings, finding => finding.Code == "no-acceptance-interval" && finding.Severity == Severity.Failure);
        Assert.NotEqual(Verdict.Pass, decision.Verdict);
    }

    [Fact]
    public void LowTestUncertaintyRatio_IsFlagged() =>
        Assert.Contains(DecisionRule.GuardedAcceptance.Decide(Reading(1), ToleranceLimits.Between(0.7.V(), 1.3.V())).Findings, finding => finding.Code == "low-test-uncertainty-ratio");

    [Fact]
    public void RootSumSquareRule_WithoutRoom_IsRefusedWithTheRemedy()
    {
        var exception = Assert.Throws<ArgumentException>(() => DecisionRule.RootSumSquare.Decide(Reading(1), ToleranceLimits.Between(0.95.V(), 1.05.V())));

        Assert.Contains("U/T was 2; measure better", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void LimitsInTheWrongOrder_AreRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceLimits.Between(2.V(), 1.V()));

    /// <summary>JCGM 106 7.3 example 1, from memory: breakdown voltage of a Zener diode, read -5.47 V with u = 0.05 V, upper limit -5.40 V; printed conformance 0.92.</summary>
    [Fact]
    public void ZenerDiode_Jcgm106_ConformsWith92Percent()
    {
        Uncertain<Voltage> reading = Uncertain.Of((-5.47).V(), Spread.Standard(0.05.V()));

        Assert.Equal(0.92, DecisionRule.SimpleAcceptance.Decide(reading, ToleranceLimits.AtMost((-5.40).V())).ConformanceProbability.Fraction, 0.005);
    }

    /// <summary>Few readings widen the tails: the t-distribution is what counts (JCGM 106 7.1 note).</summary>
    [Fact]
    public void FewDegreesOfFreedom_LowerTheConformanceProbability()
    {
        ToleranceLimits<Voltage> limits = ToleranceLimits.AtMost(1.1.V());
        double known = DecisionRule.SimpleAcceptance.Decide(Uncertain.Of(1.V(), Spread.Standard(50.mV())), limits).ConformanceProbability.Fraction;
        double few = DecisionRule.SimpleAcceptance.Decide(Uncertain.Of(1.V(), Spread.Standard(50.mV(), 3)), limits).ConformanceProbability.Fraction;

        Assert.Equal(StudentT.Cumulative(2, 3), few, 1e-12);
        Assert.True(few < known);
    }

    [Property]
    public bool SpecificRisk_IsTheRestOfTheConformanceProbability(short millivolts)
    {
        ConformityDecision decision = DecisionRule.SimpleAcceptance.Decide(Reading(millivolts / 1000.0), ToleranceLimits.Between((-1).V(), 1.V()));
        double conformance = decision.ConformanceProbability.Fraction, risk = decision.SpecificRisk.Fraction;
        return Math.Abs(decision.IsAccepted ? conformance + risk - 1 : conformance - risk) < 1e-15 && risk <= 0.5 + 1e-12;
    }

    private static Uncertain<Voltage> Reading(double volts) => Uncertain.Of(Voltage.FromVolts(volts), Spread.Expanded(0.1.V(), 2));
}
