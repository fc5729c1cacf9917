using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What sampling and each element cost, the lines that are listed, and the record that would be captured.</summary>
public sealed class OutlookShareTests
{
    private static readonly Digitizer Sampler = new Digitizer(100.MSaPerS(), 1.Mpts(), 8.bit()).WithName("sampler");

    private static Contribution Sampling(Outlook outlook) => outlook.Contributions.Single(contribution => contribution.Element == "sampling");

    private static SampledSignal Sine(double megahertz) => Signal.Sine(megahertz.MHz(), 1.Vpk()).Through(Response.Cascade()).SampledBy(Sampler);

    // Common practice, no source: a point is off by up to one interval on either side, and two intervals are what reconstruction works with: 1/n - 1/2.
    [Theory]
    [InlineData(10, 0.5)]
    [InlineData(12.5, 0.3)]
    [InlineData(20, 0)]
    [InlineData(40, 0)]
    public void TheSamplingOfAnEdge_CostsWhatItsIntervalsLeaveOpen(double nanoseconds, double share) =>
        Assert.Equal(share, Sampling(Signal.Square(100.kHz(), 1.Vpp(), nanoseconds.ns()).Through(Response.Cascade()).SampledBy(Sampler).Over(100.us())).Share.Fraction, 1e-9);

    // 1 - cos(π/10) = 4.894 % between points, 1 - cos(π/10) as well where a crest may fall between them (handbook 5.8, 5.10); at 60 MHz nothing that is shown is the signal's.
    [Fact]
    public void TheSamplingOfASine_CostsItsDrawingItsCrestOrAllOfIt()
    {
        Contribution drawn = Sampling(Sine(10).WithInterpolation(Reconstruction.Linear).Over(100.us()));
        Assert.Equal(1 - Math.Cos(Math.PI / 10), drawn.Share.Fraction, 1e-9);
        Assert.Equal("drawing between samples is off by up to 4.894 % of the amplitude", drawn.Effect);
        Contribution crest = Sampling(Sine(10).WithPeakDetect().Over(100.us()));
        Assert.Equal(1 - Math.Cos(Math.PI / 10), crest.Share.Fraction, 1e-9);
        Assert.Equal("may keep a crest too low by up to 4.894 % of the amplitude", crest.Effect);
        Assert.Equal((1.0, "shows the signal at a frequency it does not have"), (Sampling(Sine(60).Over(100.us())).Share.Fraction, Sampling(Sine(60).Over(100.us())).Effect));
        Assert.DoesNotContain(Sine(60).WithPeakDetect().Over(100.us()).Contributions, contribution => contribution.Element == "sampling");
    }

    [Fact]
    public void ElementsThatCostNothing_LeaveNoWeakestLink()
    {
        Outlook clean = Signal.Square(100.kHz(), 1.Vpp(), 1.us()).Through(Response.Cascade()).SampledBy(Sampler).Over(100.us());
        Assert.Null(clean.WeakestLink);
        Assert.All(clean.Contributions, contribution => Assert.Equal(0, contribution.Share.Fraction));
        Assert.Contains(clean.Contributions, contribution => contribution.Effect == "leaves the edge as it is");
        Assert.Contains(Sine(1).Over(100.us()).Contributions, contribution => contribution.Effect == "leaves the amplitude as it is");
    }

    // 1/√(1 + 1/9) = 0.94868: the pole takes 5.132 %.
    [Fact]
    public void TheContributionOfAPole_IsWhatItTakes()
    {
        Outlook outlook = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.SinglePole(3.MHz())).SampledBy(Sampler).Over(100.us());
        Assert.Equal(1 - 0.948683, outlook.WeakestLink!.Share.Fraction, 1e-6);
        Assert.Equal("takes 5.132 % of the amplitude", outlook.WeakestLink.Effect);
        Assert.StartsWith("single pole", outlook.Contributions[0].Element, StringComparison.Ordinal);
        Assert.Equal(outlook.Contributions.OrderByDescending(contribution => contribution.Share.Fraction), outlook.Contributions);
    }

    // A square has 1/n in each odd line n, a Butterworth of order 4 leaves 1/√(1 + (n/6)^8) of it: 1/(25 x 301.4) = 1.327e-4 of the first, and 1/(27 x 410.1) = 0.903e-4.
    [Fact]
    public void LinesBelowATenThousandthOfTheFirst_AreNotListed()
    {
        Outlook outlook = Signal.Square(1.MHz(), 1.Vpp()).Through(Response.Butterworth(4, 6.MHz())).SampledBy(new Digitizer(1.GSaPerS(), 1.Mpts(), 8.bit())).Over(100.us());
        Assert.Equal(Enumerable.Range(0, 13).Select(k => 2 * k + 1), outlook.Harmonics.Select(line => line.Number));
        Assert.All(outlook.Harmonics, line => Assert.False(line.IsAliased));
        Assert.Equal(2 / Math.PI / Math.Sqrt(1 + Math.Pow(6, -8)), outlook.Harmonics[0].Displayed.Volts, 1e-9);
        Assert.Equal($"harmonic 3, 3 MHz: {outlook.Harmonics[1].Displayed.InWords()}", outlook.Harmonics[1].ToString());
    }

    // Behind a wire every odd line up to 1000 times the fundamental counts, of which 200 are listed.
    [Fact]
    public void AtMostTwoHundredLines_AreListed() => Assert.Equal(399, Assert.Single(
        Signal.Square(100.kHz(), 1.Vpp()).Through(Response.Cascade()).SampledBy(Sampler).Over(100.us()).Harmonics.Skip(199)).Number);

    // A square of 1 kHz behind 100 MHz has 2 000 000 lines; the mean over 8 raw samples of 100 MSa/s weights each by |sin(8x)/(8 sin x)|, x = π f / 100 MHz. The fundamental alone holds 8/π² of the power, and
    // lines above 6.25 MHz are all that folds. Both sums apart from this library, over every odd line to 200 MHz.
    [Fact]
    public void TheMeanOfSeveralSamples_TakesWhatFoldsOfASlowSquareToo()
    {
        Outlook outlook = Signal.Square(1.kHz(), 1.Vpp()).Through(Response.Gaussian(40.MHz())).SampledBy(Sampler).WithHighResolution(8).Over(1.ms());
        double all = 0, folded = 0;
        for (int n = 1; n < 200_000; n += 2)
        {
            double hertz = n * 1e3, x = Math.PI * hertz / 100e6, mean = Math.Sin(8 * x) / (8 * Math.Sin(x)), gain = Math.Pow(2, -hertz * hertz / (2 * 40e6 * 40e6));
            double power = mean * gain / n * (mean * gain / n);
            all += power;
            folded += hertz >= 6.25e6 ? power : 0;
        }
        Assert.Equal(Math.Sqrt(folded / all), outlook.AliasShare!.Value.Fraction, 0.02 * Math.Sqrt(folded / all));
    }

    // Ten volts about five behind 20 dB stand between 0 V and 1 V: a range of 1.1 V centred there keeps them, centred anywhere else it would cut.
    [Fact]
    public void TheRangeOfAPredictedTrace_IsCentredOnTheSignalBehindTheChain()
    {
        Outlook outlook = Signal.Sine(1.MHz(), 5.Vpk()).WithOffset(5.V()).Through(Response.Attenuator(20.dB())).SampledBy(Sampler).WithFullScale(1.1.Vpp()).Over(10.us());
        Record record = outlook.PredictTrace();
        double[] volts = Enumerable.Range(0, (int)outlook.RecordLength.Points).Select(i => record.ReadingAt(i)).ToArray();
        Assert.Equal(0, volts.Min(), 0.01);
        Assert.Equal(1, volts.Max(), 0.01);
    }

    // q/√12 of 10 mV is 2.887 mV. Noise of 4 mV, less than half a code, dithers nothing; of 5 mV it does, and 16 records leave a quarter.
    [Theory]
    [InlineData(4, 2.887)]
    [InlineData(5, 0.7217)]
    public void QuantisationIsAveraged_OnlyWhereNoiseDithersIt(double millivolts, double expected) => Assert.Equal(expected * 1e-3,
        Sine(1).WithFullScale(2.56.Vpp()).WithNoise(millivolts.mVrms()).WithAveraging(16).Over(100.us()).QuantizationNoise!.Value.SiValue, 1e-6);

    [Fact]
    public void WithoutAMean_NoiseDithersNothing()
    {
        Outlook one = Sine(1).WithFullScale(2.56.Vpp()).WithNoise(5.mVrms()).WithEnvelope(16).Over(100.us());
        Assert.Equal(2.887e-3, one.QuantizationNoise!.Value.SiValue, 1e-6);
        Assert.Equal(5e-3, one.Noise!.Value.SiValue, 1e-12);
    }
}
