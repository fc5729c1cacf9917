using System;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>The signal that comes out of a response: lines with their own gain and phase, transients by the step, both against the other.</summary>
public class ApplyTests
{
    [Fact]
    public void ASine_KeepsItsShape_AndLosesWhatTheGainSays()
    {
        Signal seen = Response.SinglePole(100.MHz()).Apply(Signal.Sine(100.MHz(), 1.Vpk()).WithOffset(0.5.V()));
        Assert.Equal(Math.Sqrt(2), seen.PeakToPeak.Volts, 1e-9);
        Assert.Equal(0.5, seen.Dc.Volts, 1e-12);
        // 45 degrees late.
        Assert.Equal(0.5 + Math.Sqrt(0.5) * Math.Sin(2 * Math.PI * 0.3 - Math.PI / 4), seen.ValueAt(3.ns()).Volts, 1e-9);
        Assert.Equal(Signal.Sine(100.MHz(), 1.Vpk()).RiseTime.Seconds, seen.RiseTime.Seconds, 1e-4 * seen.RiseTime.Seconds);
    }

    [Theory]
    [InlineData(EdgeShape.Linear)]
    [InlineData(EdgeShape.Gaussian)]
    [InlineData(EdgeShape.Exponential)]
    public void ASlowSquare_RisesAsItsEdgeDoes(EdgeShape shape)
    {
        // The steady state by harmonics and the edge by convolution are two ways to one waveform.
        Response chain = Response.Gaussian(200.MHz()).Then(Response.Butterworth(3, 150.MHz()));
        var edge = new Edge(2.8.ns(), shape);
        Signal seen = chain.Apply(Signal.Square(1.MHz(), 2.Vpp(), edge.RiseTime, shape));
        Func<double, double> output = chain.EdgeOutput(edge);
        for (double t = -5; t < 20; t += 0.7)
            Assert.Equal(2 * output(t * 1e-9) - 1, seen.ValueAt(t.ns()).Volts, 1e-6);
        Assert.Equal(chain.OvershootOf(edge).Fraction, (seen.Maximum.Volts - 1) / 2, 1e-5);
        Assert.Equal(chain.RiseTimeOf(edge).Value, seen.RiseTime);
    }

    [Fact]
    public void ABeaconClockAtTenTimesTheBandwidth_IsDisplayedAsASmallSine()
    {
        Signal seen = Response.Gaussian(24.MHz()).Apply(Signal.Square(24.MHz(), 2.Vpp()));
        // The fundamental 4/π at half power; the third harmonic is 2^-4.5 of its third.
        Assert.Equal(4 / Math.PI * Math.Sqrt(0.5), seen.Harmonic(1).Peak.Volts, 1e-9);
        Assert.Equal(4 / (3 * Math.PI) * Math.Pow(2, -4.5), seen.Harmonic(3).Peak.Volts, 1e-9);
        Assert.True(seen.PeakToPeak < 2.Vpp());
    }

    [Fact]
    public void ASinglePulse_IsTheDifferenceOfTwoSteps_AndItsSpectrumTheProduct()
    {
        Response rc = Response.SinglePole(10.MHz());
        Signal pulse = Signal.SinglePulse(1.Vpp(), 20.ns()), seen = rc.Apply(pulse);
        double tau = 1 / (2 * Math.PI * 10e6);
        Assert.Equal(1 - Math.Exp(-20e-9 / tau), seen.Maximum.Volts, 1e-6);
        Assert.Equal((1 - Math.Exp(-20e-9 / tau)) * Math.Exp(-10e-9 / tau), seen.ValueAt(30.ns()).Volts, 1e-9);
        Assert.Equal(20e-9, seen.SpectrumAt(0.Hz()).Real, 1e-18);
        Assert.Equal(20e-9 * Math.Sqrt(0.5) * Math.Sin(0.2 * Math.PI) / (0.2 * Math.PI), seen.SpectrumAt(10.MHz()).Magnitude, 1e-15);
    }

    [Fact]
    public void AStep_EndsAtItsLevelTimesTheGain()
    {
        Signal seen = Response.Butterworth(2, 10.MHz()).Then(Response.Attenuator(20.dB())).Apply(Signal.Step(1.Vpp(), 5.ns()).WithOffset(1.V()));
        Assert.Equal(0.1, seen.ValueAt(-1.us()).Volts, 1e-9);
        Assert.Equal(0.2, seen.ValueAt(10.us()).Volts, 1e-9);
        Assert.InRange(seen.Maximum.Volts, 0.2035, 0.2044);
    }

    [Fact]
    public void RandomBits_HaveNoWaveform() => Assert.Throws<NotSupportedException>(() => Response.SinglePole(1.GHz()).Apply(Signal.RandomBits(1.GbitPerS(), 1.Vpp())));

    [Fact]
    public void AStiffCascade_SlowCouplingBeforeAFastGaussian_StepsLikeBoth()
    {
        // 10 Hz and 500 MHz: the early part is the Gaussian's, the late part the coupling's.
        Response chain = Response.HighPass(10.Hz()).Then(Response.Gaussian(500.MHz()));
        Assert.Equal(Response.Gaussian(500.MHz()).RiseTime.Seconds, chain.RiseTime.Seconds, 1e-6 * chain.RiseTime.Seconds);
        Assert.Equal(Math.Exp(-2 * Math.PI * 10 * 5e-3), chain.StepAt(5.ms()).Fraction, 1e-9);
        Assert.Equal(0.5, chain.StepAt(0.s()).Fraction, 1e-7);
    }
}
