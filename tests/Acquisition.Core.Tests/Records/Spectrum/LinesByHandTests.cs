using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Acquisition.Core.Tests.Records.Sine;
using Xunit;

namespace Acquisition.Core.Tests.Records.Spectra;

/// <summary>What each line of a spectrum is dealt (handbook 9.5), by tones whose powers are known beforehand.</summary>
public sealed class LinesByHandTests
{
    private const int Points = 4096;

    private static double[] Sum(params (double Cycles, double Volts)[] lines)
    {
        var x = new double[Points];
        foreach ((double cycles, double volts) in lines)
        {
            double[] one = SineFitTests.Make(Points, cycles / Points, volts, 0.4 + cycles);
            for (int i = 0; i < Points; i++)
                x[i] += one[i];
        }
        return x;
    }

    // 20 lg 0.01 = -40 dB and 20 lg 0.003 = -50.46 dB; the noise of nothing is far below both.
    [Fact]
    public void EachHarmonic_HasItsOwnLevel()
    {
        SingleToneTest test = SingleToneTest.Of(Sum((101, 1), (202, 0.01), (303, 0.003)), 500.MSaPerS(), SpectralWindow.Hann);
        Assert.Equal(-40, test.Harmonics[0].Level!.Value.Decibels, 2);
        Assert.Equal(-50.46, test.Harmonics[1].Level!.Value.Decibels, 2);
        Assert.False(test.Harmonics[0].IsInNoise);
        Assert.Equal(0.01 / Math.Sqrt(2), test.Harmonics[0].Rms!.Value.Volts, 5);
    }

    // A line half-way between two bins loses 1.42 dB at its peak behind a Hann window (Harris 1978, scalloping loss); all of its main lobe holds its power.
    [Fact]
    public void ALineBetweenBins_CountsWithAllOfItsMainLobe()
    {
        SingleToneTest test = SingleToneTest.Of(Sum((101, 1), (777.5, 0.01)), 500.MSaPerS(), SpectralWindow.Hann);
        Assert.Equal(40, test.SpuriousFreeDynamicRange!.Value.Decibels, 1);
        Assert.InRange(test.SpurFrequency.Hertz, 777 * 500e6 / Points - 1, 778 * 500e6 / Points + 1);
    }

    // 450 periods: the ninth harmonic, 4050 of 4096, folds to 46 bins, the tenth to 404; the hundred and first line is nobody's.
    [Fact]
    public void HarmonicsAboveHalfTheRate_AreFoundWhereTheyFold()
    {
        SingleToneTest test = SingleToneTest.Of(Sum((450, 1), (46, 0.02)), 500.MSaPerS(), SpectralWindow.Hann);
        HarmonicLine ninth = test.Harmonics.Single(line => line.Order == 9);
        Assert.Equal(46 * 500e6 / Points, ninth.Frequency.Hertz, 100.0);
        Assert.Equal(20 * Math.Log10(0.02), ninth.Level!.Value.Decibels, 2);
        Assert.Equal(ninth.Frequency.Hertz, test.SpurFrequency.Hertz, 1);
    }

    [Fact]
    public void AHarmonicOnTheFundamental_SaysSo()
    {
        // A quarter of the rate: the third harmonic folds onto the fundamental, the second onto half the rate, the fourth onto DC.
        SingleToneTest test = SingleToneTest.Of(Sum((1024, 1)), 500.MSaPerS(), SpectralWindow.Hann, 5);
        Assert.Equal("the fundamental", test.Harmonics[1].Collision);
        Assert.Equal("DC", test.Harmonics[2].Collision);
        Assert.Null(test.Harmonics[0].Collision);
        Assert.Null(test.Harmonics[1].Level);
    }
}
