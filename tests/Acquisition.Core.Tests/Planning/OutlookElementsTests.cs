using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What the elements of a chain bring to an outlook: their noise, their share, and remedies that are tried on them.</summary>
public sealed class OutlookElementsTests
{
    private static readonly Digitizer Sampler = new Digitizer(1.GSaPerS(), 1.Mpts(), 8.bit()).WithName("sampler");

    private static Probe Tip => Probe.Passive(10, 10.MOhm(), 10.pF(), 500.MHz());

    private static FrontEnd Input => FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(500.MHz()));

    private static Outlook Seen(Signal signal, MeasurementChain chain) => signal.Through(chain).SampledBy(Sampler).Over(10.us());

    private static bool Says(Outlook outlook, string code) => outlook.Findings.Any(finding => finding.Code == code);

    // The input's noise lies behind 10:1, the probe's is told at its tip: √(3² + (10 x 0.4)²) = 5 mV.
    [Fact]
    public void TheNoiseOfAChain_IsThatOfProbeAndInputAtTheTip()
    {
        Signal sine = Signal.Sine(1.MHz(), 1.Vpk());
        double? Noise(Probe probe, FrontEnd input) => Seen(sine, MeasurementChain.From(50.Ohm()).Probe(probe).Into(input)).Noise?.SiValue;
        Assert.Equal(5e-3, Noise(Tip.WithNoise(3.mVrms()), Input.WithNoise(0.4.mVrms()))!.Value, 1e-12);
        Assert.Equal(4e-3, Noise(Tip, Input.WithNoise(0.4.mVrms()))!.Value, 1e-12);
        Assert.Equal(3e-3, Noise(Tip.WithNoise(3.mVrms()), Input)!.Value, 1e-12);
        Assert.Null(Noise(Tip, Input));
        Assert.Equal(1e-3, Signal.Sine(1.MHz(), 1.Vpk()).Through(MeasurementChain.From(50.Ohm()).Probe(Tip.WithNoise(3.mVrms())).Into(Input)).SampledBy(Sampler).WithNoise(1.mVrms()).Over(10.us()).Noise!.Value.SiValue, 1e-12);
    }

    // 20 ns of a Gaussian edge behind 6.792 ns: 21.12 ns, 5.61 % of the edge; of an ideal edge all of what is seen is the chain's.
    [Fact]
    public void TheShareOfAnEdge_IsOfTheEdge_OrOfWhatIsSeenOfAnIdealOne()
    {
        Contribution slow = Signal.Square(1.MHz(), 1.Vpp(), 20.ns(), EdgeShape.Gaussian).Through(Response.Gaussian(50.MHz())).SampledBy(Sampler).Over(10.us()).Contributions[0];
        Assert.Equal(0.056099, slow.Share.Fraction, 1e-5);
        Assert.Equal("slows the edge by 1.122 ns, 5.61 % of it", slow.Effect);
        Contribution all = Signal.Square(1.MHz(), 1.Vpp()).Through(Response.Gaussian(50.MHz())).SampledBy(Sampler).Over(10.us()).Contributions[0];
        Assert.Equal(1, all.Share.Fraction, 1e-6);
        Assert.Equal("slows the edge by 6.792 ns, 100 % of it", all.Effect);
    }

    // 50 Ω on 50 Ω halve the voltage whatever the input does with it: of that half one pole takes 5.132 % at a third of its bandwidth.
    [Fact]
    public void TheShareOfAnAmplitude_IsOfWhatIsLeftWithoutTheElement()
    {
        MeasurementChain chain = MeasurementChain.From(SourceImpedance.Resistive(50.Ohm())).Into(FrontEnd.FiftyOhm(Response.SinglePole(3.MHz())).WithName("input"));
        Contribution input = Seen(Signal.Sine(1.MHz(), 1.Vpk()), chain).Contributions.Single(one => one.Element == "input");
        Assert.Equal(0.051317, input.Share.Fraction, 1e-5);
        Assert.Equal("takes 5.132 % of the amplitude", input.Effect);
    }

    [Fact]
    public void WhatTheOutlookHasWorkedOut_TheChainDoesNotRepeat()
    {
        Signal clock = Signal.Square(1.MHz(), 1.Vpp(), 5.ns());
        MeasurementChain slow = MeasurementChain.From(50.Ohm()).Probe(Tip).Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(50.MHz())));
        Assert.Contains(slow.Examine(clock), finding => finding.Code == "chain-slower-than-signal");
        Outlook outlook = Seen(clock, slow);
        Assert.True(Says(outlook, "edge-slowed"));
        Assert.False(Says(outlook, "chain-slower-than-signal"));
        Assert.False(Says(outlook, "content-beyond-bandwidth"));
    }

    // A step into half the voltage takes as long as into all of it, and into the opposite sign: gains have no part in times.
    [Theory]
    [InlineData(EdgeShape.Linear), InlineData(EdgeShape.Gaussian), InlineData(EdgeShape.Exponential)]
    public void AGain_ChangesNoEdge(EdgeShape shape)
    {
        var edge = new Edge(20.ns(), shape);
        foreach (Response chain in new[] { Response.Gaussian(30.MHz()), Response.Butterworth(3, 30.MHz()), Response.SinglePole(30.MHz()) })
        {
            double alone = EdgeThrough.RiseTime(edge, chain);
            Assert.Equal(alone, EdgeThrough.RiseTime(edge, Response.Attenuator(40.dB()).Then(chain)), 1e-7 * alone);
            Assert.Equal(alone, EdgeThrough.RiseTime(edge, Response.Amplifier(40.dB()).Then(chain)), 1e-7 * alone);
        }
    }

    // One pole by hand: a ramp of length T behind τ is t/T - (τ/T)(1 - exp(-t/τ)) up to T, then 1 - (τ/T)(exp(T/τ) - 1) exp(-t/τ); 10 % and 90 % of it by bisection.
    [Theory]
    [InlineData(0.02), InlineData(0.3), InlineData(1), InlineData(4), InlineData(60)]
    public void ARampBehindAPole_IsThatOfItsFormula(double ratio)
    {
        double tau = 10e-9, length = ratio * tau;
        double Value(double t) => t <= length ? (t / length) - (tau / length * (1 - Math.Exp(-t / tau))) : 1 - (tau / length * (Math.Exp((length - t) / tau) - Math.Exp(-t / tau)));
        double Crossing(double level)
        {
            double low = 0, high = length + (20 * tau);
            for (int i = 0; i < 100; i++)
                (low, high) = Value(0.5 * (low + high)) < level ? (0.5 * (low + high), high) : (low, 0.5 * (low + high));
            return low;
        }
        double expected = Crossing(0.9) - Crossing(0.1);
        Assert.Equal(expected, EdgeThrough.RiseTime(new Edge(Duration.FromSeconds(0.8 * length)), Response.SinglePole(Frequency.FromHertz(1 / (2 * Math.PI * tau)))), 1e-6 * expected);
    }

    // Levels of 37.5 ns, half a period less the whole of a ramp, 10 ns/0.8, do not settle behind 10 MHz; in a chain of the named bandwidth they do, and a hundredth below it they do not.
    [Fact]
    public void TheBandwidthThatLetsLevelsSettle_DoesSo()
    {
        Signal square = Signal.Square(10.MHz(), 1.Vpp(), 10.ns());
        Outlook At(double hertz) => square.Through(Response.SinglePole(Frequency.FromHertz(hertz))).SampledBy(Sampler).Over(10.us());
        string remedy = At(10e6).Findings.Single(finding => finding.Code == "amplitude-short").Remedy!;
        const string before = "a chain of the same shape and at least ", after = " lets the levels settle to 0.1 %";
        Assert.StartsWith(before, remedy, StringComparison.Ordinal);
        // One pole settles to a thousandth in ln 1000 = 6.908 of its time constants: in 37.5 ns with 29.32 MHz.
        double hertz = Frequency.Parse(remedy.Substring(before.Length, remedy.IndexOf(after, StringComparison.Ordinal) - before.Length)).Hertz;
        Assert.InRange(hertz, 29.32e6, 29.4e6);
        Assert.True(At(hertz).LevelsSettle);
        Assert.False(At(0.99 * hertz).LevelsSettle);
    }

    [Theory]
    [InlineData(1000, "levels settle to 0.1 % within ")]
    [InlineData(10, "lowest to highest value of the computed waveform: its levels do not settle")]
    public void TheAmplitude_SaysWhatItIsTakenFrom(double megahertz, string method) => Assert.StartsWith(method,
        Signal.Square(10.MHz(), 1.Vpp(), 10.ns()).Through(Response.SinglePole(megahertz.MHz())).SampledBy(Sampler).Over(10.us()).DisplayedAmplitude.Method, StringComparison.Ordinal);

    [Fact]
    public void AStep_IsShownWithTheGainForALongPulse()
    {
        Outlook outlook = Signal.Step(2.Vpp(), 10.ns()).Through(Response.Attenuator(6.dB()).Then(Response.SinglePole(10.MHz()))).SampledBy(Sampler).Over(10.us());
        Assert.Equal("gain of the chain for a long pulse", outlook.DisplayedAmplitude.Method);
        Assert.Equal(2 * Math.Pow(10, -0.3), outlook.DisplayedAmplitude.Value.Volts, 1e-9);
    }

    // sin(4x)/(4 sin x) = 1/√2 at x = π 11.385 MHz/100 MHz: four raw samples of 100 MSa/s (handbook 5.5).
    [Fact]
    public void HighResolution_TellsItsBandwidth() => Assert.EndsWith(" and limits the bandwidth to 11.38 MHz", Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Cascade())
        .SampledBy(new Digitizer(100.MSaPerS(), 1.Mpts(), 8.bit())).WithHighResolution(4).Over(1.ms()).Findings.Single(finding => finding.Code == "high-resolution-limits").Message, StringComparison.Ordinal);

    [Fact]
    public void AChainWithoutAProbe_HasNoCapacitanceToCheck()
    {
        Signal sine = Signal.Sine(1.MHz(), 1.Vpk());
        Outlook outlook = Seen(sine, MeasurementChain.From(50.Ohm()).Into(Input));
        Assert.DoesNotContain(new Requirement(sine).WithAmplitudeTolerance(3.Percent()).WithSourceResistance(50.Ohm()).Specify().Check(outlook), check => check.Need.StartsWith("probe", StringComparison.Ordinal));
    }
}
