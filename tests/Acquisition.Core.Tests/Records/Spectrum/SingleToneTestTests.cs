using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Tests.Records.Sine;
using Xunit;

namespace Acquisition.Core.Tests.Records.Spectra;

public sealed class SingleToneTestTests
{
    private static readonly SampleRate Rate = 500.MSaPerS();

    private static double[] Tone(int points, double cycles, double noise, params double[] harmonics)
    {
        double[] x = SineFitTests.Make(points, cycles, 1, 0.7, 0.05, noise);
        for (int h = 0; h < harmonics.Length; h++)
        {
            double[] line = SineFitTests.Make(points, cycles * (h + 2), harmonics[h], 1.1 * h);
            for (int i = 0; i < points; i++)
                x[i] += line[i];
        }
        return x;
    }

    [Fact]
    public void Distortion_ThatIsNoiseOnly_IsAnUpperBound_InFewDigits()
    {
        SingleToneTest noisy = SingleToneTest.Of(Tone(4096, 101 / 4096.0, 1e-3), Rate), distorted = SingleToneTest.Of(Tone(4096, 101 / 4096.0, 1e-4, 0.01, 0.005), Rate);

        Assert.Contains(", THD at most -", noisy.ToString(), StringComparison.Ordinal);
        Assert.Contains(", THD -39.03 dB (harmonics", distorted.ToString(), StringComparison.Ordinal);
        Assert.Matches(@"^1 Vpk at 12\.\d{1,5} MHz, \d+(\.\d)? mrad, offset 50 mV, residual \d+(\.\d+)? mVrms$", distorted.Sine.ToString());
    }

    [Theory, HandbookData("TH-D")]
    public void Distortion_OfKnownHarmonics_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        double[] harmonics = [value.Inputs.GetProperty("harmonics_rel").GetProperty("2").GetDouble(), value.Inputs.GetProperty("harmonics_rel").GetProperty("3").GetDouble()];
        SingleToneTest test = SingleToneTest.Of(Tone(4096, 101 / 4096.0, 0, harmonics), Rate);
        value.Confirm(id switch
        {
            "TH-D01" => test.TotalHarmonicDistortion!.Value.Decibels,
            "TH-D02" => test.TotalHarmonicDistortionRatio.Percent,
            "TH-D03" => test.SpuriousFreeDynamicRange!.Value.Decibels,
            _ => throw new InvalidOperationException(id),
        });
    }

    [Theory, HandbookData("TH-A")]
    public void Harmonics_FoldToTheHandbooksFrequencies(string id)
    {
        CheckValue value = CheckValue.All[id];
        // The exact 130 MHz is 0.26 of the sample rate.
        SingleToneTest test = SingleToneTest.Of(Tone(5000, value.Number("f") / value.Number("fs"), 1e-3), SampleRate.FromSamplesPerSecond(value.Number("fs")), SpectralWindow.Hft95);
        double at = test.Harmonics[value.Integer("harmonic") - 2].Frequency.Hertz;
        Assert.Equal(value.Expected, at, 1e3);
        value.Confirm(HarmonicLine.Fold(value.Integer("harmonic") * value.Number("f"), value.Number("fs")));
    }

    [Theory, HandbookData("CO-")]
    public void CoherentFrequency_NearAWantedOne_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        CoherentSampling coherent = CoherentSampling.Near(Frequency.FromHertz(value.Number("f_wanted")), SampleRate.FromSamplesPerSecond(value.Number("fs")), PointCount.FromPoints(value.Integer("N")));
        value.Confirm(coherent.Frequency.Hertz);
        Assert.Equal(409, coherent.Cycles);
    }

    [Theory]
    [InlineData(103 / 4096.0)]
    [InlineData(0.0712345)]
    [InlineData(0.3456789)]
    public void NoisyTone_GivesItsFigures_OnAndOffTheBins(double cycles)
    {
        // 1 mV rms of noise under a 1 V sine is 56.99 dB; harmonics at -50 and -60 dBc make -49.59 dB; together 48.85 dB.
        double[] x = Tone(16384, cycles, 1e-3, Math.Pow(10, -2.5), 1e-3);
        SingleToneTest test = SingleToneTest.Of(x, Rate);

        Assert.Equal(-49.586, test.TotalHarmonicDistortion!.Value.Decibels, 0.15);
        Assert.Equal(56.99, test.SignalToNoise!.Value.Decibels, 0.4);
        Assert.Equal(48.86, test.Sinad!.Value.Decibels, 0.15);
        Assert.Equal(50, test.SpuriousFreeDynamicRange!.Value.Decibels, 0.15);
        Assert.Equal(test.Sine.Sinad!.Value.Decibels, test.Sinad!.Value.Decibels, 0.2);
        Assert.Equal(1e-3 / Math.Sqrt(250e6), test.NoiseFloor.VoltsPerRootHertz, 0.05e-3 / Math.Sqrt(250e6));
        Assert.True(test.Harmonics[5].IsInNoise);
        Assert.False(test.Harmonics[0].IsInNoise);
    }

    /// <summary>Handbook 9.4: an ideal 8-bit record; the figures by fit and by spectrum agree when nothing leaks.</summary>
    [Fact]
    public void IdealQuantiser_GivesTheSameEnob_ByFitAndBySpectrum()
    {
        double[] x = Enumerable.Range(0, 4096).Select(n => Math.Floor(0.98 * Math.Sin(2 * Math.PI * 1031 * n / 4096 + 0.1) * 128 + 0.5) / 128).ToArray();
        SingleToneTest test = SingleToneTest.Of(x, Rate);

        Assert.Same(SpectralWindow.Rectangular, test.Spectrum.Window);
        Assert.Equal(49.7140, test.Sine.Sinad!.Value.Decibels, 2e-3);
        Assert.Equal(49.7140, test.Sinad!.Value.Decibels, 0.02);
        Assert.Equal(7.994, test.EffectiveBitsOf(2.Vpp())!.Value.Bits, 5e-3);
    }

    [Fact]
    public void HarmonicThatFoldsOntoTheFundamental_IsNamed_NotCounted()
    {
        // At a quarter of the sample rate harmonic 3 folds onto the fundamental, 2 onto half the sample rate, 4 onto DC.
        SingleToneTest test = SingleToneTest.Of(Tone(4096, 1024 / 4096.0, 1e-3), Rate, SpectralWindow.BlackmanHarris, 4);

        Assert.Equal("the fundamental", test.Harmonics[1].Collision);
        Assert.Equal("DC", test.Harmonics[2].Collision);
        Assert.Null(test.Harmonics[1].Rms);
        Assert.Contains(test.Findings, f => f.Code == "harmonic-collides" && f.Message.Contains("harmonic 3"));
    }

    [Fact]
    public void NonCoherentRecordWithoutWindow_IsSaidToLeak()
    {
        SingleToneTest test = SingleToneTest.Of(Tone(4096, 101.3 / 4096.0, 1e-5), Rate, SpectralWindow.Rectangular);
        Assert.Contains(test.Findings, f => f.Code == "leakage");
        Assert.Contains(test.Findings, f => f.Code == "sinad-by-fit-and-spectrum-differ");
    }

    [Fact]
    public void ClippedTone_ShowsItsHarmonics_AndTheClipping()
    {
        double[] x = SineFitTests.Make(4096, 101 / 4096.0).Select(v => Math.Clamp(v, -0.9, 0.9)).ToArray();
        SingleToneTest test = SingleToneTest.Of(x, Rate);
        Assert.Contains(test.Findings, f => f.Code == "samples-clipped");
        Assert.True(test.TotalHarmonicDistortion!.Value.Decibels > -40);
    }

    [Fact]
    public void ToneTooCloseToDcForTheWindow_IsRefusedWithThePeriodsItNeeds() =>
        Assert.Contains("more than 15 periods", Assert.Throws<InvalidOperationException>(() => SingleToneTest.Of(Tone(1000, 0.0063, 1e-3), Rate, SpectralWindow.Hft144D)).Message);

    [Fact]
    public void ShortRecords_GiveFiguresOrAReason_NeverAnotherException()
    {
        for (int points = 8; points < 200; points += 3)
        {
            foreach (SpectralWindow? window in new[] { null, SpectralWindow.Rectangular, SpectralWindow.Hann, SpectralWindow.Hft95 })
            {
                try
                {
                    Assert.NotEmpty(SingleToneTest.Of(Tone(points, 0.0071 * (points % 60 + 3), 1e-3), Rate, window).ToString());
                }
                catch (InvalidOperationException reason)
                {
                    Assert.NotEmpty(reason.Message);
                }
            }
        }
    }

    [Fact]
    public void RecordWithoutATone_IsRefusedWithTheFitsReason()
    {
        var refusal = Assert.Throws<InvalidOperationException>(() => SingleToneTest.Of(new double[100], Rate));
        Assert.Contains("sine-fit-no-signal", refusal.Message);
    }

    [Fact]
    public void CoherentSampling_HasNoCommonFactor_ForAnyLength()
    {
        foreach (int points in new[] { 3, 10, 1000, 1024, 1155, 9699690 })
        {
            for (int i = 1; i < 20; i++)
            {
                CoherentSampling c = CoherentSampling.Near(Frequency.FromHertz(i * 0.0231 * 1e6), 1.MSaPerS(), PointCount.FromPoints(points));
                Assert.Equal(1, System.Numerics.BigInteger.GreatestCommonDivisor(c.Cycles, points));
                Assert.Equal(c.Cycles * 1e6 / points, c.Frequency.Hertz, 1e-6);
            }
        }
    }
}
