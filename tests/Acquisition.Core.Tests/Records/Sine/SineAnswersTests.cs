using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Conventions;
using Xunit;
using static Acquisition.Core.Tests.Records.Sine.SineFitTests;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>What a fitted sine says of itself, against closed formulas, and where its findings begin and end.</summary>
public sealed class SineAnswersTests
{
    private static bool Says(SineFit fit, string code) => fit.Findings.Any(finding => finding.Code == code);

    /// <summary>Standard errors of linear regression on orthogonal columns: s √(2/N) of the amplitude, that over A of the phase anywhere, s/√N of the offset; s counts N - 3 (handbook 9.8).</summary>
    [Fact]
    public void ThreeParameters_HaveTheUncertaintiesOfOrthogonalColumns()
    {
        double[] x = Make(1000, 0.05, 0.5, 0.7, 0.2, 0.01);
        FittedSine sine = SineFit.ThreeParameter(x, Rate, 5.MHz()).Sine!;
        double residual = Math.Sqrt(x.Select((v, n) => Math.Pow(v - sine.ValueAt(Duration.FromSeconds(n / 1e8)).Volts, 2)).Sum() / 997);

        Assert.Equal(residual, sine.ResidualDeviation.Volts, 1e-12);
        Assert.Equal(residual * Math.Sqrt(997 / 1000.0), sine.NoiseAndDistortion.Volts, 1e-12);
        Assert.Equal(residual * Math.Sqrt(2 / 1000.0), sine.AmplitudeUncertainty.Volts, 1e-12);
        Assert.Equal(residual * Math.Sqrt(2 / 1000.0) / sine.Amplitude.Volts, sine.PhaseUncertainty.Radians, 1e-12);
        Assert.Equal(sine.PhaseUncertainty.Radians, sine.PhaseAtCenterUncertainty.Radians, 1e-12);
        Assert.Equal(residual / Math.Sqrt(1000), sine.OffsetUncertainty.Volts, 1e-12);
        Assert.Equal(0, sine.FrequencyUncertainty.Hertz);
        Assert.True(sine.FrequencyWasGiven);
        Assert.Equal(50, sine.Periods.Fraction, 1e-9);
        Assert.Equal(1000, sine.Points.Points);
        Assert.Equal(20 * Math.Log10(sine.Amplitude.Volts / Math.Sqrt(2) / sine.NoiseAndDistortion.Volts), sine.Sinad!.Value.Decibels, 1e-9);
        Assert.Equal((sine.Sinad.Value.Decibels - 10 * Math.Log10(1.5)) / (20 * Math.Log10(2)), sine.EffectiveBitsUncorrected!.Value.Bits, 1e-9);
        Assert.Null(sine.EffectiveBits);
        new Refusal("no range", () => sine.EffectiveBitsOf(default), "fullScale", "0 V").Confirm();
    }

    /// <summary>With the frequency free, four parameters are counted, and the phase at the first sample is known half as well as at the centre.</summary>
    [Fact]
    public void FourParameters_CountOneMore_AndKnowThePhaseBestAtTheCentre()
    {
        double[] x = Make(1000, 0.0512, 0.5, 0.7, 0.2, 0.01);
        FittedSine sine = SineFit.FourParameter(x, Rate).Sine!;
        Assert.False(sine.FrequencyWasGiven);
        Assert.Equal(sine.NoiseAndDistortion.Volts * Math.Sqrt(1000 / 996.0), sine.ResidualDeviation.Volts, 1e-12);
        Assert.Equal(2, sine.PhaseUncertainty.Radians / sine.PhaseAtCenterUncertainty.Radians, 1e-2);
        Assert.Equal(sine.PhaseAtCenter.Radians, sine.PhaseAt(Duration.FromSeconds(499.5e-8)).Radians, 1e-9);
        Assert.Equal(sine.Phase.Radians, sine.PhaseAt(default).Radians, 1e-12);
        Assert.Equal(sine.Offset.Volts + sine.Amplitude.Volts * Math.Cos(sine.Phase.Radians), sine.ValueAt(default).Volts, 1e-12);
    }

    [Fact]
    public void AsFewSamplesAsParametersAndOneMore_AreEnough()
    {
        Assert.Equal("sine-fit-too-few-samples", SineFit.ThreeParameter(Make(3, 0.2), Rate, 20.MHz()).Findings[0].Code);
        Assert.Contains("at least 4", SineFit.ThreeParameter(Make(3, 0.2), Rate, 20.MHz()).Findings[0].Message);
        Assert.Equal(1, SineFit.ThreeParameter(Make(4, 0.2), Rate, 20.MHz()).Sine!.Amplitude.Volts, 1e-9);
        Assert.Contains("at least 5", SineFit.FourParameter(Make(4, 0.2), Rate).Findings[0].Message);
        Assert.Equal(1, SineFit.FourParameter(Make(5, 0.3), Rate).Sine!.Amplitude.Volts, 1e-9);
    }

    /// <summary>Common practice: five periods, of the sine and of its beat with half the sample rate.</summary>
    [Theory]
    [InlineData(4.8, true, false)]
    [InlineData(5.2, false, false)]
    [InlineData(500 - 5.2, false, false)]
    [InlineData(500 - 4.8, false, true)]
    public void FewerThanFivePeriods_AreWarnedOf(double periods, bool few, bool nearNyquist)
    {
        SineFit fit = SineFit.FourParameter(Make(1000, periods / 1000, noise: 1e-3), Rate);
        Assert.Equal(few, Says(fit, "few-periods"));
        Assert.Equal(nearNyquist, Says(fit, "near-nyquist"));
        Assert.False(Says(fit, "undersampled"));
    }

    /// <summary>J/q of the sample rate meets q phases: said of up to 16 of them (handbook 9.6).</summary>
    [Theory]
    [InlineData(1, 3, true)]
    [InlineData(2, 5, true)]
    [InlineData(3, 16, true)]
    [InlineData(3, 17, false)]
    [InlineData(101, 1000, false)]
    public void FewPhases_AreNamedUpToSixteen(int cycles, int phases, bool few)
    {
        SineFit fit = SineFit.FourParameter(Make(1000, (double)cycles / phases, noise: 1e-3), Rate);
        Assert.Equal(few, fit.Findings.Any(finding => finding.Code == "few-phases" && finding.Message.Contains($" {phases} phases")));
        Assert.Equal(few, Says(fit, "few-phases"));
    }

    [Fact]
    public void WhiteResiduals_AreNotCalledCorrelated_AndFilteredOnesAre()
    {
        double[] noise = Make(4000, 0.1, 0, noise: 0.01), sine = Make(4000, 0.0371);
        Assert.False(Says(SineFit.FourParameter(sine.Zip(noise, (a, b) => a + b).ToArray(), Rate), "residual-not-white"));
        // Means of two neighbours share one reading: a correlation of 0.5.
        double[] filtered = noise.Select((v, i) => (v + noise[Math.Max(0, i - 1)]) / 2).ToArray();
        SineFit fit = SineFit.FourParameter(sine.Zip(filtered, (a, b) => a + b).ToArray(), Rate);
        Assert.Contains("(0.5", fit.Findings.Single(finding => finding.Code == "residual-not-white").Message);
    }

    [Theory]
    [InlineData(-0.8, 2, "at -800 mV;")]
    [InlineData(-2, 0.8, "at 800 mV;")]
    [InlineData(-0.7, 0.8, "at -700 mV and 800 mV;")]
    public void ClippedSamples_AreCounted_AndTheirLevelsNamed(double low, double high, string levels)
    {
        double[] whole = Make(4000, 0.0317), x = whole.Select(v => Math.Max(low, Math.Min(high, v))).ToArray();
        SineFit fit = SineFit.FourParameter(x, Rate);
        Finding finding = fit.Findings.Single(one => one.Code == "samples-clipped");
        int clipped = whole.Count(v => v <= low || v >= high);
        Assert.Contains($"{clipped} of 4000 samples", finding.Message);
        Assert.Contains(levels, finding.Message);
        Assert.Equal(4000 - clipped, fit.Sine!.Points.Points);
        Assert.Equal(1, fit.Sine.Amplitude.Volts, 1e-9);
    }

    /// <summary>Every frequency in turn, against a search through all J without a factor common with M.</summary>
    [Theory]
    [InlineData(3), InlineData(6), InlineData(12), InlineData(30), InlineData(210)]
    public void CoherentFrequency_IsTheNearestOfAllWithoutACommonFactor(int points)
    {
        for (double ideal = 0.3; ideal < 1.2 * points; ideal += 0.0137 * points)
        {
            CoherentSampling near = CoherentSampling.Near(Frequency.FromHertz(ideal / points * 1e6), 1.MSaPerS(), PointCount.FromPoints(points));
            double least = Enumerable.Range(1, 2 * points).Where(j => Common(j, points) == 1).Min(j => Math.Abs(j - ideal));
            Assert.Equal(1, Common((int)near.Cycles, points));
            Assert.Equal(least, Math.Abs(near.Cycles - ideal), 1e-9);
            Assert.Equal(near.Cycles * 1e6 / points, near.Frequency.Hertz, 1e-6);
        }

        static int Common(int a, int b) => b == 0 ? a : Common(b, a % b);
    }

    public static TheoryData<Refusal> Refusals => new(
        new("coherent at no frequency", () => CoherentSampling.Near(default, 1.MSaPerS(), 64.pts()), "wanted", "0 Hz"),
        new("coherent at no rate", () => CoherentSampling.Near(1.kHz(), default, 64.pts()), "rate", "0 Sa/s"),
        new("coherent in two samples", () => CoherentSampling.Near(1.kHz(), 1.MSaPerS(), 2.pts()), "points", "at least 3"),
        new("coherent beyond counting", () => CoherentSampling.Near(Frequency.FromHertz(1e12), SampleRate.FromSamplesPerSecond(1e-3), 1.Mpts()), "wanted", "2^53"),
        new("bound of no amplitude", () => CramerRaoBound.OfSine(default, 1.mVrms(), 10.pts(), Rate), "amplitude", "0 V"),
        new("bound of no noise", () => CramerRaoBound.OfSine(1.Vpk(), default, 10.pts(), Rate), "noise", "0 V"),
        new("bound of no rate", () => CramerRaoBound.OfSine(1.Vpk(), 1.mVrms(), 10.pts(), default), "rate", "0 Sa/s"),
        new("bound of one sample", () => CramerRaoBound.OfSine(1.Vpk(), 1.mVrms(), 1.pts(), Rate), "points", "at least 2"),
        new("fit at no frequency", () => SineFit.ThreeParameter(Make(10, 0.1), Rate, default(Frequency)), "frequency", "0 Hz"),
        new("fit from no frequency", () => SineFit.FourParameter(Make(10, 0.1), Rate, default(Frequency)), "start", "0 Hz"),
        new("fit at no rate", () => SineFit.FourParameter(Make(10, 0.1), default), "rate", "0 Sa/s"),
        new("fit of nothing", () => SineFit.FourParameter((double[])null!, Rate), "volts", "volts"),
        new("no channel", () => CommonSineFit.Of(Rate, Array.Empty<double[]>()), "channels", "at least one"),
        new("a null channel", () => CommonSineFit.Of(Rate, Make(10, 0.1), null!), "channelsInVolts", "channelsInVolts"),
        new("a null record", () => CommonSineFit.Of(Record.FromVolts(Make(10, 0.1), Rate), null!), "channels", "channels"),
        new("channels of two lengths", () => CommonSineFit.Of(Rate, Make(10, 0.1), Make(11, 0.1)), "channels", "one length"),
        new("channels of two rates", () => CommonSineFit.Of(Record.FromVolts(Make(10, 0.1), Rate), Record.FromVolts(Make(10, 0.1), 1.MSaPerS())), "channels", "one sample rate"),
        new("no such first channel", () => CommonSineFit.Of(Rate, Make(100, 0.1)).Compare(-1, 0), "first", "was -1"),
        new("no such second channel", () => CommonSineFit.Of(Rate, Make(100, 0.1)).Compare(0, 1), "second", "was 1"));

    [Theory, MemberData(nameof(Refusals))]
    public void WhatCannotBeFitted_IsRefusedByName(Refusal refusal) => refusal.Confirm();

    /// <summary>The weighted mean: weights 1/u², and its own uncertainty 1/√Σ(1/u²).</summary>
    [Fact]
    public void CommonFrequency_IsTheWeightedMeanOfTheChannelsOwn()
    {
        double[] one = Make(1000, 0.1003, 1, 0.2, 0, 0.01, 1), two = Make(1000, 0.1003, 1, 1.2, 0, 0.03, 2);
        FittedSine[] own = new[] { one, two }.Select(x => SineFit.FourParameter(x, Rate).Sine!).ToArray();
        double[] weights = own.Select(sine => 1 / Math.Pow(sine.FrequencyUncertainty.Hertz, 2)).ToArray();
        CommonSineFit common = CommonSineFit.Of(Rate, one, two);

        Assert.Equal((weights[0] * own[0].Frequency.Hertz + weights[1] * own[1].Frequency.Hertz) / weights.Sum(), common.Frequency!.Value.Hertz, 1e-5);
        Assert.Equal(1 / Math.Sqrt(weights.Sum()), common.FrequencyUncertainty!.Value.Hertz, 1e-5);
        Assert.Empty(common.Findings);
        Assert.All(common.Channels, channel => Assert.True(channel.Sine!.FrequencyWasGiven));
        ChannelComparison compared = common.Compare(0, 1)!;
        FittedSine first = common.Channels[0].Sine!, second = common.Channels[1].Sine!;
        double relative = Math.Sqrt(Math.Pow(first.AmplitudeUncertainty.Volts / first.Amplitude.Volts, 2) + Math.Pow(second.AmplitudeUncertainty.Volts / second.Amplitude.Volts, 2));
        Assert.Equal(second.Amplitude.Volts / first.Amplitude.Volts, compared.AmplitudeRatio.Fraction, 1e-12);
        Assert.Equal(compared.AmplitudeRatio.Fraction * relative, compared.AmplitudeRatioUncertainty.Fraction, 1e-12);
        Assert.Equal(20 / Math.Log(10) * relative, compared.GainUncertainty.Decibels, 1e-12);
        double angle = Math.Sqrt(Math.Pow(first.PhaseAtCenterUncertainty.Radians, 2) + Math.Pow(second.PhaseAtCenterUncertainty.Radians, 2));
        Assert.Equal(angle, compared.PhaseUncertainty.Radians, 1e-12);
        Assert.Equal(angle / (2 * Math.PI * compared.Frequency.Hertz), compared.DelayUncertainty.Seconds, 1e-15);
        Assert.Equal(-compared.Phase.Radians / (2 * Math.PI * compared.Frequency.Hertz), compared.Delay.Seconds, 1e-15);
        Assert.Equal(1 / compared.Frequency.Hertz, compared.DelayPeriod.Seconds, 1e-15);
    }

    [Fact]
    public void ChannelsWithoutASine_HaveNoCommonFrequency()
    {
        CommonSineFit none = CommonSineFit.Of(Rate, Enumerable.Repeat(1.0, 100).ToArray(), Enumerable.Repeat(2.0, 100).ToArray());
        Assert.Null(none.Frequency);
        Assert.Null(none.FrequencyUncertainty);
        Assert.Null(none.Compare(0, 1));
        Assert.Equal("sine-fit-no-signal", none.Findings.Single().Code);
        Assert.Equal("2 channels at no common frequency", none.ToString());
    }
}
