using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>Uncertainties of times against arithmetic by hand (JCGM 100 5.1.2, 5.2.2) and against what simulated captures really do (JCGM 101 in the open: capture, measure, compare with the truth).</summary>
public sealed class TimingUncertaintyTests
{
    private static readonly PulseSettings Known = PulseSettings.Default.WithStateLevels(0.V(), 1.V());

    /// <summary>A ramp of 10 samples up, at 12.4, and down again 40 later, with noise of exactly 10 mV rms on the plateaus.</summary>
    private static Record Ramps()
    {
        double[] volts = [.. Enumerable.Range(0, 100).Select(i => Math.Clamp((i - 12.4) / 10, 0, 1) - Math.Clamp((i - 52.4) / 20, 0, 1))];
        for (int i = 0; i < volts.Length; i++)
            volts[i] += i is < 12 or > 75 || i is > 24 and < 51 ? (i % 2 == 0 ? 0.01 : -0.01) : 0;
        return Record.FromVolts(volts, 1.GSaPerS());
    }

    [Fact]
    public void NoiseOverSlope_IsWhatTheArithmeticByHandGives()
    {
        PulseMeasurement pulses = PulseMeasurement.Of(Ramps(), Known.WithReferences(Ratio.FromPercent(20), Ratio.FromPercent(50), Ratio.FromPercent(80)));
        PulseTransition rise = pulses.Transitions[0], fall = pulses.Transitions[1];
        double noise = pulses.States.Value.Noise.SiValue;
        Assert.Equal(0.01, noise, 3e-3);

        // 50 % at 17.4: the line from sample 17 to 18, 0.4 of the way, 0.1 V per ns. Weights of the two samples 0.6 and 0.4.
        double u = noise * Math.Sqrt(0.36 + 0.16) / 0.1e9;
        Assert.Equal(u, rise.InstantUncertainty.Value.Noise.Seconds, 1e-15);
        Assert.Equal(u, rise.InstantUncertainty.Value.Standard.Seconds, 1e-15);
        // 20 % at 14.4 and 80 % at 20.4: the same twice, independent.
        Assert.Equal(Math.Sqrt(2) * u, rise.TransitionDurationUncertainty.Value.Standard.Seconds, 1e-15);
        // Falling at half the slope, 50 % at 62.4.
        Assert.Equal(45e-9, rise.IntervalTo(fall).Seconds, 1e-12);
        Assert.Equal(Math.Sqrt(5) * u, rise.IntervalUncertainty(fall).Value.Standard.Seconds, 1e-15);
        Assert.Equal(rise.IntervalUncertainty(fall).Value.Standard, pulses.PositivePulseDurationUncertainty.Value.Standard);
    }

    [Fact]
    public void Timebase_GrowsWithTheInterval_AndClockJitterDoesNot()
    {
        PulseSettings settings = Known.WithTimebase(Ratio.FromPartsPerMillion(300), 4.ps());
        PulseMeasurement plain = PulseMeasurement.Of(Ramps(), Known), pulses = PulseMeasurement.Of(Ramps(), settings);
        TimingUncertainty interval = pulses.Transitions[0].IntervalUncertainty(pulses.Transitions[1]).Value;

        Assert.Equal(300e-6 * 45e-9 / Math.Sqrt(3), interval.Timebase.Seconds, 1e-17);
        Assert.Equal(Math.Sqrt(2) * 4e-12, interval.ClockJitter.Seconds, 1e-17);
        Assert.Equal(4e-12, pulses.Transitions[0].InstantUncertainty.Value.ClockJitter.Seconds, 1e-17);
        double before = plain.Transitions[0].IntervalUncertainty(plain.Transitions[1]).Value.Standard.Seconds;
        Assert.Equal(Math.Sqrt(before * before + Math.Pow(interval.Timebase.Seconds, 2) + 32e-24), interval.Standard.Seconds, 1e-16);
        Assert.Throws<ArgumentOutOfRangeException>(() => Known.WithTimebase(Ratio.FromPercent(100)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Known.WithTimebase(Ratio.FromPercent(1), -1.ps()));
    }

    [Fact]
    public void StateLevels_MoveReferenceLevelsTogether_AsHandbook8_8Says()
    {
        // An exponential edge sampled finely, and a level that is off: the sensitivities are those of 8.8, 9 tau and 0.111 tau per part of the amplitude.
        double[] volts = [.. Enumerable.Range(0, 4000).Select(i => i < 100 ? 0 : 1 - Math.Exp(-(i - 100) / 200.0))];
        Record record = Record.FromVolts(volts, 1.GSaPerS());
        var states = new StateLevels(0, 1, 0, 0, 0, 0.01, StateLevelMethod.HistogramMode, 100, QuantityKind.Voltage);
        LevelCrossing at10 = LevelCrossing.Of(record.Samples, states, 100 - 200 * Math.Log(0.9), 0.1, 7), at90 = LevelCrossing.Of(record.Samples, states, 100 - 200 * Math.Log(0.1), 0.9, 7);

        TimingUncertainty u = LevelCrossing.Between(record, PulseSettings.Default, states, at10, at90);
        Assert.Equal((9 - 0.111111) * 0.01 * 200e-9, u.StateLevels.Seconds, 0.03e-9);
        Assert.Equal(StateLevelSensitivity.OfExponentialEdge(Ratio.FromPercent(10), Ratio.FromPercent(90)).Fraction * 0.01 * 200e-9 * Math.Log(9), u.StateLevels.Seconds, 0.03e-9);
    }

    [Fact]
    public void LevelsShared_ByBothEdgesOfAPeriod_CancelAndThoseOfAPulseAdd()
    {
        Record clock = new SimulatedCapture(Signal.Square(20.MHz(), 2.Vpp(), 5.ns()), 2.03.GSaPerS(), 4.kpts()).WithNoise(8.mVrms()).WithConverter(8.bit(), 3.Vpp()).Capture();
        IReadOnlyList<PulseTransition> edges = PulseMeasurement.Of(clock).Transitions;

        double instant = edges[0].InstantUncertainty.Value.StateLevels.Seconds;
        Assert.True(instant > 1e-12);
        Assert.InRange(edges[0].IntervalUncertainty(edges[2]).Value.StateLevels.Seconds, 0, 0.2 * instant);
        Assert.InRange(edges[0].IntervalUncertainty(edges[1]).Value.StateLevels.Seconds, 1.7 * instant, 2.3 * instant);
    }

    /// <summary>The edges of a clock that no sample rate divides, against where they truly are; the ratio of what is stated to what happens.</summary>
    [Theory]
    [InlineData(2.0, 0, 8)]
    [InlineData(2.0, 0, 6)]
    [InlineData(2.0, 20, 12)]
    [InlineData(2.0, 35, 8)]
    [InlineData(5.0, 20, 8)]
    [InlineData(20.0, 20, 8)]
    [InlineData(1.2, 5, 10)]
    public void SimulatedCaptures_ScatterAsMuchAsIsStated(double gigasamples, double millivolts, int bits)
    {
        const double high = 1.65, period = 1 / 23.7e6;
        Response slow = Response.Gaussian(150.MHz());
        Signal square = Signal.Square(23.7.MHz(), (2 * high).Vpp(), 2.ns());
        PulseSettings known = PulseSettings.Default.WithStateLevels(-1.65.V(), 1.65.V()).WithLeastSamplesOnEdge(1);
        double truth = PulseMeasurement.Of(new SimulatedCapture(square, 101.3.GSaPerS(), 40.kpts()).Through(slow).Capture(), known).RisingDuration.Value.Mean.Seconds;
        Record record = new SimulatedCapture(square, SampleRate.FromSamplesPerSecond(gigasamples * 1e9 * 1.000_137), 60.kpts()).Through(slow)
            .WithNoise(RmsVoltage.FromVolts(millivolts / 1000)).WithConverter(BitDepth.FromBits(bits), 4.Vpp()).Capture();
        PulseMeasurement pulses = PulseMeasurement.Of(record, known);
        PulseTransition[] rising = [.. pulses.Transitions.Where(x => x.IsRising)];

        double lag = rising.Average(x => Math.IEEERemainder(x.Instant.Seconds, period));
        Compare(rising.Select(x => Math.IEEERemainder(x.Instant.Seconds, period) - lag), rising.Select(x => x.InstantUncertainty));
        Compare(rising.Select(x => x.TransitionDuration.Value.Seconds - truth), rising.Select(x => x.TransitionDurationUncertainty));
        Compare(rising.Skip(1).Zip(rising, (next, x) => x.IntervalTo(next).Seconds - period), rising.Skip(1).Zip(rising, (next, x) => x.IntervalUncertainty(next)));

        static void Compare(IEnumerable<double> errors, IEnumerable<Measured<TimingUncertainty>> stated)
        {
            (double Error, double Stated)[] clear = [.. errors.Zip(stated).Where(x => x.Second.HasValue).Select(x => (x.First, x.Second.Value.Standard.Seconds))];
            double happens = Math.Sqrt(clear.Average(x => x.Error * x.Error)), says = Math.Sqrt(clear.Average(x => x.Stated * x.Stated));
            Assert.True(clear.Length > 0.9 * stated.Count());
            Assert.InRange(says / happens, 0.75, 1.35);
        }
    }

    [Theory]
    [InlineData(0, 8)]
    [InlineData(0, 5)]
    [InlineData(30, 8)]
    [InlineData(100, 8)]
    public void LevelsOfSimulatedCaptures_ScatterAsMuchAsIsStated(double millivolts, int bits)
    {
        var low = new List<(double Error, double Stated)>();
        for (int k = 0; k < 150; k++)
        {
            double offset = 0.01 * Math.IEEERemainder(k * 0.618, 1) * (256 >> (bits - 1));
            Signal square = Signal.Square(10.MHz(), 2.Vpp(), 4.ns());
            Record record = new SimulatedCapture(square, 1.01.GSaPerS(), 3.kpts()).WithNoise(RmsVoltage.FromVolts(millivolts / 1000)).WithConverter(BitDepth.FromBits(bits), 4.Vpp(), Voltage.FromVolts(offset)).WithSeed(k).Capture();
            StateLevels states = PulseMeasurement.Of(record).States.Value;
            low.Add((states.Low.SiValue + 1, states.LowUncertainty.SiValue));
        }
        double happens = Math.Sqrt(low.Average(x => x.Error * x.Error)), says = Math.Sqrt(low.Average(x => x.Stated * x.Stated));
        Assert.InRange(says / happens, 0.8, 1.25);
    }

    [Fact]
    public void MeanOfMany_IsKnownBetter_ButNotBetterThanTheLevelsAndTheTimeBase()
    {
        var capture = new SimulatedCapture(Signal.Square(20.MHz(), 2.Vpp(), 5.ns()), 2.03.GSaPerS(), 40.kpts()).WithNoise(20.mVrms()).WithConverter(8.bit(), 3.Vpp());
        PulseMeasurement pulses = PulseMeasurement.Of(capture.Capture(), PulseSettings.Default.WithTimebase(Ratio.FromPartsPerMillion(25)));
        TimingUncertainty one = pulses.Transitions[4].TransitionDurationUncertainty.Value, mean = pulses.RisingDurationUncertainty.Value;

        Assert.InRange(mean.Noise.Seconds * Math.Sqrt(pulses.RisingDuration.Value.Count), 0.5 * one.Noise.Seconds, 2 * one.Noise.Seconds);
        Assert.Equal(25e-6 * 50e-9 / Math.Sqrt(3), pulses.PeriodUncertainty.Value.Timebase.Seconds, 1e-15);
        Assert.True(mean.StateLevels >= 0.5 * one.StateLevels);
        Assert.InRange(Math.Abs(pulses.Period.Value.Mean.Seconds - 50e-9), 0, 3 * pulses.PeriodUncertainty.Value.Standard.Seconds);
        Assert.Equal(pulses.PeriodUncertainty.Value.Standard.Seconds / 50e-9, pulses.FrequencyUncertainty.Value.Hertz / 20e6, 1e-8);
        Assert.StartsWith("u = ", mean.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void SlopeBelowNoise_HasNoUncertainty_AndSaysWhy()
    {
        var random = new Random(2);
        double[] volts = [.. Enumerable.Range(0, 6000).Select(i => Math.Clamp((i - 2000) / 2000.0, 0, 1) + 0.1 * PulseRecords.Gaussian(random))];
        var states = new StateLevels(0, 1, 0.1, 0, 0, 0, StateLevelMethod.Given, null, QuantityKind.Voltage);

        Assert.False(LevelCrossing.Of(Record.FromVolts(volts, 1.GSaPerS()).Samples, states, 3000.4, 0.5, 20).IsClear);
        Assert.True(LevelCrossing.Of(Record.FromVolts(volts, 1.GSaPerS()).Samples, states, 3000.4, 0.5, 7900).IsClear);
    }

    [Fact]
    public void AbsentTimes_HaveAbsentUncertainties()
    {
        PulseMeasurement sine = PulseMeasurement.Of(Record.FromVolts([.. Enumerable.Range(0, 1000).Select(i => Math.Sin(0.0237 * i))], 1.GSaPerS()));
        Assert.Equal("no-plateau", sine.PeriodUncertainty.Reason!.Code);
        Assert.Equal("no-plateau", sine.FrequencyUncertainty.Reason!.Code);

        PulseMeasurement steep = PulseMeasurement.Of(Record.FromVolts([.. Enumerable.Range(0, 1000).Select(i => (double)(i / 50 % 2))], 10.MSaPerS()));
        Assert.Equal("edge-not-resolved", steep.RisingDurationUncertainty.Reason!.Code);
        Assert.True(steep.PeriodUncertainty.HasValue);
        PulseTransition other = PulseMeasurement.Of(Ramps(), Known).Transitions[0];
        Assert.Throws<ArgumentException>(() => steep.Transitions[0].IntervalTo(other));
    }
}
