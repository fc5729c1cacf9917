using System;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Tests.Records.Sine;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records.Sweeps;

public sealed class SweepTests
{
    [Theory, HandbookData("FR-")]
    public void Crossing_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        switch (id)
        {
            case "FR-001":
                value.Confirm(Sweep.OfDecibels(value.Numbers("f"), value.Numbers("level_dB")).Bandwidth().Upper!.Frequency.Hertz);
                break;
            case "FR-002":
                value.Confirm(Sweep.OfDecibels(value.Numbers("f"), value.Numbers("level_dB")).Bandwidth().Upper!.LinearFrequency.Hertz);
                break;
            case "FR-003":
                // 0.1 dB on a point that lies on the level, and from there a slope of 7.5 dB/GHz (per natural logarithm of frequency: times the frequency).
                double slope = value.Number("slope_dB_per_Hz"), u = value.Number("u_level_dB");
                Sweep line = Sweep.OfDecibels([8e8, 9e8], [0, slope * 8e8 * Math.Log(9 / 8.0)], [u, u]).WithReferenceLevel(0.dB());
                value.Confirm(Assert.Single(line.Crossings(0.dB())).NoiseUncertainty!.Value.Hertz);
                break;
            default:
                double[] grid = value.Numbers("grid");
                value.Confirm(Sweep.Of(Response.SinglePole(1.Hz()), grid.Select(Frequency.FromHertz).ToArray()).WithReferenceLevel(0.dB()).Bandwidth().Upper!.Frequency.Hertz);
                break;
        }
    }

    [Fact]
    public void SpacingUncertainty_CoversTheErrorOfInterpolation()
    {
        foreach (int points in new[] { 6, 12, 25, 80 })
        {
            double[] hertz = Enumerable.Range(0, points).Select(i => 10e6 * Math.Pow(100, i / (points - 1.0))).ToArray();
            foreach (Response response in new[] { Response.SinglePole(200.MHz()), Response.Gaussian(200.MHz()), Response.Butterworth(4, 200.MHz()) })
            {
                SweepBandwidth band = Sweep.Of(response, hertz.Select(Frequency.FromHertz).ToArray()).WithReferenceLevel(0.dB()).Bandwidth();
                SweepCrossing edge = band.Upper!;
                double error = Math.Abs(edge.Frequency.Megahertz - 200);
                // Two and a half points per decade across a fourth-order corner: beyond what neighbours can show, and said to be too few.
                double factor = band.Findings.Any(f => f.Code == "points-too-far-apart") ? 2.5 : 2;
                Assert.True(error <= factor * edge.SpacingUncertainty.Megahertz + 1e-9, $"{response}, {points} points: off by {error:F4} MHz, stated {edge.SpacingUncertainty}");
            }
        }
    }

    [Fact]
    public void ScatterOfTheCrossing_MatchesItsNoiseUncertainty()
    {
        double[] hertz = Enumerable.Range(0, 40).Select(i => 20e6 * Math.Pow(30, i / 39.0)).ToArray();
        double[] clean = hertz.Select(f => -10 * Math.Log10(1 + f * f / 4e16)).ToArray();
        var random = new Random(7);
        SweepCrossing[] edges = Enumerable.Range(0, 600)
            .Select(_ => Sweep.OfDecibels(hertz, clean.Select(l => l + 0.01 * SineFitTests.Gauss(random)).ToArray(), clean.Select(_ => 0.01).ToArray()).Bandwidth().Upper!).ToArray();
        double mean = edges.Average(e => e.Frequency.Hertz), scatter = Math.Sqrt(edges.Average(e => Math.Pow(e.Frequency.Hertz - mean, 2)));
        Assert.InRange(scatter / edges.Average(e => e.NoiseUncertainty!.Value.Hertz), 0.88, 1.12);
    }

    [Fact]
    public void SweepThatDoesNotFall_HasNoBandwidth_ButALowerBound()
    {
        SweepBandwidth band = Sweep.OfDecibels([1e6, 1e7, 1e8], [0, -0.1, -0.5]).Bandwidth();
        Assert.Null(band.Upper);
        Assert.Contains(band.Findings, f => f.Code == "bandwidth-beyond-sweep" && f.Message.Contains("100 MHz"));
    }

    [Fact]
    public void RippleAcrossTheLevel_GivesTheLowestCrossing_AndSaysThereAreMore()
    {
        SweepBandwidth band = Sweep.OfDecibels([1e6, 2e6, 3e6, 4e6, 5e6], [0, -4, -2, -5, -9]).Bandwidth();
        Assert.Equal(2, band.Crossings.Count(c => c.IsFalling));
        Assert.InRange(band.Upper!.Frequency.Megahertz, 1, 2);
        Assert.Contains(band.Findings, f => f.Code == "several-crossings");
    }

    [Fact]
    public void BandPass_HasBothEdges_CountedFromItsMidBand()
    {
        double[] hertz = Enumerable.Range(0, 101).Select(i => Math.Pow(10, i / 20.0)).ToArray();
        double[] volts = hertz.Select(f => 5 / Math.Sqrt((1 + Math.Pow(20 / f, 2)) * (1 + Math.Pow(f / 5000, 2)))).ToArray();
        SweepBandwidth band = Sweep.OfAmplitudes(hertz, volts).WithReferenceBand(200.Hz(), 500.Hz()).Bandwidth();
        Assert.Equal(5000, band.Upper!.Frequency.Hertz, 50.0);
        Assert.Equal(20, band.Lower!.Frequency.Hertz, 0.2);
    }

    [Fact]
    public void Model_IsFittedWithItsUncertainty_AndAWrongOneIsNoticed()
    {
        double[] hertz = Enumerable.Range(0, 60).Select(i => 10e6 * Math.Pow(60, i / 59.0)).ToArray();
        var random = new Random(3);
        double[] levels = hertz.Select(f => -1.5 - 10 * Math.Log10(1 + Math.Pow(f / 150e6, 6)) + 0.05 * SineFitTests.Gauss(random)).ToArray();
        Sweep sweep = Sweep.OfDecibels(hertz, levels, hertz.Select(_ => 0.05).ToArray());

        SweepFit right = sweep.FitTo(f => Response.Butterworth(3, f));
        Assert.InRange(right.Bandwidth!.Value.Megahertz, 150 - 3 * right.BandwidthUncertainty!.Value.Megahertz, 150 + 3 * right.BandwidthUncertainty.Value.Megahertz);
        Assert.InRange(right.BandwidthUncertainty.Value.Megahertz, 0.01, 1);
        Assert.True(Math.Abs(right.Gain!.Value.Decibels + 1.5) < 4 * right.GainUncertainty!.Value.Decibels);
        Assert.DoesNotContain(right.Findings, f => f.Code == "model-does-not-fit");
        Assert.InRange(right.ChiSquared!.Value, 30, 95);

        Assert.Contains(sweep.FitTo(Response.SinglePole).Findings, f => f.Code == "model-does-not-fit");
    }

    [Fact]
    public void FlatSweep_DoesNotDetermineABandwidth()
    {
        SweepFit fit = Sweep.OfDecibels([1e6, 2e6, 3e6, 4e6], [0, 0.01, -0.01, 0]).FitTo(Response.Gaussian);
        Assert.Null(fit.Bandwidth);
        Assert.Equal("bandwidth-not-determined", Assert.Single(fit.Findings).Code);
    }

    [Property(MaxTest = 50)]
    public void FrequenciesTimesK_ShiftTheBandwidthByK_AndAGainShiftsNothing(int seed)
    {
        var random = new Random(seed);
        double k = Math.Pow(10, 4 * random.NextDouble() - 2), gain = 40 * random.NextDouble() - 20;
        double[] hertz = Enumerable.Range(1, 30).Select(i => i * 1e7).ToArray();
        double[] levels = hertz.Select(f => -10 * Math.Log10(1 + f * f / 1e16) + 0.01 * random.NextDouble()).ToArray();
        double original = Sweep.OfDecibels(hertz, levels).Bandwidth().Upper!.Frequency.Hertz;
        double moved = Sweep.OfDecibels(hertz.Select(f => k * f).ToArray(), levels.Select(l => l + gain).ToArray()).Bandwidth().Upper!.Frequency.Hertz;
        Assert.Equal(k * original, moved, 1e-9 * k * original);
    }

    [Fact]
    public void SweepLessAnother_LeavesTheDifference_WithBothUncertainties()
    {
        Sweep both = Sweep.OfDecibels([1e6, 1e7, 1e8], [-1, -2, -3], [0.3, 0.3, 0.3]), one = Sweep.OfDecibels([1e6, 1e8], [-0.5, -1.5], [0.4, 0.4]);
        SweepPoint[] points = both.Less(one).Points.ToArray();
        Assert.Equal(-1.0, points[1].Level.Decibels, 1e-12);
        Assert.Equal(0.5, points[0].Uncertainty!.Value.Decibels, 1e-12);
    }

    [Fact]
    public void SweepAsAResponse_GoesThroughItsPoints_AndBack()
    {
        Sweep sweep = Sweep.OfDecibels([1e6, 1e7, 1e8, 1e9], [7, 6.9, 6.2, 2.5]);
        Response response = sweep.ToResponse("front end");
        Assert.Equal(-0.8, response.Gain(100.MHz()).Decibels, 1e-9);
        Sweep back = Sweep.Of(response, sweep.Points.Select(p => p.Frequency).ToArray());
        Assert.Equal(sweep.Bandwidth().Upper!.Frequency.Hertz, back.Bandwidth().Upper!.Frequency.Hertz, 1.0);
        Assert.Equal(response.Bandwidth.Hertz, sweep.Bandwidth().Upper!.Frequency.Hertz, 1e-6 * response.Bandwidth.Hertz);
    }

    [Fact]
    public void Misuse_IsRefusedWithItsRow()
    {
        Assert.Contains("row 2", Assert.Throws<ArgumentException>(() => Sweep.OfDecibels([1, 2, 2], [0, 0, 0])).Message);
        Assert.Contains("row 0", Assert.Throws<ArgumentException>(() => Sweep.OfDecibels([0, 2, 3], [0, 0, 0])).Message);
        Assert.Contains("row 1", Assert.Throws<ArgumentException>(() => Sweep.OfAmplitudes([1, 2, 3], [1, 0, 1])).Message);
        Assert.Throws<ArgumentException>(() => Sweep.OfDecibels([1, 2, 3], [0, 0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sweep.OfDecibels([1, 2], [0, 0]).LevelAt(3.Hz()));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sweep.OfDecibels([1, 2], [0, 0]).Bandwidth(0.dB()));
    }

    [Fact]
    public void SinesFittedAtEachFrequency_MakeASweep()
    {
        FittedSine[] sines = new[] { 0.3, 0.05, 0.1 }.Select(c => SineFit.FourParameter(SineFitTests.Make(1000, c, 1 - c, noise: 1e-3), 1.GSaPerS()).Sine!).ToArray();
        Sweep sweep = Sweep.OfSines(sines);
        Assert.Equal(50, sweep.Lowest.Megahertz, 1e-3);
        Assert.Equal(20 * Math.Log10(0.7), sweep.Points[2].Level.Decibels, 2e-3);
        Assert.InRange(sweep.Points[0].Uncertainty!.Value.Decibels, 3e-4, 5e-4);
    }

    private static double[][] Columns(string file) =>
        File.ReadLines(OpenData.Path(file)).Where(l => l.Length > 0 && (char.IsDigit(l[0]) || l[0] == '-'))
            .Select(l => l.Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToArray();

    /// <summary>A first-order low-pass measured point by point (open data): three honest answers 6 % apart; NumPy/SciPy gave 271.8 Hz by crossing and 288.4 Hz (s.e. 2.5) by fit.</summary>
    [OpenDataFact("responses/rc-lowpass.csv")]
    public void MeasuredRcLowPass_CrossesAndFits_WhereAnIndependentRunSays()
    {
        double[][] rows = Columns("responses/rc-lowpass.csv");
        Sweep sweep = Sweep.OfDecibels(rows.Select(r => r[0]).ToArray(), rows.Select(r => r[1]).ToArray()).WithReferenceLevel(0.dB());

        Assert.Equal(271.8, sweep.Bandwidth(3.dB()).Upper!.Frequency.Hertz, 1.0);
        SweepFit fit = sweep.FitTo(Response.SinglePole, 0.dB());
        Assert.Equal(288.4, fit.Bandwidth!.Value.Hertz, 4.0);
        Assert.InRange(fit.ResidualDeviation.Decibels, 0.15, 0.35);
    }

    /// <summary>A coupled amplifier measured point by point (open data): NumPy/SciPy gave 39.58 Hz and 339.4 kHz from a mid-band median of 7.30.</summary>
    [OpenDataFact("responses/rc-coupled-amplifier.csv")]
    public void MeasuredAmplifier_HasTheEdgesThatAnIndependentRunFound()
    {
        double[][] rows = Columns("responses/rc-coupled-amplifier.csv");
        Sweep sweep = Sweep.OfAmplitudes(rows.Select(r => r[0]).ToArray(), rows.Select(r => r[1]).ToArray()).WithReferenceBand(400.Hz(), 60.kHz());

        Assert.Equal(20 * Math.Log10(7.30), sweep.ReferenceLevel.Decibels, 0.02);
        SweepBandwidth band = sweep.Bandwidth();
        Assert.Equal(39.58, band.Lower!.Frequency.Hertz, 0.3);
        Assert.Equal(339.4, band.Upper!.Frequency.Kilohertz, 3.0);
        // The independent run fitted gain in V/V and both edges together, 351.1 kHz (s.e. 5.4 kHz); this is the upper edge alone, in decibels.
        SweepFit upper = sweep.Between(1.kHz(), 2.MHz()).FitTo(Response.SinglePole);
        Assert.InRange(Math.Abs(upper.Bandwidth!.Value.Kilohertz - 351.1), 0, 3 * Math.Max(5.4, upper.BandwidthUncertainty!.Value.Kilohertz));
    }

    /// <summary>Coaxial cables measured by a network analyser (open data): the loss falls through -3.000 dB three times, first at 3.8042 GHz.</summary>
    [OpenDataFact("rf/coax-cables.s2p")]
    public void MeasuredCables_FallThroughThreeDecibelsThreeTimes()
    {
        double[][] rows = File.ReadLines(OpenData.Path("rf/coax-cables.s2p")).Where(l => l.Length > 0 && (char.IsDigit(l.TrimStart()[0])))
            .Select(l => l.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        Sweep sweep = Sweep.OfDecibels(rows.Select(r => r[0]).ToArray(), rows.Select(r => r[3]).ToArray()).WithReferenceLevel(0.dB()).Between(1.GHz(), 20.GHz());

        double[] found = sweep.Crossings(3.dB()).Where(c => c.IsFalling).Select(c => c.Frequency.Gigahertz).ToArray();
        Assert.Equal([3.8042, 3.9046, 3.9959], found.Select(f => Math.Round(f, 4)));
    }
}
