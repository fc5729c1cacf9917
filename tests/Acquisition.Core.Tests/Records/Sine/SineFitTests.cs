using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Xunit;

namespace Acquisition.Core.Tests.Records.Sine;

public sealed class SineFitTests
{
    internal static readonly SampleRate Rate = 100.MSaPerS();

    internal static double[] Make(int points, double cycles, double amplitude = 1, double phase = 0.3, double offset = 0, double noise = 0, int seed = 1)
    {
        var random = new Random(seed);
        return Enumerable.Range(0, points).Select(n => offset + amplitude * Math.Cos(2 * Math.PI * cycles * n + phase) + noise * Gauss(random)).ToArray();
    }

    internal static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    [Theory]
    [InlineData(100, 0.1234)]
    [InlineData(1000, 0.4711)]
    [InlineData(5000, 0.0003)]
    [InlineData(20000, 0.24999)]
    [InlineData(100000, 0.00012)]
    [InlineData(100000, 0.0371234)]
    [InlineData(100000, 0.49987)]
    [InlineData(37, 0.31)]
    [InlineData(12, 0.2)]
    public void FourParameterFit_OfACleanSine_FindsItsParameters(int points, double cycles)
    {
        SineFit fit = SineFit.FourParameter(Make(points, cycles, 0.5, -2.1, 0.25), Rate);

        FittedSine sine = fit.Sine!;
        Assert.Equal(cycles * 1e8, sine.Frequency.Hertz, cycles * 1e8 * 1e-10);
        Assert.Equal(0.5, sine.Amplitude.Volts, 1e-9);
        Assert.Equal(-2.1, sine.Phase.Radians, 1e-7);
        Assert.Equal(0.25, sine.Offset.Volts, 1e-9);
        Assert.True(sine.NoiseAndDistortion.Volts < 1e-9, $"residual {sine.NoiseAndDistortion}");
        Assert.InRange(fit.Iterations, 1, 15);
    }

    [Fact]
    public void EveryFrequencyFromTwoPeriodsToNyquist_IsFound()
    {
        for (int k = 0; k < 400; k++)
        {
            double cycles = (2 + k * 0.6234) / 512;
            if (cycles > 0.5 - 2.0 / 512)
                break;
            SineFit fit = SineFit.FourParameter(Make(512, cycles, 1, 1 + k, -3, 0.01, k), Rate);
            Assert.True(fit.Sine is not null, $"{cycles * 512} periods: {fit}");
            Assert.InRange(fit.Sine.Frequency.Hertz / 1e8 - cycles, -6e-6, 6e-6);
        }
    }

    /// <summary>The larger the residual, the slower the steps shrink: by a half each time where it is as large as the sine. They still settle.</summary>
    [Fact]
    public void LineWeakerThanTheNoise_InAShortRecord_SettlesFromAStart()
    {
        string[] refused = Enumerable.Range(0, 300).Select(seed => SineFit.FourParameter(Make(168, 0.0372, 1, 0.4, 10, 1.45, seed), 1.SaPerS(), Frequency.FromHertz(0.0372)))
            .Where(fit => fit.Sine is null).Select(fit => fit.Findings[0].Code).ToArray();
        Assert.DoesNotContain("sine-fit-not-converged", refused);
        Assert.InRange(refused.Length, 0, 30);
    }

    [Fact]
    public void ResidualSumsInFours_AndOneByOne_AreTheSame()
    {
        double[] x = Make(1003, 0.123, noise: 0.1);
        var model = new SineModel(0.7, 0.2, 0.1, 0.123);
        SineSums fours = default, single = default;
        var block = new SampleBlock(x, 0, 0, x.Length);
        fours.Add(block, 501, 501, model);
        single.AddSingly(block, 0, x.Length, 501, 501, model);

        Assert.Equal(single.RR, fours.RR, 1e-10);
        Assert.Equal(single.TRC, fours.TRC, 1e-10);
        Assert.Equal(single.TTCS, fours.TTCS, 1e-10);
        Assert.Equal(single.Count, fours.Count);
    }

    [Fact]
    public void Scatter_OfRepeatedFits_MatchesTheStatedUncertainty_AndTheCramerRaoBound()
    {
        FittedSine[] fits = Enumerable.Range(0, 400).Select(seed => SineFit.FourParameter(Make(1000, 0.0823, 1, 0.3, 0.1, 0.1, seed), Rate).Sine!).ToArray();

        void Confirm(Func<FittedSine, double> value, Func<FittedSine, double> stated, Func<FittedSine, double>? bound)
        {
            double mean = fits.Average(value), scatter = Math.Sqrt(fits.Sum(f => Math.Pow(value(f) - mean, 2)) / (fits.Length - 1));
            // The scatter of 400 fits is itself known to 3.5 %: four of its own deviations.
            Assert.InRange(scatter / fits.Average(stated), 0.86, 1.14);
            if (bound is not null)
                Assert.InRange(fits.Average(stated) / fits.Average(bound), 0.98, 1.02);
        }

        Confirm(f => f.Amplitude.Volts, f => f.AmplitudeUncertainty.Volts, f => f.Bound!.Amplitude.Volts);
        Confirm(f => f.Frequency.Hertz, f => f.FrequencyUncertainty.Hertz, f => f.Bound!.Frequency.Hertz);
        Confirm(f => f.Phase.Radians, f => f.PhaseUncertainty.Radians, f => f.Bound!.PhaseAtFirstSample.Radians);
        Confirm(f => f.PhaseAtCenter.Radians, f => f.PhaseAtCenterUncertainty.Radians, f => f.Bound!.PhaseAtCenter.Radians);
        Confirm(f => f.Offset.Volts, f => f.OffsetUncertainty.Volts, null);
    }

    /// <summary>By hand: over the 100 periods of the record, a frequency that is off by half a period in the record finds 2/pi of the amplitude, by a whole one nothing.</summary>
    [Theory]
    [InlineData(0.5, 2 / Math.PI)]
    [InlineData(1, 0)]
    public void ThreeParametersAtAWrongFrequency_SayThatTheSineIsElsewhere(double off, double amplitude)
    {
        double[] x = Make(4800, 100 / 4800.0);

        SineFit fit = SineFit.ThreeParameter(x, Rate, Frequency.FromHertz((100 + off) / 4800 * Rate.SamplesPerSecond));

        Assert.Equal(amplitude, fit.Sine!.Amplitude.Volts, 2e-3);
        Assert.Contains(fit.Findings, f => f.Code == "sine-fit-not-dominant" && f.Severity == Severity.Warning);
        Assert.DoesNotContain(SineFit.ThreeParameter(x, Rate, Frequency.FromHertz(100 / 4800.0 * Rate.SamplesPerSecond)).Findings, f => f.Code == "sine-fit-not-dominant");
    }

    [Theory]
    [InlineData("record-not-finite")]
    [InlineData("sine-fit-no-signal")]
    [InlineData("sine-fit-not-significant")]
    [InlineData("sine-fit-under-one-period")]
    [InlineData("sine-fit-too-few-samples")]
    public void RecordWithoutAUsableSine_IsRefusedWithTheReason(string code)
    {
        double[] x = code switch
        {
            "record-not-finite" => Make(100, 0.1).Select((v, i) => i == 57 ? double.NaN : v).ToArray(),
            "sine-fit-no-signal" => Enumerable.Repeat(1.2, 100).ToArray(),
            "sine-fit-not-significant" => Make(1000, 0.1, 0.0, noise: 1),
            "sine-fit-under-one-period" => Make(1000, 0.0006, noise: 1e-4),
            _ => Make(4, 0.2),
        };

        SineFit fit = SineFit.FourParameter(x, Rate);

        Assert.Null(fit.Sine);
        Assert.Equal(code, Assert.Single(fit.Findings).Code);
        if (code == "record-not-finite")
            Assert.Contains("sample 57", fit.Findings[0].Message);
    }

    [Fact]
    public void SineWithinOneBeatOfNyquist_IsRefused_AndWithinFiveWarnedOf()
    {
        // The amplitude of a sine this close to half the sample rate is not told by its samples.
        SineFit refused = SineFit.FourParameter(Make(1000, 0.5 - 0.4 / 1000, noise: 1e-4), Rate);
        Assert.Null(refused.Sine);
        SineFit warned = SineFit.FourParameter(Make(1000, 0.5 - 3.3 / 1000, noise: 1e-4), Rate);
        Assert.Equal(1, warned.Sine!.Amplitude.Volts, 1e-3);
        Assert.Contains(warned.Findings, f => f.Code == "near-nyquist");
    }

    /// <summary>Whatever the samples are, the answer is a fit or a reason.</summary>
    [Fact]
    public void AnySamples_GiveAFitOrAReason_NeverAnotherException()
    {
        var random = new Random(20);
        double[] odd = [0, 1, -1, 1e150, -1e150, 1e-300, double.Epsilon, double.NaN, double.PositiveInfinity, 1e300];
        for (int k = 0; k < 3000; k++)
        {
            int kind = k % 5;
            double[] x = Enumerable.Range(0, random.Next(0, 140)).Select(n => kind switch
            {
                0 => random.NextDouble(),
                1 => odd[random.Next(odd.Length)],
                2 => n % 7 == 0 ? 1e149 * random.NextDouble() : 0,
                3 => Math.Round(2 * random.NextDouble()),
                _ => n == 5 ? 1 : 0.0,
            }).ToArray();
            SineFit fit = k % 2 == 0 ? SineFit.FourParameter(x, Rate) : SineFit.ThreeParameter(x, Rate, Frequency.FromMegahertz(1 + 60 * random.NextDouble()));
            Assert.True(fit.Sine is not null || fit.Findings.Count > 0);
            if (fit.Sine is { } sine)
            {
                Assert.NotEmpty(sine.ToString());
                _ = (sine.Sinad, sine.Bound, sine.EffectiveBitsUncorrected, sine.AmplitudeUncertainty, sine.PhaseUncertainty, sine.FrequencyUncertainty, sine.OffsetUncertainty);
            }
        }
    }

    [Fact]
    public void PureNoise_IsRefused_InNearlyEveryRecord()
    {
        int accepted = Enumerable.Range(0, 200).Count(seed => SineFit.FourParameter(Make(500, 0.1, 0.0, noise: 1, seed: seed), Rate).Sine is not null);
        Assert.InRange(accepted, 0, 3);
    }

    [Fact]
    public void SineBelowTheNoise_IsFoundInALongRecord()
    {
        // -17 dB in 100 000 samples: 30 dB of processing gain, which the first 4096 samples alone do not have.
        FittedSine sine = SineFit.FourParameter(Make(100000, 0.271828, 0.02, noise: 0.1, seed: 5), Rate).Sine!;
        Assert.InRange(sine.Frequency.Hertz / 1e8 - 0.271828, -4 * sine.FrequencyUncertainty.Hertz / 1e8, 4 * sine.FrequencyUncertainty.Hertz / 1e8);
    }

    [Fact]
    public void ThreeParameterFit_UnderOnePeriod_IsRight_AndSaysSo()
    {
        SineFit fit = SineFit.ThreeParameter(Make(1000, 0.0006, 0.5, 0.2, 0.1), Rate, 60.kHz());

        Assert.Equal(0.5, fit.Sine!.Amplitude.Volts, 1e-6);
        Assert.Contains(fit.Findings, f => f.Code == "few-periods");
    }

    [Fact]
    public void FrequencyAtHalfTheSampleRate_IsRefused()
    {
        SineFit fit = SineFit.ThreeParameter(Make(100, 0.5), Rate, 50.MHz());
        Assert.Equal("sine-fit-singular", Assert.Single(fit.Findings).Code);
    }

    [Fact]
    public void KnownFrequencyAboveNyquist_IsFittedAsItsAlias_AndSaysSo()
    {
        SineFit fit = SineFit.ThreeParameter(Make(1000, 1.2, 0.7), Rate, 120.MHz());

        Assert.Equal(0.7, fit.Sine!.Amplitude.Volts, 1e-9);
        Assert.Contains(fit.Findings, f => f.Code == "undersampled" && f.Message.Contains("20 MHz"));
    }

    [Fact]
    public void StartTwoBinsAway_IsRefused_NotFittedToSomethingElse()
    {
        SineFit fit = SineFit.FourParameter(Make(1000, 0.1), Rate, Frequency.FromMegahertz(10.6));
        Assert.Null(fit.Sine);
    }

    [Fact]
    public void SmallerOfTwoSines_IsFitted_WhenTheStartSaysSo()
    {
        double[] large = Make(2000, 0.1), small = Make(2000, 0.2234, 0.1);
        double[] x = large.Zip(small, (a, b) => a + b).ToArray();

        Assert.Equal(0.1, SineFit.FourParameter(x, Rate, Frequency.FromMegahertz(22.341)).Sine!.Amplitude.Volts, 1e-3);
        Assert.Equal(1.0, SineFit.FourParameter(x, Rate).Sine!.Amplitude.Volts, 1e-3);
    }

    [Fact]
    public void Sinad_WithAndWithoutFullScaleCorrection_DiffersByTheLevel()
    {
        // Handbook 6.3: 44 dB at 90 % of full scale is 7.168 bit corrected, 7.016 bit not.
        double nad = 0.9 / Math.Sqrt(2) / Math.Pow(10, 44 / 20.0);
        Assert.Equal(7.168, EffectiveBits.OfFullScale(nad, 2)!.Value.Bits, 5e-4);
        Assert.Equal(7.016, EffectiveBits.OfSinad(44)!.Value.Bits, 5e-4);
        Assert.Null(EffectiveBits.OfSinad(1));
    }

    [Fact]
    public void FewPhases_AreReported()
    {
        Assert.Contains(SineFit.FourParameter(Make(1000, 0.25, noise: 0.01), Rate).Findings, f => f.Code == "few-phases" && f.Message.Contains(" 4 phases"));
    }

    [Fact]
    public void HarmonicsInTheResidual_AreReportedAsNotWhite()
    {
        double[] x = Make(2000, 0.0123).Zip(Make(2000, 0.0246, 0.01), (a, b) => a + b).ToArray();
        Assert.Contains(SineFit.FourParameter(x, Rate).Findings, f => f.Code == "residual-not-white");
    }
}
