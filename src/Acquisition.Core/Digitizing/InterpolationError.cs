using System;

namespace Acquisition.Core;

/// <summary>
/// The largest error of a trace drawn between samples, for a sine of amplitude 1 at its worst phase and place (handbook 5.8 to 5.10). For the windowed sinc,
/// and for any mode by its own kernel, ask <see cref="Reconstruction.WorstError"/>.
/// </summary>
public static class InterpolationError
{
    /// <summary>Holding the last sample: up to 2 sin(π f/fs) within an interval.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Ratio Hold(Frequency frequency, SampleRate rate) => Of(2 * Math.Sin(Math.PI * Relative(frequency, rate)));

    /// <summary>Straight lines: exactly 1 - cos(π f/fs).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Ratio Linear(Frequency frequency, SampleRate rate) => Of(OneMinusCos(Math.PI * Relative(frequency, rate)));

    /// <summary>Straight lines, the bound from the second derivative: (π f/fs)²/2.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Ratio LinearBound(Frequency frequency, SampleRate rate)
    {
        double x = Math.PI * Relative(frequency, rate);
        return Of(x * x / 2);
    }

    /// <summary>The cubic through four samples (Lagrange): 1 - (9 cos πr - cos 3πr)/8, half-way between two samples.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Ratio CubicLagrange(Frequency frequency, SampleRate rate)
    {
        // With c = cos x: 9 cos x - cos 3x = 12c - 4c³, and 8 - 12c + 4c³ = 4 (1-c)² (2+c), which does not cancel.
        double x = Math.PI * Relative(frequency, rate), m = OneMinusCos(x);
        return Of(0.5 * m * m * (3 - m));
    }

    /// <summary>The cubic through four samples, the bound from the fourth derivative: (3/128)(2π f/fs)⁴.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Ratio CubicLagrangeBound(Frequency frequency, SampleRate rate)
    {
        double x = 2 * Math.PI * Relative(frequency, rate);
        return Of(3.0 / 128 * x * x * x * x);
    }

    /// <summary>The loss of a held (staircase) output at a frequency, sinc(f/fs): -3.9224 dB at half the rate.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static DecibelRatio HoldDroop(Frequency frequency, SampleRate rate)
    {
        double x = Math.PI * Relative(frequency, rate);
        return DecibelRatio.FromSi(x == 0 ? 0 : 20 * Math.Log10(Math.Sin(x) / x), nameof(frequency));
    }

    /// <summary>f/fs, checked to lie from 0 to one half: beyond it the samples describe another frequency, and there is nothing to interpolate.</summary>
    internal static double Relative(Frequency frequency, SampleRate rate)
    {
        double r = frequency.SiValue / Sampling.RequireRate(rate, nameof(rate));
        return r >= 0 && r <= 0.5
            ? r
            : throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), $"from 0 Hz to the Nyquist frequency {rate.NyquistFrequency}", "above it the samples show an alias (Aliasing.Fold)");
    }

    internal static double OneMinusCos(double x)
    {
        double s = Math.Sin(x / 2);
        return 2 * s * s;
    }

    private static Ratio Of(double value) => Ratio.FromSi(value, "frequency");
}
