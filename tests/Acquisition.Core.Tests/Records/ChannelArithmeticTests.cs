using System;
using System.Linq;
using Acquisition.Core.Literals;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>What two channels that were captured together give: the difference of two points, the power of voltage and current.</summary>
public class ChannelArithmeticTests
{
    [Fact]
    public void DifferenceOfTwoInputs_IsTheSignalBetweenThem_WithTheStepsOfBoth()
    {
        Record high = Record.FromCodes(new byte[] { 10, 20, 30 }, 1.GSaPerS(), 3.mV(), 0.V()).WithName("D+");
        Record low = Record.FromCodes(new byte[] { 30, 20, 10 }, 1.GSaPerS(), 4.mV(), 0.V()).WithName("D-");

        Record between = high.Minus(low);

        Assert.Equal([-0.09, -0.02, 0.05], between.ToSiValues().Select(x => Math.Round(x, 12)));
        Assert.Equal(5e-3, between.Resolution!.Value.SiValue, 1e-12);
        Assert.Equal("D+ - D-", between.Name);
        Assert.Null(between.HighLimit);
        Assert.Empty(between.Findings);
        Assert.Equal(Record.FromVolts([0.15, 0.14, 0.13], 1.GSaPerS()).ToSiValues(), high.Plus(low).ToSiValues().Select(x => Math.Round(x, 12)));
    }

    /// <summary>Mean of û sin(ωt) · î sin(ωt + φ) over whole periods: û î cos φ / 2 (IEC 60050-131, term 131-11-42, active power; number from memory).</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(90)]
    public void MeanOfVoltageTimesCurrent_IsTheActivePower(double degrees)
    {
        const int points = 2000;
        double phase = degrees * Math.PI / 180;
        double At(int i) => 2 * Math.PI * 5 * i / points;
        Record voltage = Record.FromVolts(Enumerable.Range(0, points).Select(i => 10 * Math.Sin(At(i))).ToArray(), 1.MSaPerS());
        Record current = Record.FromValues(Enumerable.Range(0, points).Select(i => 0.5 * Math.Sin(At(i) + phase)).ToArray(), QuantityKind.Current, 1.MSaPerS());

        Record power = voltage.Times(current);

        Assert.Same(QuantityKind.Power, power.Kind);
        Assert.Equal(10 * 0.5 * Math.Cos(phase) / 2, RecordStatistics.Of(power).Value.Mean.SiValue, 1e-12);
        Assert.Null(power.Resolution);
    }

    [Property]
    public bool WhatIsCommonToBoth_IsTakenAway(short[] codes, short common)
    {
        if (codes.Length == 0)
            return true;
        double[] volts = codes.Select(x => x / 1024.0).ToArray();
        Record between = Record.FromVolts(volts.Select(x => x + common).ToArray(), 1.MSaPerS()).Minus(Record.FromVolts(volts.Select(x => common - x).ToArray(), 1.MSaPerS()));
        return between.ToSiValues().SequenceEqual(volts.Select(x => 2 * x));
    }

    [Fact]
    public void ClippedChannel_IsSaidOfTheDifference()
    {
        Record clipped = Record.FromCodes(new byte[] { 100, 255, 255 }, 1.GSaPerS(), 1.mV(), 0.V());
        Finding finding = Assert.Single(clipped.Minus(Record.FromVolts([0, 0, 0], 1.GSaPerS())).Findings);
        Assert.Equal("clipped", finding.Code);
        Assert.Equal(Severity.Warning, finding.Severity);
    }

    [Fact]
    public void ChannelsThatDoNotBelongTogether_AreRefusedWithWhatToDo()
    {
        Record volts = Record.FromVolts([1, 2, 3], 1.MSaPerS());

        Assert.Contains("must hold 3 pts as this record does; was 2 pts (Slice", Refusal(() => volts.Minus(Record.FromVolts([1, 2], 1.MSaPerS()))), StringComparison.Ordinal);
        Assert.Contains("from 0 s at 1 MSa/s; was from 10 ns at 1 MSa/s (Reconstruct", Refusal(() => volts.Minus(volts.WithStart(10.ns()))), StringComparison.Ordinal);
        Assert.Contains("same instants", Refusal(() => volts.Plus(Record.FromVolts([1, 2, 3], 2.MSaPerS()))), StringComparison.Ordinal);
        Assert.Contains("must hold voltage as this record does; was current", Refusal(() => volts.Minus(Record.FromValues([1, 2, 3], QuantityKind.Current, 1.MSaPerS()))), StringComparison.Ordinal);
        Assert.Contains("was power level (dBm)", Refusal(() => volts.Times(Record.FromValues([1, 2, 3], QuantityKind.PowerLevel, 1.MSaPerS()))), StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>(() => volts.Times(null!));

        static string Refusal(Action join)
        {
            ArgumentException refusal = Assert.Throws<ArgumentException>(join);
            Assert.Equal("other", refusal.ParamName);
            return refusal.Message;
        }
    }
}
