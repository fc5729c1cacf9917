using System;

namespace Acquisition.Core;

/// <summary>What an unsteady sample clock does to a sine (handbook 6.7): only jitter relative to the signal's own timing counts, and the amplitude does not matter.</summary>
public static class SamplingJitter
{
    /// <summary>The signal-to-noise ratio that jitter leaves, to first order: -20 lg(2π f σ). Good while 2π f σ is well below 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero.</exception>
    public static DecibelRatio SignalToNoise(Frequency frequency, Duration jitter) => DecibelRatio.FromSi(-20 * Math.Log10(Angle(frequency, jitter)), nameof(jitter));

    /// <summary>The same for Gaussian jitter of any size: 10 lg(e^(-x²) / (1 - e^(-x²))), x = 2π f σ. The line itself shrinks by e^(-x²/2).</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero.</exception>
    public static DecibelRatio ExactSignalToNoise(Frequency frequency, Duration jitter)
    {
        double x = Angle(frequency, jitter), square = x * x;
        return DecibelRatio.FromSi(10 * (-square / Math.Log(10) - Math.Log10(-DeadTime.ExpM1(-square))), nameof(jitter));
    }

    /// <summary>The jitter that leaves a signal-to-noise ratio, to first order: 10^(-SNR/20) / (2π f).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is not above 0 Hz.</exception>
    public static Duration JitterFor(DecibelRatio signalToNoise, Frequency frequency) =>
        Duration.FromSi(Math.Pow(10, -signalToNoise.SiValue / 20) / (2 * Math.PI * Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency))), nameof(signalToNoise));

    /// <summary>The jitter that costs an ideal converter of so many bits 3 dB with a full-scale sine: as much noise as its steps make.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is not above 0 Hz.</exception>
    public static Duration JitterFor(BitDepth resolution, Frequency frequency) => JitterFor(Quantization.IdealSignalToNoise(resolution), frequency);

    /// <summary>The noise that jitter makes of a sine: A 2π f σ / √2, to first order.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> or <paramref name="jitter"/> is not above zero.</exception>
    public static RmsVoltage Noise(PeakVoltage amplitude, Frequency frequency, Duration jitter) =>
        RmsVoltage.FromSi(amplitude.SiValue * Angle(frequency, jitter) / Math.Sqrt(2), nameof(amplitude));

    private static double Angle(Frequency frequency, Duration jitter) =>
        2 * Math.PI * Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency)) * Sampling.RequireTime(jitter, nameof(jitter));
}
