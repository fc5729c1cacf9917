using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Attributions;

public sealed class DeembeddedRiseTimeTests
{
    private static Response Rc(double tau) => Response.SinglePole(Frequency.FromHertz(1 / (2 * Math.PI * tau)));

    private static Response GaussianOfRise(double seconds) => Response.Gaussian(Frequency.FromHertz(Math.Sqrt(Math.Log(2)) / (2 * Math.PI * seconds / 2.5631031310892007)));

    [Theory, HandbookData("RSS-411", "RSS-412")]
    public void RootSumSquare_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        Duration displayed = Duration.FromSeconds(value.Number("tr_meas")), chain = Duration.FromSeconds(value.Number("tr_sys"));
        DeembeddedRiseTime edge = DeembeddedRiseTime.ByRootSumSquare(
            displayed, id == "RSS-412" ? displayed * value.Number("u_rel_meas") : 0.ns(), chain, id == "RSS-412" ? chain * value.Number("u_rel_sys") : 0.ns());
        value.Confirm((id == "RSS-411" ? edge.RiseTime : edge.Uncertainty)!.Value.Seconds);
    }

    [Fact]
    public void Text_StatesAStandardUncertainty_InFewDigits()
    {
        // sqrt(3.5^2 - 2.1^2) = 2.8; u = sqrt((3.5 * 0.05)^2 + (2.1 * 0.05)^2) / 2.8.
        var edge = DeembeddedRiseTime.ByRootSumSquare(3.5.ns(), 0.05.ns(), 2.1.ns(), 0.05.ns());

        Assert.Equal("2.8 ns (u = 73 ps)", edge.ToString());
    }

    [Theory]
    [InlineData(EdgeShape.Gaussian)]
    [InlineData(EdgeShape.Exponential)]
    [InlineData(EdgeShape.Linear)]
    public void Edge_ComesBackFromWhatItDisplays_BehindAnyChain(EdgeShape shape)
    {
        foreach (Response chain in new[] { Response.SinglePole(200.MHz()), Response.Gaussian(200.MHz()), Response.Butterworth(4, 200.MHz()), Response.Gaussian(200.MHz()).Then(Response.SinglePole(500.MHz())) })
        {
            foreach (double edge in new[] { 1.5e-9, 2.8e-9, 10e-9 })
            {
                Duration shown = chain.RiseTimeOf(new Edge(Duration.FromSeconds(edge), shape)).Value;
                DeembeddedRiseTime found = DeembeddedRiseTime.ByResponse(shown, 0.ns(), chain, Ratio.FromPercent(0), shape);
                Assert.Equal(edge, found.RiseTime!.Value.Seconds, 1e-6 * edge);
            }
        }
    }

    [Fact]
    public void GaussianEdgeAndChain_MakeTheRuleExact()
    {
        DeembeddedRiseTime byResponse = DeembeddedRiseTime.ByResponse(5.ns(), 0.1.ns(), GaussianOfRise(3e-9), Ratio.FromPercent(5), EdgeShape.Gaussian);
        Assert.Equal(4, byResponse.RiseTime!.Value.Nanoseconds, 1e-6);
        // GUM on the rule: sqrt((5 * 0.1)^2 + (3 * 0.15)^2) / 4.
        Assert.Equal(Math.Sqrt(0.25 + 0.2025) / 4, byResponse.Uncertainty!.Value.Nanoseconds, 1e-4);
        Assert.Equal(0, Assert.Single(byResponse.Explained!.Rules).Difference.Percent, 1e-4);
    }

    [Fact]
    public void EdgeThatShowsTheChainOnly_HasAnUpperBound_AndSaysSo()
    {
        DeembeddedRiseTime edge = DeembeddedRiseTime.ByRootSumSquare(1.75.ns(), 0.05.ns(), 1.75.ns(), 0.05.ns());
        Assert.Null(edge.RiseTime);
        // M = 1.86284 ns solves M - 1.6449 sqrt(0.05^2 + (1.75 * 0.05 / M)^2) = 1.75 (by hand, three rounds of insertion); sqrt(1.86284^2 - 1.75^2) = 0.6385.
        Assert.Equal(0.6385, edge.UpperBound!.Value.Nanoseconds, 1e-4);
        Assert.Equal("at most 638.5 ps (95 %, one-sided)", edge.ToString());
        Assert.Equal("edge-not-resolved", Assert.Single(edge.Findings).Code);
        Assert.Null(edge.Explained);
    }

    /// <summary>What 95 % means: of measurements of one edge whose errors are drawn, so many bounds lie above it. Near the chain's own rise time, where display and chain both count.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(1)]
    [InlineData(3)]
    public void UpperBound_HoldsInNinetyFiveOfAHundredMeasurements(double edge)
    {
        const double Chain = 1.75, Deviation = 0.05;
        const int Count = 20_000;
        var random = new Random(20);
        int kept = 0;
        for (int i = 0; i < Count; i++)
        {
            double displayed = Math.Sqrt(edge * edge + Chain * Chain) + Deviation * Drawn(), chain = Chain + Deviation * Drawn();
            DeembeddedRiseTime found = DeembeddedRiseTime.ByRootSumSquare(displayed.ns(), Deviation.ns(), chain.ns(), Deviation.ns());
            if (found.UpperBound is { } bound && bound.Nanoseconds >= edge) kept++;
        }

        Assert.Equal(DeembeddedRiseTime.UpperBoundProbability.Fraction, kept / (double)Count, 0.01);

        // Box and Muller.
        double Drawn() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }

    [Fact]
    public void UpperBound_PassesTheChainsOwnRiseTimeWithoutAStep_AndIsStatedOnBothSides()
    {
        Duration? before = null;
        for (int picoseconds = 1700; picoseconds <= 1900; picoseconds += 2)
        {
            DeembeddedRiseTime edge = DeembeddedRiseTime.ByRootSumSquare(picoseconds.ps(), 50.ps(), 1750.ps(), 50.ps());
            Assert.NotNull(edge.UpperBound);
            if (before is { } earlier) Assert.InRange((edge.UpperBound!.Value / earlier).Fraction, 1.0, 1.03);
            if (edge.RiseTime is { } value) Assert.True(edge.UpperBound > value);
            bool isVague = edge.RiseTime is null || edge.Uncertainty!.Value > edge.RiseTime.Value * 0.3;
            Assert.Equal(isVague, edge.ToString().StartsWith("at most ", StringComparison.Ordinal));
            before = edge.UpperBound;
        }
    }

    [Theory]
    [InlineData(2.9)]
    [InlineData(3.02)]
    [InlineData(5)]
    public void UpperBound_ByResponse_IsThatOfTheRuleWhereTheRuleIsExact(double displayed)
    {
        DeembeddedRiseTime byResponse = DeembeddedRiseTime.ByResponse(displayed.ns(), 0.1.ns(), GaussianOfRise(3e-9), Ratio.FromPercent(5), EdgeShape.Gaussian);
        DeembeddedRiseTime byRule = DeembeddedRiseTime.ByRootSumSquare(displayed.ns(), 0.1.ns(), 3.ns(), 0.15.ns());
        Assert.Equal(byRule.UpperBound!.Value.Nanoseconds, byResponse.UpperBound!.Value.Nanoseconds, 1e-3);
    }

    [Fact]
    public void DisplayFasterThanTheChainByFar_IsNoEdgeAtAll()
    {
        DeembeddedRiseTime edge = DeembeddedRiseTime.ByRootSumSquare(1.ns(), 0.05.ns(), 1.75.ns(), 0.05.ns());
        Assert.Null(edge.UpperBound);
        Assert.Equal("not resolved", edge.ToString());
        Assert.Contains("check the rise time of the chain", Assert.Single(edge.Findings).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void RatioBelowOnePointTwo_IsWarnedOf()
    {
        Assert.Contains(DeembeddedRiseTime.ByRootSumSquare(1.9.ns(), 0.05.ns(), 1.75.ns(), 0.05.ns()).Findings, f => f.Code == "edge-mostly-chain");
        Assert.Empty(DeembeddedRiseTime.ByRootSumSquare(4.ns(), 0.05.ns(), 1.75.ns(), 0.05.ns()).Findings);
    }

    [Property(MaxTest = 20)]
    public void TimesTimesK_GiveTheEdgeTimesK(int seed)
    {
        double k = Math.Pow(10, (uint)seed % 13 - 6.0);
        DeembeddedRiseTime one = DeembeddedRiseTime.ByResponse(Duration.FromSeconds(3), 0.ns(), Rc(1), Ratio.FromPercent(0), EdgeShape.Linear);
        DeembeddedRiseTime scaled = DeembeddedRiseTime.ByResponse(Duration.FromSeconds(3 * k), 0.ns(), Rc(k), Ratio.FromPercent(0), EdgeShape.Linear);
        Assert.Equal(k * one.RiseTime!.Value.Seconds, scaled.RiseTime!.Value.Seconds, 1e-8 * k);
    }

    [Fact]
    public void Misuse_IsRefusedByName()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DeembeddedRiseTime.ByRootSumSquare(0.ns(), 0.ns(), 1.ns(), 0.ns()));
        Assert.Throws<ArgumentNullException>(() => DeembeddedRiseTime.ByResponse(1.ns(), 0.ns(), null!, Ratio.FromPercent(0), EdgeShape.Linear));
        Assert.Throws<ArgumentOutOfRangeException>(() => DeembeddedRiseTime.ByResponse(1.ns(), 0.ns(), Rc(1e-9), Ratio.FromPercent(-1), EdgeShape.Linear));
    }
}
