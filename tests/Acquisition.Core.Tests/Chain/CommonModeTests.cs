using System;
using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>What a differential probe leaves of the voltage that both of its inputs have in common (handbook 12.6: the common-mode rejection ratio of the textbooks).</summary>
public sealed class CommonModeTests
{
    private static readonly Probe Differential = Probe.Passive(100, 8.MOhm(), 3.pF(), 100.MHz()).WithDifferentialInputs().WithMaximumToEarth(1000.V());

    private static readonly Signal Gate = Signal.Square(100.kHz(), 20.Vpp(), 20.ns());

    private static Finding[] Of(Probe probe, Signal signal, double commonMode) =>
        [.. MeasurementChain.From(10.Ohm()).Probe(probe).Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())))
            .Examine(signal, Voltage.FromVolts(commonMode)).Where(finding => finding.Code is "common-mode-shows" or "rejection-unknown")];

    // 400 V behind 40 dB are 4 V, 40 % of 10 V; behind 60 dB 0.4 V, 4 %; behind 66.1 dB a little less than 2 %: by hand.
    [Theory]
    [InlineData(40, Severity.Failure, "up to 4 V beside the signal, 40 % of the peak")]
    [InlineData(60, Severity.Warning, "up to 400 mV beside the signal, 4 % of the peak")]
    [InlineData(66.1, null, "")]
    public void WhatIsLeftOfTheCommonMode_IsToldBesideTheSignal(double decibels, Severity? severity, string words)
    {
        Finding? shows = Of(Differential.WithCommonModeRejection(DecibelRatio.FromDecibels(decibels)), Gate, -400).SingleOrDefault();
        Assert.Equal(severity, shows?.Severity);
        Assert.Contains(words, shows?.Message ?? "", StringComparison.Ordinal);
        if (shows is not null)
            Assert.Contains("at least 67 dB", shows.Remedy, StringComparison.Ordinal);
    }

    [Property(MaxTest = 60)]
    public Property TheRejectionThatIsNamed_LeavesAtMostTwoPercent() =>
        Prop.ForAll(Gen.Choose(1, 3000).SelectMany(_ => Gen.Choose(1, 200), (common, swing) => (Common: common, Swing: swing)).ToArbitrary(), drawn =>
        {
            Signal signal = Signal.Square(100.kHz(), PeakToPeakVoltage.FromVolts(drawn.Swing), 20.ns());
            Finding? shows = Of(Differential.WithCommonModeRejection(1.dB()), signal, drawn.Common).SingleOrDefault();
            if (shows is null)
                return drawn.Common / Math.Pow(10, 0.05) <= 0.02 * drawn.Swing / 2;
            Quantity named = Quantity.Parse(Regex.Match(shows.Remedy!, "at least (.*? dB)").Groups[1].Value);
            return Of(Differential.WithCommonModeRejection(DecibelRatio.FromDecibels(named.SiValue)), signal, drawn.Common).Length == 0 || named.SiValue <= 0;
        });

    [Fact]
    public void ARejectionThatIsNotStated_IsAskedFor()
    {
        Finding unknown = Assert.Single(Of(Differential, Gate, 400));
        Assert.Equal("rejection-unknown", unknown.Code);
        Assert.Contains("40 dB would leave 4 V", unknown.Message, StringComparison.Ordinal);
        Assert.Contains("both inputs on one of the two points", unknown.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingIsSaid_WhereNothingFloatsOrNothingIsDifferential()
    {
        Assert.Empty(Of(Differential, Gate, 0));
        MeasurementChain chain = MeasurementChain.From(10.Ohm()).Probe(Differential).Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())));
        Assert.DoesNotContain(chain.Examine(Gate), finding => finding.Code == "rejection-unknown");
        Assert.Empty(Of(Probe.Passive(10, 10.MOhm(), 10.pF(), 100.MHz()), Gate, 400));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-40)]
    [InlineData(double.NaN)]
    public void ARejectionThatIsNone_IsRefused(double decibels) =>
        Assert.Equal("rejection", Assert.ThrowsAny<ArgumentException>(() => Differential.WithCommonModeRejection(DecibelRatio.FromSi(decibels, "rejection"))).ParamName);
}
