using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;
using static Acquisition.Core.Tests.Records.Sine.SineFitTests;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>Which samples a sine fit leaves out as clipped, and which it must not.</summary>
public sealed class ClippedSineTests
{
    [Theory]
    [InlineData(0.9)]
    [InlineData(0.5)]
    public void ClippedSine_IsFittedFromItsUnclippedSamples_WithoutSinad(double limit)
    {
        double[] x = Make(4000, 0.0317).Select(v => Math.Clamp(v, -limit, limit)).ToArray();

        SineFit fit = SineFit.FourParameter(x, Rate);

        Assert.Equal(1, fit.Sine!.Amplitude.Volts, 1e-9);
        Assert.Null(fit.Sine.Sinad);
        Assert.Null(fit.Sine.EffectiveBitsOf(2.Vpp()));
        Assert.Contains(fit.Findings, f => f.Code == "samples-clipped");
    }

    [Fact]
    public void QuantisedSine_WhoseTopCodeIsMetOften_IsNotCalledClipped()
    {
        foreach (double amplitude in new[] { 0.4961, 0.5, 0.5039, 0.98 })
        {
            double[] x = Make(10000, 0.01237, amplitude, noise: 0.002).Select(v => Math.Round(v * 128) / 128).ToArray();
            Assert.DoesNotContain(SineFit.FourParameter(x, Rate).Findings, f => f.Code == "samples-clipped");
        }
    }

    /// <summary>A second harmonic flattens one crest by more than a code: many samples share the last code, but no more than a round top shares.</summary>
    [Theory]
    [InlineData(0.8, 0.02, 8, 8192)]
    [InlineData(0.9, 0.002, 12, 65536)]
    [InlineData(0.6, -0.03, 10, 20000)]
    public void DistortedSine_IsNotCalledClipped(double amplitude, double square, int bits, int count)
    {
        double codes = Math.Pow(2, bits - 1);
        double[] x = Make(count, 1 / 48.0 + 1e-5, amplitude).Select(v => Math.Round((v + square * v * v / (amplitude * amplitude)) * codes) / codes).ToArray();
        Assert.DoesNotContain(SineFit.FourParameter(x, Rate).Findings, f => f.Code == "samples-clipped");
    }

    [Fact]
    public void OneSidedClipping_IsNamedWithItsLevel()
    {
        double[] x = Make(4000, 0.0317, 1).Select(v => Math.Min(v, 0.8)).ToArray();

        SineFit fit = SineFit.FourParameter(x, Rate);

        Assert.Equal(1, fit.Sine!.Amplitude.Volts, 1e-9);
        Finding finding = Assert.Single(fit.Findings, f => f.Code == "samples-clipped");
        Assert.Contains("at 800 mV", finding.Message);
    }

    [Fact]
    public void SquareWave_IsRefused_NotFitted()
    {
        double[] x = Make(4000, 0.00317).Select(v => v > 0 ? 1.0 : -1).ToArray();
        Assert.Equal("sine-fit-clipped-away", Assert.Single(SineFit.FourParameter(x, Rate).Findings).Code);
    }
}
