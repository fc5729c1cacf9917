using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Functions;
using static Acquisition.Core.Digitizing.DigitizingFunctions;

namespace Acquisition.Core.Digitizing;

/// <summary>Resolution, noise and jitter in the formula language; each function calls the method of the same meaning.</summary>
internal static class VerticalFunctions
{
    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "lsb quantization_noise ideal_snr enob sinad bits_needed averaging_gain averaging_bits trigger_jitter_bandwidth jitter_snr jitter_for " +
        "combine_noise combine_snr edge_uncertainty";

    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("lsb", "The least significant bit of a converter range.", "handbook 6.1")
            .Takes("full_scale", QuantityKind.PeakToPeakVoltage).Takes("resolution", QuantityKind.BitDepth)
            .Returns(QuantityKind.Voltage, (range, bits) => Quantization.LeastSignificantBit(Range(range), Bits(bits)).SiValue)
            .Example("lsb(0.8 Vpp, 8 bit)", "3.125 mV");
        yield return FunctionDefinition.Named("quantization_noise", "The rms error of an ideal converter.", "handbook 6.1")
            .Takes("full_scale", QuantityKind.PeakToPeakVoltage).Takes("resolution", QuantityKind.BitDepth)
            .Returns(QuantityKind.RmsVoltage, (range, bits) => Quantization.Noise(Range(range), Bits(bits)).SiValue)
            .Example("quantization_noise(0.8 Vpp, 8 bit)", "902.110 µVrms");
        yield return FunctionDefinition.Named("ideal_snr", "The signal-to-noise ratio of an ideal converter with a full-scale sine.", "handbook 6.2")
            .Takes("resolution", QuantityKind.BitDepth)
            .Returns(QuantityKind.DecibelRatio, bits => Quantization.IdealSignalToNoise(Bits(bits)).SiValue, _ => EffectiveResolution.DecibelsPerBit)
            .Example("ideal_snr(8 bit)", "49.9257 dB");
        yield return FunctionDefinition.Named("enob", "The effective bits that a SINAD means; with the share of full scale that the sine filled.", "handbook 6.3")
            .Takes("sinad", QuantityKind.DecibelRatio).TakesOptional("amplitude_of_full_scale", QuantityKind.Ratio, 1)
            .Returns(QuantityKind.BitDepth, (sinad, share) => EffectiveResolution.FromSinad(Decibels(sinad), Ratio.FromSi(share, "amplitude_of_full_scale")).SiValue)
            .Example("enob(44 dB, 90 %)", "7.16776 bit");
        yield return FunctionDefinition.Named("enob", "The effective bits that noise and distortion leave of a converter range.", "handbook 6.3")
            .Takes("full_scale", QuantityKind.PeakToPeakVoltage).Takes("noise_and_distortion", QuantityKind.RmsVoltage)
            .Returns(QuantityKind.BitDepth, (range, noise) => EffectiveResolution.FromNoise(Range(range), Rms(noise)).SiValue)
            .Example("enob(1 Vpp, 0.5 mVrms)", "9.17330 bit");
        yield return FunctionDefinition.Named("sinad", "The SINAD of a full-scale sine that so many effective bits mean.", "handbook 6.3")
            .Takes("effective_bits", QuantityKind.BitDepth)
            .Returns(QuantityKind.DecibelRatio, bits => EffectiveResolution.Sinad(Bits(bits)).SiValue, _ => EffectiveResolution.DecibelsPerBit)
            .Example("sinad(8.5 bit)", "52.9360 dB");
        yield return FunctionDefinition.Named("sinad", "SINAD from the signal-to-noise ratio and the total harmonic distortion (negative).", "handbook 6.3")
            .Takes("signal_to_noise", QuantityKind.DecibelRatio).Takes("distortion", QuantityKind.DecibelRatio)
            .Returns(QuantityKind.DecibelRatio, (snr, thd) => EffectiveResolution.Sinad(Decibels(snr), Decibels(thd)).SiValue)
            .Example("sinad(55 dB, -60 dB)", "53.8067 dB");
        yield return FunctionDefinition.Named("bits_needed", "The effective bits that show a detail within a range.", "handbook 12.3")
            .Takes("range", QuantityKind.PeakToPeakVoltage).Takes("detail", QuantityKind.Voltage)
            .Returns(QuantityKind.BitDepth, (range, detail) => EffectiveResolution.Needed(Range(range), Voltage.FromSi(detail, "detail")).SiValue)
            .Example("bits_needed(1 Vpp, 1 mV)", "9.96578 bit");
        yield return FunctionDefinition.Named("averaging_gain", "By how much uncorrelated noise falls in the mean of so many records.", "handbook 6.9")
            .Takes("records", ValueKind.Number)
            .Returns(QuantityKind.DecibelRatio, n => Averaging.NoiseReduction(Whole(n, "records")).SiValue)
            .Example("averaging_gain(64)", "18.0618 dB");
        yield return FunctionDefinition.Named("averaging_bits", "The bits gained on uncorrelated noise in the mean of so many records or samples.", "handbook 6.9")
            .Takes("count", ValueKind.Number)
            .Returns(QuantityKind.BitDepth, n => Averaging.BitsGained(Whole(n, "count")).SiValue)
            .Example("averaging_bits(64)", "3 bit");
        yield return FunctionDefinition.Named("trigger_jitter_bandwidth", "The bandwidth that averaging over jittered triggers leaves.", "handbook 6.9")
            .Takes("jitter", QuantityKind.Duration)
            .Returns(QuantityKind.Frequency, jitter => Averaging.TriggerJitterBandwidth(Seconds(jitter)).SiValue)
            .Example("trigger_jitter_bandwidth(50 ps)", "2.65010 GHz");
        yield return FunctionDefinition.Named("jitter_snr", "The signal-to-noise ratio that clock jitter leaves of a sine, to first order.", "handbook 6.7")
            .Takes("frequency", QuantityKind.Frequency).Takes("jitter", QuantityKind.Duration)
            .Returns(QuantityKind.DecibelRatio, (f, jitter) => SamplingJitter.SignalToNoise(Hertz(f), Seconds(jitter)).SiValue)
            .Example("jitter_snr(1 GHz, 1 ps)", "44.0364 dB");
        yield return FunctionDefinition.Named("jitter_for", "The clock jitter that leaves a signal-to-noise ratio of a sine.", "handbook 6.7")
            .Takes("signal_to_noise", QuantityKind.DecibelRatio).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Duration, (snr, f) => SamplingJitter.JitterFor(Decibels(snr), Hertz(f)).SiValue)
            .Example("jitter_for(ideal_snr(8 bit), 1 GHz)", "507.615 fs");
        yield return FunctionDefinition.Named("combine_noise", "The rms of independent noises together.", "handbook 6.8")
            .TakesMany("noise", QuantityKind.RmsVoltage)
            .ReturnsFromAll(QuantityKind.RmsVoltage, a => NoiseCombination.Of(Values(a).Select(Rms).ToArray()).SiValue)
            .Example("combine_noise(3 mVrms, 4 mVrms)", "5 mVrms");
        yield return FunctionDefinition.Named("combine_snr", "The signal-to-noise ratio that several independent causes leave.", "handbook 6.8")
            .TakesMany("signal_to_noise", QuantityKind.DecibelRatio)
            .ReturnsFromAll(QuantityKind.DecibelRatio, a => NoiseCombination.OfSignalToNoise(Values(a).Select(Decibels).ToArray()).SiValue)
            .Example("combine_snr(ideal_snr(12 bit), 60 dB, 65 dB)", "58.6775 dB");
        yield return FunctionDefinition.Named("edge_uncertainty", "The standard uncertainty of the instant of an interpolated edge: noise over slope.", "handbook 5.12")
            .Takes("noise", QuantityKind.RmsVoltage).Takes("slope", QuantityKind.SlewRate)
            .Returns(QuantityKind.Duration, (noise, slope) => TimeIntervalAccuracy.OfEdge(Rms(noise), SlewRate.FromSi(slope, "slope")).SiValue)
            .Example("edge_uncertainty(2 mVrms, 500 MV/s)", "4 ps");
    }

    private static double[] Values(FunctionArguments arguments)
    {
        var values = new double[arguments.Count];
        for (int i = 0; i < values.Length; i++)
            values[i] = arguments.SiValue(i);
        return values;
    }

    private static PeakToPeakVoltage Range(double value) => PeakToPeakVoltage.FromSi(value, "full_scale");

    private static BitDepth Bits(double value) => BitDepth.FromSi(value, "resolution");

    private static DecibelRatio Decibels(double value) => DecibelRatio.FromSi(value, "decibels");

    private static RmsVoltage Rms(double value) => RmsVoltage.FromSi(value, "noise");
}
