using System;

namespace Acquisition.Core;

/// <summary>Independent noises together: their powers add (handbook 6.8).</summary>
public static class NoiseCombination
{
    /// <summary>The rms of independent noises: the root of the sum of their squares.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="noises"/> is null.</exception>
    public static RmsVoltage Of(params RmsVoltage[] noises)
    {
        double sum = 0;
        foreach (RmsVoltage noise in noises ?? throw new ArgumentNullException(nameof(noises)))
            sum += noise.SiValue * noise.SiValue;
        return RmsVoltage.FromSi(Math.Sqrt(sum), nameof(noises));
    }

    /// <summary>The signal-to-noise ratio that several independent causes leave: -10 lg Σ 10^(-SNR/10).</summary>
    /// <exception cref="ArgumentNullException"><paramref name="ratios"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="ratios"/> is empty.</exception>
    public static DecibelRatio OfSignalToNoise(params DecibelRatio[] ratios)
    {
        _ = ratios ?? throw new ArgumentNullException(nameof(ratios));
        if (ratios.Length == 0)
            throw new ArgumentException("ratios must hold at least one signal-to-noise ratio", nameof(ratios));
        double sum = 0;
        foreach (DecibelRatio ratio in ratios)
            sum += Math.Pow(10, -ratio.SiValue / 10);
        return DecibelRatio.FromSi(-10 * Math.Log10(sum), nameof(ratios));
    }

    /// <summary>White noise seen through another noise bandwidth of the same shape: σ √(B2/B1) (handbook 12.1, 12.3).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A bandwidth is not above 0 Hz.</exception>
    public static RmsVoltage InBandwidth(RmsVoltage noise, Frequency bandwidth, Frequency newBandwidth)
    {
        double from = Refuse.UnlessAboveZero(bandwidth.SiValue, Frequency.Kind, nameof(bandwidth)), to = Refuse.UnlessAboveZero(newBandwidth.SiValue, Frequency.Kind, nameof(newBandwidth));
        return RmsVoltage.FromSi(noise.SiValue * Math.Sqrt(to / from), nameof(noise));
    }

    /// <summary>The dynamic range between the rms of a full-scale signal and the noise: 20 lg (handbook 6.10). Spurious-free range is another thing.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above 0 V.</exception>
    public static DecibelRatio DynamicRange(RmsVoltage fullScale, RmsVoltage noise)
    {
        double top = Refuse.UnlessAboveZero(fullScale.SiValue, RmsVoltage.Kind, nameof(fullScale)), floor = Refuse.UnlessAboveZero(noise.SiValue, RmsVoltage.Kind, nameof(noise));
        return DecibelRatio.FromSi(20 * Math.Log10(top / floor), nameof(noise));
    }
}
