using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Digitizing;

/// <summary>What every user of a sampling instrument knows (common practice, no source), and the worked settings of handbook 5.14.</summary>
public sealed class TradeFactsTests
{
    [Fact]
    public void TwoGigasamples_ForAHundredMilliseconds_AreTwoHundredMillionPoints() =>
        Assert.Equal(200.Mpts(), Sampling.RecordLength(2.GSaPerS(), 100.ms()));

    [Fact]
    public void TwoGigasamples_ForFiftyNanoseconds_AreAHundredPoints() => Assert.Equal(PointCount.FromPoints(100), Sampling.RecordLength(2.GSaPerS(), 50.ns()));

    [Fact]
    public void FourteenDivisionsOfTenMilliseconds_InFourteenThousandPoints_AreAHundredKilosamples()
    {
        Digitizer digitizer = new Digitizer(2.GSaPerS(), 14.kpts(), 8.bit()).WithDivisions(8, 14);

        Timebase timebase = digitizer.TimebasePerDivision(10.ms(), 1);

        Assert.Equal(100.kSaPerS(), timebase.Rate);
        Assert.Equal(14.kpts(), timebase.RecordLength);
        Assert.Equal(140.ms(), timebase.Window);
        Assert.True(timebase.IsLimitedByMemory);
    }

    [Fact]
    public void APulseOfTwentySixNanoseconds_AtAHundredKilosamples_NearlyAlwaysFallsBetweenTheSamples()
    {
        Assert.Equal(0.26, PulseCapture.ChanceOfASample(26.ns(), 100.kSaPerS()).Percent, 12);
        Assert.Equal(0, PulseCapture.FewestSamples(26.ns(), 100.kSaPerS()).Points);
    }

    [Fact]
    public void ASineOfTwentyMegahertz_NeedsMoreThanFortyMegasamples()
    {
        Assert.Equal(40.MSaPerS(), Sampling.NyquistRate(20.MHz()));
        Assert.Equal(1, Aliasing.NyquistZone(20.MHz(), 40.001.MSaPerS()));
        Assert.Equal(2, Aliasing.NyquistZone(20.MHz(), 40.MSaPerS()));
    }

    [Fact]
    public void TenDivisionsOfTwoHundredMicroseconds_InTenMillionPoints_AreFiveGigasamples()
    {
        // Handbook 5.14, first row.
        Timebase timebase = new Digitizer(5.GSaPerS(), 10.Mpts(), 8.bit()).TimebasePerDivision(200.us(), 1);

        Assert.Equal(5.GSaPerS(), timebase.Rate);
        Assert.False(timebase.IsLimitedByMemory);
        Assert.Empty(timebase.Findings);
    }

    [Fact]
    public void HighResolutionOfSixteen_AtOneGigasample_HasTheHandbooksBandwidth()
    {
        // Handbook 5.14, fourth row.
        Assert.Equal(62.5.MSaPerS(), HighResolution.StoredRate(16, 1.GSaPerS()));
        Assert.Equal(27.73, HighResolution.Bandwidth(16, 1.GSaPerS()).Megahertz, 2);
        Assert.Equal(2, HighResolution.BitsGained(16).Bits, 12);
    }

    [Fact]
    public void AThousandSegmentsOfAHundredMicroseconds_AtFiveGigasamples_AreFiveHundredMillionPoints()
    {
        // Handbook 5.14, seventh row.
        Assert.Equal(500.Mpts(), SegmentedMemory.MemoryFor(1000, 100.us(), 5.GSaPerS()));
        Assert.Equal(100.us(), SegmentedMemory.SegmentWindow(500.Mpts(), 1000, 5.GSaPerS()));
    }

    [Fact]
    public void ImagesOfFourConverters_LieAroundTheQuartersOfTheRate()
    {
        // 1 GSa/s in four turns: k·250 MHz ± 60 MHz, folded (handbook 5.7).
        double[] images = Interleaving.ImageFrequencies(60.MHz(), 1.GSaPerS(), 4).Select(f => f.Megahertz).ToArray();

        Assert.Equal(new double[] { 190, 310, 440 }, images);
        Assert.Equal(new double[] { 250, 500 }, Interleaving.OffsetTones(1.GSaPerS(), 4).Select(f => f.Megahertz).ToArray());
    }

    [Fact]
    public void SharedConverters_HalveTheRateWithTheSecondChannel()
    {
        Digitizer digitizer = new Digitizer(2.GSaPerS(), 20.Mpts(), 8.bit()).WithChannelsInUse(2, 1.GSaPerS(), 10.Mpts()).WithChannelsInUse(3, 500.MSaPerS(), 5.Mpts());

        Assert.Equal(2.GSaPerS(), digitizer.MaximumRate(1));
        Assert.Equal(1.GSaPerS(), digitizer.MaximumRate(2));
        Assert.Equal(500.MSaPerS(), digitizer.MaximumRate(3));
        Assert.Equal(5.Mpts(), digitizer.Memory(4));
    }

    [Theory]
    [InlineData(7e8, 5e8)]
    [InlineData(1e9, 1e9)]
    [InlineData(0.99999999999999e9, 1e9)]
    [InlineData(2.4e5, 2e5)]
    public void RatesInOneTwoFive_FallToTheNextStep(double wish, double expected) =>
        Assert.Equal(expected, RateSteps.OneTwoFive.AtOrBelow(SampleRate.FromSamplesPerSecond(wish), 5.GSaPerS())!.Value.SamplesPerSecond);

    [Fact]
    public void RatesThatAreListed_AreTheOnlyOnes()
    {
        RateSteps steps = RateSteps.Listed(1.GSaPerS(), 100.MSaPerS());

        Assert.Equal(100.MSaPerS(), steps.AtOrBelow(999.MSaPerS(), 1.GSaPerS()));
        Assert.Null(steps.AtOrBelow(99.MSaPerS(), 1.GSaPerS()));
    }

    [Fact]
    public void AWindowTooLongForEveryRate_IsRefusedWithTheWindow()
    {
        Digitizer digitizer = new Digitizer(1.GSaPerS(), 1.kpts(), 8.bit()).WithRateSteps(RateSteps.Listed(1.GSaPerS(), 100.MSaPerS()));

        var refusal = Assert.Throws<System.ArgumentOutOfRangeException>(() => digitizer.TimebaseFor(1.s()));

        Assert.Equal("window", refusal.ParamName);
    }
}
