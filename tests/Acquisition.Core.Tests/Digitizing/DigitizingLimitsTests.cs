using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Conventions;
using Xunit;

namespace Acquisition.Core.Tests.Digitizing;

/// <summary>Where each calculator of sampling ends: what lies outside its range is refused by name, what lies on its edge is computed.</summary>
public sealed class DigitizingLimitsTests
{
    private static readonly Digitizer Bench = new(1.GSaPerS(), 10.kpts(), 8.bit());
    private static readonly DcAccuracy Accuracy = new(0.5.Percent(), 0.1.Percent(), 1.mV());

    public static TheoryData<Refusal> Refusals => new(
        new("fold at no rate", () => Aliasing.Fold(1.MHz(), default), "rate", "0 Sa/s"),
        new("fold below zero", () => Aliasing.Fold(-(1.MHz()), 1.MSaPerS()), "frequency", "-1 MHz"),
        new("zone beyond counting", () => Aliasing.NyquistZone(1000.GHz(), SampleRate.FromSamplesPerSecond(1)), "frequency", "2^30"),
        new("band upside down", () => Aliasing.BandPassRates(25.MHz(), 20.MHz()), "highest", "20 MHz"),
        new("band without width", () => Aliasing.BandPassRates(20.MHz(), 20.MHz()), "highest", "above the lowest"),
        new("band too narrow to list", () => Aliasing.BandPassRates(1.GHz(), Frequency.FromHertz(1e9 + 9999)), "lowest", "1 GHz"),
        new("correlation below 0", () => Averaging.Noise(1.mVrms(), 4, Ratio.FromFraction(-0.1)), "correlation", "0 to 1"),
        new("correlation above 1", () => Averaging.Noise(1.mVrms(), 4, Ratio.FromFraction(1.1)), "correlation", "0 to 1"),
        new("mean of no records", () => Averaging.NoiseReduction(0), "records", "was 0"),
        new("negative part of full scale", () => new DcAccuracy(default, -(1.Percent()), default), "ofFullScale", "-0.01"),
        new("negative fixed part", () => new DcAccuracy(default, default, -(1.mV())), "fixedPart", "-1 mV"),
        new("certainty asked for", () => DeadTime.TimeFor(100.Percent(), 1.Hz(), 1.kHz(), 1.us()), "confidence", "below 1"),
        new("no confidence asked for", () => DeadTime.TimeFor(default, 1.Hz(), 1.kHz(), 1.us()), "confidence", "above 0"),
        new("overlapping records", () => DeadTime.ChanceOfCapture(1.Hz(), 1.kHz(), 2.ms(), 1.s()), "recordRate", "500 Hz"),
        new("overlapping records, Poisson", () => DeadTime.PoissonChanceOfCapture(1.Hz(), 1.kHz(), 2.ms(), 1.s()), "recordRate", "1 kHz"),
        new("an event a window", () => DeadTime.ChanceOfCapture(1.kHz(), 1.kHz(), 1.ms(), 1.s()), "eventRate", "Poisson"),
        new("digitizer without rate", () => new Digitizer(default, 1.kpts(), 8.bit()), "maximumRate", "0 Sa/s"),
        new("digitizer without memory", () => new Digitizer(1.GSaPerS(), default, 8.bit()), "memory", "0 pts"),
        new("digitizer without bits", () => new Digitizer(1.GSaPerS(), 1.kpts(), default), "resolution", "0 bit"),
        new("shared rate 0", () => Bench.WithChannelsInUse(2, default, 1.kpts()), "maximumRate", "0 Sa/s"),
        new("shared memory 0", () => Bench.WithChannelsInUse(2, 1.GSaPerS(), default), "memory", "0 pts"),
        new("shared by one", () => Bench.WithChannelsInUse(1, 1.GSaPerS(), 1.kpts()), "channelsInUse", "was 1"),
        new("shared by 65", () => Bench.WithChannelsInUse(65, 1.GSaPerS(), 1.kpts()), "channelsInUse", "was 65"),
        new("no channel in use", () => Bench.MaximumRate(0), "channelsInUse", "was 0"),
        new("no division", () => Bench.WithDivisions(0, 10), "vertical", "was 0"),
        new("101 divisions", () => Bench.WithDivisions(8, 101), "horizontal", "was 101"),
        new("range of 0 V", () => Bench.WithFullScaleRanges(1.Vpp(), default), "ranges", "0 Vpp"),
        new("more noise than range", () => EffectiveResolution.FromNoise(1.Vpp(), 289.mVrms()), "noiseAndDistortion", "288.7 mVrms"),
        new("sine beyond full scale", () => EffectiveResolution.FromSinad(50.dB(), Ratio.FromFraction(1.01)), "amplitudeOfFullScale", "at most 1"),
        new("no sine", () => EffectiveResolution.FromSinad(50.dB(), default), "amplitudeOfFullScale", "above 0"),
        new("SINAD of no bits", () => EffectiveResolution.FromSinad(1.dB()), "sinad", "1.761 dB"),
        // Half of full scale is 6.02 dB down, so that no bits are already left 6.02 dB lower.
        new("SINAD of no bits, half scale", () => EffectiveResolution.FromSinad(-5.dB(), 50.Percent()), "sinad", "-4.26 dB"),
        new("detail beyond the range", () => EffectiveResolution.Needed(1.Vpp(), 1.1.V()), "detail", "1 Vpp"),
        new("band above Nyquist", () => EffectiveResolution.OversamplingGain(1.MSaPerS(), 501.kHz()), "bandwidth", "500 kHz"),
        new("no band", () => EffectiveResolution.OversamplingGain(1.MSaPerS(), default), "bandwidth", "above 0 Hz"),
        new("spectrum of a point", () => EffectiveResolution.SpectrumGain(1.pts()), "recordLength", "1 pts"),
        new("negative triggers", () => EquivalentTime.ChanceOfAFullRecord(10.pts(), -1), "triggers", "was -1"),
        new("no bins", () => EquivalentTime.MeanNumberOfTriggers(default), "bins", "0 pts"),
        new("mean of one has no bandwidth", () => HighResolution.Bandwidth(1, 1.GSaPerS()), "rawPerStored", "was 1"),
        new("mean of none", () => HighResolution.StoredRate(0, 1.GSaPerS()), "rawPerStored", "was 0"),
        new("skew of half a period", () => Interleaving.SkewImage(100.MHz(), 5.ns()), "skew", "5 ns"),
        new("no mismatch", () => Interleaving.GainImage(default), "mismatch", "above 0"),
        new("mismatch of 1", () => Interleaving.GainImage(100.Percent()), "mismatch", "below 1"),
        new("one converter", () => Interleaving.OffsetTones(1.GSaPerS(), 1), "converters", "was 1"),
        new("257 converters", () => Interleaving.ImageFrequencies(1.MHz(), 1.GSaPerS(), 257), "converters", "was 257"),
        new("drawn above Nyquist", () => InterpolationError.Linear(501.kHz(), 1.MSaPerS()), "frequency", "500 kHz"),
        new("drawn below zero", () => InterpolationError.Hold(-(1.kHz()), 1.MSaPerS()), "frequency", "-1 kHz"),
        new("no ratios", () => NoiseCombination.OfSignalToNoise(), "ratios", "at least one"),
        new("no shortfall", () => PeakReading.RateFor(1.MHz(), default), "worstShortfall", "above 0"),
        new("shortfall above 1", () => PeakReading.RateFor(1.MHz(), Ratio.FromFraction(1.1)), "worstShortfall", "at most 1"),
        new("no rates", () => RateSteps.Listed(), "rates", "at least one"),
        new("before the first sample", () => Reconstruction.Linear.ValueAtSample([1, 2], -0.1), "positionsInSamples", "entry 0 was -0.1"),
        new("after the last sample", () => Reconstruction.Linear.Values([1, 2], [0.5, 1.1]), "positionsInSamples", "entry 1 was 1.1"),
        new("no samples", () => Reconstruction.Linear.Values([], [0]), "samples", "at least one"),
        new("no samples to refine", () => Reconstruction.Linear.Upsample([], 2), "samples", "at least one"),
        new("factor 0", () => Reconstruction.Linear.Upsample([1, 2], 0), "factor", "was 0"),
        new("factor 1001", () => Reconstruction.Linear.Upsample([1, 2], 1001), "factor", "was 1001"),
        new("odd taps", () => Reconstruction.WindowedSinc(3, 9), "taps", "was 3"),
        new("no taps", () => Reconstruction.WindowedSinc(0, 9), "taps", "was 0"),
        new("514 taps", () => Reconstruction.WindowedSinc(514, 9), "taps", "was 514"),
        new("negative shape", () => Reconstruction.WindowedSinc(8, -1), "kaiserShape", "was -1"),
        new("shape above 50", () => Reconstruction.WindowedSinc(8, 51), "kaiserShape", "was 51"),
        new("length at no rate", () => Sampling.RecordLength(default, 1.s()), "rate", "0 Sa/s"),
        new("length of no window", () => Sampling.RecordLength(1.GSaPerS(), default), "window", "0 s"),
        new("rate of no points", () => Sampling.Rate(default, 1.s()), "recordLength", "0 pts"),
        new("rate of no window", () => Sampling.Rate(1.kpts(), default), "window", "0 s"),
        new("window of no points", () => Sampling.Window(default, 1.GSaPerS()), "recordLength", "0 pts"),
        new("window at no rate", () => Sampling.Window(1.kpts(), default), "rate", "0 Sa/s"),
        new("span of no points", () => Sampling.FirstToLastSample(default, 1.GSaPerS()), "recordLength", "0 pts"),
        new("limit of no rate", () => Sampling.MemoryLimitedRate(default, 1.kpts(), 1.s()), "maximumRate", "0 Sa/s"),
        new("period of DC", () => Sampling.SamplesPerPeriod(1.GSaPerS(), default), "frequency", "0 Hz"),
        new("no segments", () => SegmentedMemory.SegmentLength(1.kpts(), 0), "segments", "was 0"),
        new("more segments than points", () => SegmentedMemory.SegmentLength(1.kpts(), 1001), "segments", "was 1001"),
        new("memory for no segments", () => SegmentedMemory.MemoryFor(0, 1.us(), 1.GSaPerS()), "segments", "was 0"),
        new("armed before the end", () => SegmentedMemory.HighestTriggerRate(1.us(), -(1.ns())), "rearm", "-1 ns"),
        new("negative interval", () => TimeIntervalAccuracy.WithoutInterpolation(1.GSaPerS(), -(1.ns())), "interval", "-1 ns"),
        new("negative timebase limit", () => TimeIntervalAccuracy.TimebaseLimit(1.s(), Ratio.FromPartsPerMillion(-1)), "timebaseLimit", "at least 0"));

    [Theory, MemberData(nameof(Refusals))]
    public void WhatLiesOutside_IsRefusedByName(Refusal refusal) => refusal.Confirm();

    [Fact]
    public void WhatLiesOnTheEdge_IsComputed()
    {
        Assert.Equal(0, Aliasing.Fold(default, 1.MSaPerS()).Hertz);
        Assert.Equal(1 << 30, Aliasing.NyquistZone(Frequency.FromHertz(((1 << 30) - 1) / 2.0), SampleRate.FromSamplesPerSecond(1)));
        Assert.Equal(1, Averaging.Noise(1.mVrms(), 1000, 100.Percent()).Millivolts, 12);
        Assert.Equal(0.5, Averaging.Noise(1.mVrms(), 4, default).Millivolts, 12);
        Assert.Equal(0, Averaging.NoiseReduction(1).Decibels);
        Assert.Equal(0, EffectiveResolution.FromNoise(1.Vpp(), RmsVoltage.FromVolts(1 / Math.Sqrt(12))).Bits, 12);
        Assert.Equal(0, EffectiveResolution.Needed(1.Vpp(), 1.V()).Bits);
        Assert.Equal(0, EffectiveResolution.OversamplingGain(1.MSaPerS(), 500.kHz()).Decibels);
        Assert.Equal(0, EffectiveResolution.SpectrumGain(2.pts()).Decibels);
        Assert.Equal(0, HighResolution.BitsGained(1).Bits);
        Assert.Equal(1, HighResolution.AmplitudeRatio(4, 1.GSaPerS(), default).Fraction);
        Assert.Equal(0, InterpolationError.HoldDroop(default, 1.MSaPerS()).Decibels);
        // One sample on a crest is short by all of it at a quarter of a turn: two samples a period.
        Assert.Equal(2, PeakReading.RateFor(1.MHz(), 100.Percent()).MegasamplesPerSecond, 12);
        Assert.Equal(1, SegmentedMemory.SegmentLength(1.kpts(), 1000).Points);
        Assert.Equal(1000, SegmentedMemory.SegmentLength(1.kpts(), 1).Points);
        Assert.Equal(1000, SegmentedMemory.MemoryFor(1, 1.us(), 1.GSaPerS()).Points);
        Assert.Equal(0, TimeIntervalAccuracy.WithoutInterpolation(1.GSaPerS(), default).Seconds);
        Assert.Equal(0, TimeIntervalAccuracy.TimebaseLimit(1.s(), default).Seconds);
        Assert.Equal(5, Reconstruction.Linear.ValueAtSample([5], 0));
        Assert.Equal(1001, Reconstruction.Linear.Upsample([0, 1], 1000).Length);
        Assert.Equal([3.0], Reconstruction.CubicLagrange.Upsample([3], 7));
        Assert.Equal(512, Reconstruction.WindowedSinc(512, 50).Taps);
        Assert.Equal(2, Reconstruction.WindowedSinc(2, 0).Taps);
        Assert.Equal(100, Bench.WithDivisions(100, 1).VerticalDivisions);
        Assert.Equal(1.GSaPerS(), Bench.WithChannelsInUse(64, 1.MSaPerS(), 1.kpts()).MaximumRate(63));
        Assert.Equal(255, Interleaving.ImageFrequencies(1.kHz(), 1.GSaPerS(), 256).Count);
        Assert.Equal([500.MHz()], Interleaving.OffsetTones(1.GSaPerS(), 2));
    }

    // Handbook 5.2: the second zone comes out turned round, the third does not.
    [Fact]
    public void EvenZones_ComeOutTurnedRound()
    {
        Assert.False(Aliasing.IsInverted(40.MHz(), 100.MSaPerS()));
        Assert.True(Aliasing.IsInverted(60.MHz(), 100.MSaPerS()));
        Assert.False(Aliasing.IsInverted(120.MHz(), 100.MSaPerS()));
        Assert.Equal([false, true, false, true, false], Aliasing.BandPassRates(20.MHz(), 25.MHz()).Select(range => range.IsInverted));
        Assert.Equal("zone 2: 25 MSa/s to 40 MSa/s, inverted", Aliasing.BandPassRates(20.MHz(), 25.MHz())[1].ToString());
        Assert.Equal("zone 1: 50 MSa/s to any higher rate", Aliasing.BandPassRates(20.MHz(), 25.MHz())[0].ToString());
    }

    // By hand: 0.5 % of 2 V, 0.1 % of 8 V and 1 mV are 10 mV, 8 mV and 1 mV; the root of 100 + 64 + 1 over the root of 3 is 7.4162.
    [Fact]
    public void DcAccuracy_AddsItsThreeParts()
    {
        Assert.Equal(19, Accuracy.Limit(-(2.V()), 8.Vpp()).Millivolts, 12);
        Assert.Equal(7.4162, Accuracy.StandardUncertainty(2.V(), 8.Vpp()).Millivolts, 4);
    }

    // Exact, by inclusion and exclusion over the empty bins (coupon collector; Python fractions): 0.88909 and 0.91545. The library takes the bins as independent.
    [Theory]
    [InlineData(50, 300, 0.8890895081549112)]
    [InlineData(100, 700, 0.9154530452347561)]
    public void ChanceOfAFullRecord_IsNearTheExactOne(int bins, int triggers, double exact) =>
        Assert.Equal(exact, EquivalentTime.ChanceOfAFullRecord(PointCount.FromPoints(bins), triggers).Fraction, 0.001);

    [Fact]
    public void AFullRecord_NeedsATriggerForEachBin()
    {
        Assert.Equal(1, EquivalentTime.ChanceOfAFullRecord(1.pts(), 1).Fraction);
        Assert.Equal(0, EquivalentTime.ChanceOfAFullRecord(1.pts(), 0).Fraction);
        Assert.Equal(0, EquivalentTime.ChanceOfAFullRecord(10.pts(), 9).Fraction);
        Assert.True(EquivalentTime.ChanceOfAFullRecord(10.pts(), 10).Fraction > 0);
    }

    // 20 000 (1 + 1/2 + ... + 1/20 000), summed term by term (Python fsum); on both sides of where the library changes its way.
    [Fact]
    public void MeanNumberOfTriggers_OfManyBins_IsTheHarmonicSum()
    {
        Assert.Equal(209614.56434458654, EquivalentTime.MeanNumberOfTriggers(20.kpts()), 1e-9);
        double below = EquivalentTime.MeanNumberOfTriggers(10.kpts()) / 10_000, above = EquivalentTime.MeanNumberOfTriggers(PointCount.FromPoints(10_001)) / 10_001;
        Assert.Equal(1.0 / 10_001, above - below, 1e-13);
    }

    // 1 - sin(x)/x to 30 digits (Python decimal).
    [Theory]
    [InlineData(0.01, 0.000164485289451319019)]
    [InlineData(0.001, 0.00000164493325510599190)]
    public void MeanShortfall_OfManySamplesAPeriod_KeepsItsDigits(double share, double expected) =>
        Assert.Equal(expected, PeakReading.MeanShortfall(Frequency.FromHertz(share), SampleRate.FromSamplesPerSecond(1)).Fraction, expected * 1e-12);

    // By hand: 3-4-5, and 2π 24 MHz 10 ps / √2.
    [Fact]
    public void Noises_AddAsPowers_AndJitterMakesNoiseOfASlope()
    {
        Assert.Equal(5, NoiseCombination.Of(3.mVrms(), 4.mVrms()).Millivolts, 12);
        Assert.Equal(1.06629, SamplingJitter.Noise(1.Vpk(), 24.MHz(), 10.ps()).Millivolts, 5);
        Assert.Equal(5, PulseCapture.NarrowestPulseWith(5.pts(), 1.GSaPerS()).Nanoseconds, 12);
        Assert.Equal(8, SegmentedMemory.HighestTriggerRate(100.us(), 25.us()).Kilohertz, 12);
        Assert.Equal(10, SegmentedMemory.HighestTriggerRate(100.us(), default).Kilohertz, 12);
        // √(2·3² + 2·4² + 6²/3 + 10²) = √162.
        Assert.Equal(Math.Sqrt(162), TimeIntervalAccuracy.Combined(3.ps(), 4.ps(), 6.ps(), 10.ps()).Picoseconds, 9);
    }
}
