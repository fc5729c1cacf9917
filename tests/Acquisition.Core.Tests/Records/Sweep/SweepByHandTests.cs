using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records.Sweeps;

/// <summary>Uncertainties of sweeps, their references and fits against the arithmetic by hand (law of propagation, JCGM 100 clause 5; least squares as in any textbook).</summary>
public sealed class SweepByHandTests
{
    /// <summary>Half of the way between 100 MHz and 1 GHz on the logarithm: 20 dB in a decade pass 10 dB there.</summary>
    private static readonly double Crossing = 1e8 * Math.Sqrt(10);

    /// <summary>Hertz for each decibel there: f ln 10 / 20 dB.</summary>
    private static readonly double PerDecibel = Crossing * Math.Log(10) / 20;

    private static Sweep Fall(params double[] uncertainties) => Sweep.OfDecibels([1e6, 1e8, 1e9], [0, 0, -20], uncertainties);

    private static double NoiseOf(Sweep sweep) => Assert.Single(sweep.Crossings(10.dB())).NoiseUncertainty!.Value.Hertz;

    // The level at the crossing has u = √((0.3/2)² + (0.4/2)²) = 0.25 dB; that of the reference comes beside it.
    [Fact]
    public void CrossingHoldsTheUncertaintyOfLevelAndReference()
    {
        Assert.Equal(Crossing, Assert.Single(Fall(0, 0.3, 0.4).Crossings(10.dB())).Frequency.Hertz, 1);
        Assert.Equal(0.25 * PerDecibel, NoiseOf(Fall(0.1, 0.3, 0.4).WithReferenceLevel(0.dB())), 1);
        Assert.Equal(Math.Sqrt(0.0625 + 0.36) * PerDecibel, NoiseOf(Fall(0.6, 0.3, 0.4)), 1);
        Assert.Equal(Math.Sqrt(0.0625 + 0.09) * PerDecibel, NoiseOf(Fall(0.6, 0.3, 0.4).WithReference(100.MHz())), 1);
        // Half of the way between 1 MHz and 100 MHz: (0.6 + 0.3)/2, as if the two shared their errors; a quarter: 0.75 x 0.6 + 0.25 x 0.3.
        Assert.Equal(Math.Sqrt(0.0625 + 0.2025) * PerDecibel, NoiseOf(Fall(0.6, 0.3, 0.4).WithReference(10.MHz())), 1);
        Assert.Equal(Math.Sqrt(0.0625 + 0.275625) * PerDecibel, NoiseOf(Fall(0.6, 0.3, 0.4).WithReference(Frequency.FromHertz(1e6 * Math.Sqrt(10)))), 1);
    }

    [Fact]
    public void ReferenceOfABand_IsTheMedian_AndAsUncertainAsAMedianIs()
    {
        Sweep even = Sweep.OfDecibels([1e6, 2e6, 4e6, 8e6, 1e9], [1, 2, 4, 8, -30], [0.1, 0.1, 0.3, 0.3, 0]);
        Assert.Equal(-2, even.WithReferenceBand(1.MHz(), 8.MHz()).RelativeLevelAt(1.MHz()).Decibels, 12);
        Assert.Equal(-1, even.WithReferenceBand(1.MHz(), 4.MHz()).RelativeLevelAt(1.MHz()).Decibels, 12);
        // √(mean square of u / n), 0.05 / 4, times √(π/2) for a median of normal values; of two points it is their mean.
        Sweep flat = Sweep.OfDecibels([1e6, 2e6, 4e6, 1e8, 1e9], [0, 0, 0, 0, -20], [0.1, 0.1, 0.3, 0, 0]);
        Assert.Equal(Math.Sqrt(0.11 / 3 / 3 * Math.PI / 2) * PerDecibel, NoiseOf(flat.WithReferenceBand(1.MHz(), 4.MHz())), 1);
        Assert.Equal(Math.Sqrt(0.1 / 2 / 2) * PerDecibel, NoiseOf(flat.WithReferenceBand(2.MHz(), 4.MHz())), 1);
        Assert.Throws<ArgumentOutOfRangeException>(() => flat.WithReferenceBand(5.MHz(), 6.MHz()));
    }

    [Fact]
    public void Difference_HoldsTheUncertaintyOfBoth()
    {
        Sweep other = Sweep.OfDecibels([1e6, 1e8, 1e9], [0, 0, 0], [0, 0.4, 0.3]), plain = Sweep.OfDecibels([1e6, 1e9], [0, 0]);
        Assert.Equal(Math.Sqrt(0.25 / 4 + 0.25 / 4) * PerDecibel, NoiseOf(Fall(0, 0.3, 0.4).Less(other)), 1);
        Assert.Equal(0.25 * PerDecibel, NoiseOf(Fall(0, 0.3, 0.4).Less(plain)), 1);
        Assert.Null(Assert.Single(Sweep.OfDecibels([1e6, 1e8, 1e9], [0, 0, -20]).Less(plain).Crossings(10.dB())).NoiseUncertainty);
    }

    private static double[] Grid => [.. Enumerable.Range(0, 21).Select(i => 1e6 * Math.Pow(10, i / 7.0))];

    private static double[] Pole(double corner, double gain, double wiggle) => [.. Grid.Select((f, i) => gain - (10 * Math.Log10(1 + (f / corner * (f / corner)))) + (i % 2 == 0 ? wiggle : -wiggle))];

    // Without uncertainties the scatter stands for them: levels that each have just that scatter as their uncertainty give the same fit, and chi-squared is the degrees of freedom.
    [Fact]
    public void FitWithoutUncertainties_IsAsUncertainAsOneThatHasItsScatter()
    {
        SweepFit plain = Sweep.OfDecibels(Grid, Pole(5e7, -6, 0.05)).FitTo(Response.SinglePole);
        double scatter = plain.ResidualDeviation.Decibels;
        SweepFit weighted = Sweep.OfDecibels(Grid, Pole(5e7, -6, 0.05), [.. Grid.Select(_ => scatter)]).FitTo(Response.SinglePole);
        Assert.Equal(19, plain.DegreesOfFreedom);
        Assert.Null(plain.ChiSquared);
        Assert.Equal(0.05 * Math.Sqrt(21 / 19.0), scatter, 2e-4);
        Assert.Equal(19, weighted.ChiSquared!.Value, 6);
        Assert.Equal(plain.BandwidthUncertainty!.Value.Hertz, weighted.BandwidthUncertainty!.Value.Hertz, 1e-6 * plain.BandwidthUncertainty.Value.Hertz);
        Assert.Equal(plain.GainUncertainty!.Value.Decibels, weighted.GainUncertainty!.Value.Decibels, 9);
        Assert.DoesNotContain(weighted.Findings, finding => finding.Code == "model-does-not-fit");
    }

    [Fact]
    public void FitWithAKnownGain_HasOneParameterLess()
    {
        Sweep sweep = Sweep.OfDecibels(Grid, Pole(5e7, -6, 0), [.. Grid.Select(_ => 0.1)]);
        SweepFit known = sweep.FitTo(Response.SinglePole, (-6).dB()), free = sweep.FitTo(Response.SinglePole);
        Assert.Equal(20, known.DegreesOfFreedom);
        Assert.Equal(0, known.GainUncertainty!.Value.Decibels);
        Assert.Equal(5e7, known.Bandwidth!.Value.Hertz, 100.0);
        Assert.True(known.BandwidthUncertainty < free.BandwidthUncertainty);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-20.0)]
    public void LevelsThatDoNotBend_DetermineNoBandwidth(double perDecade)
    {
        SweepFit fit = Sweep.OfDecibels(Grid, [.. Grid.Select(f => perDecade * Math.Log10(f))]).FitTo(Response.SinglePole);
        Assert.Null(fit.Bandwidth);
        Assert.Equal("bandwidth-not-determined", fit.Findings[0].Code);
        Assert.Equal(19, fit.DegreesOfFreedom);
    }

    [Fact]
    public void ModelThatIsWrong_IsToldByItsChiSquared()
    {
        SweepFit wrong = Sweep.OfDecibels(Grid, Pole(5e7, 0, 0), [.. Grid.Select(_ => 0.01)]).FitTo(Response.Gaussian);
        Assert.Equal("model-does-not-fit", wrong.Findings[0].Code);
        Assert.True(wrong.ChiSquared > 1000);
    }

    [Fact]
    public void BandwidthFromFewPoints_SaysHowMuchTheSpacingLeaves()
    {
        SweepBandwidth band = Sweep.OfDecibels([1e6, 1e7, 1e8, 1e9], [0, 0, -6, -26]).Bandwidth();
        SweepCrossing edge = band.Upper!;
        double percent = 100 * edge.SpacingUncertainty.Hertz / edge.Frequency.Hertz;
        Assert.Contains(FormattableString.Invariant($"leaves {percent:G2} % uncertain"), band.Findings.Single(finding => finding.Code == "points-too-far-apart").Message, StringComparison.Ordinal);
        Assert.Contains(band.Findings, finding => finding.Code == "levels-without-uncertainty");
        Assert.DoesNotContain(Sweep.OfDecibels([1e6, 1e7, 1e8, 1e9], [0, 0, -6, -26], [0, 0, 0.1, 0.1]).Bandwidth().Findings, finding => finding.Code == "levels-without-uncertainty");
        Assert.Contains("start to end of the sweep within", Sweep.OfDecibels([1e6, 1e7], [0, -1]).Bandwidth().ToString(), StringComparison.Ordinal);
    }
}
