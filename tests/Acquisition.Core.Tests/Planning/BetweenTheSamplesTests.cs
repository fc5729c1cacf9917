using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What is told of the trace between the samples is told of the signal, and of extremes what holds for extremes.</summary>
public sealed class BetweenTheSamplesTests
{
    private static SampledSignal Of(Signal signal, int megahertz = 500) => signal.Through(Response.Gaussian(megahertz.MHz())).SampledBy(new Digitizer(5.GSaPerS(), 10.kpts(), 8.bit()));

    private static bool Says(Outlook outlook, string code) => outlook.Findings.Any(finding => finding.Code == code);

    // Handbook 5.8: 1 - cos(π r) of each line, times its amplitude, over half of the swing.
    [Theory]
    [InlineData(7)]
    [InlineData(24)]
    [InlineData(90)]
    public void TheErrorOfStraightLines_IsThatOfEachLineByItsAmplitude(int megahertz)
    {
        Signal clock = Signal.Square(megahertz.MHz(), 1.Vpp(), 1.ns());
        Outlook outlook = Of(clock).WithInterpolation(Reconstruction.Linear).Over(2.us());
        double volts = Enumerable.Range(1, (int)Math.Ceiling(2500.0 / megahertz) - 1)
            .Sum(number => clock.Harmonic(number).Peak.Volts * outlook.Response.AmplitudeRatio((number * megahertz).MHz()).Fraction * (1 - Math.Cos(Math.PI * number * megahertz / 5000.0)));
        Assert.Equal(volts / (outlook.DisplayedAmplitude.Value.Volts / 2), outlook.InterpolationErrorOfSignal!.Value.Fraction, 5e-3 * volts);
    }

    [Fact]
    public void OfASine_ItIsTheErrorOfTheSine()
    {
        Outlook outlook = Of(Signal.Sine(200.MHz(), 0.5.Vpk())).Over(2.us());
        Assert.Equal(outlook.InterpolationError!.Value.Fraction, outlook.InterpolationErrorOfSignal!.Value.Fraction, 1e-9);
    }

    // Memory leaves 250 MSa/s: harmonic 5 of 24 MHz lies near half of that, where a sinc of 32 taps is off by half of what it draws, but holds little of the signal.
    [Fact]
    public void AHarmonicThatHardlyExists_DoesNotMakeTheErrorOfTheSignal()
    {
        Outlook outlook = Of(Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns())).Over(40.us());
        double ofHighest = Reconstruction.Sinc.WorstError(120.MHz(), 250.MSaPerS()).Fraction;
        Assert.True(ofHighest > 0.4);
        Assert.InRange(outlook.InterpolationErrorOfSignal!.Value.Fraction, 0.05 * ofHighest, 0.3 * ofHighest);
    }

    [Fact]
    public void WithExtremes_NothingIsCalledAnAlias_AndNothingIsDrawn()
    {
        SampledSignal setup = Of(Signal.Sine(200.MHz(), 0.5.Vpk()));
        Assert.True(Says(setup.Over(1.ms()), "fundamental-aliased"));
        foreach (Outlook extremes in new[] { setup.WithPeakDetect().Over(1.ms()), setup.WithEnvelope(100).Over(1.ms()) })
        {
            Assert.False(Says(extremes, "fundamental-aliased") || Says(extremes, "harmonics-aliased") || Says(extremes, "coarse-interpolation"));
            Assert.Null(extremes.AliasShare);
            Assert.Null(extremes.InterpolationError);
            Assert.Null(extremes.InterpolationErrorOfSignal);
            Assert.Empty(extremes.Aliases);
            Assert.Contains("the band of lowest and highest", extremes.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain("at a frequency it does not have", string.Join("; ", extremes.Contributions), StringComparison.Ordinal);
        }
    }

    // Handbook 5.10: 4.894 % at a tenth of the rate of the converter, however few points are stored.
    [Fact]
    public void WithPeakDetection_ACrestMayBeKeptTooLow()
    {
        Outlook outlook = Of(Signal.Sine(500.MHz(), 0.5.Vpk()), 2000).WithPeakDetect().Over(1.ms());
        Assert.Equal(0.04894, outlook.CrestShortfall!.Value.Fraction, 5e-6);
        Assert.Contains("by up to 4.894 % of the amplitude; the converter looks at 5 GSa/s", outlook.ToString(), StringComparison.Ordinal);
        Assert.Null(Of(Signal.Sine(500.MHz(), 0.5.Vpk()), 2000).Over(1.ms()).CrestShortfall);
    }

    [Property(MaxTest = 50)]
    public Property BetweenThePointsOfItsGrid_TheErrorOfStraightLinesIsNoSmallerThanItIs() => Prop.ForAll(Gen.Choose(1, 2480).ToArbitrary(), megahertz =>
    {
        var error = new ErrorOfDrawing(Reconstruction.Linear, 5.GSaPerS());
        for (int i = 0; i < 40; i++)
            error.At(1e6);
        double exact = 1 - Math.Cos(Math.PI * megahertz / 5000.0), told = error.At(1e6 * megahertz);
        return told >= exact * (1 - 1e-9) && told <= exact + 4e-5;
    });
}
