using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What is needed beside what a set-up has: each row by hand, and which demand decides.</summary>
public sealed class CheckedNeedsTests
{
    private static readonly Signal Edges = Signal.Square(100.kHz(), 1.Vpp(), 100.ns());

    // 1.28 V/256 = 5 mV, /√12 = 1.443 mV; with 5 mV in all 5.204 mV, over 0.8 V/100 ns 650.5 ps, with 30 ps of jitter 651.2 ps.
    private static Outlook Here(bool timebase = true) => Edges.Through(Response.Cascade()).SampledBy(new Digitizer(100.MSaPerS(), 1.Mpts(), 8.bit())).WithFullScale(1.28.Vpp())
        .WithNoise(5.mVrms()).WithJitter(30.ps()).WithAccuracy(timebase ? Ratio.FromFraction(1e-5) : (Ratio?)null, null).Over(100.us());

    private static NeedCheck Of(Requirement wanted, string need, Outlook? outlook = null) => wanted.Specify().Check(outlook ?? Here()).Single(check => check.Need == need);

    // Two edges and 10 ppm x 100 µs/√3 = 577.4 ps: √(2 x 651.2² + 577.4²) = 1087 ps (handbook 5.12); without a window √2 x 651.21 = 921 ps.
    [Fact]
    public void TheTimingOfTwoEdges_IsCountedWithTheTimeBaseOverTheWindow()
    {
        NeedCheck over = Of(new Requirement(Edges).WithTimingTolerance(1.2.ns()).WithWindow(100.us()), "timing of two edges"), alone = Of(new Requirement(Edges).WithTimingTolerance(1.2.ns()), "timing of two edges");
        Assert.Equal(("at most 1.2 ns", "1.087 ns", true), (over.Needed, over.Present, over.IsMet));
        Assert.Equal(0.104, over.Margin!.Value.Fraction, 1e-3);
        Assert.Equal("921 ps", alone.Present);
        Assert.False(Of(new Requirement(Edges).WithTimingTolerance(1.ns()).WithWindow(100.us()), "timing of two edges").IsMet);
        Assert.True(over.IsDemand);
    }

    [Fact]
    public void WithoutTheTimeBase_TheTimingOverAWindowIsNotJudged()
    {
        Assert.DoesNotContain(new Requirement(Edges).WithTimingTolerance(1.2.ns()).WithWindow(100.us()).Specify().Check(Here(false)), check => check.Need is "timing of two edges" or "time base");
        Assert.Contains(new Requirement(Edges).WithTimingTolerance(1.2.ns()).Specify().Check(Here(false)), check => check.Need == "timing of two edges");
    }

    // 1.2 ns: half of it, 0.6 ns x 8 MV/s = 4.8 mV, may be noise, and there are 5 mV; the timing itself is met, so that decides. √3 x 1.2 ns/100 µs = 20.78 ppm; 600 ps of jitter.
    [Fact]
    public void ANeedThatIsMissed_IsDecidedByTheDemandItServes()
    {
        Requirement wanted = new Requirement(Edges).WithTimingTolerance(1.2.ns()).WithWindow(100.us());
        Assert.Equal("noise: needed at most 4.8 mVrms, here 5 mVrms: not met, margin -4 %; timing of two edges decides: met", Of(wanted, "noise").ToString());
        Assert.Equal("clock jitter: needed at most 600 ps, here 30 ps: met, margin 20 times", Of(wanted, "clock jitter").ToString());
        Assert.Equal("time base: needed within 20.78 ppm, here 10 ppm: met, margin +108 %", Of(wanted, "time base").ToString());
        Assert.True(wanted.Specify().IsMetBy(Here()));
        Assert.False(wanted.WithTimingTolerance(1.ns()).Specify().IsMetBy(Here()));
    }

    // Half of 8 mV may be noise; the detail itself is two standard deviations, 10.41 mV: both fail.
    [Fact]
    public void TwoDemandsOnTheNoise_BothDecide()
    {
        Requirement wanted = new Requirement(Edges).WithTimingTolerance(1.2.ns()).WithSmallestDetail(8.mV());
        NeedCheck noise = Of(wanted, "noise"), detail = Of(wanted, "smallest detail");
        Assert.Equal("smallest detail and timing of two edges", noise.DecidedBy);
        Assert.Equal(("at most 4 mVrms", false), (noise.Needed, noise.IsMet));
        Assert.Equal(("at most 8 mV", "10.41 mV", false), (detail.Needed, detail.Present, detail.IsMet));
        Assert.Equal("smallest detail", Of(new Requirement(Edges).WithSmallestDetail(8.mV()), "noise").DecidedBy);
        Assert.Equal("timing of two edges", Of(new Requirement(Edges).WithTimingTolerance(1.2.ns()), "noise").DecidedBy);
        Assert.False(wanted.Specify().IsMetBy(Here()));
    }

    // What is a part of the timing and is met stays met where the timing fails by another part.
    [Fact]
    public void APartThatIsMet_StaysMetWhereTheWholeFails()
    {
        Requirement wanted = new Requirement(Edges).WithTimingTolerance(0.5.ns()).WithWindow(100.us());
        Assert.DoesNotContain("decides", Of(wanted, "clock jitter").ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("decides", Of(wanted, "noise").ToString(), StringComparison.Ordinal);
        Assert.False(Of(wanted, "noise").IsMet);
    }

    // ld(1 V/100 mV) = 3.322 bit; 1.28 V/(5.204 mV √12) = 71.0, 6.15 bit, of which ld 1.28 = 0.356 is lost by the range: 5.794 bit.
    [Fact]
    public void TheBits_AreThoseThatTheRangeLeaves()
    {
        NeedCheck bits = Of(new Requirement(Edges).WithSmallestDetail(100.mV()), "effective bits");
        Assert.Equal("effective bits: needed at least 3.322 bit, here 5.794 bit of 6.15 bit, the range is filled to 78.13 %: met, margin +74.4 %", bits.ToString());
        Outlook full = Edges.Through(Response.Cascade()).SampledBy(new Digitizer(100.MSaPerS(), 1.Mpts(), 8.bit())).WithFullScale(1.Vpp()).Over(100.us());
        Assert.Equal("8 bit", Of(new Requirement(Edges).WithSmallestDetail(100.mV()), "effective bits", full).Present);
    }

    // Of several signals an outlook shows one: what it fails is not decided for the others.
    [Fact]
    public void OfSeveralSignals_NoDemandDecides()
    {
        NeedCheck noise = Of(new Requirement(Edges, Signal.Square(50.kHz(), 1.Vpp(), 100.ns())).WithTimingTolerance(1.2.ns()), "noise");
        Assert.Null(noise.DecidedBy);
        Assert.False(noise.IsMet);
    }

    // A margin of -4 % keeps its sign, of 4 % it gets one, of ten times it needs none.
    [Theory]
    [InlineData(-0.04, "not met, margin -4 %")]
    [InlineData(0.04, "met, margin +4 %")]
    [InlineData(0, "met, margin 0 %")]
    [InlineData(9, "met, margin 10 times")]
    [InlineData(8.9, "met, margin +890 %")]
    [InlineData(double.PositiveInfinity, "met")]
    [InlineData(-5e-10, "met, margin -0.05 ppb")]
    public void AMargin_IsToldWithItsSign(double margin, string expected)
    {
        string verdict = new NeedCheck("need", "at most 1", "2", margin).Verdict;
        Assert.StartsWith("here 2: " + expected.Split(',')[0], verdict, StringComparison.Ordinal);
        if (Math.Abs(margin) is 0 or > 1e-6)
            Assert.Equal("here 2: " + expected, verdict);
    }

    [Fact]
    public void TheTextOfASpecification_NamesItsChannelsAndRows()
    {
        Requirement wanted = new Requirement(Edges).WithTimingTolerance(1.2.ns()).WithWindow(100.us()).WithChannels(3).WithEdgeTolerance(10.Percent());
        string[] lines = wanted.Specify().ToString().Split('\n');
        Assert.Equal("Needed from probe and input together (Gaussian)", lines[0]);
        Assert.Equal(["bandwidth", "rise time", "sample rate", "record length", "noise", "clock jitter", "time base", "channels at once"],
            lines.Where(line => line.Length > 24 && line[2] != ' ' && line.StartsWith("  ", StringComparison.Ordinal)).Select(line => line.Substring(2, 22).Trim()));
        Assert.Contains("  channels at once      3", lines);
        // Three intervals on 100 ns, over 100 µs.
        Assert.Contains("  sample rate           at least 30 MSa/s", lines);
        Assert.Contains("  record length         at least 3 kpts", lines);
        Assert.Contains("  clock jitter          at most 600 ps", lines);
        Assert.Contains("  time base             within 20.78 ppm", lines);
    }

    // √(1.1² - 1) x 100 ns = 45.83 ns; 0.339624/45.83 ns = 7.411 MHz by the rule (handbook 12.1), 3.5 MHz by the other.
    [Fact]
    public void TheRulesBesideABandwidth_AreThoseOfTheHandbook()
    {
        Explained<Frequency> bandwidth = new Requirement(Edges).WithEdgeTolerance(10.Percent()).Specify().Bandwidth!;
        Assert.Equal(7.411e6, bandwidth.Rules.Single(rule => rule.Rule == "root-sum-square of rise times").Value.Hertz, 1e3);
        Assert.Equal(3.5e6, bandwidth.Rules.Single(rule => rule.Rule == "0.35 / rise time").Value.Hertz, 1);
    }

    // The larger peak decides about the voltage to earth: 1 V about 30 V beside 2 V about nothing, with 100 V in common.
    [Fact]
    public void TheVoltageToEarth_IsThatOfTheLargestPeak() => Assert.Equal(131,
        new Requirement(Signal.Sine(1.kHz(), 1.Vpk()).WithOffset(30.V()), Signal.Sine(1.kHz(), 2.Vpk())).WithCommonMode(-100.V()).WithAmplitudeTolerance(1.Percent()).Specify().VoltageToEarth!.Value.Volts, 1e-9);
}
