using System;

namespace Acquisition.Core;

/// <summary>
/// The smallest standard uncertainties that any unbiased estimate of a sine in white noise can have: Cramer-Rao bounds (Rife and Boorstyn 1974; Kay 1993;
/// handbook 9.8).
/// </summary>
/// <remarks>For amplitude, phase and frequency all unknown, many samples, a frequency well away from DC and Nyquist, and a signal above the threshold. Immutable.</remarks>
public sealed class CramerRaoBound
{
    private CramerRaoBound(double amplitude, double frequency, double phaseAtStart, double phaseAtCentre)
    {
        Amplitude = PeakVoltage.FromSi(amplitude, nameof(amplitude));
        Frequency = Frequency.FromSi(frequency, nameof(frequency));
        PhaseAtFirstSample = Angle.FromSi(phaseAtStart, "phase");
        PhaseAtCenter = Angle.FromSi(phaseAtCentre, "phase");
    }

    /// <summary>Of the amplitude: sqrt(2/N) s.</summary>
    public PeakVoltage Amplitude { get; }

    /// <summary>Of the frequency: sqrt(12/(eta N (N^2 - 1))) / (2 pi Ts), eta the ratio of signal to noise power.</summary>
    public Frequency Frequency { get; }

    /// <summary>Of the phase at the first sample: sqrt(2 (2N - 1)/(eta N (N + 1))).</summary>
    public Angle PhaseAtFirstSample { get; }

    /// <summary>Of the phase at the centre of the record, or anywhere when the frequency is known: sqrt(1/(eta N)).</summary>
    public Angle PhaseAtCenter { get; }

    /// <summary>The bounds for a sine of known amplitude in white noise.</summary>
    /// <param name="amplitude">Peak amplitude of the sine, above 0.</param>
    /// <param name="noise">Rms noise, above 0.</param>
    /// <param name="points">Samples in the record, at least 2.</param>
    /// <param name="rate">Sample rate, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not in its range.</exception>
    public static CramerRaoBound OfSine(PeakVoltage amplitude, RmsVoltage noise, PointCount points, SampleRate rate)
    {
        double a = Refuse.UnlessAboveZero(amplitude.SiValue, PeakVoltage.Kind, nameof(amplitude));
        double s = Refuse.UnlessAboveZero(noise.SiValue, RmsVoltage.Kind, nameof(noise));
        double fs = Refuse.UnlessAboveZero(rate.SiValue, SampleRate.Kind, nameof(rate));
        double n = points.Points >= 2 ? points.Points : throw Refuse.OutOfRange(points.Points, PointCount.Kind, nameof(points), "at least 2 pts");
        double eta = a * a / (2 * s * s);
        return new CramerRaoBound(
            s * Math.Sqrt(2 / n),
            Math.Sqrt(12 / (eta * n * (n * n - 1))) * fs / (2 * Math.PI),
            Math.Sqrt(2 * (2 * n - 1) / (eta * n * (n + 1))),
            Math.Sqrt(1 / (eta * n)));
    }

    /// <summary>The bounds in one line.</summary>
    public override string ToString() => $"at best u(A) = {Amplitude.InWords(3)}, u(f) = {Frequency.InWords(3)}, u(phase) = {PhaseAtCenter.InWords(3)} at the centre";
}
