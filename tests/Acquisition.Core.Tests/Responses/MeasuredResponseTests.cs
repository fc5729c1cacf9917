using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Responses given by points: between them, outside them, and how coarse they may be.</summary>
public class MeasuredResponseTests
{
    private static readonly Response Table = Response.Measured(
        "sweep",
        new[]
        {
            new FrequencyPoint(1.MHz(), 0.dB(), 0.deg()),
            new FrequencyPoint(10.MHz(), -1.dB(), -20.deg()),
            new FrequencyPoint(100.MHz(), -5.dB(), -100.deg()),
        },
        OutsideBand.Refuse);

    [Fact]
    public void BetweenPoints_GainIsLinearInDecibelsOverLogFrequency_AndPhaseInFrequency()
    {
        Assert.Equal(-3, Table.Gain(Frequency.FromMegahertz(Math.Sqrt(1000))).Decibels, 1e-12);
        Assert.Equal(-60, Table.Phase(55.MHz()).Degrees, 1e-12);
        Assert.Equal(-1, Table.Gain(10.MHz()).Decibels, 1e-12);
        Assert.Equal(80.0 / 360 / 90e6, Table.GroupDelay(55.MHz()).Seconds, 1e-20);
    }

    [Theory]
    [InlineData(0.5e6)]
    [InlineData(101e6)]
    public void OutsideTheTable_ThatRefuses_TheMessageNamesItsLimits(double hertz)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Table.Gain(hertz.Hz()));
        Assert.Contains("within the data of sweep, 1 MHz to 100 MHz", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EachPolicy_DoesAboveTheTable_WhatItsNameSays()
    {
        FrequencyPoint[] points = { new(0.Hz(), 0.dB(), 0.deg()), new(50.MHz(), -6.dB(), -50.deg()), new(100.MHz(), -12.dB(), -100.deg()) };
        Assert.Equal(-12, Response.Measured("t", points, above: OutsideBand.Hold).Gain(1.GHz()).Decibels, 1e-9);
        Assert.Equal(-12 - 6, Response.Measured("t", points, above: OutsideBand.ExtendSlope).Gain(200.MHz()).Decibels, 1e-9);
        Assert.Equal(-200, Response.Measured("t", points, above: OutsideBand.ExtendSlope).Phase(200.MHz()).Degrees, 1e-9);
        Assert.Equal(0, Response.Measured("t", points, above: OutsideBand.Zero).AmplitudeRatio(101.MHz()).Fraction);
    }

    [Fact]
    public void TheStep_OfDataThatEndTooSoon_IsRefused_UntilTheCallerSaysWhatHoldsAbove()
    {
        FrequencyPoint[] points = { new(0.Hz(), 0.dB(), 0.deg()), new(100.MHz(), -1.dB(), -10.deg()) };
        Assert.Contains("data of t end at 100 MHz", Assert.Throws<InvalidOperationException>(() => Response.Measured("t", points).RiseTime).Message, StringComparison.Ordinal);
        Assert.True(Response.Measured("t", points, above: OutsideBand.Zero).RiseTime.Nanoseconds > 1);
    }

    [Fact]
    public void AFineTableOfAModel_StepsLikeTheModel()
    {
        Response model = Response.Bessel(4, 100.MHz()).Then(Response.Delay(7.ns()));
        FrequencyPoint[] points = Enumerable.Range(0, 801).Select(i =>
        {
            Frequency f = (i * 0.5).MHz() + 1e-9.Hz();
            return new FrequencyPoint(i == 0 ? 0.Hz() : f, model.Gain(f), Angle.FromRadians(Math.IEEERemainder(model.Phase(f).Radians, 2 * Math.PI)));
        }).ToArray();
        Response table = Response.Measured("table", points, above: OutsideBand.ExtendSlope);
        Assert.Empty(table.Findings);
        Assert.Equal(model.Phase(333.MHz()).Degrees, table.Phase(333.MHz()).Degrees, 1e-2);
        Assert.Equal(1, (table.Bandwidth / model.Bandwidth).Fraction, 1e-4);
        Assert.Equal(1, (table.RiseTime / model.RiseTime).Fraction, 1e-3);
        Assert.Equal(model.Overshoot.Fraction, table.Overshoot.Fraction, 1e-3);
        Assert.Equal(model.StepCrossing(Ratio.FromPercent(50)).Nanoseconds, table.StepCrossing(Ratio.FromPercent(50)).Nanoseconds, 1e-3);
    }

    [Fact]
    public void PhaseStepsNearHalfATurn_AreAFinding_WithTheStepThatWouldDo()
    {
        // 10 ns of delay in steps of 45 MHz: 0.45 of a turn each.
        FrequencyPoint[] points = Enumerable.Range(0, 20).Select(i => new FrequencyPoint((45.0 * i).MHz(), 0.dB(), (-360 * 0.45 * i).deg())).ToArray();
        Finding finding = Assert.Single(Response.Measured("line", points).Findings);
        Assert.Equal("phase-step-too-coarse", finding.Code);
        Assert.Contains("22.5 MHz", finding.Remedy, StringComparison.Ordinal);
        Assert.Equal("phase-step-too-coarse", Assert.Single(Response.Measured("line", points).Then(Response.SkinEffect(1.GHz())).Findings).Code);
    }

    [Fact]
    public void PointsOutOfOrder_AreRefused() => Assert.Throws<ArgumentException>(() => Response.Measured("t", new[] { new FrequencyPoint(2.Hz(), 0.dB()), new FrequencyPoint(1.Hz(), 0.dB()) }));
}
