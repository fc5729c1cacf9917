using System;
using System.Linq;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Xunit;
using Xunit;
using static Acquisition.Core.Tests.Records.PulseMeasurementTests;

namespace Acquisition.Core.Tests.Records;

/// <summary>What scaling, reversal of time and order of pulses leave as it is.</summary>
public sealed class PulseLawsTests
{
    [Property(MaxTest = 30)]
    public void Scaling_OfAmplitudeAndOffset_LeavesTimesAndScalesLevels(NormalFloat gain, NormalFloat offset, int seed)
    {
        double k = Math.Exp(Math.IEEERemainder(gain.Get, 3)), o = Math.IEEERemainder(offset.Get, 5);
        Record record = Train(noise: 0.01, seed: seed);
        PulseMeasurement plain = PulseMeasurement.Of(record), scaled = PulseMeasurement.Of(Record.FromVolts(record.ToSiValues().Select(x => k * x + o).ToArray(), record.SampleRate));

        Assert.Equal(plain.TransitionCount, scaled.TransitionCount);
        // A sample on the edge of a bin may fall to either side after rounding: levels then move by their noise.
        Assert.Equal(k * plain.States.Value.Amplitude.SiValue, scaled.States.Value.Amplitude.SiValue, 0.02 * k);
        Assert.Equal(plain.Period.Value.Mean.Seconds, scaled.Period.Value.Mean.Seconds, 2e-11);
        Assert.Equal(plain.RisingDuration.Value.Mean.Seconds, scaled.RisingDuration.Value.Mean.Seconds, 1e-10);
    }

    [Property(MaxTest = 30)]
    public void Scaling_OfTime_ScalesDurationsAndLeavesRatios(PositiveInt slower, int seed)
    {
        Record record = Train(noise: 0.01, seed: seed), slow = Record.FromVolts(record.ToSiValues(), SampleRate.FromSamplesPerSecond(5e9 / slower.Get));
        PulseMeasurement fast = PulseMeasurement.Of(record), late = PulseMeasurement.Of(slow);

        Assert.Equal(slower.Get, late.Period.Value.Mean.Seconds / fast.Period.Value.Mean.Seconds, 1e-9 * slower.Get);
        Assert.Equal(slower.Get, late.FallingDuration.Value.Maximum.Seconds / fast.FallingDuration.Value.Maximum.Seconds, 1e-9 * slower.Get);
        Assert.Equal(fast.DutyFactor.Value.Mean.Fraction, late.DutyFactor.Value.Mean.Fraction, 1e-9);
        Assert.Equal(fast.Overshoot.Value.Mean.Fraction, late.Overshoot.Value.Mean.Fraction, 1e-9);
    }

    [Property(MaxTest = 30)]
    public void ReversalOfTime_SwapsRiseAndFall_AndPreshootWithOvershoot(byte width, byte shape)
    {
        double edge = 4 + shape % 20;
        double[] volts = Make(2000, i => Math.Clamp((i - 500) / edge, 0, 1) - Math.Clamp((i - 900 - width) / (2 * edge), 0, 1) + (i > 500 + edge && i < 505 + edge ? 0.05 : 0));
        PulseSettings known = PulseSettings.Default.WithStateLevels(0.V(), 1.V());
        PulseMeasurement forward = PulseMeasurement.Of(Record.FromVolts(volts, Rate), known), back = PulseMeasurement.Of(Record.FromVolts(volts.Reverse().ToArray(), Rate), known);

        Assert.Equal(forward.RisingDuration.Value.Mean.Seconds, back.FallingDuration.Value.Mean.Seconds, 1e-15);
        Assert.Equal(forward.FallingDuration.Value.Mean.Seconds, back.RisingDuration.Value.Mean.Seconds, 1e-15);
        Assert.Equal(forward.PositivePulseDuration.Value.Mean.Seconds, back.PositivePulseDuration.Value.Mean.Seconds, 1e-15);
        Assert.Equal(forward.Transitions[0].Overshoot.Value.Fraction, back.Transitions[1].Preshoot.Value.Fraction, 1e-12);
        Assert.True(forward.Transitions[0].Overshoot.Value.Fraction > 0.04);
    }

    [Property(MaxTest = 30)]
    public void Permutation_OfPulses_LeavesTheStatistics(int seed)
    {
        var random = new System.Random(seed);
        double[][] pulses = Make(12, _ => 3 + random.NextDouble() * 9).Select(edge => Make(200, i => Math.Clamp((i - 60) / edge + 0.5, 0, 1) - Math.Clamp((i - 140) / edge + 0.5, 0, 1))).ToArray();
        PulseSettings known = PulseSettings.Default.WithStateLevels(0.V(), 1.V());
        PulseMeasurement first = PulseMeasurement.Of(Record.FromVolts(pulses.SelectMany(x => x).ToArray(), Rate), known);
        random.Shuffle(pulses);
        PulseMeasurement second = PulseMeasurement.Of(Record.FromVolts(pulses.SelectMany(x => x).ToArray(), Rate), known);

        Assert.Equal(first.RisingDuration.Value.Mean.Seconds, second.RisingDuration.Value.Mean.Seconds, 1e-16);
        Assert.Equal(first.RisingDuration.Value.StandardDeviation.Value.Seconds, second.RisingDuration.Value.StandardDeviation.Value.Seconds, 1e-16);
        Assert.Equal(first.FallingDuration.Value.Maximum.Seconds, second.FallingDuration.Value.Maximum.Seconds, 1e-16);
        Assert.Equal(first.PositivePulseDuration.Value.Mean.Seconds, second.PositivePulseDuration.Value.Mean.Seconds, 1e-16);
    }
}
