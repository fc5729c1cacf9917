using System;
using System.Linq;
using Acquisition.Core.Records;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>Handbook 9.1 to 9.4, 9.6 and 9.8: values computed independently by tests/scripts/handbook/s09_sine.py.</summary>
public sealed class SineFitHandbookTests
{
    private static readonly SampleRate OneSamplePerSecond = SampleRate.FromSamplesPerSecond(1);

    private static double[] DistortedSine() =>
        Enumerable.Range(0, 1000).Select(n => 0.8 * Math.Cos(2 * Math.PI * 0.0371 * n + 0.5) + 0.1 + 0.01 * Math.Cos(2 * Math.PI * 3 * 0.0371 * n)).ToArray();

    [Theory, HandbookData("SF-3")]
    public void ThreeParameterFit_OfADistortedSine_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        FittedSine sine = SineFit.ThreeParameter(DistortedSine(), OneSamplePerSecond, Frequency.FromHertz(value.Number("f"))).Sine!;
        double amplitude = sine.Amplitude.Volts, phase = sine.Phase.Radians;
        value.Confirm(id switch
        {
            "SF-301" => amplitude * Math.Cos(phase),
            "SF-302" => -amplitude * Math.Sin(phase),
            "SF-303" => sine.Offset.Volts,
            "SF-304" => amplitude,
            "SF-305" => phase,
            "SF-306" => sine.NoiseAndDistortion.Volts,
            _ => throw new InvalidOperationException(id),
        });
    }

    [Theory, HandbookData("SF-4")]
    public void FourParameterFit_OfADistortedSine_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        FittedSine started = SineFit.FourParameter(DistortedSine(), OneSamplePerSecond, Frequency.FromHertz(value.Number("f0"))).Sine!;
        FittedSine searched = SineFit.FourParameter(DistortedSine(), OneSamplePerSecond).Sine!;
        foreach (FittedSine sine in new[] { started, searched })
        {
            value.Confirm(id switch
            {
                "SF-401" => sine.Frequency.Hertz,
                "SF-402" => sine.Amplitude.Volts,
                "SF-403" => sine.NoiseAndDistortion.Volts,
                _ => throw new InvalidOperationException(id),
            });
        }
    }

    [Theory, HandbookData("IP-")]
    public void InterpolatedDft_OfALineBetweenBins_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        double[] x = Enumerable.Range(0, 256).Select(n => Math.Cos(2 * Math.PI * 20.3 * n / 256 + 0.7)).ToArray();
        value.Confirm(InterpolatedDft.Of(new SamplePasses(NumberSamples.Of(x)), 256, hann: value.Text("window").StartsWith("Hann", StringComparison.Ordinal)).Position);
    }

    [Theory, HandbookData("QS-")]
    public void QuantisedSine_GivesTheHandbooksSinadAndEnob(string id)
    {
        CheckValue value = CheckValue.All[id];
        int points = value.Integer("N"), bits = value.Integer("bits");
        double q = 2 / Math.Pow(2, bits), top = Math.Pow(2, bits - 1);
        double[] x = Enumerable.Range(0, points)
            .Select(n => value.Number("a") * Math.Sin(2 * Math.PI * value.Integer("J") * n / points + value.Number("ph")))
            .Select(v => q * Math.Min(top - 1, Math.Max(-top, Math.Floor(v / q + 0.5)))).ToArray();
        FittedSine sine = SineFit.ThreeParameter(x, OneSamplePerSecond, Frequency.FromHertz((double)value.Integer("J") / points)).Sine!;
        value.Confirm(id.Split('-')[2] switch
        {
            "NAD" => sine.NoiseAndDistortion.Volts,
            "SINAD" => sine.Sinad!.Value.Decibels,
            "ENOB" => sine.EffectiveBitsOf(PeakToPeakVoltage.FromVolts(2))!.Value.Bits,
            _ => throw new InvalidOperationException(id),
        });
    }

    [Theory, HandbookData("CR-")]
    public void CramerRaoBound_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        var noise = RmsVoltage.FromVolts(Math.Sqrt(0.5) * Math.Pow(10, -value.Number("snr_dB") / 20));
        CramerRaoBound bound = CramerRaoBound.OfSine(PeakVoltage.FromVolts(1), noise, PointCount.FromPoints(value.Integer("N")), OneSamplePerSecond);
        value.Confirm(id switch
        {
            "CR-001" => bound.Frequency.Hertz,
            "CR-002" => bound.Amplitude.Volts,
            "CR-003" => bound.PhaseAtFirstSample.Radians,
            "CR-004" => bound.PhaseAtCenter.Radians,
            _ => throw new InvalidOperationException(id),
        });
    }
}
