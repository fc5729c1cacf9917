using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Conventions;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>Where pulse settings end, and a single edge and a short train whose figures are worked out by hand.</summary>
public sealed class PulseLimitsTests
{
    private static readonly PulseSettings Settings = PulseSettings.Default;

    public static TheoryData<Refusal> Refusals => new(
        new("states given without levels", () => Settings.WithStates(StateLevelMethod.Given), "method", "WithStateLevels"),
        new("an unknown method", () => Settings.WithStates((StateLevelMethod)(-1)), "method", "was -1"),
        new("one bin", () => Settings.WithStates(StateLevelMethod.HistogramMode, 1), "bins", "was 1"),
        new("65537 bins", () => Settings.WithStates(StateLevelMethod.HistogramMode, 65537), "bins", "was 65537"),
        new("levels upside down", () => Settings.WithStateLevels(1.V(), 0.V()), "high", "above the low level"),
        new("equal levels", () => Settings.WithStateLevels(1.V(), 1.V()), "high", "above the low level"),
        new("a proximal level of 0", () => Settings.WithReferences(default, 50.Percent(), 90.Percent()), "proximal", "0 < proximal"),
        new("proximal at the middle", () => Settings.WithReferences(50.Percent(), 50.Percent(), 90.Percent()), "proximal", "proximal < middle"),
        new("middle at distal", () => Settings.WithReferences(10.Percent(), 90.Percent(), 90.Percent()), "proximal", "middle < distal"),
        new("a distal level of 1", () => Settings.WithReferences(10.Percent(), 50.Percent(), 100.Percent()), "proximal", "distal < 1"),
        new("negative hysteresis", () => Settings.WithHysteresis(-(1.Percent())), "hysteresis", "from 0"),
        new("hysteresis of a half", () => Settings.WithHysteresis(50.Percent()), "hysteresis", "below 0.5"),
        new("no region", () => Settings.WithAberrationRegions(0), "factor", "was 0"),
        new("a region of 1001", () => Settings.WithAberrationRegions(1001), "factor", "was 1001"),
        new("no sample on an edge", () => Settings.WithLeastSamplesOnEdge(0), "samples", "was 0"),
        new("1001 samples on an edge", () => Settings.WithLeastSamplesOnEdge(1001), "samples", "was 1001"),
        new("three edges", () => EdgeJitter.Of([0.ns(), 1.ns(), 2.ns()]), "instants", "held 3"),
        new("edges out of order", () => EdgeJitter.Of([0.ns(), 1.ns(), 1.ns(), 2.ns()]), "instants", "entry 2"),
        new("a clock without period", () => EdgeJitter.Of([0.ns(), 1.ns(), 2.ns(), 3.ns()], default, default), "period", "0 s"),
        new("no band", () => Edge(Settings).SettlingDuration(default), "band", "above 0"),
        new("a band of a half", () => Edge(Settings).SettlingDuration(50.Percent()), "band", "below 0.5"));

    [Theory, MemberData(nameof(Refusals))]
    public void WhatLiesOutside_IsRefusedByName(Refusal refusal) => refusal.Confirm();

    [Fact]
    public void WhatLiesOnTheEdge_IsTaken()
    {
        Assert.Equal(2, Settings.WithStates(StateLevelMethod.HistogramMode, 2).Bins);
        Assert.Equal(65536, Settings.WithStates(StateLevelMethod.ShorthMidpoint, 65536).Bins);
        Assert.Equal(0, Settings.WithHysteresis(default).Hysteresis.Fraction);
        Assert.Equal(1000, Settings.WithAberrationRegions(1000).RegionFactor);
        Assert.Equal(1, Settings.WithLeastSamplesOnEdge(1).LeastSamplesOnEdge);
        Assert.Equal(1000, Settings.WithLeastSamplesOnEdge(1000).LeastSamplesOnEdge);
        PulseSettings references = Settings.WithReferences(20.Percent(), 40.Percent(), 80.Percent());
        Assert.Equal((20.Percent(), 40.Percent(), 80.Percent()), (references.Proximal, references.Middle, references.Distal));
    }

    // 0, 1/4, 1/2, 3/4 V from 100 ns on, then 1.2, 0.9, 1.04 and 1 V: 10 % at 99.4 ns, 90 % at 102 1/3 ns, 50 % at 101 ns.
    [Fact]
    public void AnEdgeByHand_HasItsDurationSlopeAndOvershoot()
    {
        PulseTransition edge = Edge(Settings);
        Assert.Equal(101, edge.Instant.Nanoseconds, 1e-9);
        Assert.Equal(2.9333333, edge.TransitionDuration.Value.Nanoseconds, 6);
        Assert.Equal(0.8 / 2.9333333, edge.SlewRate.Value.VoltsPerSecond / 1e9, 6);
        Assert.Equal(20, edge.Overshoot.Value.Percent, 6);
        Assert.Equal(3, edge.SamplesOnEdge);
        Assert.Equal(4, edge.AtMost.Value.Nanoseconds, 9);
        PulseTransition coarse = Edge(Settings.WithLeastSamplesOnEdge(4));
        Assert.False(coarse.IsResolved);
        Assert.False(coarse.TransitionDuration.HasValue || coarse.SlewRate.HasValue);
        Assert.Equal(4, coarse.AtMost.Value.Nanoseconds, 9);
    }

    // The last sample outside the band and the next one within, joined by a line: 0.9 to 1.04 V, 1.2 to 0.9 V, and 0.5 to 0.75 V.
    [Theory]
    [InlineData(5, 3.3571429)]
    [InlineData(15, 2.1666667)]
    [InlineData(30, 0.8)]
    public void SettlingByHand_IsWhereTheLineEntersTheBand(double percent, double nanoseconds) =>
        Assert.Equal(nanoseconds, Edge(Settings).SettlingDuration(Ratio.FromPercent(percent)).Value.Nanoseconds, 6);

    [Fact]
    public void AFallingEdge_SettlesAndSlopesTheOtherWay()
    {
        PulseTransition edge = PulseMeasurement.Of(Record.FromVolts(Array.ConvertAll(Volts(), x => 1 - x), 1.GSaPerS())).Transitions[0];
        Assert.False(edge.IsRising);
        Assert.Equal(-0.8 / 2.9333333, edge.SlewRate.Value.VoltsPerSecond / 1e9, 6);
        Assert.Equal(3.3571429, edge.SettlingDuration(5.Percent()).Value.Nanoseconds, 6);
    }

    [Fact]
    public void ASignalOutsideTheBandAtTheEnd_HasNotSettled()
    {
        double[] volts = Volts();
        volts[^1] = 1.2;
        Measured<Duration> settling = PulseMeasurement.Of(Record.FromVolts(volts, 1.GSaPerS())).Transitions[0].SettlingDuration(5.Percent());
        Assert.False(settling.HasValue);
        Assert.Equal("not-settled", settling.Reason!.Code);
    }

    // Periods 10, 11, 9 and 11 ns; the best clock runs at 10.2 ns with errors of 0, -0.2, 0.6, -0.6 and 0.2 ns; against 10 ns they are 0, 0, 1, 0 and 1 ns.
    [Fact]
    public void JitterByHand_IsThatOfItsPeriods()
    {
        Duration[] instants = [5.ns(), 15.ns(), 26.ns(), 35.ns(), 46.ns()];
        EdgeJitter jitter = EdgeJitter.Of(instants), ideal = EdgeJitter.Of(instants, 5.ns(), 10.ns());
        Assert.Equal(5, jitter.Edges);
        Assert.Equal(10.25, jitter.MeanPeriod.Nanoseconds, 9);
        Assert.Equal(10.2, jitter.ClockPeriod.Nanoseconds, 9);
        Assert.Equal(0.957427, jitter.PeriodJitter.Nanoseconds, 6);
        Assert.Equal(2, jitter.PeriodJitterPeakToPeak.Nanoseconds, 9);
        Assert.Equal(1.732051, jitter.CycleToCycleRms.Nanoseconds, 6);
        Assert.Equal(2, jitter.CycleToCycleMost.Nanoseconds, 9);
        Assert.Equal(0.4, jitter.TimeIntervalErrorRms.Nanoseconds, 9);
        Assert.Equal(1.2, jitter.TimeIntervalErrorPeakToPeak.Nanoseconds, 9);
        Assert.Equal(10, ideal.ClockPeriod.Nanoseconds, 9);
        Assert.Equal(0.632456, ideal.TimeIntervalErrorRms.Nanoseconds, 6);
        Assert.Equal(1, ideal.TimeIntervalErrorPeakToPeak.Nanoseconds, 9);
        Assert.Equal(1.414214, EdgeJitter.WhitePeriodJitter(1.ps()).Picoseconds, 6);
        Assert.Equal(2.449490, EdgeJitter.WhiteCycleToCycleJitter(1.ps()).Picoseconds, 6);
    }

    private static PulseTransition Edge(PulseSettings settings) => PulseMeasurement.Of(Record.FromVolts(Volts(), 1.GSaPerS()), settings).Transitions[0];

    private static double[] Volts()
    {
        var volts = new double[1000];
        for (int i = 100; i < volts.Length; i++)
            volts[i] = i < 107 ? new[] { 0.25, 0.5, 0.75, 1.2, 0.9, 1.04, 1 }[i - 100] : 1;
        return volts;
    }
}
