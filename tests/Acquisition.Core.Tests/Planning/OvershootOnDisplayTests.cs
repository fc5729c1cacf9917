using System;
using System.Globalization;
using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What edges do beyond their levels on the display, judged by the edge that the signal has and not by an ideal one; and that a range must hold it.</summary>
public sealed class OvershootOnDisplayTests
{
    private static readonly Response Ringing = Response.SecondOrder(100.MHz(), 50.Percent());

    private static Outlook Seen(Signal signal, Response response, PeakToPeakVoltage? range = null)
    {
        SampledSignal setup = signal.Through(response).SampledBy(new Digitizer(5.GSaPerS(), 10.Mpts(), 8.bit()));
        return (range is { } set ? setup.WithFullScale(set) : setup).Over(20.us());
    }

    private static Finding? Of(Outlook outlook, string code) => outlook.Findings.SingleOrDefault(finding => finding.Code == code);

    /// <summary>The overshoot of a straight edge behind a resonance, from the integral of its step response (textbook; second-order system), looked for in 20 000 steps.</summary>
    private static double RampOvershoot(double natural, double damping, double ramp)
    {
        double wn = 2 * Math.PI * natural, a = damping * wn, wd = wn * Math.Sqrt(1 - (damping * damping));
        double Integral(double t) => t <= 0 ? 0
            : t - (2 * damping / wn) + (Math.Exp(-a * t) * ((2 * damping / wn * Math.Cos(wd * t)) + (((2 * damping * damping) - 1) / wd * Math.Sin(wd * t))));
        double largest = 0, end = ramp + (6 / a);
        for (int i = 1; i <= 20_000; i++)
            largest = Math.Max(largest, (Integral(end * i / 20_000) - Integral((end * i / 20_000) - ramp)) / ramp);
        return largest - 1;
    }

    [Property(MaxTest = 40)]
    public Property OvershootOfAStraightEdge_IsThatOfTheIntegratedStep() =>
        Prop.ForAll(Gen.Choose(20, 80).SelectMany(_ => Gen.Choose(1, 400), (zeta, length) => (Damping: zeta / 100d, Ramp: length * 0.1e-9)).ToArbitrary(), drawn =>
        {
            Outlook outlook = Seen(Signal.Square(1.MHz(), 1.Vpp(), Duration.FromSeconds(0.8 * drawn.Ramp)), Response.SecondOrder(100.MHz(), Ratio.FromFraction(drawn.Damping)));
            Assert.Equal(RampOvershoot(100e6, drawn.Damping, drawn.Ramp), outlook.DisplayedOvershoot!.Value.Fraction, 2e-5);
        });

    // exp(-π ζ/√(1-ζ²)) = 16.3034 % for ζ = 0.5 (second-order step, textbook).
    [Fact]
    public void ASlowEdgeBehindARingingChain_IsNotSaidToOvershoot_AnIdealOneIs()
    {
        Outlook ideal = Seen(Signal.Square(1.MHz(), 1.Vpp()), Ringing), slow = Seen(Signal.Square(1.MHz(), 1.Vpp(), 40.ns()), Ringing);
        Assert.Equal(16.3034, ideal.DisplayedOvershoot!.Value.Percent, 3);
        Assert.Contains("the ideal edge overshoots by 16.3 %", Of(ideal, "chain-overshoots")!.Message, StringComparison.Ordinal);
        Assert.InRange(slow.DisplayedOvershoot!.Value.Percent, 0, 2);
        Assert.Null(Of(slow, "chain-overshoots"));
        Assert.Equal(ideal.ChainOvershoot, slow.ChainOvershoot);
    }

    [Fact]
    public void NothingIsSaidOfOvershoot_WhereThereIsNoEdgeOrNoLevel()
    {
        Assert.Null(Seen(Signal.Sine(1.MHz(), 1.Vpk()), Ringing).DisplayedOvershoot);
        Outlook coupled = Seen(Signal.Square(1.MHz(), 1.Vpp()), Ringing.Then(Response.HighPass(1.kHz())));
        Assert.Null(coupled.DisplayedOvershoot);
        Assert.Null(coupled.ChainOvershoot);
        Assert.Equal(coupled.DisplayedAmplitude.Value, coupled.DisplayedExtremes);
    }

    // Both edges of a square overshoot, a single step does it once: 1 + 2 x 16.3034 % and 1 + 16.3034 %.
    [Fact]
    public void Extremes_HoldTheOvershootOfEveryEdge()
    {
        Assert.Equal(1.326068, Seen(Signal.Square(1.MHz(), 1.Vpp()), Ringing).DisplayedExtremes.Volts, 4);
        Assert.Equal(1.163034, Seen(Signal.Step(1.Vpp(), default), Ringing).DisplayedExtremes.Volts, 4);
        Assert.Equal(2, Seen(Signal.Sine(1.MHz(), 1.Vpk()), Response.Gaussian(100.MHz())).DisplayedExtremes.Volts, 3);
    }

    // The waveform itself by another way: the periodic response of the whole signal.
    [Property(MaxTest = 25)]
    public Property Extremes_AreThoseOfTheWaveformBehindTheChain() =>
        Prop.ForAll(Gen.Choose(30, 90).SelectMany(_ => Gen.Choose(0, 60), (zeta, edge) => (Damping: zeta / 100d, Edge: edge * 0.1e-9)).ToArbitrary(), drawn =>
        {
            Response chain = Response.SecondOrder(200.MHz(), Ratio.FromFraction(drawn.Damping));
            Signal pulses = Signal.PulseTrain(2.MHz(), 1.Vpp(), 150.ns(), Duration.FromSeconds(drawn.Edge), Duration.FromSeconds(3 * drawn.Edge));
            Outlook outlook = Seen(pulses, chain);
            Assert.Equal(chain.Apply(pulses).PeakToPeak.Volts, outlook.DisplayedExtremes.Volts, 2e-3);
        });

    [Fact]
    public void ARangeThatHoldsTheLevelsOnly_CutsTheOvershootOff_AndItsRemedyCures()
    {
        Signal square = Signal.Square(1.MHz(), 1.Vpp());
        Finding cut = Of(Seen(square, Ringing, 1.Vpp()), "overshoot-clipped")!;
        Assert.Equal(Severity.Warning, cut.Severity);
        Assert.Contains("1.326 Vpp", cut.Message, StringComparison.Ordinal);
        double volts = double.Parse(Regex.Match(cut.Remedy!, @"at least ([0-9.]+) Vpp").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.InRange(volts, 1.326, 1.34);
        Assert.Null(Of(Seen(square, Ringing, PeakToPeakVoltage.FromVolts(volts)), "overshoot-clipped"));
        Assert.Null(Of(Seen(square, Response.Gaussian(100.MHz()), 1.Vpp()), "overshoot-clipped"));
        Assert.Null(Of(Seen(square, Ringing, 0.5.Vpp()), "overshoot-clipped"));
        Assert.NotNull(Of(Seen(square, Ringing, 0.5.Vpp()), "clipped"));
    }

    [Fact]
    public void TheRangeThatIsChosen_HoldsTheOvershoot()
    {
        Digitizer ranges = new Digitizer(5.GSaPerS(), 10.Mpts(), 8.bit()).WithFullScaleRanges(1.2.Vpp(), 1.3.Vpp(), 1.5.Vpp());
        Assert.Equal(1.5.Vpp(), Signal.Square(1.MHz(), 1.Vpp()).Through(Ringing).SampledBy(ranges).Over(20.us()).FullScale);
        Assert.Equal(1.2.Vpp(), Signal.Square(1.MHz(), 1.Vpp(), 40.ns()).Through(Ringing).SampledBy(ranges).Over(20.us()).FullScale);
        Outlook none = Signal.Square(1.MHz(), 1.2.Vpp()).Through(Ringing).SampledBy(ranges).Over(20.us());
        Assert.Null(none.FullScale);
        Assert.Contains("1.591 Vpp", Of(none, "no-range")!.Message, StringComparison.Ordinal);
    }

    // The sine integral at π gives 8.949 % on both sides of a step behind an ideal low-pass (Wilbraham-Gibbs constant; textbook value).
    [Fact]
    public void PreshootOfAnEdge_IsThatOfAStepForAFastOne_AndNothingForASlowOne()
    {
        Response wall = Response.BrickWall(100.MHz());
        Assert.Equal(8.949, wall.PreshootOf(new Edge(default)).Percent, 2);
        Assert.InRange(wall.PreshootOf(new Edge(20.ns())).Percent, 0, 2);
        Assert.Equal(0, Ringing.PreshootOf(new Edge(default)).Fraction);
        Assert.Equal(1 + (2 * 0.08949), Seen(Signal.Step(1.Vpp(), default), wall).DisplayedExtremes.Volts, 3);
        Assert.Throws<InvalidOperationException>(() => Response.HighPass(1.kHz()).PreshootOf(new Edge(default)));
        Assert.Throws<ArgumentNullException>(() => wall.PreshootOf(null!));
    }
}
