using System;

namespace Acquisition.Core;

/// <summary>SINAD and effective bits, and what oversampling and a spectrum do to noise (handbook 6.3, 6.4, 12.3; IEEE 1241 and IEEE 1057, from memory). Always state the frequency and amplitude they were taken at.</summary>
public static class EffectiveResolution
{
    internal static readonly double DecibelsPerBit = 20 * Math.Log10(2);
    internal static readonly double IdealSineOffset = 10 * Math.Log10(1.5);

    /// <summary>Effective bits from noise and distortion: ld(FS / (NAD √12)).</summary>
    /// <param name="fullScale">The converter's range.</param>
    /// <param name="noiseAndDistortion">The rms of everything but DC and the sine.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above 0 V, or the noise is above that of no bits at all.</exception>
    public static BitDepth FromNoise(PeakToPeakVoltage fullScale, RmsVoltage noiseAndDistortion)
    {
        double nad = Refuse.UnlessAboveZero(noiseAndDistortion.SiValue, RmsVoltage.Kind, nameof(noiseAndDistortion));
        double bits = Math.Log(Refuse.UnlessAboveZero(fullScale.SiValue, PeakToPeakVoltage.Kind, nameof(fullScale)) / (nad * Math.Sqrt(12))) / Math.Log(2);
        return bits >= 0
            ? BitDepth.FromBits(bits)
            : throw Refuse.OutOfRange(nad, RmsVoltage.Kind, nameof(noiseAndDistortion), $"at most {RmsVoltage.FromVolts(fullScale.SiValue / Math.Sqrt(12)):G4}", "more noise than that leaves no bits");
    }

    /// <summary>Effective bits from the SINAD of a full-scale sine: (SINAD - 1.7609 dB) / 6.0206 dB.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sinad"/> is below 1.7609 dB.</exception>
    public static BitDepth FromSinad(DecibelRatio sinad) => FromSinad(sinad, Ratio.FromFraction(1));

    /// <summary>Effective bits from the SINAD of a sine smaller than full scale: its shortfall 20 lg(FS/App) is added back (handbook 6.3).</summary>
    /// <param name="sinad">The SINAD.</param>
    /// <param name="amplitudeOfFullScale">Peak-to-peak of the sine over full scale: above 0, at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is out of range, or the SINAD leaves no bits.</exception>
    public static BitDepth FromSinad(DecibelRatio sinad, Ratio amplitudeOfFullScale)
    {
        double share = amplitudeOfFullScale.SiValue;
        if (!(share > 0 && share <= 1))
            throw Refuse.OutOfRange(share, Ratio.Kind, nameof(amplitudeOfFullScale), "above 0 and at most 1");
        double bits = (sinad.SiValue - IdealSineOffset - 20 * Math.Log10(share)) / DecibelsPerBit;
        return bits >= 0
            ? BitDepth.FromBits(bits)
            : throw Refuse.OutOfRange(sinad.SiValue, DecibelRatio.Kind, nameof(sinad), $"at least {DecibelRatio.FromDecibels(IdealSineOffset + 20 * Math.Log10(share)):G4}, which is no bits");
    }

    /// <summary>The SINAD of a full-scale sine that so many effective bits mean: 6.0206 ENOB + 1.7609 dB.</summary>
    public static DecibelRatio Sinad(BitDepth effectiveBits) => DecibelRatio.FromSi(DecibelsPerBit * effectiveBits.SiValue + IdealSineOffset, nameof(effectiveBits));

    /// <summary>SINAD from noise and distortion: -10 lg(10^(-SNR/10) + 10^(THD/10)).</summary>
    /// <param name="signalToNoise">The signal-to-noise ratio, positive.</param>
    /// <param name="totalHarmonicDistortion">The total harmonic distortion re the sine, negative.</param>
    public static DecibelRatio Sinad(DecibelRatio signalToNoise, DecibelRatio totalHarmonicDistortion) =>
        DecibelRatio.FromSi(-10 * Math.Log10(Math.Pow(10, -signalToNoise.SiValue / 10) + Math.Pow(10, totalHarmonicDistortion.SiValue / 10)), nameof(signalToNoise));

    /// <summary>The effective bits that show a detail within a range: ld(range / detail), for a signal that fills the range.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="detail"/> is not above 0 V and at most the range.</exception>
    public static BitDepth Needed(PeakToPeakVoltage range, Voltage detail)
    {
        double fine = Refuse.UnlessAboveZero(detail.SiValue, Voltage.Kind, nameof(detail));
        return range.SiValue >= fine
            ? BitDepth.FromSi(Math.Log(range.SiValue / fine) / Math.Log(2), nameof(detail))
            : throw Refuse.OutOfRange(fine, Voltage.Kind, nameof(detail), $"at most the range {range}");
    }

    /// <summary>By how much white noise falls when only a band below the Nyquist frequency is kept: 10 lg(fs / 2B).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bandwidth"/> is not above 0 Hz and at most half the rate.</exception>
    public static DecibelRatio OversamplingGain(SampleRate rate, Frequency bandwidth)
    {
        double nyquist = Sampling.NyquistFrequency(rate).SiValue;
        return bandwidth.SiValue > 0 && bandwidth.SiValue <= nyquist
            ? DecibelRatio.FromSi(10 * Math.Log10(nyquist / bandwidth.SiValue), nameof(bandwidth))
            : throw Refuse.OutOfRange(bandwidth.SiValue, Frequency.Kind, nameof(bandwidth), $"above 0 Hz and at most {rate.NyquistFrequency}");
    }

    /// <summary>By how much the noise in one line of a spectrum lies below all of the noise: 10 lg(M/2), without a window. The floor of a spectrum is not the SNR.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="recordLength"/> is below 2 points.</exception>
    public static DecibelRatio SpectrumGain(PointCount recordLength) => recordLength.Points >= 2
        ? DecibelRatio.FromSi(10 * Math.Log10(recordLength.Points / 2.0), nameof(recordLength))
        : throw Refuse.OutOfRange(recordLength.SiValue, PointCount.Kind, nameof(recordLength), "at least 2 pts");
}
