using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Every value that two outlooks can differ in has its row, with both values as the outlooks give them.</summary>
public sealed class OutlookComparisonRowsTests
{
    private static readonly Digitizer Sampler = new Digitizer(100.MSaPerS(), 1.kpts(), 8.bit()).WithName("sampler");

    private static readonly Outlook Fast = Signal.Square(1.MHz(), 1.Vpp(), 20.ns()).Through(Response.Butterworth(2, 50.MHz())).SampledBy(Sampler)
        .WithFullScale(2.56.Vpp()).WithNoise(10.mVrms()).WatchingFor(50.ns()).WithRecordRate(1.kHz()).Over(20.us());

    private static readonly Outlook Slow = Signal.Square(1.MHz(), 1.Vpp(), 20.ns()).Through(Response.Butterworth(3, 2.MHz())).SampledBy(Sampler)
        .WithFullScale(5.12.Vpp()).WithNoise(5.mVrms()).WatchingFor(20.ns()).WithRecordRate(3.kHz()).Over(10.us());

    private static Difference? Row(OutlookComparison comparison, string name) => comparison.Differences.SingleOrDefault(row => row.Name == name);

    public static TheoryData<string> Names => new(Values.Keys);

    private static readonly Dictionary<string, Func<Outlook, Quantity?>> Values = new()
    {
        ["bandwidth of the chain"] = outlook => outlook.ChainBandwidth!.Value.ToQuantity(),
        ["rise time of the chain"] = outlook => outlook.ChainRiseTime!.Value.ToQuantity(),
        ["amplitude on the display"] = outlook => outlook.DisplayedAmplitude.Value.ToQuantity(),
        ["amplitude error"] = outlook => outlook.AmplitudeError.ToQuantity(),
        ["edge on the display"] = outlook => outlook.DisplayedEdge!.Value.ToQuantity(),
        ["edge error"] = outlook => outlook.EdgeError!.Value.ToQuantity(),
        ["harmonics kept"] = outlook => new Quantity(outlook.HarmonicsKept, QuantityKind.Ratio),
        ["sample rate"] = outlook => outlook.SampleRate.Value.ToQuantity(),
        ["window"] = outlook => outlook.Window.ToQuantity(),
        ["points per edge"] = outlook => outlook.IntervalsPerEdge!.Value.ToQuantity(),
        ["points per period"] = outlook => outlook.PointsPerPeriod!.Value.ToQuantity(),
        ["folded content"] = outlook => outlook.AliasShare!.Value.ToQuantity(),
        ["interpolation error"] = outlook => outlook.InterpolationErrorOfSignal!.Value.ToQuantity(),
        ["range"] = outlook => outlook.FullScale!.Value.ToQuantity(),
        ["one code"] = outlook => outlook.LeastSignificantBit!.Value.ToQuantity(),
        ["noise"] = outlook => outlook.Noise!.Value.ToQuantity(),
        ["effective bits"] = outlook => outlook.EffectiveBits!.Value.ToQuantity(),
        ["smallest detail"] = outlook => outlook.SmallestDetail!.Value.ToQuantity(),
        ["edge timing"] = outlook => outlook.EdgeTimingUncertainty!.Value.ToQuantity(),
        ["height of the pulse"] = outlook => outlook.Events!.Height.ToQuantity(),
        ["chance of the pulse"] = outlook => outlook.Events!.ChancePerOccurrence!.Value.ToQuantity(),
    };

    [Theory, MemberData(nameof(Names))]
    public void ARow_HoldsTheValuesOfBothOutlooks(string name)
    {
        Difference row = Row(OutlookComparison.Of(Fast, Slow), name)!;
        Assert.Equal(Values[name](Fast), row.FirstQuantity);
        Assert.Equal(Values[name](Slow), row.SecondQuantity);
        double before = row.FirstQuantity!.Value.SiValue, after = row.SecondQuantity!.Value.SiValue;
        Assert.Equal(row.IsAbsolute ? after : after / before, row.Relative!.Value.Fraction + (row.IsAbsolute ? before : 1), 1e-12);
        Assert.Equal($"{name}: {row.First} -> {row.Second}", row.ToString());
    }

    // 50 MHz to 2 MHz is 96 % less, 2.56 V to 5.12 V 100 % more, 20 ns to 50 ns of pulse the other way round.
    [Theory]
    [InlineData("bandwidth of the chain", "50 MHz", "2 MHz", "-96 %")]
    [InlineData("range", "2.56 Vpp", "5.12 Vpp", "+100 %")]
    [InlineData("noise", "10 mVrms", "5 mVrms", "-50 %")]
    [InlineData("points per period", "50", "100", "+100 %")]
    [InlineData("chance of the pulse", "2 %", "3 %", "+1 % (difference)")]
    public void AChange_IsToldWithItsSign(string name, string first, string second, string change)
    {
        Difference row = Row(OutlookComparison.Of(Fast, Slow), name)!;
        Assert.Equal((first, second, change), (row.First, row.Second, row.Change));
    }

    [Fact]
    public void ValuesThatAreTheSame_HaveNoRow()
    {
        OutlookComparison comparison = OutlookComparison.Of(Fast, Slow);
        Assert.Null(Row(comparison, "record length"));
        Assert.Null(Row(comparison, "crest kept too low"));
    }

    // With peak detection there are neither bits nor a share that folds, and a crest may be kept too low.
    [Fact]
    public void AValueThatOneOfThemLacks_IsADashWithoutAChange()
    {
        SampledSignal setup = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.SinglePole(10.MHz())).SampledBy(Sampler);
        Outlook ordinary = setup.Over(20.us()), peaks = setup.WithPeakDetect().Over(20.us());
        OutlookComparison there = OutlookComparison.Of(ordinary, peaks), back = OutlookComparison.Of(peaks, ordinary);

        Difference bits = Row(there, "effective bits")!, crest = Row(there, "crest kept too low")!, cured = Row(back, "crest kept too low")!;
        Assert.Equal(("8 bit", "-", ""), (bits.First, bits.Second, bits.Change));
        Assert.Equal(("-", "0.04934 %"), (crest.First, crest.Second));
        Assert.Equal(("0.04934 %", "-"), (cured.First, cured.Second));
        Assert.Null(crest.FirstQuantity);
        Assert.Equal(peaks.CrestShortfall!.Value.ToQuantity(), crest.SecondQuantity);
        Assert.Null(crest.Relative);
        Assert.Null(bits.Relative);
    }

    [Fact]
    public void ASineBesideASquare_HasNoPointsOnItsEdges()
    {
        Outlook sine = Signal.Sine(1.MHz(), 0.5.Vpk()).Through(Response.Butterworth(2, 50.MHz())).SampledBy(Sampler).Over(20.us());
        Difference points = Row(OutlookComparison.Of(Fast, sine), "points per edge")!, other = Row(OutlookComparison.Of(sine, Fast), "points per edge")!;
        Assert.Equal("-", points.Second);
        Assert.Null(points.SecondQuantity);
        Assert.Null(points.Relative);
        Assert.Equal("-", other.First);
        Assert.Null(other.Relative);
    }

    [Fact]
    public void Findings_ComeAndGoByTheirCodes()
    {
        SampledSignal setup = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.SinglePole(10.MHz())).SampledBy(Sampler);
        OutlookComparison comparison = OutlookComparison.Of(setup.WithFullScale(1.28.Vpp()).Over(5.us()), setup.WithFullScale(12.8.Vpp()).Over(5.us()));
        Assert.Equal("clipped", Assert.Single(comparison.FindingsGone).Code);
        Assert.Equal("range-mostly-empty", Assert.Single(comparison.FindingsAdded).Code);
        Assert.Contains("\ngone: clipped: ", comparison.ToString(), StringComparison.Ordinal);
        Assert.Contains("\nnew: Warning range-mostly-empty: ", comparison.ToString(), StringComparison.Ordinal);
    }

    // The columns are as wide as their widest cell: every value of the second set-up ends in one column.
    [Fact]
    public void TheTable_StandsInColumns()
    {
        SampledSignal setup = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.SinglePole(10.MHz())).SampledBy(Sampler);
        Assert.Equal("range            2.56 Vpp  5.12 Vpp  +100 %\none code            10 mV     20 mV  +100 %\nsmallest detail     10 mV     20 mV  +100 %\n",
            OutlookComparison.Of(setup.WithFullScale(2.56.Vpp()).Over(5.us()), setup.WithFullScale(5.12.Vpp()).Over(5.us())).ToString());
    }
}
