using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Acquisition.Core.Tests.Records.Sine;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records.Spectra;

public sealed class SpectrumTests
{
    private static readonly SampleRate Rate = 1.MSaPerS();

    [Fact]
    public void Transform_OfAnyLength_IsTheDirectSum()
    {
        foreach (int n in new[] { 1, 2, 3, 4, 5, 7, 8, 12, 15, 30, 31, 64, 100, 127, 128, 250, 1000 })
        {
            double[] x = SineFitTests.Make(n, 0.21, noise: 0.5, offset: 0.3, seed: n);
            var transform = new RealTransform(n);
            for (int i = 0; i < n; i++)
                transform[i] = x[i];
            Assert.Equal(x, Enumerable.Range(0, n).Select(i => transform[i]));
            transform.Transform();
            Complex[] bins = Enumerable.Range(0, transform.Bins).Select(transform.Bin).ToArray();
            Assert.Equal(n / 2 + 1, bins.Length);
            for (int k = 0; k < bins.Length; k++)
            {
                Complex direct = Complex.Zero;
                for (int i = 0; i < n; i++)
                    direct += x[i] * Complex.FromPolarCoordinates(1, -2 * Math.PI * ((long)k * i % n) / n);
                Assert.True((direct - bins[k]).Magnitude < 1e-11 * n, $"{n} points, bin {k}: {bins[k]} for {direct}");
            }
        }
    }

    [Property(MaxTest = 60)]
    public void MeanSquares_AddUpToThatOfTheRecord_ByParseval(int seed, byte length)
    {
        double[] x = SineFitTests.Make(length + 2, 0.137, noise: 1, offset: 0.4, seed: seed);
        Assert.Equal(x.Average(v => v * v), Spectrum.Of(x, Rate, SpectralWindow.Rectangular).MeanSquaresInSquareVolts().Sum(), 1e-10);

        double[] w = SpectralWindow.Hann.Weights(x.Length);
        double weighted = x.Zip(w, (v, a) => v * v * a * a).Sum() / w.Sum(a => a * a);
        Assert.Equal(weighted, Spectrum.Of(x, Rate, SpectralWindow.Hann).MeanSquaresInSquareVolts().Sum(), 1e-10);
    }

    [Fact]
    public void SineOnABin_ReadsItsAmplitude_WithEveryWindow()
    {
        double[] x = SineFitTests.Make(1024, 100 / 1024.0, 0.75, 0.4, 0.2);
        foreach (SpectralWindow window in SpectralWindow.All)
        {
            var spectrum = Spectrum.Of(x, Rate, window);
            Assert.Equal(0.75, spectrum.PeakAmplitudesInVolts()[100], 1e-12);
            Assert.Equal(0.75 / Math.Sqrt(2), spectrum.RmsAmplitudesInVolts()[100], 1e-12);
            Assert.Equal(0.2, spectrum.PeakAmplitudesInVolts()[0], 1e-12);
        }
    }

    [Fact]
    public void SineBetweenBins_ReadsLowByTheScallopingLoss()
    {
        double[] x = SineFitTests.Make(4096, 700.5 / 4096.0);
        foreach (SpectralWindow window in new[] { SpectralWindow.Rectangular, SpectralWindow.Hann, SpectralWindow.FlatTopFiveTerm })
            Assert.Equal(-window.ScallopingLoss.Decibels, 20 * Math.Log10(Spectrum.Of(x, Rate, window).PeakAmplitudesInVolts().Max()), 5e-3);
    }

    [Fact]
    public void WhiteNoise_HasItsDensity_WhateverTheWindow()
    {
        // 0.1 V rms spread over 500 kHz: 141.42 uV/sqrt(Hz).
        double[] x = SineFitTests.Make(1 << 17, 0.1, 0, noise: 0.1);
        foreach (SpectralWindow window in new[] { SpectralWindow.Rectangular, SpectralWindow.Hann, SpectralWindow.Hft95 })
        {
            double[] density = Spectrum.Averaged(x, Rate, window, 1024.pts(), Ratio.FromFraction(0.5)).DensitiesInVoltsPerRootHertz();
            double rms = Math.Sqrt(density.Skip(10).Take(490).Average(d => d * d));
            Assert.Equal(0.1 / Math.Sqrt(500e3), rms, 0.02 * 0.1 / Math.Sqrt(500e3));
        }
    }

    [Fact]
    public void Levels_StateReferenceAndFloor_AndCountWhatTheFloorHides()
    {
        double[] x = Enumerable.Range(0, 64).Select(n => (n % 4) switch { 0 => 1.0, 1 => 0, 2 => -1, _ => 0 }).ToArray();
        SpectrumLevels levels = Spectrum.Of(x, Rate, SpectralWindow.Rectangular).LevelsRelativeTo(PeakVoltage.FromVolts(1), -150.dB());

        Assert.Equal(0, levels[16].Decibels, 1e-12);
        Assert.Equal(-150, levels[3].Decibels);
        Assert.Equal(32, levels.FlooredBins);
        Assert.DoesNotContain(levels.ToDecibels(), double.IsInfinity);
    }

    [Fact]
    public void RmsOfABand_IsTheSineInIt()
    {
        double[] x = SineFitTests.Make(1000, 0.1, 1).Zip(SineFitTests.Make(1000, 0.3, 0.5), (a, b) => a + b).ToArray();
        var spectrum = Spectrum.Of(x, Rate, SpectralWindow.Rectangular);
        Assert.Equal(1 / Math.Sqrt(2), spectrum.RmsBetween(50.kHz(), 150.kHz()).Volts, 1e-9);
        Assert.Equal(0.5 / Math.Sqrt(2), spectrum.RmsBetween(250.kHz(), 500.kHz()).Volts, 1e-9);
    }

    [Fact]
    public void Misuse_IsRefusedByName()
    {
        Assert.Throws<ArgumentNullException>(() => Spectrum.Of(null!, Rate, SpectralWindow.Hann));
        Assert.Contains("sample 2", Assert.Throws<ArgumentException>(() => Spectrum.Of([1, 2, double.NaN], Rate, SpectralWindow.Hann)).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Spectrum.Of([1, 2, 3], 0.SaPerS(), SpectralWindow.Hann));
        Assert.Throws<ArgumentOutOfRangeException>(() => Spectrum.Averaged([1, 2, 3], Rate, SpectralWindow.Hann, 4.pts(), Ratio.FromFraction(0.5)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Spectrum.Of([1, 2, 3], Rate, SpectralWindow.Hann).BinOf(600.kHz()));
    }
}
