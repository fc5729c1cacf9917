using System;

namespace Acquisition.Core;

/// <summary>The steps of an ideal converter and the noise they make (handbook 6.1, 6.2; Bennett 1948). The full scale is the converter's range, which may be larger than the screen shows.</summary>
public static class Quantization
{
    /// <summary>The least significant bit: full scale / 2^N.</summary>
    /// <param name="fullScale">The converter's range from the lowest to the highest code.</param>
    /// <param name="resolution">The bits; effective bits give the step of an ideal converter just as good.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fullScale"/> is not above 0 V.</exception>
    public static Voltage LeastSignificantBit(PeakToPeakVoltage fullScale, BitDepth resolution) => Voltage.FromSi(Step(fullScale, resolution), nameof(fullScale));

    /// <summary>The rms quantisation error q/√12: for a signal that covers many codes and does not follow the clock.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fullScale"/> is not above 0 V.</exception>
    public static RmsVoltage Noise(PeakToPeakVoltage fullScale, BitDepth resolution) => RmsVoltage.FromSi(Step(fullScale, resolution) / Math.Sqrt(12), nameof(fullScale));

    /// <summary>The signal-to-noise ratio of an ideal converter with a full-scale sine: 20 lg(2^N √1.5) = 6.0206 N + 1.7609 dB.</summary>
    public static DecibelRatio IdealSignalToNoise(BitDepth resolution) => DecibelRatio.FromSi(EffectiveResolution.DecibelsPerBit * resolution.SiValue + EffectiveResolution.IdealSineOffset, nameof(resolution));

    private static double Step(PeakToPeakVoltage fullScale, BitDepth resolution) =>
        Refuse.UnlessAboveZero(fullScale.SiValue, PeakToPeakVoltage.Kind, nameof(fullScale)) / Math.Pow(2, resolution.SiValue);
}
