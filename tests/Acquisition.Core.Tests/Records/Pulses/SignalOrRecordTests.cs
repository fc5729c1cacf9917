using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records.Pulses;

/// <summary>What is of the signal and what of the record: the truth is that of simulated captures, whose jitter is chosen.</summary>
public sealed class SignalOrRecordTests
{
    private static PulseMeasurement Clock(Duration jitter, RmsVoltage noise, int seed, PulseSettings? settings = null) => PulseMeasurement.Of(
        new SimulatedCapture(Signal.Square(10.MHz(), 1.Vpp(), 20.ns()), 2.GSaPerS(), 20.kpts()).WithNoise(noise).WithClockJitter(jitter).WithConverter(10.bit(), 2.Vpp()).WithSeed(seed).Capture(),
        settings ?? PulseSettings.Default);

    private static Finding? Said(PulseMeasurement pulses, string code) => pulses.Findings.SingleOrDefault(x => x.Code == code);

    /// <summary>10 mV rms over 0.8 V / 16 ns and an edge drawn through two samples: 10 mV / (50 V/us) times sqrt(2) for two instants, times sqrt(0.5) to 1 by the place between the samples: 200 ps to 283 ps.</summary>
    [Theory]
    [InlineData(1), InlineData(2), InlineData(3)]
    public void JitterThatIsNoiseOnly_IsSaidToBe(int seed)
    {
        PulseMeasurement pulses = Clock(0.ps(), 10.mVrms(), seed);

        Finding finding = Assert.IsType<Finding>(Said(pulses, "jitter-is-noise"));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("of the signal's own there may be at most", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void JitterFarAboveTheNoise_IsNotTalkedAbout()
    {
        PulseMeasurement pulses = Clock(100.ps(), 0.1.mVrms(), 4);

        Assert.Null(Said(pulses, "jitter-is-noise"));
        Assert.Null(Said(pulses, "jitter-holds-noise"));
    }

    /// <summary>Jitter of the clock counts once at either end of a period: root two of 400 ps are 566 ps.</summary>
    [Fact]
    public void JitterBesideNoise_IsToldWhatIsLeft()
    {
        PulseMeasurement pulses = Clock(400.ps(), 10.mVrms(), 5);

        Assert.Null(Said(pulses, "jitter-is-noise"));
        Assert.Contains("are left to the signal", Assert.IsType<Finding>(Said(pulses, "jitter-holds-noise")).Message, StringComparison.Ordinal);
    }

    /// <summary>Jitter of the sample clock that the settings state is no jitter of the signal.</summary>
    [Fact]
    public void StatedJitterOfTheSampleClock_IsNotTheSignals() =>
        Assert.NotNull(Said(Clock(100.ps(), 0.5.mVrms(), 6, PulseSettings.Default.WithTimebase(Ratio.FromPartsPerMillion(1), 100.ps())), "jitter-is-noise"));

    [Fact]
    public void TimeBaseOfWhichNothingIsStated_IsNotPerfect()
    {
        PulseMeasurement silent = Clock(0.ps(), 1.mVrms(), 7), stated = Clock(0.ps(), 1.mVrms(), 7, PulseSettings.Default.WithTimebase(Ratio.FromPartsPerMillion(2.5)));

        Assert.Contains("1 ppm to 50 ppm", Assert.IsType<Finding>(Said(silent, "timebase-not-stated")).Message, StringComparison.Ordinal);
        Assert.Null(Said(stated, "timebase-not-stated"));
        Assert.EndsWith("time base not stated)", silent.PeriodUncertainty.Value.ToString(), StringComparison.Ordinal);
        Assert.False(silent.RisingDurationUncertainty.Value.StatesTimebase);
        // 2.5 ppm as a rectangle: 2.5e-6 times 100 ns over sqrt(3) (JCGM 100 4.3.7).
        Assert.Equal(2.5e-6 * 100e-9 / Math.Sqrt(3), stated.PeriodUncertainty.Value.Timebase.Seconds, 1e-16);
        Assert.Contains("clock jitter 0 s", stated.PeriodUncertainty.Value.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, 0.0), InlineData(2, 1.3e-3), InlineData(3, 5e-3)]
    public void QuietLevelOnAFewCodes_IsNoClock(int seed, double offset)
    {
        var random = new Random(seed);
        double[] volts = [.. Enumerable.Range(0, 20_000).Select(_ => 0.01 * Math.Round((1.2 + offset + 2e-3 * PulseRecords.Gaussian(random)) / 0.01))];

        Measured<StateLevels> states = PulseMeasurement.Of(Record.FromVolts(volts, 1.GSaPerS())).States;

        Assert.Equal("states-not-separated", states.Reason?.Code);
    }

    [Theory]
    [InlineData(2, 2), InlineData(1, 9), InlineData(5, 5), InlineData(20, 60)]
    public void SignalOfTwoValues_IsMeasuredStill(int low, int high)
    {
        double[] volts = [.. Enumerable.Range(0, 2_000).Select(i => i % (low + high) < low ? 0.0 : 1.0)];

        Assert.Equal(1, PulseMeasurement.Of(Record.FromVolts(volts, 1.GSaPerS())).States.Value.Amplitude.SiValue, 1e-12);
    }
}
