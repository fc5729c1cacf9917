using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Digitizing;

/// <summary>Which rate, memory and range an instrument offers, in whatever order they were stated.</summary>
public sealed class RatesAndMemoryTests
{
    private static readonly Digitizer Bench = new(1.GSaPerS(), 10.kpts(), 8.bit());

    [Theory]
    [InlineData(400, 333.333333333333, 250)]
    [InlineData(300, 250, 250)]
    [InlineData(1000, 1000, 1000)]
    [InlineData(2000, 1000, 1000)]
    [InlineData(333.3333333333333, 333.333333333333, 250)]
    public void RatesByDividing_AreTheHighestOverAWholeNumber_OrOverAPowerOfTwo(double wish, double whole, double halving)
    {
        Assert.Equal(whole, RateSteps.WholeDivisors.AtOrBelow(SampleRate.FromMegasamplesPerSecond(wish), 1.GSaPerS())!.Value.MegasamplesPerSecond, 9);
        Assert.Equal(halving, RateSteps.Halving.AtOrBelow(SampleRate.FromMegasamplesPerSecond(wish), 1.GSaPerS())!.Value.MegasamplesPerSecond, 9);
    }

    [Theory]
    [InlineData(30, 25)]
    [InlineData(0.3, 0.25)]
    [InlineData(24, 10)]
    [InlineData(0.05, 0.05)]
    public void RatesInOneTwoAndAHalfFive_FallToTheNextStep_BelowOneToo(double wish, double expected) =>
        Assert.Equal(expected, RateSteps.OneTwoAndAHalfFive.AtOrBelow(SampleRate.FromSamplesPerSecond(wish), 1.GSaPerS())!.Value.SamplesPerSecond);

    [Fact]
    public void ListedRates_MayStandInAnyOrder_AndForgiveTheLastBits()
    {
        RateSteps steps = RateSteps.Listed(100.MSaPerS(), 1.GSaPerS(), 10.MSaPerS(), 2.GSaPerS());
        Assert.Equal(1.GSaPerS(), steps.AtOrBelow(3.GSaPerS(), 1.GSaPerS()));
        Assert.Equal(1.GSaPerS(), steps.AtOrBelow(SampleRate.FromSamplesPerSecond(1e9 * (1 - 1e-13)), 2.GSaPerS()));
        Assert.Equal(100.MSaPerS(), steps.AtOrBelow(SampleRate.FromSamplesPerSecond(1e9 * (1 - 1e-11)), 2.GSaPerS()));
        Assert.Equal(12.34.MSaPerS(), RateSteps.Continuous.AtOrBelow(12.34.MSaPerS(), 1.GSaPerS()));
    }

    // With three channels the rate is that of two, for none is stated for three.
    [Fact]
    public void SharedConverters_StatedInAnyOrder_MeanTheSame()
    {
        Digitizer up = Bench.WithChannelsInUse(2, 500.MSaPerS(), 5.kpts()).WithChannelsInUse(4, 250.MSaPerS(), 2.kpts());
        Digitizer down = Bench.WithChannelsInUse(4, 250.MSaPerS(), 2.kpts()).WithChannelsInUse(2, 500.MSaPerS(), 5.kpts());
        foreach (Digitizer digitizer in new[] { up, down })
        {
            Assert.Equal([1000, 500, 500, 250, 250], Enumerable.Range(1, 5).Select(channels => digitizer.MaximumRate(channels).MegasamplesPerSecond));
            Assert.Equal([10_000L, 5000, 5000, 2000, 2000], Enumerable.Range(1, 5).Select(channels => digitizer.Memory(channels).Points));
        }
        Assert.Equal(125.MSaPerS(), up.WithChannelsInUse(4, 125.MSaPerS(), 1.kpts()).MaximumRate(4));
    }

    [Fact]
    public void RangeFor_IsTheSmallestThatHolds()
    {
        Digitizer ranged = Bench.WithFullScaleRanges(800.mVpp(), 200.mVpp(), 4.Vpp());
        Assert.Equal(800.mVpp(), ranged.RangeFor(500.mVpp()));
        Assert.Equal(800.mVpp(), ranged.RangeFor(800.mVpp()));
        Assert.Null(ranged.RangeFor(4.1.Vpp()));
        Assert.Equal(4.1.Vpp(), Bench.RangeFor(4.1.Vpp()));
    }

    [Fact]
    public void AWindowOfOneInterval_HasNoSamplesToSpeakOf()
    {
        Timebase timebase = Bench.TimebaseFor(1.ns());
        Finding finding = Assert.Single(timebase.Findings);
        Assert.Equal("no-samples-in-window", finding.Code);
        Assert.Equal(Severity.Failure, finding.Severity);
        Assert.Empty(Bench.TimebaseFor(2.ns()).Findings);
    }

    // The rate that fills the memory may be rounded up by its last bit.
    [Fact]
    public void ARecord_IsNeverLongerThanTheMemory()
    {
        for (int i = 1; i <= 2000; i++)
        {
            PointCount memory = PointCount.FromPoints(1000 + i);
            Timebase timebase = new Digitizer(1.GSaPerS(), memory, 8.bit()).TimebaseFor(Duration.FromMicroseconds(7 + i / 3.0));
            Assert.InRange(timebase.RecordLength.Points, memory.Points - 1, memory.Points);
        }
    }

    // 40 GSa/s over four days are 1.4e16 points, more than can be counted: the record is still answered, and more memory is not named as a remedy.
    [Fact]
    public void WindowOfDays_IsAnsweredWithoutNamingMemoryThatCannotBeCounted()
    {
        Timebase slow = new Digitizer(40.GSaPerS(), 1.Mpts(), 8.bit()).TimebaseFor(Duration.FromSeconds(4 * 86_400));

        Finding capped = Assert.Single(slow.Findings);
        Assert.Equal("memory-caps-rate", capped.Code);
        Assert.EndsWith("keeps the highest rate, or segments", capped.Remedy, StringComparison.Ordinal);
        Assert.Equal(1e6 / (4 * 86_400), slow.Rate.SamplesPerSecond, 1e-9);
    }
}
