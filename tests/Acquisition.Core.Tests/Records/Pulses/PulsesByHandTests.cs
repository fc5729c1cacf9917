using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>Pulses whose answers can be counted by hand, at several sizes of the signal: what is told of further states, missing pulses, edges too fast, and jitter.</summary>
public sealed class PulsesByHandTests
{
    private static PulseMeasurement Of(IEnumerable<double> volts) => PulseMeasurement.Of(Record.FromVolts([.. volts], 1.GSaPerS()));

    private static Finding? Said(PulseMeasurement pulses, string code) => pulses.Findings.SingleOrDefault(finding => finding.Code == code);

    private static IEnumerable<double> Levels(double volts, params (double Part, int Samples)[] levels) => levels.SelectMany(level => Enumerable.Repeat(volts * level.Part, level.Samples));

    // Three levels held as long as each other, counted by hand: 4 x 200 samples at the third, half-way, three quarters up, or beyond the other two.
    [Theory]
    [InlineData(0.02, 0.5)]
    [InlineData(20, 0.5)]
    [InlineData(0.02, 0.75)]
    [InlineData(20, 0.3)]
    public void AThirdLevel_IsToldWhereItLies_WhateverTheSizeOfTheSignal(double volts, double part)
    {
        Finding more = Said(Of(Enumerable.Repeat(0, 4).SelectMany(_ => Levels(volts, (0, 400), (part, 200), (1, 400)))), "more-than-two-states")!;
        Assert.NotNull(more);
        Match at = Regex.Match(more.Message, @"(-?[0-9.]+ [mµ]?V)");
        Assert.Equal(volts * part, Quantity.Parse(at.Groups[1].Value).SiValue, 0.02 * volts);
    }

    // A straight ramp between the states rests nowhere: a fifth of it lies in each band.
    [Theory]
    [InlineData(0.02)]
    [InlineData(20)]
    public void ASlowRampBetweenTwoLevels_IsNoThirdOne(double volts)
    {
        IEnumerable<double> ramp = Enumerable.Range(1, 399).Select(i => volts * i / 400);
        Assert.Null(Said(Of(Enumerable.Repeat(0, 4).SelectMany(_ => Levels(volts, (0, 400)).Concat(ramp).Concat(Levels(volts, (1, 400))))), "more-than-two-states"));
    }

    private static IEnumerable<double> Pulses(IEnumerable<int> gaps) => gaps.SelectMany(gap => Levels(1, (0, gap - 20), (0.5, 1), (1, 18), (0.5, 1))).Concat(Levels(1, (0, 60)));

    // Nine periods of 100 samples, one of 200 and one of 300: one and two pulses are missing.
    [Fact]
    public void PulsesThatAreMissing_AreCounted() =>
        Assert.Equal(3, Of(Pulses([100, 100, 100, 100, 200, 100, 100, 100, 300, 100, 100, 100, 100])).MissingPulseCount);

    // Where fewer than seven of ten periods are alike nothing is missing, because nothing was regular.
    [Fact]
    public void OfATrainThatIsNotRegular_NothingIsMissing() =>
        Assert.Equal(0, Of(Pulses([100, 100, 200, 100, 300, 100, 200, 100, 400, 100, 300, 100, 100])).MissingPulseCount);

    // One sample between the levels of each falling edge, none between those of a rising one.
    [Fact]
    public void EdgesTooFastForTheSamples_AreToldByDirection()
    {
        Finding[] fast = [.. Of(Enumerable.Repeat(0, 5).SelectMany(_ => Levels(1, (0, 50), (1, 50), (0.5, 1)))).Findings.Where(finding => finding.Code == "edge-not-resolved")];
        Assert.Contains(fast, finding => finding.Message.StartsWith("4 of 4 rising", StringComparison.Ordinal) || finding.Message.StartsWith("5 of 5 rising", StringComparison.Ordinal));
        Assert.Contains(fast, finding => Regex.IsMatch(finding.Message, "^[45] of [45] falling"));
    }

    private static double[] Ramps(IReadOnlyList<double> instants, int samples)
    {
        var volts = new double[samples];
        int next = 0;
        for (int i = 0; i < samples; i++)
        {
            while (next < instants.Count && instants[next] + 4 < i)
                next++;
            double part = next < instants.Count ? Math.Clamp((i - instants[next] + 4) / 8, 0, 1) : 0;
            volts[i] = next % 2 == 0 ? part : 1 - part;
        }
        return volts;
    }

    // Periods of 101 and 99 samples by turns: a period jitter of 1 ns, exactly, less what 39 differences leave of it; no noise to speak of beside it.
    [Fact]
    public void PeriodsByTurns_HaveTheJitterThatIsInThem()
    {
        double[] rising = [.. Enumerable.Range(0, 41).Select(k => 60.25 + (100 * k) + (k % 2))];
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(Ramps([.. rising.SelectMany(t => new[] { t, t + 50 })], 4300), 1.GSaPerS()), PulseSettings.Default.WithStateLevels(0.V(), 1.V()));
        Assert.Equal(Math.Sqrt(40 / 39.0) * 1e-9, pulses.Jitter.Value.PeriodJitter.Seconds, 1e-12);
        Assert.Equal(100e-9, pulses.Period.Value.Mean.Seconds, 1e-15);
        Assert.Equal(1e-9, pulses.Period.Value.Maximum.Seconds - 100e-9, 1e-13);
    }

    // The mean of 20 durations of positive pulses is as uncertain as that of the negative ones between alike edges, and both exist where there are both.
    [Fact]
    public void DurationsOfPositiveAndNegativePulses_AreAsUncertain()
    {
        var random = new Random(4);
        double[] volts = Ramps([.. Enumerable.Range(0, 42).Select(k => 60.3 + (50 * k))], 2250);
        for (int i = 0; i < volts.Length; i++)
            volts[i] += 0.01 * PulseRecords.Gaussian(random);
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(volts, 1.GSaPerS()));
        double positive = pulses.PositivePulseDurationUncertainty.Value.Standard.Seconds, negative = pulses.NegativePulseDurationUncertainty.Value.Standard.Seconds;
        Assert.Equal(21, pulses.PositivePulseDuration.Value.Count);
        Assert.InRange(positive / negative, 0.7, 1.4);
        // Noise over slew, 0.01 V / (1 V / 8 ns), at two crossings between two samples each, over the root of 21.
        Assert.InRange(positive, 0.5 * 0.01 * 8e-9 * Math.Sqrt(2.0 / 21), 2 * 0.01 * 8e-9 * Math.Sqrt(2.0 / 21));
    }
}
