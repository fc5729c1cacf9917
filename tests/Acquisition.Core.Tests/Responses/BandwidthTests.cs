using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>What "bandwidth" means where it is not obvious: several crossings, no crossing, blocked DC.</summary>
public class BandwidthTests
{
    [Fact]
    public void Bandwidth_ThatLiesOnAPointOfTheSearch_IsThatPoint() =>
        Assert.Equal(1, Response.Butterworth(2, 1.Hz()).BandwidthAt(DecibelRatio.HalfPower).Hertz, 1e-12);

    [Fact]
    public void AnAttenuator_HasNoBandwidth_AndSaysSo()
    {
        Response pad = Response.Attenuator(20.dB());
        var refusal = Assert.Throws<InvalidOperationException>(() => pad.Bandwidth);
        Assert.Contains("never falls", refusal.Message, StringComparison.Ordinal);
        Assert.False(pad.TryBandwidth(DecibelRatio.HalfPower, out _));
        Assert.Equal("never-falls", Assert.Single(pad.PassBand(DecibelRatio.HalfPower).Findings).Code);
        Assert.Equal(-20, pad.ReferenceGain.Decibels, 1e-12);
        Assert.Equal(0, pad.RiseTime.Seconds);
        Assert.Throws<InvalidOperationException>(() => pad.NoiseBandwidth);
    }

    [Fact]
    public void AnAcCoupledStage_HasTwoEdges_AndItsBandwidthIsTheUpperOne()
    {
        Response coupled = Response.HighPass(10.Hz()).Then(Response.SinglePole(100.MHz()));
        PassBand band = coupled.PassBand(DecibelRatio.HalfPower);
        Assert.False(coupled.PassesDc);
        Assert.False(band.IsRelativeToDc);
        Assert.Equal(10, band.Lower!.Value.Hertz, 1e-5);
        Assert.Equal(100e6, band.Upper!.Value.Hertz, 100.0);
        Assert.Equal(100e6, coupled.Bandwidth.Hertz, 100.0);
        Assert.Empty(band.Findings);
        Assert.Equal(0.35 / 100e6, coupled.RiseTime.Seconds, 2e-11);
        Assert.Throws<InvalidOperationException>(() => coupled.Overshoot);
        // The droop: after 1 ms of a 10 Hz high-pass, exp(-2π 10 Hz 1 ms) is left.
        Assert.Equal(Math.Exp(-2 * Math.PI * 0.01), coupled.StepAt(1.ms()).Fraction, 1e-6);
    }

    [Fact]
    public void AResponseWithAnEcho_CrossesSeveralTimes_AndEveryCrossingIsReported()
    {
        // Direct path and an echo of half its size 10 ns later: the magnitude ripples between 1.5 and 0.5, so between 0 dB and -9.5 dB re DC, every 100 MHz.
        Response line = Response.Parallel(Response.Attenuator(0.dB()), Response.Delay(10.ns()).Then(Response.Attenuator(6.0206.dB()))).Then(Response.Gaussian(1.GHz()));
        PassBand band = line.PassBand(-6.dB());
        Assert.True(band.Crossings.Count >= 5);
        Assert.Equal("several-crossings", Assert.Single(band.Findings).Code);
        Assert.Equal(band.Crossings.First(crossing => crossing.IsFalling).Frequency, band.Upper);
        for (int i = 0; i < band.Crossings.Count; i++)
        {
            Assert.Equal(i % 2 == 0, band.Crossings[i].IsFalling);
            Assert.Equal(-6, (line.Gain(band.Crossings[i].Frequency) - line.ReferenceGain).Decibels, 1e-9);
        }
    }

    [Fact]
    public void APeakedResponse_CrossesLevelsAboveDc_OnTheWayUpAndDown()
    {
        Response peaked = Response.SecondOrder(100.MHz(), Ratio.FromFraction(0.1));
        Assert.Equal(2, peaked.Crossings(6.dB()).Count);
        // The peak 1/(2 ζ √(1-ζ²)) at fn √(1-2ζ²): handbook 2.3.
        Assert.Equal(100e6 * Math.Sqrt(1 - 0.02), peaked.PeakGainFrequency.Hertz, 10.0);
        Assert.Equal(1 / (0.2 * Math.Sqrt(0.99)), peaked.AmplitudeRatio(peaked.PeakGainFrequency).Fraction, 1e-9);
    }

    [Fact]
    public void ANarrowBandPass_IsFound_HoweverNarrow()
    {
        // s/Q over a resonance of Q = 5000: the two half-power points lie f0/Q apart.
        double omega = 2 * Math.PI * 10e6, q = 5000;
        Response resonator = Response.Rational("resonator", new[] { 0, 1 / (q * omega) }, new[] { 1, 1 / (q * omega), 1 / (omega * omega) });
        PassBand band = resonator.PassBand(DecibelRatio.HalfPower);
        Assert.Equal(10e6 / q, band.Width!.Value.Hertz, 1e-3);
        Assert.Equal(0, resonator.ReferenceGain.Decibels, 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-20e6)]
    public void ABandwidthOfNothing_IsRefused_ByName(double hertz)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Response.Gaussian(hertz.Hz()));
        Assert.Contains("bandwidth must be above 0 Hz", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NegativeFrequencies_AreRefused_ByName()
    {
        Response gaussian = Response.Gaussian(1.MHz());
        Assert.Contains("frequency must be at least 0 Hz", Assert.Throws<ArgumentOutOfRangeException>(() => gaussian.Gain((-1).Hz())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void UnstablePoles_AreRefused() =>
        Assert.Throws<ArgumentException>(() => Response.PolesAndZeros("x", Array.Empty<Complex>(), new[] { new Complex(1, 0) }, Ratio.FromFraction(1)));
}
