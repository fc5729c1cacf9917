using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>One instrument with one probe, every demand judged, against figures by hand.</summary>
public sealed class JudgedCandidateTests
{
    private static readonly Signal Clock = Signal.Square(10.MHz(), 4.Vpp(), 10.ns(), EdgeShape.Gaussian);

    private static readonly CatalogueProbe Stick = new CatalogueProbe("stick", 10, Stated.Claimed(100.MHz()), ResponseShape.Gaussian, 10.MOhm(), 8.pF(), 1.MOhm()).WithMaximumVoltage(400.V()).WithPrice(2);

    private static readonly CatalogueInstrument Bare = new("box", Stated.Typical(100.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(2, 1.GSaPerS(), 1.Mpts())],
        [new InputRange(0.1.Vpp()), new InputRange(1.Vpp())], [new InputTermination(1.MOhm(), 14.pF(), 50.V())]);

    private static readonly CatalogueInstrument Box = new CatalogueInstrument("box", Stated.Typical(100.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(2, 1.GSaPerS(), 1.Mpts())],
        [new InputRange(0.1.Vpp(), Stated.Typical(1.mVrms())), new InputRange(1.Vpp(), Stated.Typical(5.mVrms()))], [new InputTermination(1.MOhm(), 14.pF(), 50.V())])
        .WithJitter(Stated.Typical(20.ps())).WithTimebaseAccuracy(Stated.Guaranteed(Ratio.FromFraction(1e-5))).WithPrice(10);

    private static Requirement Wanted(Duration window) => new Requirement(Clock).WithAmplitudeTolerance(10.Percent()).WithEdgeTolerance(15.Percent()).WithHarmonics(3).WithNarrowestPulse(6.ns())
        .WithSmallestDetail(200.mV()).WithTimingTolerance(2.ns()).WithWindow(window).WithChannels(2);

    private static Candidate Judged(Requirement wanted, CatalogueInstrument instrument, CatalogueProbe? probe = null) => Shortlist.Of(wanted, new Catalogue([instrument], [probe ?? Stick])).Candidates.Single(one => one.BandwidthLimit is null);

    // By hand: the input stands 10 x 50 V, the probe 400 V, for a peak of 2 V. 1 V behind 10:1 for 4 V. Third harmonic through two Gaussians of 100 MHz: 1 - 2^-(0.3²) = 6.048 % (handbook 2.2).
    // Edge √(10² + 2 x 3.396²) = 11.094 ns, 10.94 % (2.5). Pulse of 6 ns: 1 - erf(6/(2 √2 x 1.8739)) = 10.94 %. Rate: two samples on 6 ns, 333.3 MSa/s.
    // Code 10 V/256 = 39.06 mV, /√12 = 11.28 mV, with 10 x 5 mV in all 51.26 mV; detail twice that (6.10).
    // Timing: 51.26 mV x 11.094 ns/3.2 V = 177.7 ps and 20 ps for each of two edges, 10 ppm x 100 µs/√3 = 577.4 ps: 630.3 ps (5.12).
    [Theory]
    [InlineData("fit", "1 MΩ", "1 MΩ", 0)]
    [InlineData("rating", "2 V", "400 V", 199)]
    [InlineData("channels", "2", "2", 0)]
    [InlineData("range", "4 Vpp", "10 Vpp", 1.5)]
    [InlineData("amplitude", "at most 10 %", "6.048 %", 0.653514)]
    [InlineData("edge", "at most 15 %", "10.94 %", 0.371564)]
    [InlineData("pulse", "at most 10 %", "10.94 %", -0.085849)]
    [InlineData("sample-rate", "333.3 MSa/s", "1 GSa/s", 2)]
    [InlineData("folded-content", "at most 10 %", "0 %", 1e6)]
    [InlineData("detail", "at most 200 mV", "102.5 mV", 0.950999)]
    [InlineData("timing", "within 2 ns", "630.3 ps", 2.173077)]
    public void EachDemand_IsJudgedAsByHand(string code, string needed, string offered, double margin)
    {
        Criterion criterion = Judged(Wanted(100.us()), Box).Criteria.Single(one => one.Code == code);
        Assert.Equal((needed, offered), (criterion.Needed, criterion.Offered));
        // The edge is counted to a hundred-thousandth.
        Assert.Equal(margin, criterion.Margin!.Value.Fraction, 3e-4);
    }

    [Fact]
    public void Demands_StandInOneOrder_AndTheTightestIsNamed()
    {
        Candidate candidate = Judged(Wanted(100.us()), Box);
        Assert.Equal(["fit", "rating", "channels", "range", "amplitude", "edge", "pulse", "sample-rate", "folded-content", "detail", "timing"], candidate.Criteria.Select(one => one.Code));
        Assert.Equal("pulse", candidate.Limiting!.Code);
        Assert.Equal(Suitability.Unsuitable, candidate.Suitability);
        Assert.Equal("pulse", Assert.Single(candidate.SmallestChanges).Demand.Code);
        // 10 units and two channels with a probe of 2 each.
        Assert.Equal(14, candidate.PriceInUnits);
        Assert.Equal(Assurance.Claimed, candidate.Assurance);
        Assert.Empty(candidate.NotStated);
    }

    // 1 Mpts over 10 ms leave 100 MSa/s of the 333.3 that are needed; lines from 50 MHz on hold 8.32 % of the rms, summed apart from this library with 2^-(2 (n/10)²/2) and exp(-(2π f s)²/2), s = 10 ns/2.5631.
    [Fact]
    public void ALongWindow_CostsTheRate_AndLetsContentFold()
    {
        Candidate candidate = Judged(Wanted(10.ms()), Box);
        Criterion rate = candidate.Criteria.Single(one => one.Code == "sample-rate"), folded = candidate.Criteria.Single(one => one.Code == "folded-content");
        Assert.Equal(("100 MSa/s", -0.7), (rate.Offered, Math.Round(rate.Margin!.Value.Fraction, 9)));
        Assert.Equal(0.083207, folded.OfferedQuantity!.Value.SiValue, 1e-5);
    }

    // Gaussian pulses: a pulse of 6 ns at 90 % asks for a chain that is slower than this by the quantile: 6/(2 x 1.6449) = 1.8238 ns of deviation for 1.8739 ns, of which the input has its half.
    [Fact]
    public void TheChange_ThatAPulseNeeds_IsTheLeastThatCures()
    {
        string change = Assert.Single(Judged(Wanted(100.us()), Box).SmallestChanges).Change;
        double total = 1.8238 * 2.5631, input = Math.Sqrt((total * total) - (3.39624 * 3.39624));
        Assert.StartsWith("an input of ", change, StringComparison.Ordinal);
        Assert.EndsWith(" with this probe", change, StringComparison.Ordinal);
        double hertz = Frequency.Parse(change["an input of ".Length..^" with this probe".Length]).Hertz;
        Assert.InRange(hertz, 0.999 * 339.624e6 / input, 1.006 * 339.624e6 / input);
    }

    [Fact]
    public void WhatIsNotStated_IsListed_AndLeavesTheCandidateUnproven()
    {
        Requirement easy = Wanted(100.us()).WithNarrowestPulse(20.ns());
        Assert.Equal(["noise of the range", "jitter of the clock", "accuracy of the time base"], Judged(easy, Bare).NotStated);
        Assert.Equal(Suitability.Unproven, Judged(easy, Bare).Suitability);
        Assert.Equal(Suitability.Suitable, Judged(easy, Box).Suitability);
        Requirement untimed = new Requirement(Clock).WithEdgeTolerance(15.Percent()).WithTimingTolerance(2.ns());
        Assert.Equal(["noise of the range", "jitter of the clock"], Judged(untimed, Bare).NotStated);
        // 11.28 mV x 11.094 ns/3.2 V for two edges, of which jitter and time base are not known.
        Assert.Equal(Math.Sqrt(2) * 39.0625e-3 / Math.Sqrt(12) * 11.0936e-9 / 3.2, Judged(untimed, Bare).Criteria.Single(one => one.Code == "timing").OfferedQuantity!.Value.SiValue, 1e-14);
        Assert.Null(Judged(untimed, Bare).PriceInUnits);
    }

    [Fact]
    public void WithoutAnyRating_TheRatedVoltageIsNotStated()
    {
        var unrated = new CatalogueProbe("stick", 10, Stated.Claimed(100.MHz()), ResponseShape.Gaussian, 10.MOhm(), 8.pF(), 1.MOhm());
        var open = new CatalogueInstrument("box", Stated.Typical(100.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(1, 1.GSaPerS(), 1.Mpts())], [new InputRange(1.Vpp())], [new InputTermination(1.MOhm(), 14.pF())]);
        Requirement wanted = new Requirement(Clock).WithEdgeTolerance(15.Percent());
        Assert.Equal(["rated voltage"], Judged(wanted, open, unrated).NotStated);
        Assert.DoesNotContain(Judged(wanted, open, unrated).Criteria, one => one.Code == "rating");
        // The input's 50 V behind 10:1, or the probe's own.
        Assert.Equal("500 V", Judged(wanted, Bare, unrated).Criteria.Single(one => one.Code == "rating").Offered);
        Assert.Equal("400 V", Judged(wanted, open).Criteria.Single(one => one.Code == "rating").Offered);
    }

    // 20 dB less of one edge's noise would be seen by a probe's own: 51.26 mV and 50 mV make 71.61 mV.
    [Fact]
    public void TheNoiseOfTheProbe_AddsAsItsSquare() => Assert.Equal(2 * Math.Sqrt((51.2558 * 51.2558) + 2500) * 1e-3,
        Judged(Wanted(100.us()), Box, Stick.WithNoise(Stated.Typical(50.mVrms()))).Criteria.Single(one => one.Code == "detail").OfferedQuantity!.Value.SiValue, 1e-6);

    // Effective bits of 5 at 10 MHz in 10 V: 10/(32 √12) = 90.21 mV, more than 51.26 mV of noise (handbook 6.3).
    [Fact]
    public void StatedEffectiveBits_CountForTheDetailWhereTheyAreWorse()
    {
        double Detail(double bits) => Judged(Wanted(100.us()), Box.WithEffectiveBits([new EffectiveBitsPoint(10.MHz(), bits.bit())])).Criteria.Single(one => one.Code == "detail").OfferedQuantity!.Value.SiValue;
        Assert.Equal(2 * 90.211e-3, Detail(5), 1e-5);
        Assert.Equal(0.1025116, Detail(7), 1e-6);
    }

    // A limit of 40 MHz leaves white noise π/2 x 40/100 of its power (one pole, handbook 6.4); of 80 MHz all of it, for noise does not grow.
    [Theory]
    [InlineData(40, 0.792665)]
    [InlineData(80, 1)]
    public void ABandwidthLimit_TakesNoiseButAddsNone(int megahertz, double factor) => Assert.Equal(factor, CatalogueChain.NoiseFactor(Box, megahertz.MHz()), 1e-6);

    [Fact]
    public void AnInstrumentThatDrawsStraightLinesOnly_IsSetToThem()
    {
        SampledSignal Set(params Reconstruction[] ways) => Judged(Wanted(100.us()), ways.Length > 0 ? Box.WithInterpolations(ways) : Box).Setup();
        Assert.Same(Reconstruction.Linear, Set(Reconstruction.Linear).Interpolation);
        Assert.Same(Reconstruction.Sinc, Set(Reconstruction.Linear, Reconstruction.Sinc).Interpolation);
        Assert.Same(Reconstruction.Sinc, Set().Interpolation);
        SampledSignal set = Set();
        Assert.Equal((10.0, 20e-12, 1e-5, 6e-9, 2), (set.FullScale!.Value.Volts, set.Jitter!.Value.Seconds, set.TimebaseAccuracy!.Value.Fraction, set.WatchedPulse!.Value.Seconds, set.ChannelsInUse));
    }
}
