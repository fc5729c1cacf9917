using System;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Digitizing;

/// <summary>Handbook 6 and 12.3: values computed independently by tests/scripts/handbook/s06_vertical.py and s12_selection.py.</summary>
public sealed class VerticalHandbookTests
{
    private static PeakToPeakVoltage FullScale(CheckValue v) => PeakToPeakVoltage.FromVolts(v.Number("full_scale"));

    private static BitDepth Bits(CheckValue v, string name = "bits") => BitDepth.FromBits(v.Number(name));

    private static DecibelRatio Db(CheckValue v, string name) => DecibelRatio.FromDecibels(v.Number(name));

    private static Frequency Hz(CheckValue v, string name) => Frequency.FromHertz(v.Number(name));

    private static Temperature Kelvin(CheckValue v) => Temperature.FromKelvins(v.Number("T"));

    [Theory, HandbookData("QZ-", "SE-E1", "SE-E2")]
    public void Resolution_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm(id switch
        {
            "QZ-001" => Quantization.LeastSignificantBit(FullScale(v), Bits(v)).Volts,
            "QZ-002" or "QZ-003" => Quantization.Noise(FullScale(v), Bits(v)).Volts,
            "QZ-010" => (Quantization.IdealSignalToNoise(BitDepth.FromBits(1)) - Quantization.IdealSignalToNoise(default)).Decibels,
            "QZ-011" => Quantization.IdealSignalToNoise(default).Decibels,
            "QZ-020" => EffectiveResolution.FromSinad(Db(v, "SINAD_dB")).Bits,
            "SE-E2" => EffectiveResolution.FromSinad(Db(v, "SINAD_dB_wanted")).Bits,
            "QZ-021" => EffectiveResolution.FromSinad(Db(v, "SINAD_dB"), Ratio.FromFraction(v.Number("amplitude_fraction_of_FS"))).Bits,
            "QZ-022" => EffectiveResolution.FromNoise(FullScale(v), RmsVoltage.FromVolts(v.Number("rms_noise_and_distortion"))).Bits,
            "QZ-023" => EffectiveResolution.Sinad(Bits(v, "ENOB")).Decibels,
            "QZ-024" => EffectiveResolution.Sinad(Db(v, "SNR_dB"), Db(v, "THD_dB")).Decibels,
            "QZ-025" => EffectiveResolution.OversamplingGain(SampleRate.FromSamplesPerSecond(v.Number("fs")), Hz(v, "bandwidth")).Decibels,
            "QZ-026" => EffectiveResolution.SpectrumGain(PointCount.FromPoints(v.Integer("record"))).Decibels,
            "QZ-027" => -(Quantization.IdealSignalToNoise(Bits(v)) + EffectiveResolution.SpectrumGain(PointCount.FromPoints(v.Integer("record")))).Decibels,
            "SE-E1" => EffectiveResolution.Needed(FullScale(v), Voltage.FromVolts(v.Number("resolution_wanted"))).Bits,
            _ => Quantization.IdealSignalToNoise(Bits(v)).Decibels,
        });
    }

    [Theory, HandbookData("TH-001", "TH-002", "TH-003", "TH-004", "TH-005", "TH-006", "TH-007")]
    public void ThermalNoise_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        Resistance R() => Resistance.FromOhms(v.Number("R"));
        v.Confirm(id switch
        {
            "TH-001" => ThermalNoise.OpenCircuit(R(), Kelvin(v), Hz(v, "B")).Volts,
            "TH-002" => ThermalNoise.Matched(R(), Kelvin(v), Hz(v, "B")).Volts,
            "TH-003" => ThermalNoise.Density(R(), Kelvin(v)).VoltsPerRootHertz,
            "TH-004" => ThermalNoise.AvailablePower(Kelvin(v), Hz(v, "B")).DecibelMilliwatts,
            "TH-005" => (ThermalNoise.AvailablePower(Kelvin(v), Hz(v, "B")) + Db(v, "NF_dB")).DecibelMilliwatts,
            _ => ThermalNoise.OfCapacitance(Capacitance.FromFarads(v.Number("C")), Kelvin(v)).Volts,
        });
    }

    [Theory, HandbookData("TH-007")]
    public void TheNoiseOfAResistor_ThroughItsCapacitance_IsThatOfTheCapacitance(string id)
    {
        CheckValue v = CheckValue.All[id];
        Resistance r = Resistance.FromOhms(v.Number("R"));
        Response pole = Response.SinglePole(Impedance.Corner(r, Capacitance.FromFarads(v.Number("C"))));
        v.Confirm(ThermalNoise.OpenCircuit(r, Kelvin(v), pole.NoiseBandwidth).Volts);
    }

    [Theory, HandbookData("JT-")]
    public void Jitter_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        Duration Jitter() => Duration.FromSeconds(v.Number("sigma_t"));
        v.Confirm(id switch
        {
            "JT-10" => SamplingJitter.JitterFor(Bits(v, "ENOB"), Hz(v, "f")).Seconds,
            "JT-11" => SamplingJitter.ExactSignalToNoise(Hz(v, "f"), Jitter()).Decibels,
            "JT-20" => NoiseCombination.OfSignalToNoise(Quantization.IdealSignalToNoise(Bits(v, "SQNR_bits")), Db(v, "jitter_SNR_dB"), Db(v, "thermal_SNR_dB")).Decibels,
            _ => SamplingJitter.SignalToNoise(Hz(v, "f"), Jitter()).Decibels,
        });
    }

    [Theory, HandbookData("AV-")]
    public void Averaging_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm(id switch
        {
            "AV-001" => Averaging.NoiseReduction(v.Integer("averages")).Decibels,
            "AV-002" => Averaging.BitsGained(v.Integer("averages")).Bits,
            "AV-003" => Averaging.Noise(RmsVoltage.FromVolts(v.Number("sigma")), v.Integer("averages"), Ratio.FromFraction(v.Number("rho"))).Volts,
            _ => Averaging.TriggerJitterBandwidth(Duration.FromSeconds(v.Number("trigger_jitter_rms"))).Hertz,
        });
    }

    [Theory, HandbookData("DC-", "DR-", "SE-E3")]
    public void AccuracyAndRange_AgreeWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        DcAccuracy Accuracy() => new(Ratio.FromPercent(v.Number("gain_pct")), Ratio.FromPercent(v.Has("offset_pct_FS") ? v.Number("offset_pct_FS") : 0), default);
        v.Confirm(id switch
        {
            "DC-001" => Accuracy().Limit(Voltage.FromVolts(v.Number("reading")), FullScale(v)).Volts,
            "DC-002" => Accuracy().StandardUncertainty(Voltage.FromVolts(v.Number("reading")), FullScale(v)).Volts,
            "DC-003" => Accuracy().DifferenceLimit(Voltage.FromVolts(v.Number("V1")), Voltage.FromVolts(v.Number("V2"))).Volts,
            "DR-001" => NoiseCombination.DynamicRange(RmsVoltage.FromVolts(v.Number("full_scale_rms")), RmsVoltage.FromVolts(v.Number("noise_rms"))).Decibels,
            _ => NoiseCombination.InBandwidth(RmsVoltage.FromVolts(v.Number("noise_rms")), Hz(v, "band"), Hz(v, "new_band")).Volts,
        });
    }
}
