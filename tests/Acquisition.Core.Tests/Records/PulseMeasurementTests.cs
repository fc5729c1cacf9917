using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records;

public sealed class PulseMeasurementTests
{
    internal static readonly SampleRate Rate = 1.GSaPerS();

    private static string Refusal(double[] volts) => PulseMeasurement.Of(Record.FromVolts(volts, Rate)).States.Reason!.Code;

    internal static double[] Make(int n, Func<int, double> f) => Enumerable.Range(0, n).Select(f).ToArray();

    internal static Record Train(int cycles = 20, double period = 100e-9, double width = 40e-9, double fs = 5e9, double noise = 0, int seed = 1)
    {
        double[] rising = Enumerable.Range(0, cycles).Select(k => 30e-9 + k * period).ToArray();
        Record clean = PulseRecords.FromInstants(rising, rising.Select(x => x + width).ToArray(), cycles * period + 30e-9, fs, 2e-9);
        var random = new System.Random(seed);
        return Record.FromVolts(clean.ToSiValues().Select(x => x + noise * PulseRecords.Gaussian(random)).ToArray(), clean.SampleRate);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.02)]
    [InlineData(0.1)]
    public void Sine_HasNoStates_WithAndWithoutNoise(double noise)
    {
        var random = new System.Random(3);
        Assert.Equal("no-plateau", Refusal(Make(20_000, i => Math.Sin(0.0237 * i) + noise * PulseRecords.Gaussian(random))));
    }

    [Fact]
    public void RecordsWithoutTwoStates_AreRefusedWithTheReason()
    {
        var random = new System.Random(5);
        string[] noStates = ["states-not-separated", "no-plateau"];
        Assert.Contains(Refusal(Make(10_000, i => Math.Abs(i % 200 - 100))), noStates);
        Assert.Contains(Refusal(Make(10_000, _ => PulseRecords.Gaussian(random))), noStates);
        Assert.Contains(Refusal(Make(10_000, _ => random.NextDouble())), noStates);
        Assert.Equal("no-two-states", Refusal(Make(100, _ => 1.5)));
        Assert.Equal("record-too-short", Refusal([1, 2]));
        Assert.Equal("not-a-number", Refusal(Make(100, i => i == 57 ? double.NaN : i > 50 ? 1 : 0)));
        Assert.Contains("57", PulseMeasurement.Of(Record.FromVolts(Make(100, i => i == 57 ? double.PositiveInfinity : i > 50 ? 1 : 0), Rate)).States.Reason!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryResultOfARefusedRecord_IsAbsentWithTheSameReason()
    {
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(Make(1000, i => Math.Sin(0.0237 * i)), Rate));

        Assert.Equal("no-plateau", Assert.Single(pulses.Findings).Code);
        Assert.Equal("no-plateau", pulses.Period.Reason!.Code);
        Assert.Equal("no-plateau", pulses.RisingDuration.Reason!.Code);
        Assert.Equal("no-plateau", pulses.Frequency.Reason!.Code);
        Assert.Equal("no-plateau", pulses.Jitter.Reason!.Code);
        Assert.Empty(pulses.Transitions);
        Assert.Throws<InvalidOperationException>(() => pulses.Period.Value);
    }

    [Fact]
    public void SingleEdge_HasADurationAndNoPeriod()
    {
        PulseMeasurement pulses = PulseMeasurement.Of(PulseRecords.FromInstants([50e-9], [], 100e-9, 5e9, 10e-9));

        Assert.Equal(8e-9, pulses.RisingDuration.Value.Mean.Seconds, 1e-15);
        Assert.Equal("single-value", pulses.RisingDuration.Value.StandardDeviation.Reason!.Code);
        Assert.Equal("no-transition", pulses.FallingDuration.Reason!.Code);
        Assert.Equal("incomplete-pulse", pulses.Period.Reason!.Code);
        Assert.Equal("incomplete-pulse", pulses.PositivePulseDuration.Reason!.Code);
        Assert.Equal("incomplete-pulse", pulses.DutyFactor.Reason!.Code);
    }

    [Fact]
    public void EdgeBetweenTwoSamples_IsBoundedAndNotMeasured()
    {
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(Make(1000, i => i / 50 % 2), 10.MSaPerS()));

        Finding finding = pulses.RisingDuration.Reason!;
        Assert.Equal("edge-not-resolved", finding.Code);
        Assert.Contains("at most 100 ns", finding.Message, StringComparison.Ordinal);
        Assert.Equal(100e-9, pulses.Transitions[0].AtMost.Value.Seconds, 1e-15);
        Assert.False(pulses.Transitions[0].IsResolved);
        Assert.Equal(10e-6, pulses.Period.Value.Mean.Seconds, 1e-12);
        Assert.Equal(0.5, pulses.DutyFactor.Value.Mean.Fraction, 1e-9);
    }

    [Fact]
    public void Train_IsMeasuredWithStatistics()
    {
        PulseMeasurement pulses = PulseMeasurement.Of(Train());

        Assert.Equal(40, pulses.TransitionCount);
        Assert.Equal(19, pulses.Period.Value.Count);
        Assert.Equal(100e-9, pulses.Period.Value.Mean.Seconds, 1e-14);
        Assert.Equal(10e6, pulses.Frequency.Value.Hertz, 1);
        Assert.Equal(0.4, pulses.DutyFactor.Value.Maximum.Fraction, 1e-9);
        Assert.Equal(40e-9, pulses.PositivePulseDuration.Value.Minimum.Seconds, 1e-15);
        Assert.Equal(60e-9, pulses.NegativePulseDuration.Value.Maximum.Seconds, 1e-15);
        Assert.Equal(0.8 / 1.6e-9, pulses.RisingSlewRate.Value.Mean.ToQuantity().SiValue, 1e3);
        Assert.Equal(-0.8 / 1.6e-9, pulses.FallingSlewRate.Value.Mean.ToQuantity().SiValue, 1e3);
        Assert.True(pulses.Jitter.Value.PeriodJitter.Seconds < 1e-14);
        Assert.Equal(0, pulses.Overshoot.Value.Maximum.Fraction, 12);
        Assert.Equal(["timebase-not-stated"], pulses.Findings.Select(x => x.Code));
    }

    [Fact]
    public void Noise_MovesInstantsByNoiseOverSlewAndIsMeasured()
    {
        PulseMeasurement pulses = PulseMeasurement.Of(Train(cycles: 400, noise: 0.02));

        Assert.Equal(0.02, pulses.States.Value.Noise.SiValue, 0.001);
        Assert.Equal(800, pulses.TransitionCount);
        // Instants are interpolated between two samples of independent noise around the middle of a 0.5 V/ns edge (handbook 5.12): σ/slew at most, 0.71 of it midway.
        double edge = 0.02 / 0.5e9;
        Assert.InRange(pulses.Jitter.Value.TimeIntervalErrorRms.Seconds, 0.65 * edge, 1.05 * edge);
        Assert.InRange(pulses.Jitter.Value.PeriodJitter.Seconds, Math.Sqrt(2) * 0.65 * edge, Math.Sqrt(2) * 1.05 * edge);
    }

    [Fact]
    public void NoisySquare_OfTenTimesTheNoise_IsStillMeasured()
    {
        PulseMeasurement pulses = PulseMeasurement.Of(Train(cycles: 100, noise: 0.1), PulseSettings.Default.WithStates(StateLevelMethod.ShorthMean));

        Assert.Equal(0, pulses.States.Value.Low.SiValue, 0.03);
        Assert.Equal(1, pulses.States.Value.High.SiValue, 0.03);
        Assert.Equal(200, pulses.TransitionCount);
        Assert.Equal(100e-9, pulses.Period.Value.Mean.Seconds, 1e-10);
    }

    [Fact]
    public void RuntsAndMissingPulses_AreCountedAndNamed()
    {
        double[] volts = Make(10_000, i =>
        {
            int pulse = i / 100, phase = i % 100;
            double height = pulse == 40 ? 0.7 : pulse is 60 or 61 ? 0 : 1;
            return height * Math.Clamp(Math.Min(phase - 20, 60 - phase) / 5.0, 0, 1);
        });
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(volts, Rate));

        Runt runt = Assert.Single(pulses.Runts);
        Assert.True(runt.IsPositive);
        Assert.Equal(0.7, runt.Extreme.SiValue, 12);
        Assert.Equal(4.0235714e-6, runt.Start.Seconds, 1e-11);
        Assert.Equal(3, pulses.MissingPulseCount);
        Assert.Contains(pulses.Findings, x => x.Code == "missing-pulses");
        Assert.Contains(pulses.Findings, x => x.Code == "runt-pulses");
        Assert.Equal("missing-pulses", pulses.Jitter.Reason!.Code);
        Assert.Equal(97 * 2, pulses.TransitionCount);
    }

    [Fact]
    public void Glitch_ThatCrossesTheMiddleTwiceOnAnEdge_IsRejectedByHysteresisAndSaid()
    {
        double[] volts = Make(2000, i => Math.Clamp((i - 1000) / 100.0 + 0.5, 0, 1));
        volts[1002] = 0.4;
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(volts, Rate));

        PulseTransition edge = Assert.Single(pulses.Transitions);
        Assert.False(edge.IsMonotone);
        Assert.Contains(pulses.Findings, x => x.Code == "edge-not-monotone");
        Assert.Contains(pulses.Findings, x => x.Code == "crossings-rejected");
        Assert.Equal(1000e-9, edge.Instant.Seconds, 1e-12);
    }

    [Fact]
    public void ClippedRecord_SaysSoOnEveryLevel()
    {
        byte[] codes = Make(1000, i => i / 100 % 2 == 0 ? 20.0 : 255).Select(x => (byte)x).ToArray();
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromCodes(codes, Rate, 1.mV(), 0.V()));

        Finding clipped = Assert.Single(pulses.Findings, x => x.Code == "clipped");
        Assert.Contains("500 samples", clipped.Message, StringComparison.Ordinal);
        Assert.Equal(0.235, pulses.States.Value.Amplitude.SiValue, 12);
    }

    [Fact]
    public void TwoLevelsThreeStepsApart_AreTooCoarseToBeStates()
    {
        byte[] codes = Make(1000, i => i / 100 % 2 == 0 ? 100.0 : 103).Select(x => (byte)x).ToArray();

        Assert.Equal("states-not-separated", PulseMeasurement.Of(Record.FromCodes(codes, Rate, 1.mV(), 0.V())).States.Reason!.Code);
    }

    [Fact]
    public void LongList_IsCutAndSaidWhileStatisticsCoverAll()
    {
        PulseMeasurement pulses = PulseMeasurement.Of(Train(), PulseSettings.Default.WithMostListed(5));

        Assert.Equal(5, pulses.Transitions.Count);
        Assert.Equal(40, pulses.TransitionCount);
        Assert.Equal(20, pulses.RisingDuration.Value.Count);
        Assert.Equal(["list-cut", "timebase-not-stated"], pulses.Findings.Select(x => x.Code));
    }

    [Fact]
    public void CurrentRecord_HasPulsesInAmperesAndNoSlewRate()
    {
        Record volts = Train();
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromValues(volts.ToSiValues(), QuantityKind.Current, volts.SampleRate));

        Assert.Same(QuantityKind.Current, pulses.States.Value.High.Kind);
        Assert.Equal("no-slew-rate", pulses.RisingSlewRate.Reason!.Code);
        Assert.Equal("no-slew-rate", pulses.Transitions[0].SlewRate.Reason!.Code);
        Assert.Throws<ArgumentException>(() => PulseMeasurement.Of(pulses.Record, PulseSettings.Default.WithStateLevels(0.V(), 1.V())));
    }

    [Fact]
    public void EmptyRegionBeforeTheFirstSample_MakesAPartialEdgeIncomplete()
    {
        // The record begins in the middle of a rising edge: that edge is no transition of the record.
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(Make(1000, i => Math.Clamp(0.5 + i / 20.0, 0, 1) - Math.Clamp((i - 600) / 20.0, 0, 1)), Rate));

        Assert.Equal(1, pulses.TransitionCount);
        Assert.False(pulses.Transitions[0].IsRising);
    }

    [Fact]
    public void Settings_AreRefusedByName()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PulseSettings.Default.WithReferences(Ratio.FromPercent(90), Ratio.FromPercent(50), Ratio.FromPercent(10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => PulseSettings.Default.WithHysteresis(Ratio.FromPercent(50)));
        Assert.Throws<ArgumentOutOfRangeException>(() => PulseSettings.Default.WithStateLevels(1.V(), 1.V()));
        Assert.Throws<ArgumentOutOfRangeException>(() => PulseSettings.Default.WithStates(StateLevelMethod.Given));
        Assert.Throws<ArgumentOutOfRangeException>(() => PulseSettings.Default.WithStates(StateLevelMethod.HistogramMode, 1));
    }

    [Fact]
    public void Codes_AreMeasuredAsTheNumbersTheyStandFor()
    {
        Record record = Train(noise: 0.01);
        byte[] codes = record.ToSiValues().Select(x => (byte)Math.Clamp(Math.Round((x + 0.2) / 0.006), 0, 255)).ToArray();
        Record eight = Record.FromCodes(codes, record.SampleRate, 6.mV(), -0.2.V());
        PulseSettings known = PulseSettings.Default.WithStateLevels(0.V(), 1.V());
        PulseMeasurement ofCodes = PulseMeasurement.Of(eight, known), ofNumbers = PulseMeasurement.Of(Record.FromVolts(eight.ToSiValues(), record.SampleRate).WithResolution(6.mV()), known);

        Assert.Equal(ofNumbers.TransitionCount, ofCodes.TransitionCount);
        Assert.Equal(ofNumbers.RisingDuration.Value.Mean, ofCodes.RisingDuration.Value.Mean);
        Assert.Equal(ofNumbers.Overshoot.Value.Maximum, ofCodes.Overshoot.Value.Maximum);
        Assert.Equal(ofNumbers.Period.Value.Mean, ofCodes.Period.Value.Mean);
    }

    [Fact]
    public void TransitionThatTurnsBack_HoldsTheSamplesUpToThere_NotTheRestOfTheRecord()
    {
        // Up in steps of a tenth to 0.7 and down again, then whole pulses: with a hysteresis of a tenth the first counts as a transition, though it never passes 0.9.
        double[] turned = [.. Enumerable.Range(0, 8).Select(i => i / 10.0), .. Enumerable.Range(1, 7).Select(i => 0.7 - i / 10.0)];
        double[] volts = [.. new double[20], .. turned, .. Enumerable.Range(0, 4000).Select(i => i / 100 % 2 == 0 ? 0.0 : 1.0)];
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(volts, 1.GSaPerS()), PulseSettings.Default.WithStateLevels(0.V(), 1.V()).WithHysteresis(Ratio.FromPercent(9)));

        PulseTransition first = pulses.Transitions[0];
        Assert.True(first.IsRising);
        Assert.Equal("edge-incomplete", first.TransitionDuration.Reason!.Code);
        // 0.1 to 0.7 and back to 0.5; the next sample, 0.4, is outside the hysteresis on the other side.
        Assert.Equal(9, first.SamplesOnEdge);
    }
}
