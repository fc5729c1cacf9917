using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What a chain knows about itself in front of a signal belongs to the outlook of that signal, and is said once.</summary>
public sealed class ChainFindingsInOutlookTests
{
    private static readonly Digitizer Bench = new(5.GSaPerS(), 10.Mpts(), 8.bit());
    private static readonly FrontEnd HighImpedance = FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(500.MHz()));
    private static readonly FrontEnd Fifty = FrontEnd.FiftyOhm(Response.Gaussian(500.MHz()));

    private static Probe Tip(double megahertz = 500) => Probe.Passive(10, 10.MOhm(), 10.pF(), megahertz.MHz());

    private static Outlook Seen(Signal signal, MeasurementChain chain) => signal.Through(chain).SampledBy(Bench).Over(20.us());

    private static Finding? Of(Outlook outlook, string code) => outlook.Findings.SingleOrDefault(finding => finding.Code == code);

    // 5 ns edges have their knee at 0.5 / 5 ns = 100 MHz (handbook 4.4); the curve allows 20 V there, not the 300 V of the fundamental.
    [Fact]
    public void ARatingThatFallsBelowThePeakAtTheKneeOfTheEdge_IsExceeded()
    {
        VoltageRating curve = VoltageRating.Derated([1.MHz(), 10.MHz(), 100.MHz()], [300.V(), 100.V(), 20.V()]);
        Finding rating = Of(Seen(Signal.Square(100.kHz(), 60.Vpp(), 5.ns()).WithOffset(30.V()), MeasurementChain.From(50.Ohm()).Probe(Tip().WithRating(curve)).Into(HighImpedance)), "above-rating")!;
        Assert.Equal(Severity.Safety, rating.Severity);
        Assert.Contains("100 MHz", rating.Message, StringComparison.Ordinal);
        Assert.Contains("20 V", rating.Message, StringComparison.Ordinal);
    }

    // The limits as commonly quoted from IEC 61010-1, from memory: 42.4 V peak, 60 V DC; the lower one counts for both.
    [Theory]
    [InlineData(42.3, false)]
    [InlineData(42.5, true)]
    public void AHazardousVoltage_HasOneLimitAndOneWording_WithAndWithoutAChain(double volts, bool isHazardous)
    {
        Signal signal = Signal.Sine(1.kHz(), volts.Vpk());
        MeasurementChain chain = MeasurementChain.From(1.Ohm()).Probe(Tip()).Into(HighImpedance);
        Finding? byChain = chain.Examine(signal).SingleOrDefault(finding => finding.Code == "hazardous-voltage"), seen = Of(Seen(signal, chain), "hazardous-voltage");
        Finding? byResponse = Of(signal.Through(Response.Gaussian(500.MHz())).SampledBy(Bench).Over(2.ms()), "hazardous-voltage");
        Assert.Equal(isHazardous, byChain is not null);
        Assert.Equal(byChain?.Message, seen?.Message);
        Assert.Equal(byChain?.Message, byResponse?.Message);
        Assert.DoesNotContain("Vpk", seen?.Message ?? "", StringComparison.Ordinal);
    }

    // A generator set to 8 V peak into 50 Ω puts 8 V peak, 5.657 V rms and 0.64 W, into a 50 Ω input; set to 6 V peak, 0.36 W.
    [Theory]
    [InlineData(8, true)]
    [InlineData(6, false)]
    public void PowerIntoATerminatingInput_IsThatOfTheAmplitudeStatedIntoIt(double volts, bool isTooMuch)
    {
        SourceImpedance generator = SourceImpedance.Resistive(50.Ohm()).WithAmplitudeStatedInto(50.Ohm());
        Finding? power = Of(Seen(Signal.Sine(1.MHz(), volts.Vpk()), MeasurementChain.From(generator).Into(Fifty)), "fifty-ohm-input");
        Assert.Equal(isTooMuch, power is not null);
        Assert.Contains(isTooMuch ? "640 mW" : "", power?.Message ?? "", StringComparison.Ordinal);
    }

    // A single pulse has no rms over all time; what it may stay at is its peak.
    [Fact]
    public void ASinglePulseIntoATerminatingInput_IsJudgedByItsPeak() =>
        Assert.NotNull(Of(Seen(Signal.SinglePulse(20.Vpp(), 1.us(), 10.ns(), 10.ns()), MeasurementChain.From(50.Ohm()).Into(Fifty)), "fifty-ohm-input"));

    public static TheoryData<string> Chains => new(Cases.Keys);

    private static readonly Dictionary<string, (Signal Signal, MeasurementChain Chain)> Cases = new()
    {
        ["a lead that rings near the content"] = (Signal.Sine(120.MHz(), 0.5.Vpk()), MeasurementChain.From(50.Ohm()).Probe(Tip().WithGroundLead(150.mm())).Into(HighImpedance)),
        ["a probe on an input it is not made for"] = (Signal.Square(1.MHz(), 1.Vpp(), 5.ns()), MeasurementChain.From(50.Ohm()).Probe(Tip()).Into(Fifty)),
        ["an ideal source"] = (Signal.Square(1.MHz(), 1.Vpp(), 50.ns()), MeasurementChain.From(SourceImpedance.None).Probe(Tip()).Into(HighImpedance)),
        ["an input that halves the voltage"] = (Signal.Sine(400.MHz(), 1.Vpk()), MeasurementChain.From(50.Ohm()).Into(Fifty)),
        ["a slow probe"] = (Signal.Square(10.MHz(), 1.Vpp(), 1.ns()), MeasurementChain.From(50.Ohm()).Probe(Tip(60)).Into(HighImpedance)),
        ["a cable that ends wrongly"] = (Signal.Sine(10.MHz(), 1.Vpk()), MeasurementChain.From(75.Ohm()).Cable(new Cable(75.Ohm(), 1.m(), 0.66)).Into(Fifty)),
    };

    [Theory, MemberData(nameof(Chains))]
    public void WhatTheChainSaysOfASignal_IsInItsOutlook_OrSaidThereMoreExactly(string which)
    {
        Dictionary<string, string[]> saidBetter = new()
        {
            ["content-beyond-bandwidth"] = ["signal-beyond-bandwidth", "edge-slowed", "amplitude-short"],
            ["chain-slower-than-signal"] = ["edge-slowed", "edge-incomplete"],
            ["dc-error"] = ["amplitude-short", "amplitude-high"],
        };
        (Signal signal, MeasurementChain chain) = Cases[which];
        string[] seen = Seen(signal, chain).Findings.Select(finding => finding.Code).ToArray(), known = chain.Examine(signal).Select(finding => finding.Code).ToArray();
        Assert.NotEmpty(known);
        Assert.All(known, code => Assert.True(seen.Contains(code) || (saidBetter.TryGetValue(code, out string[]? better) && better.Any(seen.Contains)), code));
        Assert.Equal(seen.Distinct(), seen);
    }
}
