using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Acquisition.Core.Tests.Conventions;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Rise times with the rules of thumb that stand beside them, and where those end.</summary>
public sealed class EdgeRulesTests
{
    private static readonly Response Pole = Response.SinglePole(100.MHz());
    private static readonly Edge Ramp = new(4.ns());

    public static TheoryData<Refusal> Refusals => new(
        new("negative rise time combined", () => RootSumOfSquares.Combine(1.ns(), -(1.ns())), "riseTimes", "-1 ns"),
        new("negative system", () => RootSumOfSquares.Remove(1.ns(), -(1.ns())), "system", "at least 0 s"),
        new("as slow as the system", () => RootSumOfSquares.Remove(1.ns(), 1.ns()), "measured", "the signal is faster"),
        new("negative uncertainty of the reading", () => RootSumOfSquares.UncertaintyOfRemoved(2.ns(), -(1.ps()), 1.ns(), default), "measuredUncertainty", "-1 ps"),
        new("negative uncertainty of the system", () => RootSumOfSquares.UncertaintyOfRemoved(2.ns(), default, 1.ns(), -(1.ps())), "systemUncertainty", "-1 ps"),
        new("levels upside down", () => Pole.RiseTimeOf(Ramp, 90.Percent(), 10.Percent()), "high", "0.9"),
        new("a level of 0", () => Pole.RiseTimeOf(Ramp, default, 10.Percent()), "low", "above 0"));

    [Theory, MemberData(nameof(Refusals))]
    public void WhatLiesOutside_IsRefusedByName(Refusal refusal) => refusal.Confirm();

    [Fact]
    public void WhatLiesOnTheEdge_IsComputed()
    {
        Assert.Equal(1.ns(), RootSumOfSquares.Combine(1.ns(), default));
        Assert.Equal(1.ns(), RootSumOfSquares.Remove(1.ns(), default).Value);
        Assert.Equal(0, RootSumOfSquares.UncertaintyOfRemoved(2.ns(), default, 1.ns(), default).Seconds);
    }

    // 3-4-5 by hand; below 1.2 times the system's rise time what is left is mostly uncertainty (handbook 2.5).
    [Fact]
    public void RemovingASystemNearlyAsSlow_IsWarnedOf()
    {
        Explained<Duration> fair = RootSumOfSquares.Remove(1.25.ns(), 1.ns()), poor = RootSumOfSquares.Remove(1.1.ns(), 1.ns());
        Assert.Equal(0.75, fair.Value.Nanoseconds, 12);
        Assert.Empty(fair.Findings);
        Finding finding = Assert.Single(poor.Findings);
        Assert.Equal("system-too-slow", finding.Code);
        Assert.Contains("1.1 ns is only 1.1 times the system's 1 ns", finding.Message, StringComparison.Ordinal);
        Assert.Contains("550 ps", finding.Remedy, StringComparison.Ordinal);
    }

    // By hand: √(4² + 3.49699²) with ln 9/(2π 100 MHz) = 3.49699 ns, and √(4² + 3.5²).
    [Fact]
    public void TheRulesBesideAnEdge_AreThoseOfTheTrade()
    {
        Explained<Duration> edge = Pole.RiseTimeOf(Ramp);
        Assert.Equal(["√(edge² + rise time of the response²)", "√(edge² + (0.35 / bandwidth)²)"], edge.Rules.Select(rule => rule.Rule));
        Assert.Equal(5.31309, edge.Rules[0].Value.Nanoseconds, 4);
        Assert.Equal(5.31507, edge.Rules[1].Value.Nanoseconds, 4);
        Assert.Empty(Pole.RiseTimeOf(Ramp, 10.Percent(), 80.Percent()).Rules);
        Assert.Empty(Pole.RiseTimeOf(Ramp, 20.Percent(), 90.Percent()).Rules);
        RuleOfThumb<Duration> own = Assert.Single(Pole.ExplainRiseTime().Rules);
        Assert.Equal(3.5, own.Value.Nanoseconds, 9);
        Assert.Empty(Pole.ExplainBandwidth().Rules);
        // A response that never falls has no bandwidth to take the rule from.
        Assert.Single(Response.Cascade().RiseTimeOf(Ramp).Rules);
    }

    [Fact]
    public void AnAttenuatedEdge_RisesAsFast_AndItsNoiseBandwidthIsTheSame()
    {
        Response quarter = Pole.Then(Response.Attenuator(12.dB()));
        Assert.Equal(Pole.RiseTimeOf(Ramp).Value.Seconds, quarter.RiseTimeOf(Ramp).Value.Seconds, 1e-15);
        Assert.Equal(Math.PI / 2 * 100, quarter.NoiseBandwidth.Megahertz, 1e-6);
        Assert.Equal(100, quarter.Bandwidth.Megahertz, 1e-6);
    }

    // exp(-π ζ/√(1-ζ²)) = 16.3034 % for ζ = 0.5 (second-order step, textbook); a slow edge does not ring, and what does not overshoot is 0.
    [Fact]
    public void OvershootOfAnEdge_IsThatOfAStepForAFastOne_AndNothingForASlowOne()
    {
        Response ringing = Response.SecondOrder(100.MHz(), 50.Percent());
        Assert.Equal(16.3034, ringing.OvershootOf(new Edge(default)).Percent, 3);
        Assert.Equal(16.3034, ringing.Then(Response.Attenuator(6.dB())).OvershootOf(new Edge(10.ps())).Percent, 2);
        Assert.InRange(ringing.OvershootOf(new Edge(20.ns())).Percent, 0.01, 3);
        Assert.Equal(0, Pole.OvershootOf(Ramp).Fraction);
        Assert.Equal(0, Pole.OvershootOf(new Edge(1.us(), EdgeShape.Exponential)).Fraction);
        Assert.Throws<InvalidOperationException>(() => Response.HighPass(1.kHz()).OvershootOf(Ramp));
    }

    [Fact]
    public void LevelsOfAnEdge_ReferToTheLargestValue_WhereDcIsBlocked()
    {
        Response coupled = Pole.Then(Response.HighPass(1.kHz()));
        Explained<Duration> edge = coupled.RiseTimeOf(Ramp);
        Assert.Contains("levels refer to the largest value, because the response blocks DC", edge.Assumptions);
        Assert.Contains("levels refer to the final value", Pole.RiseTimeOf(Ramp).Assumptions);
        Assert.Contains("levels refer to the largest value, because the response blocks DC", coupled.ExplainRiseTime().Assumptions);
        Assert.Contains("above the largest gain", coupled.ExplainBandwidth().Method, StringComparison.Ordinal);
        Assert.Contains("of that at DC", Pole.ExplainBandwidth().Method, StringComparison.Ordinal);
        Assert.Equal(Pole.RiseTimeOf(Ramp).Value.Nanoseconds, edge.Value.Nanoseconds, 0.01);
    }

    [Fact]
    public void AnExponentialEdge_PassesItsMiddle_LogTwoAfterItBegins()
    {
        StepResponse edge = Response.Cascade().EdgeStep(new Edge(1.ns(), EdgeShape.Exponential), out double shift);
        Assert.Equal(0.5, edge.Value(shift), 1e-12);
        // 10 % to 90 % of an exponential is ln 9 of its time constant.
        Assert.Equal(1e-9 / Math.Log(9) * Math.Log(2), shift, 1e-20);
    }

    [Fact]
    public void ASineHasNoEdge_AndSaysSo() => Assert.Throws<InvalidOperationException>(() => Pole.RiseTimeOf(Signal.Sine(1.MHz(), 1.Vpk())));
}
