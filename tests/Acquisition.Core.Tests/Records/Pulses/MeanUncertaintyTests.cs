using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>
/// Uncertainties of mean period, frequency and duty factor against what many simulated captures of one signal really do (JCGM 101 in the open): the root mean square of what is
/// stated over that of the errors. Seeds are fixed.
/// </summary>
public sealed class MeanUncertaintyTests
{
    private const double Rate = 1e9, Low = 0, High = 1;

    /// <summary>The scatter of so many is known to 1/sqrt(2 x 120) = 6.5 %.</summary>
    private const int Captures = 120;

    private static readonly PulseSettings Known = PulseSettings.Default.WithStateLevels(Low.V(), High.V()).WithLeastSamplesOnEdge(1);

    /// <summary>Pulses with linear edges of 6 ns, from the instants of their edges in ns, with noise in volts; in steps of a converter where it has bits.</summary>
    private static Record Capture(double[] edges, double noise, int bits, Random random)
    {
        double[] volts = new double[(int)edges[^1] + 200];
        int next = 0;
        for (int i = 0; i < volts.Length; i++)
        {
            while (next < edges.Length && edges[next] + 3 < i)
                next++;
            double high = next < edges.Length ? Math.Clamp((i - edges[next] + 3) / 6, 0, 1) : 0;
            volts[i] = (next % 2 == 0 ? high : 1 - high) + noise * PulseRecords.Gaussian(random);
        }
        if (bits == 0)
            return Record.FromVolts(volts, SampleRate.FromSamplesPerSecond(Rate));
        double step = 2.0 / (1 << bits);
        return Record.FromCodes([.. volts.Select(x => (short)Math.Round(x / step))], SampleRate.FromSamplesPerSecond(Rate), Voltage.FromVolts(step), 0.V());
    }

    /// <summary>Instants of rising and falling edges in ns: a clock of this period and duty factor, jitter of single edges, jitter that adds up from period to period.</summary>
    private static double[] Edges(int periods, double period, double duty, double white, double walk, Random random)
    {
        var edges = new List<double>();
        double start = 200 + 10 * random.NextDouble(), drift = 0;
        for (int k = 0; k <= periods; k++)
        {
            edges.Add(start + k * period + drift + white * PulseRecords.Gaussian(random));
            edges.Add(start + k * period + drift + duty * period + white * PulseRecords.Gaussian(random));
            drift += walk * PulseRecords.Gaussian(random);
        }
        return [.. edges];
    }

    private static double Ratio(int captures, Func<Random, (double Error, double Stated)> capture)
    {
        (double Error, double Stated)[] all = [.. Enumerable.Range(0, captures).Select(k => capture(new Random(1000 + k)))];
        return Math.Sqrt(all.Average(x => x.Stated * x.Stated) / all.Average(x => x.Error * x.Error));
    }

    [Theory]
    [InlineData(100, 0.02, 0, 0.0, 0.0)]
    [InlineData(100, 0.02, 8, 0.0, 0.0)]
    [InlineData(101, 0.0, 8, 0.0, 0.0)]
    [InlineData(100, 0.01, 0, 0.4, 0.0)]
    [InlineData(100, 0.01, 0, 0.0, 0.3)]
    [InlineData(400, 0.01, 0, 0.3, 0.05)]
    [InlineData(20, 0.02, 0, 0.0, 0.3)]
    [InlineData(2, 0.008, 0, 0.0, 0.0, 2.5)]
    [InlineData(1, 0.008, 0, 0.0, 0.0)]
    public void MeanPeriod_ScattersAsMuchAsIsStated_WhateverKindOfJitterItHas(int periods, double noise, int bits, double white, double walk, double most = 1.5)
    {
        double ratio = Ratio(Captures, random =>
        {
            PulseMeasurement pulses = PulseMeasurement.Of(Capture(Edges(periods, 41.37, 0.45, white, walk, random), noise, bits, random), Known);
            Assert.Equal(periods, pulses.Period.Value.Count);
            return (pulses.Period.Value.Mean.Seconds - 41.37e-9, pulses.PeriodUncertainty.Value.Standard.Seconds);
        });
        Assert.InRange(ratio, 0.8, most);
    }

    [Theory]
    [InlineData(1, 0.5, 0.008, 0, 0.0)]
    [InlineData(60, 0.5, 0.02, 0, 0.0)]
    [InlineData(60, 0.2, 0.02, 8, 0.0)]
    [InlineData(60, 0.7, 0.01, 0, 0.3)]
    [InlineData(60, 0.5, 0.0, 8, 0.0, 61.37, 4)]
    [InlineData(60, 0.48, 0.0, 8, 0.0, 60.0)]
    public void MeanDutyFactor_ScattersAsMuchAsIsStated(int periods, double duty, double noise, int bits, double white, double period = 61.37, double most = 1.3)
    {
        double ratio = Ratio(Captures, random =>
        {
            PulseMeasurement pulses = PulseMeasurement.Of(Capture(Edges(periods, period, duty, white, 0, random), noise, bits, random), Known);
            Assert.Equal(periods, pulses.DutyFactor.Value.Count);
            return (pulses.DutyFactor.Value.Mean.Fraction - duty, pulses.DutyFactorUncertainty.Value.Standard.Fraction);
        });
        Assert.InRange(ratio, 0.8, most);
    }

    /// <summary>
    /// Periods of whole and of half samples are rounded in one way or in two, whatever their number; noise of two steps averages all of it. Noise of a quarter of a step averages some, but
    /// is not seen, and phases that sweep evenly average more than independent errors would.
    /// </summary>
    [Theory]
    [InlineData(60.0, 0.0)]
    [InlineData(60.5, 0.0, 2)]
    [InlineData(60.0, 0.002, 2.6)]
    [InlineData(60.0, 0.016)]
    [InlineData(61.37, 0.016)]
    [InlineData(61.37, 0.0, 7.5)]
    public void MeanPulseDuration_ScattersAsMuchAsIsStated_AlsoWhereItIsSampledAtTheSamePhases(double period, double noise, double most = 1.5)
    {
        double ratio = Ratio(Captures, random =>
        {
            PulseMeasurement pulses = PulseMeasurement.Of(Capture(Edges(60, period, 0.483, 0, 0, random), noise, 8, random), Known);
            return (pulses.PositivePulseDuration.Value.Mean.Seconds - 0.483 * period * 1e-9, pulses.PositivePulseDurationUncertainty.Value.Standard.Seconds);
        });
        Assert.True(ratio >= 0.75 && ratio <= most, FormattableString.Invariant($"stated over scatter {ratio:F3}"));
    }

    [Fact]
    public void DutyFactor_OfKnownEdges_IsWhatTheArithmeticByHandGives()
    {
        // Ramps of 10, 20 and 10 samples; noise of 10 mV rms on the plateaus only. A crossing 0.4 of the way between two samples moves by 10 mV x sqrt(0.36 + 0.16) over its slope.
        double[] volts = [.. Enumerable.Range(0, 160).Select(i => Math.Clamp((i - 12.4) / 10, 0, 1) - Math.Clamp((i - 52.4) / 20, 0, 1) + Math.Clamp((i - 112.4) / 10, 0, 1))];
        for (int i = 0; i < volts.Length; i++)
            volts[i] += i is < 12 or > 126 || i is > 24 and < 51 || i is > 75 and < 110 ? (i % 2 == 0 ? 0.01 : -0.01) : 0;
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(volts, 1.GSaPerS()), Known.WithTimebase(Core.Ratio.FromPercent(3), 30.ps()));
        double noise = pulses.States.Value.NoiseSi, rise = noise * Math.Sqrt(0.52) / 0.1, fall = 2 * rise;

        // From 17.4 to 62.4 of 17.4 to 117.4 ns: 45 %. Sensitivities: falling 1, first rising 0.55, second rising 0.45, each over 100 ns; jitter the same at every edge; no time base.
        Assert.Equal(0.45, pulses.DutyFactor.Value.Mean.Fraction, 1e-12);
        double ofNoise = Math.Sqrt(fall * fall + (0.55 * 0.55 + 0.45 * 0.45) * rise * rise) / 100, ofJitter = 0.03 * Math.Sqrt(1 + 0.55 * 0.55 + 0.45 * 0.45) / 100;
        DutyFactorUncertainty u = pulses.DutyFactorUncertainty.Value;
        Assert.Equal(Math.Sqrt(ofNoise * ofNoise + ofJitter * ofJitter), u.Noise.Fraction, 1e-12);
        Assert.Equal(u.Noise.Fraction, u.Standard.Fraction, 1e-12);
        Assert.Equal(0, u.StateLevels.Fraction);
        Assert.StartsWith("u = ", u.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void StateThatIsOff_MovesTheDutyFactor_AsMuchAsIsStated()
    {
        // Levels found by their histogram, uncertain to some millivolts; moved by just that much, the duty factor moves by the stated part.
        var random = new Random(5);
        Record record = Capture(Edges(40, 61.37, 0.3, 0, 0, random), 0.02, 8, random);
        PulseMeasurement found = PulseMeasurement.Of(record);
        StateLevels states = found.States.Value;
        Assert.True(states.LowUncertaintySi > 1e-3);

        double Duty(double low, double high) => PulseMeasurement.Of(record, PulseSettings.Default.WithStateLevels(Voltage.FromVolts(states.LowSi + low), Voltage.FromVolts(states.HighSi + high))).DutyFactor.Value.Mean.Fraction;
        double byLow = Duty(states.LowUncertaintySi, 0) - Duty(0, 0), byHigh = Duty(0, states.HighUncertaintySi) - Duty(0, 0);
        Assert.Equal(Math.Sqrt(byLow * byLow + byHigh * byHigh), found.DutyFactorUncertainty.Value.StateLevels.Fraction, 0.15 * found.DutyFactorUncertainty.Value.StateLevels.Fraction);
    }

    [Fact]
    public void PeriodOfAListThatIsCut_KeepsTheWholeRecord()
    {
        var random = new Random(7);
        Record record = Capture(Edges(100, 41.37, 0.45, 0, 0, random), 0.02, 0, random);
        PulseSettings settings = Known.WithTimebase(Core.Ratio.FromPartsPerMillion(2000));
        PulseMeasurement whole = PulseMeasurement.Of(record, settings), cut = PulseMeasurement.Of(record, settings.WithMostListed(30));

        Assert.Equal(2000e-6 * 41.37e-9 / Math.Sqrt(3), whole.PeriodUncertainty.Value.Timebase.Seconds, 1e-13);
        Assert.Equal(whole.PeriodUncertainty.Value.Timebase.Seconds, cut.PeriodUncertainty.Value.Timebase.Seconds, 1e-13);
        Assert.InRange(cut.PeriodUncertainty.Value.Noise.Seconds / whole.PeriodUncertainty.Value.Noise.Seconds, 0.8, 1.25);
        Assert.Equal("incomplete-pulse", PulseMeasurement.Of(record, settings.WithMostListed(0)).PeriodUncertainty.Reason!.Code);
        Assert.Equal("incomplete-pulse", PulseMeasurement.Of(record, settings.WithMostListed(0)).DutyFactorUncertainty.Reason!.Code);
    }

    [Fact]
    public void DutyFactorThatIsAbsent_HasNoUncertainty()
    {
        PulseMeasurement single = PulseMeasurement.Of(Record.FromVolts([.. Enumerable.Range(0, 100).Select(i => i < 50 ? 0.0 : 1.0)], 1.GSaPerS()));
        Assert.Equal("incomplete-pulse", single.DutyFactorUncertainty.Reason!.Code);
    }
}
