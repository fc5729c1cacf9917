using System;
using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Where one element of a chain spoils a reading the remedy names it and says how good it must be instead: an element like that, put in its place, cures.</summary>
public sealed class ElementRemedyTests
{
    private static readonly Digitizer Bench = new(5.GSaPerS(), 10.Mpts(), 8.bit());

    private static FrontEnd Input(int megahertz = 500) => FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(megahertz.MHz()));

    private static Probe Tip(int megahertz = 500) => Probe.Passive(10, 10.MOhm(), 10.pF(), megahertz.MHz());

    private static Outlook Seen(Signal signal, MeasurementChain chain) => signal.Through(chain).SampledBy(Bench).Over(20.us());

    private static Finding? Of(Outlook outlook, string code) => outlook.Findings.SingleOrDefault(finding => finding.Code == code);

    private static double Number(string text, string pattern)
    {
        Match found = Regex.Match(text, pattern + @"([0-9.E+-]+ ?[^ ,;)]+)");
        Assert.True(found.Success, text);
        return Quantity.Parse(found.Groups[1].Value).SiValue;
    }

    // 1 kΩ with 10 pF is a pole at 15.9 MHz: |H| at 10 MHz is 0.8467 (handbook 7.1); 2 % takes 1/sqrt(1 + x²) = 0.98, x = 0.2031, so 3.232 pF behind an ideal probe and input.
    [Fact]
    public void AProbeThatLoadsTheNode_IsAskedForLessCapacitance_NotForBandwidth()
    {
        Signal sine = Signal.Sine(10.MHz(), 0.5.Vpk());
        string remedy = Of(Seen(sine, MeasurementChain.From(1.kOhm()).Probe(Tip()).Into(Input())), "amplitude-short")!.Remedy!;
        double farads = Number(remedy, "a probe of at most ");
        Assert.InRange(farads, 3.15e-12, 3.232e-12);
        Assert.Contains("most of it comes from passive probe", remedy, StringComparison.Ordinal);
        Assert.DoesNotContain("Gaussian", remedy, StringComparison.Ordinal);
        Probe light = Probe.Active(10, 10.MOhm(), Capacitance.FromFarads(farads), Response.Gaussian(500.MHz()));
        Assert.Null(Of(Seen(sine, MeasurementChain.From(1.kOhm()).Probe(light).Into(FrontEnd.FiftyOhm(Response.Gaussian(500.MHz())))), "amplitude-short"));
    }

    // By the handbook's 2.5 the 5 ns edge may become √(5² + x²) = 5.25 ns: x = 1.6 ns of ln 9 · 500 Ω · C, 1.46 pF; the edge is not Gaussian, so about.
    [Fact]
    public void AnEdgeSlowedByLoading_IsCuredByTheCapacitanceThatIsNamed()
    {
        Signal clock = Signal.Square(10.MHz(), 1.Vpp(), 5.ns());
        double farads = Number(Of(Seen(clock, MeasurementChain.From(500.Ohm()).Probe(Tip()).Into(Input())), "edge-slowed")!.Remedy!, "a probe of at most ");
        Assert.Equal(1.46e-12, farads, 0.1 * 1.46e-12);
        Probe light = Probe.Active(10, 10.MOhm(), Capacitance.FromFarads(farads), Response.Gaussian(500.MHz()));
        Assert.Null(Of(Seen(clock, MeasurementChain.From(500.Ohm()).Probe(light).Into(FrontEnd.FiftyOhm(Response.Gaussian(500.MHz())))), "edge-slowed"));
    }

    // a √f alone: 2.828 dB at 200 MHz where 2 % are 0.175 dB, less what the front end takes.
    [Fact]
    public void ACableThatLosesTooMuch_IsAskedForLessLoss()
    {
        Signal sine = Signal.Sine(200.MHz(), 0.5.Vpk());
        MeasurementChain With(double length) => MeasurementChain.From(SourceImpedance.Resistive(50.Ohm()).WithAmplitudeStatedInto(50.Ohm()))
            .Cable(new Cable(50.Ohm(), Length.FromMeters(length), 0.66).WithLossPer(10.m(), CableLoss.FromPoint(100.MHz(), 2.dB()))).Into(FrontEnd.FiftyOhm(Response.Gaussian(3.GHz())));
        string remedy = Of(Seen(sine, With(10)), "amplitude-short")!.Remedy!;
        Assert.Contains("at 200 MHz, where it loses 2.828 dB", remedy, StringComparison.Ordinal);
        double decibels = Number(remedy, "a cable that loses at most ");
        Assert.InRange(decibels, 0.12, 0.1755);
        // Loss goes with length.
        Assert.Null(Of(Seen(sine, With(10 * decibels / 2.8284)), "amplitude-short"));
    }

    [Fact]
    public void ASlowFrontEnd_IsNamed_AndSoIsItsLimit()
    {
        Signal clock = Signal.Square(10.MHz(), 1.Vpp(), 2.ns());
        MeasurementChain With(FrontEnd input) => MeasurementChain.From(SourceImpedance.None).Probe(Tip(2000)).Into(input);
        double hertz = Number(Of(Seen(clock, With(Input(150))), "edge-slowed")!.Remedy!, "a front end of at least ");
        Assert.Null(Of(Seen(clock, With(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(Frequency.FromHertz(hertz))))), "edge-slowed"));
        string limited = Of(Seen(clock, With(Input(1000).WithBandwidthLimit(Response.SinglePole(20.MHz())))), "edge-slowed")!.Remedy!;
        Assert.Contains("without its bandwidth limit; most of it comes from front end", limited, StringComparison.Ordinal);
        Assert.Null(Of(Seen(clock, With(Input(1000))), "edge-slowed"));
    }

    [Fact]
    public void WhereNoSingleElementCures_TheWorstIsNamedBesideWhatTheWholeMustBe()
    {
        Signal clock = Signal.Square(10.MHz(), 1.Vpp(), 1.ns());
        string remedy = Of(Seen(clock, MeasurementChain.From(50.Ohm()).Probe(Tip(200)).Into(Input(200))), "edge-slowed")!.Remedy!;
        double hertz = Number(remedy, "a chain of at least ");
        Assert.Contains("loading included; most of it comes from passive probe", remedy, StringComparison.Ordinal);
        Assert.Null(Of(clock.Through(Response.Gaussian(Frequency.FromHertz(hertz))).SampledBy(Bench).Over(20.us()), "edge-slowed"));
    }

    [Property(MaxTest = 25)]
    public Property AProbeWithTheNamedCapacitance_ShowsTheAmplitude() => Prop.ForAll(Gen.Choose(100, 5000).ToArbitrary(), Gen.Choose(1, 40).ToArbitrary(), (ohms, megahertz) =>
    {
        Signal sine = Signal.Sine(megahertz.MHz(), 0.5.Vpk());
        MeasurementChain With(Probe probe, FrontEnd input) => MeasurementChain.From(Resistance.FromOhms(ohms)).Probe(probe).Into(input);
        string? remedy = Of(Seen(sine, With(Tip(), Input())), "amplitude-short")?.Remedy;
        if (remedy is null || !remedy.StartsWith("a probe of at most ", StringComparison.Ordinal) || remedy.Contains("at least", StringComparison.Ordinal))
            return true;
        Probe light = Probe.Active(10, 10.MOhm(), Capacitance.FromFarads(Number(remedy, "a probe of at most ")), Response.Gaussian(500.MHz()));
        return Of(Seen(sine, With(light, FrontEnd.FiftyOhm(Response.Gaussian(500.MHz())))), "amplitude-short") is null;
    });
}
