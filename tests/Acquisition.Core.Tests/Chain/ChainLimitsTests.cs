using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Conventions;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>Where the calculators of mismatch, dividers and pads end: what lies outside is refused by name, what lies on the edge is computed.</summary>
public sealed class ChainLimitsTests
{
    public static TheoryData<Refusal> Refusals => new(
        new("reflection on no line", () => Mismatch.Reflection(default, 50.Ohm()), "line", "0 Ω"),
        new("return loss of a match", () => Mismatch.ReturnLoss(50.Ohm(), 50.Ohm()), "reflection", "perfect match"),
        new("return loss of more than all", () => Mismatch.ReturnLoss(Ratio.FromFraction(-1.01)), "reflection", "-1.01"),
        new("standing-wave ratio of a full reflection", () => Mismatch.StandingWaveRatio(-(100.Percent())), "reflection", "below 1"),
        new("standing-wave ratio of no return loss", () => Mismatch.StandingWaveRatioOf(0.dB()), "returnLoss", "0 dB"),
        new("standing-wave ratio below 1", () => Mismatch.ReflectionOf(99.Percent()), "standingWaveRatio", "at least 1"),
        new("loss of a full reflection", () => Mismatch.Loss(100.Percent()), "reflection", "nothing across"),
        new("two full reflections", () => Mismatch.LowerLimit(100.Percent(), -(100.Percent())), "second", "below 1"),
        new("more than a full reflection", () => Mismatch.UpperLimit(Ratio.FromFraction(0.1), Ratio.FromFraction(1.1)), "second", "1.1"),
        new("pad without loss", () => AttenuatorPad.Pi(0.dB(), 50.Ohm()), "attenuation", "above 0 dB"),
        new("pad of 101 dB", () => AttenuatorPad.Tee(101.dB(), 50.Ohm()), "attenuation", "101 dB"),
        new("minimum loss between equals", () => AttenuatorPad.MinimumLoss(50.Ohm(), 50.Ohm()), "load", "no pad"),
        new("divider without tip resistance", () => new CompensatedDivider(default, 1.pF(), 1.MOhm(), 1.pF()), "tipResistance", "0 Ω"),
        new("divider without tip capacitance", () => new CompensatedDivider(9.MOhm(), default, 1.MOhm(), 1.pF()), "tipCapacitance", "0 F"),
        new("divider without resistance", () => new CompensatedDivider(9.MOhm(), 1.pF(), default, 1.pF()), "resistance", "0 Ω"),
        new("divider without capacitance", () => new CompensatedDivider(9.MOhm(), 1.pF(), 1.MOhm(), default), "capacitance", "0 F"),
        new("trim of no tip", () => CompensatedDivider.TipCapacitanceFor(default, 1.MOhm(), 1.pF()), "tipResistance", "0 Ω"),
        new("amplitude stated into a short", () => SourceImpedance.Resistive(50.Ohm()).WithAmplitudeStatedInto(default), "load", "0 Ω"),
        new("impedance below DC", () => SourceImpedance.Resistive(50.Ohm()).OhmsAt(-(1.Hz())), "frequency", "-1 Hz"),
        new("noise in a negative band", () => ThermalNoise.OpenCircuit(50.Ohm(), Temperature.FromKelvins(290), -(1.Hz())), "noiseBandwidth", "-1 Hz"));

    [Theory, MemberData(nameof(Refusals))]
    public void WhatLiesOutside_IsRefusedByName(Refusal refusal) => refusal.Confirm();

    [Fact]
    public void WhatLiesOnTheEdge_IsComputed()
    {
        Assert.Equal(0, Mismatch.ReturnLoss(-(100.Percent())).Decibels, 12);
        Assert.Equal(0, Mismatch.ReflectionOf(100.Percent()).Fraction);
        Assert.Equal(0, Mismatch.Loss(default).Decibels);
        // A loss of nothing is written 0 dB, not -0 dB.
        Assert.Equal("0 dB", Mismatch.Loss(default).ToString());
        Assert.Equal(100, AttenuatorPad.Pi(100.dB(), 50.Ohm()).Loss.Decibels, 6);
        Assert.Equal(0, ThermalNoise.OpenCircuit(50.Ohm(), Temperature.FromKelvins(290), default).Volts);
        Assert.Equal(50, SourceImpedance.Resistive(50.Ohm()).OhmsAt(default).Real);
    }

    // By hand: 12 pF on 100 pF begin at 12/112, 1 MΩ under 9 MΩ ends at 0.1, and 0.9 MΩ times 112 pF are 100.8 µs.
    [Fact]
    public void ADividerOutOfTrim_BeginsAtItsCapacitances_AndEndsAtItsResistances()
    {
        var divider = new CompensatedDivider(9.MOhm(), 12.pF(), 1.MOhm(), 100.pF());
        Assert.Equal(12.0 / 112, divider.RatioAtHighFrequency.Fraction, 1e-15);
        Assert.Equal(0, divider.StepAt(-(1.ns())).Fraction);
        Assert.Equal(12.0 / 112, divider.StepAt(default).Fraction, 1e-15);
        Assert.Equal(0.1 + (12.0 / 112 - 0.1) / Math.E, divider.StepAt(100.8.us()).Fraction, 1e-12);
        Assert.Equal(0.1, divider.StepAt(1.s()).Fraction, 1e-15);
    }

    // The closed formula and the response's own poles are two ways to the same step.
    [Fact]
    public void TheDividersStep_IsThatOfItsResponse()
    {
        var divider = new CompensatedDivider(9.MOhm(), 10.pF(), 1.MOhm(), 100.pF());
        Response response = divider.ToResponse();
        foreach (double microseconds in new[] { 1.0, 10, 50, 99, 300, 2000 })
            Assert.Equal(divider.StepAt(Duration.FromMicroseconds(microseconds)).Fraction, response.StepAt(Duration.FromMicroseconds(microseconds)).Fraction, 1e-9);
        Assert.Equal(0.1, response.AmplitudeRatio(default).Fraction, 1e-12);
        Assert.Equal(10.0 / 110, response.AmplitudeRatio(1.GHz()).Fraction, 1e-6);
    }

    // Handbook 7.8: a pad made for its line shows another ratio into 1 MΩ; within 5 % of its load it is left alone.
    [Theory]
    [InlineData(1e6, true)]
    [InlineData(2110, true)]
    [InlineData(1890, true)]
    [InlineData(2090, false)]
    [InlineData(1910, false)]
    public void APadOnAnInputItIsNotMadeFor_IsNamed(double ohms, bool named)
    {
        MeasurementChain chain = MeasurementChain.From(2.kOhm()).Pad(AttenuatorPad.Pi(6.dB(), 2.kOhm())).Into(FrontEnd.HighImpedance(Resistance.FromOhms(ohms), default, Response.Cascade()));
        Assert.Equal(named, chain.Findings.Any(finding => finding.Code == "pad-not-terminated"));
    }

    [Fact]
    public void APadThatATerminatorOrAnotherPadFollows_IsTerminated()
    {
        AttenuatorPad pad = AttenuatorPad.Pi(6.dB(), 50.Ohm());
        FrontEnd input = FrontEnd.HighImpedance(1.MOhm(), default, Response.Cascade());

        Assert.DoesNotContain(MeasurementChain.From(50.Ohm()).Pad(pad).FeedThrough(50.Ohm()).Into(input).Findings, finding => finding.Code == "pad-not-terminated");
        Assert.Single(MeasurementChain.From(50.Ohm()).Pad(pad).Pad(pad).Into(input).Findings, finding => finding.Code == "pad-not-terminated");
    }

    [Fact]
    public void ASource_SaysWhatItIs()
    {
        Assert.Equal("ideal source", SourceImpedance.None.ToString());
        Assert.Equal("source 50 Ω", SourceImpedance.Resistive(50.Ohm()).ToString());
        Assert.Equal("source 1 kΩ beside 10 pF", SourceImpedance.ResistiveCapacitive(1.kOhm(), 10.pF()).ToString());
        Assert.Equal("source 50 Ω, stated into 50 Ω", SourceImpedance.Resistive(50.Ohm()).WithAmplitudeStatedInto(50.Ohm()).ToString());
    }

    [Fact]
    public void AMinimumLossPad_WithPreferredResistors_KeepsItsEmptyPlace()
    {
        // Common practice, no source: 75 Ω to 50 Ω takes 43 Ω in series and 86.6 Ω across, and loses 5.7 dB.
        AttenuatorPad pad = AttenuatorPad.MinimumLoss(75.Ohm(), 50.Ohm());
        Assert.Equal(43.3, pad.First.Ohms, 1);
        Assert.Equal(86.6, pad.Middle.Ohms, 1);
        Assert.Equal(default, pad.Last);
        Assert.Equal(5.72, pad.Loss.Decibels, 2);
        AttenuatorPad made = pad.WithNearest(PreferredValues.E24);
        Assert.Equal([43.0, 91, 0], new[] { made.First.Ohms, made.Middle.Ohms, made.Last.Ohms });
        Assert.Equal(default, AttenuatorPad.MinimumLoss(50.Ohm(), 75.Ohm()).First);
    }

    [Fact]
    public void DeratingWhoseFrequenciesDoNotRise_IsRefusedWithBothOfThem()
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => VoltageRating.Derated([1.MHz(), 10.MHz(), 10.MHz()], [300.V(), 100.V(), 20.V()]));

        Assert.Equal("frequencies", refusal.ParamName);
        Assert.Contains("frequencies must rise; 10 MHz follows 10 MHz", refusal.Message, StringComparison.Ordinal);
    }
}
