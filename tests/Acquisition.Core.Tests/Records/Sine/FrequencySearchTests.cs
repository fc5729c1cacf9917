using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Xunit;
using static Acquisition.Core.Tests.Records.Sine.SineFitTests;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>The search for the frequency: where its parts hand over to each other, every line is still found.</summary>
public sealed class FrequencySearchTests
{
    private static void Found(double[] x, double cycles, double tolerance, string what)
    {
        SineFit fit = SineFit.FourParameter(x, Rate);
        Assert.True(fit.Sine is not null, $"{what}: {fit}");
        Assert.InRange(fit.Sine.Frequency.Hertz / 1e8 - cycles, -tolerance, tolerance);
    }

    // Below 32 samples only a scan in quarters of a bin is left; from there on the ends of the band are scanned, what lies between is read off a transform.
    [Theory]
    [InlineData(7), InlineData(12), InlineData(31), InlineData(32), InlineData(33), InlineData(40), InlineData(63), InlineData(64)]
    public void ShortRecords_AreSearchedFromOnePeriodToTheLastBeat(int points)
    {
        for (double periods = 1.3; periods < 0.5 * points - 1.3; periods += 0.23)
            Found(Make(points, periods / points, 0.7, 0.4 + periods, 0.2), periods / points, 1e-9, $"{periods} periods in {points}");
    }

    // Four bins from either end of the transform the scan takes over, which reaches nine periods.
    [Fact]
    public void BothEndsOfTheBand_AreScanned()
    {
        for (double periods = 1.2; periods < 12; periods += 0.31)
        {
            Found(Make(1000, periods / 1000, 1, periods, 2, 0.01, 7), periods / 1000, 3e-6, $"{periods} periods");
            Found(Make(1000, 0.5 - (periods / 1000), 1, periods, 2, 0.01, 8), 0.5 - (periods / 1000), 3e-6, $"{periods} beats");
        }
    }

    // Ten periods in 16 384 samples are two and a half in the first 4096, too few for the transform of those, and beyond the scan: that of the whole record has them.
    [Theory]
    [InlineData(9.7), InlineData(11.2), InlineData(13.6), InlineData(15.4)]
    public void ALineTooSlowForTheHeadOfARecord_IsFoundInTheWholeOfIt(double periods)
    {
        Found(Make(16384, periods / 16384, 1, 0.3, 0, 0.01), periods / 16384, 1e-7, $"{periods} periods");
        Found(Make(16384, 0.5 - (periods / 16384), 1, 0.3, 0, 0.01), 0.5 - (periods / 16384), 1e-7, $"{periods} beats");
    }

    // A line that half the rate outshines: the bin at half the rate is no line of a sine.
    [Fact]
    public void WhatStandsAtHalfTheRate_IsNoLine()
    {
        double[] x = Make(256, 40.3 / 256).Select((v, n) => v + (n % 2 == 0 ? 5 : -5)).ToArray();
        Assert.Equal(40, InterpolatedDft.Of(new SamplePasses(NumberSamples.Of(x)), 256, hann: false).Bin);
    }

    // The discrete Fourier transform as it is defined, Hann window and all, bin by bin.
    [Theory]
    [InlineData(true, 12.3)]
    [InlineData(false, 12.3)]
    [InlineData(true, 2.4)]
    [InlineData(false, 29.7)]
    public void TheProminenceOfALine_IsItsPowerOverTheMeanOfTheOtherBins(bool hann, double periods)
    {
        double[] x = Make(64, periods / 64, 1, 0.3, 0.5, 0.2, 3);
        double mean = x.Average();
        double[] power = Enumerable.Range(0, 33).Select(k =>
        {
            double re = 0, im = 0;
            for (int n = 0; n < 64; n++)
            {
                double v = (x[n] - mean) * (hann ? Math.Pow(Math.Sin(Math.PI * n / 64), 2) : 1);
                re += v * Math.Cos(2 * Math.PI * k * n / 64);
                im -= v * Math.Sin(2 * Math.PI * k * n / 64);
            }
            return re * re + im * im;
        }).ToArray();
        int bin = Enumerable.Range(1, 31).OrderByDescending(k => power[k]).First();
        double elsewhere = Enumerable.Range(1, 31).Where(k => Math.Abs(k - bin) > 3).Average(k => power[k]);
        InterpolatedDft found = InterpolatedDft.Of(new SamplePasses(NumberSamples.Of(x)), 64, hann);
        Assert.Equal(bin, found.Bin);
        Assert.Equal(power[bin] / elsewhere, found.Prominence, 1e-6 * power[bin] / elsewhere);
        Assert.InRange(found.Position - periods, -0.2, 0.2);
    }

    [Fact]
    public void ALineAlone_IsInfinitelyProminent_AndNothingNotAtAll()
    {
        Assert.Equal(0, InterpolatedDft.Of(new SamplePasses(NumberSamples.Of(new double[64])), 64, hann: true).Prominence);
        double[] impulseOfBins = Enumerable.Range(0, 8).Select(n => Math.Cos(2 * Math.PI * n / 4)).ToArray();
        Assert.True(double.IsPositiveInfinity(InterpolatedDft.Of(new SamplePasses(NumberSamples.Of(impulseOfBins)), 8, hann: false).Prominence));
    }

    // Of three lines none explains the record; the largest is found, not what a scan near either end settles on.
    [Theory]
    [InlineData(0.0731, 0.191, 0.33)]
    [InlineData(0.33, 0.0731, 0.191)]
    public void OfSeveralLines_TheLargestIsFound(double largest, double second, double third)
    {
        double[] x = Make(2000, largest).Zip(Make(2000, second, 0.85, 1), (a, b) => a + b).Zip(Make(2000, third, 0.8, 2), (a, b) => a + b).ToArray();
        Found(x, largest, 2e-6, "three lines");
    }

    // A slow line of five times the amplitude below a fast one: the residual of the slow one is the least that any leaves.
    [Fact]
    public void ASlowLineBelowAFastOne_IsFoundByTheScan()
    {
        double[] x = Make(1000, 2.6 / 1000, 5).Zip(Make(1000, 0.211, 1, 1), (a, b) => a + b).ToArray();
        Found(x, 2.6 / 1000, 3e-5, "slow and fast");
    }
}
