using System;
using System.Numerics;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Signals;

/// <summary>Two tones and a step, as they are drawn and counted; and branches that only a function of the host describes.</summary>
public sealed class RareShapesTests
{
    [Fact]
    public void TwoTones_AreTheSumOfTwoSines()
    {
        Signal tones = Signal.TwoTone(10.MHz(), 3.Vpk(), 11.MHz(), 4.Vpk());
        Assert.Equal(0, tones.ValueAt(default).Volts, 1e-12);
        // A quarter period of the first tone: 3 V and 4 V sin(2π 11/40).
        Assert.Equal(3 + 4 * Math.Sin(2 * Math.PI * 11 / 40), tones.ValueAt(25.ns()).Volts, 1e-9);
        Assert.Equal(7, tones.Maximum.Volts);
        Assert.Equal(-7, tones.Minimum.Volts);
        Assert.Equal(Math.Sqrt(12.5), tones.Rms.Volts, 1e-12);
        // One sine of amplitude 1 has a mean magnitude of 2/π; a strong one beside a weak one has nearly its own.
        Assert.Equal(2 / Math.PI, Signal.TwoTone(10.MHz(), 1.Vpk(), 11.MHz(), 1.mVpk()).Rms.Volts / Signal.TwoTone(10.MHz(), 1.Vpk(), 11.MHz(), 1.mVpk()).FormFactor.Fraction, 1e-5);
    }

    [Fact]
    public void AStep_StandsHalfTheTimeOnEachSide_AndHasNoPowerInABand()
    {
        Signal step = Signal.Step(2.Vpp(), 4.ns());
        Assert.Equal(0, step.ValueAt(-(1.us())).Volts);
        Assert.Equal(1, step.ValueAt(default).Volts, 1e-12);
        Assert.Equal(2, step.ValueAt(1.us()).Volts);
        Assert.Equal(4.ns(), step.RiseTime);
        Assert.Null(step.Fundamental);
        // Far below 1/rise time the spectrum is that of a jump: height / (2π f), 90° behind.
        Complex low = step.SpectrumAt(1.kHz());
        Assert.Equal(2 / (2 * Math.PI * 1e3), low.Magnitude, 1e-9);
        Assert.Equal(-Math.PI / 2, low.Phase, 1e-4);
        Assert.Throws<InvalidOperationException>(() => step.PowerWithin(1.kHz(), 1.MHz()));
        Assert.Throws<InvalidOperationException>(() => step.SpectrumAt(default));
    }

    // A direct path and its echo of half the height, 10 ns later: at 50 MHz they oppose, at 100 MHz they add.
    [Fact]
    public void BranchesOfTheHostsOwn_AddTheirGains()
    {
        Response direct = Response.FromFunction("direct", 1.GHz(), _ => 1), echo = Response.FromFunction("echo", 1.GHz(), hertz => 0.5 * Complex.Exp(new Complex(0, -2 * Math.PI * hertz * 10e-9)));
        Response both = Response.Parallel(direct, echo);
        Assert.Equal("(direct) + (echo)", both.Name);
        Assert.Equal(0.5, both.AmplitudeRatio(50.MHz()).Fraction, 1e-12);
        Assert.Equal(1.5, both.AmplitudeRatio(100.MHz()).Fraction, 1e-12);
        Assert.Equal(1.5, both.AmplitudeRatio(default).Fraction, 1e-12);
        Response known = Response.Parallel(Response.Cascade(), Response.Delay(10.ns()).Then(Response.Attenuator(DecibelRatio.FromAmplitudeRatio(Ratio.FromFraction(2)))));
        foreach (double megahertz in new[] { 1.0, 33, 50, 77, 100 })
            Assert.Equal(known.AmplitudeRatio(Frequency.FromMegahertz(megahertz)).Fraction, both.AmplitudeRatio(Frequency.FromMegahertz(megahertz)).Fraction, 1e-12);
    }
}
