using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Tests.Conventions;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Each needed value by hand, from the formula that the specification names beside it.</summary>
public sealed class SpecifiedValuesTests
{
    private static readonly Signal Clock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns()), Sine = Signal.Sine(20.MHz(), 1.Vpk());

    /// <summary>Of one pole: |H| = 1/√(1 + (f/B)²), so that 3 % short is f/B = √(1/0.97² - 1).</summary>
    private static readonly double ThreePercent = Math.Sqrt(1 / (0.97 * 0.97) - 1);

    private static double Rule<T>(Explained<T> needed, string rule)
        where T : struct, IQuantity => needed.Rules.Single(one => one.Rule == rule).Difference.Fraction;

    [Fact]
    public void BandwidthOfASine_IsThatOfItsTolerance_WithTheRulesBesideIt()
    {
        Specification needed = new Requirement(Sine).WithAmplitudeTolerance(3.Percent()).WithWindow(10.us()).Specify(ResponseShape.SinglePole);
        double hertz = 20e6 / ThreePercent;
        Assert.Equal(hertz, needed.Bandwidth!.Value.Hertz, 1e-6 * hertz);
        Assert.Equal(60e6 / hertz - 1, Rule(needed.Bandwidth, "3 x frequency"), 1e-6);
        // ln 9/(2π B) of one pole; 0.35/B is 0.09 % more.
        Assert.Equal(Math.Log(9) / (2 * Math.PI * hertz), needed.RiseTime!.Value.Seconds, 1e-14);
        Assert.Equal(0.35 * 2 * Math.PI / Math.Log(9) - 1, Rule(needed.RiseTime, "0.35 / bandwidth"), 1e-6);
        // 2.5 samples a period; 500 of them in 10 µs, and not 501.
        Assert.Equal(50e6, needed.SampleRate!.Value.SamplesPerSecond, 1.0);
        Assert.Equal(5 * hertz / 50e6 - 1, Rule(needed.SampleRate, "5 x bandwidth"), 1e-6);
        Assert.Equal(2.5 * hertz / 50e6 - 1, Rule(needed.SampleRate, "2.5 x bandwidth (steep chains, sinc)"), 1e-6);
        Assert.Equal(500, needed.RecordLength!.Value.Points);
        Assert.Null(needed.EffectiveBits);
        Assert.Null(needed.Noise);
        Assert.Null(needed.Jitter);
        Assert.Null(needed.TimebaseAccuracy);
        Assert.Null(needed.ProbeResistance);
        Assert.Null(needed.ProbeCapacitance);
        Assert.Empty(needed.Findings);
    }

    /// <summary>A square wave's harmonics hold 8/(π² n²) of its power: 81 % in the first, 90.06 % up to the third, 93.3, 94.96, 95.96 % up to the ninth (handbook 4.3). Kept at half power.</summary>
    [Theory]
    [InlineData(80, null, 1)]
    [InlineData(90, null, 3)]
    [InlineData(95, null, 9)]
    [InlineData(95, 5, 9)]
    [InlineData(90, 7, 7)]
    public void PowerToBeKept_IsThatOfTheHarmonicsUpToIt(int percent, int? harmonics, int highest)
    {
        Requirement requirement = new Requirement(Signal.Square(1.MHz(), 1.Vpp())).WithPowerShare(percent.Percent());
        if (harmonics is { } number)
            requirement = requirement.WithHarmonics(number);
        Assert.Equal(highest * 1e6, requirement.Specify().Bandwidth!.Value.Hertz, 10.0);
        Assert.Equal(1, Specifier.HighestHarmonic(requirement, Sine));
    }

    /// <summary>A Gaussian chain shows a pulse of width w at 2 Φ(w/2σ) - 1 of its height, σ = √ln 2/(2π B): 90 % at w/2σ = 1.6449; one pole at 1 - exp(-2π B w).</summary>
    [Fact]
    public void PulseToBeCaught_ReachesItsHeight()
    {
        Requirement requirement = new Requirement(Sine).WithNarrowestPulse(5.ns());
        Specification gaussian = requirement.Specify(), pole = requirement.Specify(ResponseShape.SinglePole), closer = requirement.WithAmplitudeTolerance(1.Percent()).Specify(ResponseShape.SinglePole);
        double hertz = 2 * 1.6448536269514722 * Math.Sqrt(Math.Log(2)) / (2 * Math.PI) / 5e-9;
        Assert.Equal(hertz, gaussian.Bandwidth!.Value.Hertz, 1e-5 * hertz);
        Assert.Equal(0.35 / 5e-9 / hertz - 1, Rule(gaussian.Bandwidth, "0.35 / width"), 1e-5);
        Assert.Equal(Math.Log(10) / (2 * Math.PI * 5e-9), pole.Bandwidth!.Value.Hertz, 1e3);
        Assert.Equal(Math.Log(100) / (2 * Math.PI * 5e-9), closer.Bandwidth!.Value.Hertz, 1e3);
        // Two samples on it.
        Assert.Equal(400e6, gaussian.SampleRate!.Value.SamplesPerSecond, 1.0);
        Assert.Equal(-0.5, Rule(gaussian.SampleRate, "one sample per width"), 1e-12);
    }

    /// <summary>100 ps between two edges, half of the variance each: 50 ps of jitter, 50 ps of the slew in noise, √3 · 100 ps over the window in the time base (handbook 5.12, 6.12).</summary>
    [Fact]
    public void TimingTolerance_IsSharedBetweenClockNoiseAndTimeBase()
    {
        Specification needed = new Requirement(Clock).WithTimingTolerance(100.ps()).WithWindow(10.us()).Specify();
        Assert.Equal(50e-12, needed.Jitter!.Value.Seconds, 1e-18);
        Assert.Equal(Math.Sqrt(3) * 1e-5, needed.TimebaseAccuracy!.Value.Fraction, 1e-12);
        Assert.Equal(50e-12 * 0.8 * 3.3 / 2.8e-9, needed.Noise!.Value.Volts, 1e-9);
        Assert.Null(new Requirement(Clock).WithTimingTolerance(100.ps()).Specify().TimebaseAccuracy);
    }

    /// <summary>Half of the smallest detail is the noise (handbook 6.10), the logarithm of the swing over it the bits; the tighter demand decides about the noise.</summary>
    [Theory]
    [InlineData(20, 0.010)]
    [InlineData(200, 0.8 * 3.3 * 50e-12 / 2.8e-9)]
    public void SmallestDetail_AsksForBitsAndForLittleNoise(int millivolts, double noise)
    {
        Requirement one = new Requirement(Clock).WithSmallestDetail(millivolts.mV()).WithTimingTolerance(100.ps()), two = new Requirement(Clock, Sine).WithSmallestDetail(millivolts.mV()).WithTimingTolerance(100.ps());
        Assert.Equal(noise, one.Specify().Noise!.Value.Volts, 1e-9);
        // The larger swing asks for more bits, the slower edge for less noise: 80 % of 2 V in 0.2952 periods of 20 MHz.
        Assert.Equal(Math.Log(3300.0 / millivolts, 2), two.Specify().EffectiveBits!.Value.Bits, 1e-9);
        Assert.Equal(Math.Min(noise, 0.8 * 2 * 50e-12 * 20e6 * Math.PI / Math.Asin(0.8)), two.Specify().Noise!.Value.Volts, 1e-9);
    }

    [Fact]
    public void DetailAsLargeAsTheSignal_NeedsNoBits_AndIsSaidToBe()
    {
        Specification needed = new Requirement(Sine).WithSmallestDetail(2.V()).Specify();
        Assert.Null(needed.EffectiveBits);
        Assert.Equal("detail-exceeds-signal", needed.Findings.Single().Code);
        Assert.NotNull(new Requirement(Sine).WithSmallestDetail(1.9.V()).Specify().EffectiveBits);
    }

    /// <summary>A source of 50 Ω: the tip may be one pole that uses up the tolerance, and a divider that does: 50 Ω · 0.97/0.03.</summary>
    [Fact]
    public void ProbeOnASource_MayUseUpTheToleranceAndNoMore()
    {
        Specification sine = new Requirement(Sine).WithAmplitudeTolerance(3.Percent()).WithSourceResistance(50.Ohm()).Specify();
        Assert.Equal(50 * 0.97 / 0.03, sine.ProbeResistance!.Value.Ohms, 1e-9);
        Assert.Equal(ThreePercent / (2 * Math.PI * 50 * 20e6), sine.ProbeCapacitance!.Value.Farads, 1e-17);
        // The edge of 2.8 ns, 5 % slower: one pole with a rise time of 2.8 ns √(1.05² - 1).
        Specification edge = new Requirement(Clock).WithEdgeTolerance(5.Percent()).WithSourceResistance(50.Ohm()).Specify();
        double rise = 2.8e-9 * Math.Sqrt(1.05 * 1.05 - 1);
        Assert.Equal(rise / Math.Log(9) / 50, edge.ProbeCapacitance!.Value.Farads, 1e-16);
        Assert.Contains("edge", edge.ProbeCapacitance.Method, StringComparison.Ordinal);
        Assert.Null(edge.ProbeResistance);
        // The tighter of the two decides.
        Specification both = new Requirement(Clock).WithEdgeTolerance(5.Percent()).WithAmplitudeTolerance(3.Percent()).WithHarmonics(5).WithSourceResistance(50.Ohm()).Specify();
        Assert.Equal(Math.Min(ThreePercent / (2 * Math.PI * 50 * 120e6), edge.ProbeCapacitance.Value.Farads), both.ProbeCapacitance!.Value.Farads, 1e-17);
        Specification wire = new Requirement(Sine).WithAmplitudeTolerance(3.Percent()).WithSourceResistance(default).Specify();
        Assert.Null(wire.ProbeCapacitance);
        Assert.Null(wire.ProbeResistance);
    }

    /// <summary>Common practice (handbook 5.13): three to five sample intervals on an edge, the more the closer it is looked at.</summary>
    [Theory]
    [InlineData(0.02, 5), InlineData(0.021, 4), InlineData(0.05, 4), InlineData(0.051, 3)]
    public void PointsOnAnEdge_GrowWithTheTolerance(double tolerance, int points)
    {
        Assert.Equal(points, Specifier.PointsPerEdge(tolerance));
        SampleRate rate = new Requirement(Signal.Step(1.Vpp(), 2.ns())).WithEdgeTolerance(Ratio.FromFraction(tolerance)).Specify().SampleRate!.Value;
        Assert.Equal(points / 2e-9, rate.SamplesPerSecond, 1.0);
    }

    [Fact]
    public void WhatFollowsFromNothing_IsSaid()
    {
        Assert.Equal("no-edge", new Requirement(Sine).WithEdgeTolerance(5.Percent()).Specify().Findings.Single().Code);
        Signal bits = Signal.RandomBits(BitRate.FromMegabitsPerSecond(100), 1.Vpp(), 1.ns());
        Assert.Equal("no-line", new Requirement(bits).WithAmplitudeTolerance(5.Percent()).Specify().Findings.Single().Code);
        Assert.Empty(new Requirement(bits).WithAmplitudeTolerance(5.Percent()).WithEdgeTolerance(5.Percent()).Specify().Findings);
        Assert.Empty(new Requirement(bits).WithAmplitudeTolerance(5.Percent()).WithNarrowestPulse(10.ns()).Specify().Findings);
        Specification endless = new Requirement(Sine).WithAmplitudeTolerance(3.Percent()).WithWindow(Duration.FromSeconds(1e15)).Specify();
        Assert.Equal("record-too-long", endless.Findings.Single().Code);
        Assert.Null(endless.RecordLength);
    }

    public static TheoryData<Refusal> Refusals => new(
        new("no signal", () => _ = new Requirement(), "signals", "at least one"),
        new("a null signal", () => _ = new Requirement(Sine, null!), "signals", "at least one"),
        new("edge without tolerance", () => new Requirement(Sine).WithEdgeTolerance(default), "tolerance", "infinite bandwidth"),
        new("no harmonic", () => new Requirement(Sine).WithHarmonics(0), "highest", "was 0"),
        new("10 001 harmonics", () => new Requirement(Sine).WithHarmonics(10_001), "highest", "was 10001"),
        new("all of the power", () => new Requirement(Sine).WithPowerShare(100.Percent()), "share", "below 1"),
        new("none of the power", () => new Requirement(Sine).WithPowerShare(default), "share", "above 0"),
        new("pulse of no width", () => new Requirement(Sine).WithNarrowestPulse(default), "width", "0 s"),
        new("window of no length", () => new Requirement(Sine).WithWindow(default), "window", "0 s"),
        new("no detail", () => new Requirement(Sine).WithSmallestDetail(default), "detail", "0 V"),
        new("no channel", () => new Requirement(Sine).WithChannels(0), "atOnce", "was 0"),
        new("no timing", () => new Requirement(Sine).WithTimingTolerance(default), "tolerance", "0 s"),
        new("no shape", () => new Requirement(Sine).Specify(null!), "shape", "shape"),
        new("amplitude at DC", () => NeededBandwidth.ForAmplitude(default, 3.Percent(), ResponseShape.Gaussian), "frequency", "0 Hz"),
        new("amplitude without tolerance", () => NeededBandwidth.ForAmplitude(1.MHz(), default, ResponseShape.Gaussian), "tolerance", "above 0"),
        new("no amplitude at all", () => NeededBandwidth.ForAmplitude(1.MHz(), 100.Percent(), ResponseShape.Gaussian), "tolerance", "below 1"),
        new("rise in no time", () => NeededBandwidth.ForRiseTime(default, ResponseShape.Gaussian), "riseTime", "0 s"),
        new("edge of no time", () => NeededBandwidth.ForEdge(new Edge(default), 3.Percent(), ResponseShape.Gaussian), "edge", "0 s"),
        new("edge of no tolerance", () => NeededBandwidth.ForEdge(new Edge(1.ns()), default, ResponseShape.Gaussian), "tolerance", "above 0"),
        new("no edge", () => NeededBandwidth.ForEdge(null!, 3.Percent(), ResponseShape.Gaussian), "edge", "edge"),
        new("system in no time", () => NeededBandwidth.SystemRiseTime(default, 3.Percent()), "riseTime", "0 s"),
        new("edge through no system", () => NeededBandwidth.FastestEdge(default, 3.Percent()), "systemRiseTime", "0 s"),
        new("no points on an edge", () => NeededSampling.RateForEdge(1.ns(), 0), "numberOfIntervals", "above 0"),
        new("points on no edge", () => NeededSampling.RateForEdge(default, 3), "riseTime", "0 s"),
        new("negative weight", () => ShortlistWeights.Default.WithPriceFactor(-1), "factor", "was -1"));

    [Theory, MemberData(nameof(Refusals))]
    public void DemandThatCannotBe_IsRefusedByName(Refusal refusal) => refusal.Confirm();

    [Fact]
    public void ExactlyEnough_IsEnough_WhateverTheLastBitsSay()
    {
        Assert.True(new NeedCheck("bandwidth", "", "", 0).IsMet);
        Assert.True(new NeedCheck("bandwidth", "", "", -1e-10).IsMet);
        Assert.False(new NeedCheck("bandwidth", "", "", -1e-8).IsMet);
        Assert.Equal(0.25, new NeedCheck("bandwidth", "", "", 0.25).Margin!.Value.Fraction);
        Assert.Null(new NeedCheck("error", "", "", double.PositiveInfinity).Margin);
        Assert.Equal("bandwidth: needed 1, here 2: met, margin +100 %", new NeedCheck("bandwidth", "1", "2", 1).ToString());
    }

    /// <summary>By hand: weights 4, 2, 1; a quarter of the dearest price is 0.75 cheap, a margin of 1 is half ample, a guarantee counts 1, a typical value 0.5.</summary>
    [Fact]
    public void Score_IsTheWeightedMean()
    {
        ShortlistWeights weights = ShortlistWeights.Default;
        Assert.Equal((4 * 0.75 + 2 * 0.5 + 1) / 7, weights.Score(1, 25, 100, Assurance.Guaranteed), 1e-12);
        Assert.Equal((2 * 0.75 + 0.5) / 7, weights.Score(3, null, 100, Assurance.Typical), 1e-12);
        Assert.Equal(4 * 0.75 / 7, weights.Score(-0.5, 25, 100, Assurance.Claimed), 1e-12);
        Assert.Equal(0, weights.Score(0, 0, 0, Assurance.Claimed));
        Assert.Equal(0.75, weights.WithMarginFactor(0).WithAssuranceFactor(0).Score(1, 25, 100, Assurance.Guaranteed), 1e-12);
        Assert.Equal(0, weights.WithPriceFactor(0).WithMarginFactor(0).WithAssuranceFactor(0).Score(1, 25, 100, Assurance.Guaranteed));
        Assert.Equal((4.0, 2.0, 1.0), (weights.PriceFactor, weights.MarginFactor, weights.AssuranceFactor));
    }

    /// <summary>Blocks of a tenth leave no harmonic out and count none twice.</summary>
    [Fact]
    public void BlocksOfHarmonics_FollowEachOther()
    {
        HarmonicBlock[] blocks = HarmonicBlock.From(2001, 2e5).ToArray();
        Assert.Equal(2001, blocks[0].First);
        Assert.InRange(blocks[blocks.Length - 1].Last, 200_000 - 1, 220_000);
        for (int i = 0; i < blocks.Length; i++)
        {
            Assert.True(i == 0 || blocks[i].First == blocks[i - 1].Last + 1);
            int[] representatives = blocks[i].Representatives().ToArray();
            Assert.Equal(representatives.Length, representatives.Distinct().Count());
            Assert.All(representatives, number => Assert.InRange(number, blocks[i].First, blocks[i].Last));
            Assert.Equal(blocks[i].Last - blocks[i].First + 1, blocks[i].Weight * representatives.Length, 1e-6);
            // A square wave has odd harmonics only: half of the representatives, and the sum of 1/n² over them near to that over the block.
            Assert.Equal(representatives.Length, 2 * representatives.Count(number => number % 2 == 0));
            double sum = Enumerable.Range(blocks[i].First, blocks[i].Last - blocks[i].First + 1).Where(number => number % 2 == 1).Sum(number => 1 / ((double)number * number));
            Assert.Equal(1, representatives.Where(number => number % 2 == 1).Sum(number => 1 / ((double)number * number)) * blocks[i].Weight / sum, 0.03);
        }
        Assert.Empty(HarmonicBlock.From(2001, 2000));
    }

    /// <summary>Gaussian edges through Gaussian stages add their rise times as squares, exactly (handbook 2.5).</summary>
    [Theory]
    [InlineData(0.3, 0.4), InlineData(0.8, 0.6), InlineData(1.2, 0.1)]
    public void ScreenedEdge_ThroughTwoGaussianStages_IsTheRootSumOfSquares(double first, double second)
    {
        var spectrum = new EdgeSpectrum(new Edge(1.ns(), EdgeShape.Gaussian));
        Complex[] Gains(double nanoseconds) => spectrum.GainsOf(ResponseShape.Gaussian.At(NeededBandwidth.ForRiseTime(Duration.FromNanoseconds(nanoseconds), ResponseShape.Gaussian)));
        double rise = spectrum.RiseTime(Gains(first), Gains(second), new Complex[EdgeSpectrum.LineCount]);
        Assert.Equal(1e-9 * Math.Sqrt(1 + first * first + second * second), rise, 1e-13);
        // Far too slow a stage cannot be told from the lines of an edge each 16 rise times.
        Assert.True(double.IsNaN(spectrum.RiseTime(Gains(5), Gains(second), new Complex[EdgeSpectrum.LineCount])));
    }

    [Fact]
    public void Criterion_IsSuitableFromExactlyEnoughOn_AndUnprovenWithoutAMargin()
    {
        Suitability Of(double? margin) => new Criterion("edge", "", "", "", margin is { } part ? Ratio.FromFraction(part) : null, null, null).Suitability;
        Assert.Equal([Suitability.Suitable, Suitability.Suitable, Suitability.Unsuitable, Suitability.Unproven], new double?[] { 0.1, 0, -0.1, null }.Select(Of));
    }
}
