using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Records;

/// <summary>What sines and spectra declare to the formula language.</summary>
internal static class SineFunctions
{
    private static readonly Dictionary<string, SpectralWindow> Windows = new()
    {
        ["rectangular"] = SpectralWindow.Rectangular,
        ["hann"] = SpectralWindow.Hann,
        ["hamming"] = SpectralWindow.Hamming,
        ["blackman"] = SpectralWindow.Blackman,
        ["blackman-harris"] = SpectralWindow.BlackmanHarris,
        ["blackman-nuttall"] = SpectralWindow.BlackmanNuttall,
        ["flat-top-iso-18431-2"] = SpectralWindow.FlatTopIso18431,
        ["flat-top-five-term"] = SpectralWindow.FlatTopFiveTerm,
        ["hft70"] = SpectralWindow.Hft70,
        ["hft95"] = SpectralWindow.Hft95,
        ["hft116d"] = SpectralWindow.Hft116D,
        ["hft144d"] = SpectralWindow.Hft144D,
    };

    private static readonly ValueKind WindowChoice = ValueKind.Choice("window", Windows.Keys.ToArray());

    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "coherent_frequency coherent_periods least_frequency_uncertainty least_amplitude_uncertainty least_phase_uncertainty window_coherent_gain " +
        "window_noise_bandwidth window_scalloping_loss window_side_lobe";

    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("coherent_frequency", "The frequency nearest to a wanted one that fits a whole number of times into the record, with as many different phases as there are samples.", "handbook 9.6; IEEE 1057/1241")
            .Takes("wanted", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate).Takes("points", QuantityKind.PointCount)
            .Returns(QuantityKind.Frequency, (wanted, rate, points) => Coherent(wanted, rate, points).Frequency.SiValue)
            .Example("coherent_frequency(100 MHz, 1 GSa/s, 4096 pts)", "99.8535 MHz");
        yield return FunctionDefinition.Named("coherent_periods", "How many periods of the coherent frequency the record holds.", "handbook 9.6; IEEE 1057/1241")
            .Takes("wanted", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate).Takes("points", QuantityKind.PointCount)
            .Returns(ValueKind.Number, (wanted, rate, points) => Coherent(wanted, rate, points).Cycles)
            .Example("coherent_periods(100 MHz, 1 GSa/s, 4096 pts)", "409");

        yield return FunctionDefinition.Named("least_frequency_uncertainty", "The Cramer-Rao bound of the frequency of a sine in white noise.", "handbook 9.8; Rife and Boorstyn 1974")
            .Takes("amplitude", QuantityKind.PeakVoltage).Takes("noise", QuantityKind.RmsVoltage).Takes("points", QuantityKind.PointCount).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Frequency, (amplitude, noise, points, rate) => Bound(amplitude, noise, points, rate).Frequency.SiValue)
            .Example("least_frequency_uncertainty(1 Vpk, 10 mVrms, 1000 pts, 1 MSa/s)", "246.562 mHz");
        yield return FunctionDefinition.Named("least_amplitude_uncertainty", "The Cramer-Rao bound of the amplitude of a sine in white noise.", "handbook 9.8; Rife and Boorstyn 1974")
            .Takes("amplitude", QuantityKind.PeakVoltage).Takes("noise", QuantityKind.RmsVoltage).Takes("points", QuantityKind.PointCount)
            .Returns(QuantityKind.PeakVoltage, (amplitude, noise, points) => Bound(amplitude, noise, points, 1).Amplitude.SiValue)
            .Example("least_amplitude_uncertainty(1 Vpk, 10 mVrms, 1000 pts)", "447.214 µVpk");
        yield return FunctionDefinition.Named("least_phase_uncertainty", "The Cramer-Rao bound of the phase of a sine in white noise, at the centre of the record or where the frequency is known.", "handbook 9.8; Rife and Boorstyn 1974")
            .Takes("amplitude", QuantityKind.PeakVoltage).Takes("noise", QuantityKind.RmsVoltage).Takes("points", QuantityKind.PointCount)
            .Returns(QuantityKind.Angle, (amplitude, noise, points) => Bound(amplitude, noise, points, 1).PhaseAtCenter.SiValue)
            .Example("least_phase_uncertainty(1 Vpk, 10 mVrms, 1000 pts)", "447.214 µrad");

        yield return FunctionDefinition.Named("window_coherent_gain", "The mean of a spectral window: what a line's amplitude is divided by.", "handbook 9.7")
            .Takes("window", WindowChoice)
            .ReturnsFromAll(ValueKind.Number, a => Windows[a.Text(0)].CoherentGain.SiValue)
            .Example("window_coherent_gain(\"hann\")", "0.5");
        yield return FunctionDefinition.Named("window_noise_bandwidth", "The equivalent noise bandwidth of a spectral window, in bins.", "handbook 9.7")
            .Takes("window", WindowChoice)
            .ReturnsFromAll(ValueKind.Number, a => Windows[a.Text(0)].EquivalentNoiseBandwidthInBins)
            .Example("window_noise_bandwidth(\"blackman-harris\")", "2.00435");
        yield return FunctionDefinition.Named("window_scalloping_loss", "How much too low a line half-way between two bins reads.", "handbook 9.7")
            .Takes("window", WindowChoice)
            .ReturnsFromAll(QuantityKind.DecibelRatio, a => Windows[a.Text(0)].ScallopingLoss.SiValue)
            .Example("window_scalloping_loss(\"hann\")", "1.42362 dB");
        yield return FunctionDefinition.Named("window_side_lobe", "The highest side lobe of a spectral window, relative to its main lobe.", "handbook 9.7")
            .Takes("window", WindowChoice)
            .ReturnsFromAll(QuantityKind.DecibelRatio, a => Windows[a.Text(0)].HighestSideLobe.SiValue)
            .Example("window_side_lobe(\"hann\")", "-31.4673 dB");
    }

    private static CoherentSampling Coherent(double wanted, double rate, double points) =>
        CoherentSampling.Near(Frequency.FromSi(wanted, nameof(wanted)), SampleRate.FromSi(rate, "sample_rate"), PointCount.FromSi(points, nameof(points)));

    private static CramerRaoBound Bound(double amplitude, double noise, double points, double rate) =>
        CramerRaoBound.OfSine(PeakVoltage.FromSi(amplitude, nameof(amplitude)), RmsVoltage.FromSi(noise, nameof(noise)), PointCount.FromSi(points, nameof(points)), SampleRate.FromSi(rate, "sample_rate"));
}
