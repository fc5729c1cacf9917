using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records.Pulses;

/// <summary>The noise of the states against the noise that was added: slow change of the states is none of it, noise behind a bandwidth limit is.</summary>
public sealed class StateNoiseTests
{
    private const int Points = 20_000;

    /// <summary>Edges of 6 samples between 0 V and 1 V, half a period apart; what is added after each edge is turned over with it.</summary>
    private static double[] Square(int period, Func<double, double> afterEdge)
    {
        var volts = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            int half = period / 2, since = i % half;
            double sign = i / half % 2 == 0 ? -1 : 1, ramp = i < half ? 1 : Math.Min(1, since / 6.0);
            volts[i] = 0.5 + sign * (ramp - 0.5 + (i < half ? 0 : afterEdge(since)));
        }
        return volts;
    }

    private static double[] With(double[] volts, double noise, int seed)
    {
        var random = new Random(seed);
        return [.. volts.Select(x => x + noise * PulseRecords.Gaussian(random))];
    }

    /// <summary>Noise behind a single pole, whose correlation falls to 1/e within so many samples.</summary>
    private static double[] WithSlow(double[] volts, double noise, double samples, int seed)
    {
        var random = new Random(seed);
        double keep = Math.Exp(-1 / samples), now = PulseRecords.Gaussian(random);
        return [.. volts.Select(x => x + noise * (now = keep * now + Math.Sqrt(1 - keep * keep) * PulseRecords.Gaussian(random)))];
    }

    private static PulseMeasurement Measure(double[] volts) => PulseMeasurement.Of(Record.FromVolts(volts, 1.GSaPerS()));

    private static double Noise(double[] volts) => Measure(volts).States.Value.Noise.SiValue;

    /// <summary>
    /// The mean over 40 records. The standard deviation of one from n samples is at least 1 / sqrt(2 n) of it (JCGM 100 E.4.3), here 0.7 %; medians know it half as well, and the larger of two states is
    /// taken, which is 0.56 standard deviations more.
    /// </summary>
    [Theory]
    [InlineData(40), InlineData(100), InlineData(400), InlineData(2000), InlineData(20_000)]
    public void WhiteNoise_IsWhatWasAdded(int period)
    {
        double[] found = [.. Enumerable.Range(0, 40).Select(seed => Noise(With(Square(period, _ => 0), 0.01, seed)))];

        Assert.Equal(0.01, found.Average(), 0.00015);
        Assert.True(Math.Sqrt(found.Average(x => Math.Pow(x - found.Average(), 2))) < 0.0002);
    }

    [Property(MaxTest = 100)]
    public Property WhiteNoiseOfAnySize_IsFoundWhateverTheStatesDo() => Prop.ForAll(
        Gen.Choose(0, 1_000_000).ToArbitrary(), Gen.Choose(3, 40).Select(x => 1e-3 * x).ToArbitrary(), Gen.Choose(0, 3).ToArbitrary(), (seed, noise, kind) =>
        {
            double[] moving = Square(2000, kind switch
            {
                0 => t => 0.005 * Math.Exp(-t / 100),
                1 => t => -0.05 * t / 1000,
                2 => t => 0.1 * Math.Exp(-t / 100) * Math.Sin(2 * Math.PI * t / 60),
                _ => _ => 0,
            });
            double found = Noise(With(kind == 3 ? [.. moving.Select((x, i) => x + 0.03 * Math.Sin(2 * Math.PI * i / 9000))] : moving, noise, seed));
            return (found > 0.95 * noise && found < 1.06 * noise).Label(FormattableString.Invariant($"found {found:G6} of {noise:G6}"));
        });

    /// <summary>Settling to 0.1 % is told where the noise is 0.2 mV, whatever the 5 mV tail does; it was refused as below the noise, which was 1.2 mV.</summary>
    [Theory]
    [InlineData(100, 0.1), InlineData(400, 0.1), InlineData(2000, 0.1), InlineData(20_000, 0.1), InlineData(2000, 0.03)]
    public void SettlingTail_IsNoNoise_SoThatSettlingIsTold(int period, double part)
    {
        PulseMeasurement pulses = Measure(With(Square(period, t => 0.005 * Math.Exp(-t / (part * period))), 0.0002, 1));

        Assert.Equal(0.0002, pulses.States.Value.Noise.SiValue, 0.00001);
        Assert.NotEqual("settling-below-noise", pulses.Transitions[0].SettlingDuration(Ratio.FromPercent(0.1)).Reason?.Code);
    }

    /// <summary>Without noise, an exponential tail of ten time constants leaves the uncertainty of an instant to interpolation and levels.</summary>
    [Fact]
    public void TailWithoutNoise_IsNearlyNoNoise() => Assert.InRange(Noise(Square(400, t => 0.005 * Math.Exp(-t / 20))), 0, 2e-5);

    /// <summary>The corner is 1 / (2 pi samples) of the sample rate: 1/13, 1/50 and 1/190 of it. All of the noise is found; where the states are too short to tell it from change, that is said.</summary>
    [Theory]
    [InlineData(2, 100, true), InlineData(2, 2000, false), InlineData(8, 400, true), InlineData(8, 20_000, false), InlineData(30, 100, true), InlineData(30, 2000, true), InlineData(200, 2000, true)]
    public void NoiseBehindABandwidthLimit_IsNotTakenForChange(double samples, int period, bool said)
    {
        PulseMeasurement[] found = [.. Enumerable.Range(0, 20).Select(seed => Measure(WithSlow(Square(period, _ => 0), 0.01, samples, seed)))];

        Assert.InRange(found.Average(x => x.States.Value.Noise.SiValue), 0.0095, 0.0106);
        if (said)
            Assert.True(found.Count(x => x.Findings.Any(y => y.Code == "noise-is-slow")) > 15);
    }

    /// <summary>Four periods of 100 samples hold some ten independent values of such noise: none of them may level off by chance.</summary>
    [Fact]
    public void SlowNoiseOfAShortRecord_IsNotTakenForLess()
    {
        double[] found = [.. Enumerable.Range(0, 200).Select(seed => Noise([.. WithSlow(Square(100, _ => 0), 0.02, 16, seed).Take(400)]))];

        Assert.InRange(found.Count(x => x < 0.01), 0, 4);
        Assert.InRange(found.Average(), 0.016, 0.022);
    }

    /// <summary>The standard deviation of rounded normal noise about a code: sqrt(sum over k of (8 k mV)^2 (F(8 k + 4) - F(8 k - 4))), F by scipy.stats.norm.cdf of SciPy 1.10.1.</summary>
    [Theory]
    [InlineData(0.010, 0.0102632), InlineData(0.004, 0.0045636), InlineData(0.002, 0.0017065)]
    public void NoiseOfACodedRecord_HoldsTheRoundingOfTheConverter(double noise, double expected)
    {
        foreach (int period in new[] { 100, 400, 2000 })
        {
            double[] found = [.. Enumerable.Range(0, 20).Select(seed => PulseMeasurement.Of(Coded(With(Square(period, _ => 0), noise, seed))).States.Value.Noise.SiValue)];
            Assert.InRange(found.Average(), 0.98 * expected, 1.04 * expected);
        }
        Assert.Equal(0, PulseMeasurement.Of(Coded(Square(400, _ => 0))).States.Value.Noise.SiValue);
    }

    /// <summary>The same volts, read from a file that does not say what a step is.</summary>
    [Fact]
    public void NoiseOnAFewCodes_IsFoundWhereNobodySaysTheStep()
    {
        foreach (double samples in new[] { 8.0, 30 })
        {
            double[] volts = [.. WithSlow(Square(2000, _ => 0), 0.01, samples, 3).Select(x => 0.008 * Math.Round(x / 0.008))];
            Assert.InRange(Noise(volts), 0.009, 0.0125);
        }
        // White noise of half a step, as above; it was 0, since most samples are exactly at the level.
        Assert.Equal(0.0045636, Noise([.. With(Square(2000, _ => 0), 0.004, 5).Select(x => 0.008 * Math.Round(x / 0.008))]), 0.0002);
    }

    [Fact]
    public void CleanRecords_SayNothingOfSlowNoise()
    {
        var all = new List<double[]>();
        foreach (int period in new[] { 40, 100, 400, 2000 })
        {
            all.Add(Square(period, _ => 0));
            all.Add(Square(period, t => 0.05 * Math.Exp(-t / (0.1 * period))));
            for (int seed = 0; seed < 10; seed++)
                all.Add(With(Square(period, _ => 0), 0.004, seed));
        }
        foreach (double[] volts in all)
        {
            Assert.DoesNotContain(Measure(volts).Findings, x => x.Code == "noise-is-slow");
            Assert.DoesNotContain(PulseMeasurement.Of(Coded(volts)).Findings, x => x.Code == "noise-is-slow");
        }
    }

    /// <summary>The rare state of a long record is looked for: 300 samples of it among 2 million.</summary>
    [Fact]
    public void RareState_ShowsItsNoiseToo()
    {
        var random = new Random(4);
        double[] volts = [.. Enumerable.Range(0, 2_000_000).Select(i => i is > 1_234_500 and < 1_234_800 ? 1 + 0.02 * PulseRecords.Gaussian(random) : 0.002 * PulseRecords.Gaussian(random))];

        Assert.Equal(0.02, Noise(volts), 0.003);
    }

    [Fact]
    public void NoiseThatScipyDrew_IsFound_BesideDroopAndTail()
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "Records", "Data");
        using Stream stream = File.OpenRead(Path.Combine(folder, "scipy-states.csv"));
        Record[] records = [.. CsvRecords.Read(stream, CsvFormat.Sniffed.WithSampleRate(1.SaPerS()))];
        JsonElement scipy = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "scipy-states.json"))).RootElement;
        double white = scipy.GetProperty("white_noise").GetDouble(), limited = scipy.GetProperty("limited_noise").GetDouble();

        // 2500 samples of each state; those of the other noise are correlated over some ten.
        Assert.Equal(white, PulseMeasurement.Of(records[0]).States.Value.Noise.SiValue, 0.04 * white);
        Assert.Equal(limited, PulseMeasurement.Of(records[1]).States.Value.Noise.SiValue, 0.1 * limited);
    }

    private static Record Coded(double[] volts) => Record.FromCodes([.. volts.Select(x => (short)Math.Round(x / 0.008))], 1.GSaPerS(), 8.mV(), 0.V());
}
