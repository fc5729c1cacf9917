using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records.Sine;

public sealed class RecordDoorTests
{
    private static Record EightBitRecord(double amplitude)
    {
        byte[] codes = Enumerable.Range(0, 4096).Select(n => (byte)Math.Clamp(Math.Floor(amplitude * Math.Sin(2 * Math.PI * 1031 * n / 4096 + 0.1) * 128 + 0.5) + 128, 0, 255)).ToArray();
        return Record.FromCodes(codes, 1.GSaPerS(), Voltage.FromVolts(2 / 256.0), Voltage.FromVolts(-1));
    }

    /// <summary>Handbook 9.4: the ideal 8-bit record of check values QS-0, as codes; the range of the converter gives ENOB with full-scale correction.</summary>
    [Fact]
    public void RecordOfCodes_KnowsItsFullScale()
    {
        FittedSine sine = SineFit.FourParameter(EightBitRecord(0.98)).Sine!;
        Assert.Equal(7.9943, sine.EffectiveBits!.Value.Bits, 2e-4);
        Assert.Equal(7.994, SingleToneTest.Of(EightBitRecord(0.98)).EffectiveBits!.Value.Bits, 5e-3);
    }

    [Fact]
    public void CodesAtTheLimits_AreClipped()
    {
        SineFit fit = SineFit.FourParameter(EightBitRecord(1.3));
        Assert.Equal(1.3, fit.Sine!.Amplitude.Volts, 1e-3);
        Assert.Null(fit.Sine.EffectiveBits);
        Assert.Contains(fit.Findings, f => f.Code == "samples-clipped" && f.Message.Contains("-1 V"));
    }

    [Fact]
    public void TwelveBitCodesInSixteenBits_AreSaidToBeCountedOfSixteen()
    {
        short[] codes = Enumerable.Range(0, 4096).Select(n => (short)Math.Round(1900 * Math.Sin(2 * Math.PI * 1031 * n / 4096 + 0.1))).ToArray();
        Record record = Record.FromCodes(codes, 48.kSaPerS(), Voltage.FromVolts(1 / 2048.0), Voltage.FromVolts(0));
        Record stated = record.WithLimits(Voltage.FromVolts(-1), Voltage.FromVolts(2047 / 2048.0));

        Assert.Contains(SineFit.FourParameter(record).Findings, f => f.Code == "full-scale-assumed");
        Assert.Contains(SingleToneTest.Of(record).Findings, f => f.Code == "full-scale-assumed");
        Assert.DoesNotContain(SineFit.FourParameter(stated).Findings, f => f.Code == "full-scale-assumed");
        Assert.Equal(12, SineFit.FourParameter(stated).Sine!.EffectiveBits!.Value.Bits, 0.05);
    }

    [Fact]
    public void RecordOfAmperes_IsRefusedByName()
    {
        Record amperes = Record.FromValues(new double[10], QuantityKind.Current, 1.MSaPerS());
        Assert.Contains("current", Assert.Throws<ArgumentException>(() => SineFit.FourParameter(amperes)).Message);
        Assert.Throws<ArgumentException>(() => Spectrum.Of(amperes, SpectralWindow.Hann));
    }

    [Fact]
    public void GapInARecord_IsRefusedWithItsSample()
    {
        double[] volts = SineFitTests.Make(100, 0.1);
        volts[42] = double.NaN;
        Assert.Contains("sample 42", SineFit.FourParameter(Record.FromVolts(volts, 1.MSaPerS())).Findings[0].Message);
    }

    [Fact]
    public void Channels_GiveRatioPhaseAndDelay_WithTheirScatter()
    {
        // 24 MHz beacon clock in two channels, the second at -1.94 dB (0.8) and 1.25 ns late.
        ChannelComparison[] runs = Enumerable.Range(0, 300).Select(seed => CommonSineFit.Of(
            1.GSaPerS(),
            SineFitTests.Make(1000, 0.024, 1, 0.4, 0, 0.02, 2 * seed),
            SineFitTests.Make(1000, 0.024, 0.8, 0.4 - 2 * Math.PI * 0.024 * 1.25, 0.3, 0.02, 2 * seed + 1)).Compare(0, 1)!).ToArray();

        Assert.Equal(0.8, runs.Average(r => r.AmplitudeRatio.Fraction), 3e-4);
        Assert.Equal(1.25e-9, runs.Average(r => r.Delay.Seconds), 2e-12);
        double mean = runs.Average(r => r.Delay.Seconds), scatter = Math.Sqrt(runs.Average(r => Math.Pow(r.Delay.Seconds - mean, 2)));
        Assert.InRange(scatter / runs[0].DelayUncertainty.Seconds, 0.85, 1.15);
        double level = runs.Average(r => r.Gain.Decibels), levelScatter = Math.Sqrt(runs.Average(r => Math.Pow(r.Gain.Decibels - level, 2)));
        Assert.InRange(levelScatter / runs[0].GainUncertainty.Decibels, 0.85, 1.15);
    }

    [Fact]
    public void WeakChannel_TakesTheFrequencyOfTheStrongOne()
    {
        CommonSineFit fit = CommonSineFit.Of(1.GSaPerS(), SineFitTests.Make(1000, 0.1, 1, noise: 1e-3), SineFitTests.Make(1000, 0.1, 1e-3, noise: 0.01, seed: 4));
        Assert.NotNull(fit.Compare(0, 1));
        Assert.Contains(fit.Findings, f => f.Code == "channel-without-own-fit");
    }

    [Fact]
    public void ChannelOfAnotherSignal_IsNoticed()
    {
        CommonSineFit fit = CommonSineFit.Of(1.GSaPerS(), SineFitTests.Make(1000, 0.1, 1, noise: 1e-3), SineFitTests.Make(1000, 0.13, 0.5, noise: 1e-3));
        Assert.Contains(fit.Findings, f => f.Code == "channels-differ-in-frequency");
    }

    [Fact]
    public void Phase_WrapsToHalfATurn()
    {
        ChannelComparison turned = CommonSineFit.Of(1.GSaPerS(), SineFitTests.Make(1000, 0.1, 1, 3), SineFitTests.Make(1000, 0.1, 1, -3)).Compare(0, 1)!;
        Assert.Equal((2 * Math.PI - 6) * 180 / Math.PI, turned.Phase.Degrees, 1e-6);
    }
}
