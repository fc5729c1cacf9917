using System;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>One line of a spectrum: a sine of one frequency, with amplitude and phase. A harmonic, where the signal is periodic.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class SpectralLine
{
    private readonly double _carrier;

    internal SpectralLine(int number, double hertz, Complex coefficient, double carrier)
    {
        Number = number;
        Frequency = Frequency.FromSi(hertz, "frequency");
        Coefficient = coefficient;
        _carrier = carrier;
    }

    /// <summary>The coefficient of exp(j 2π f t): half of the peak amplitude for f above 0, the value itself at DC; V.</summary>
    internal Complex Coefficient { get; }

    /// <summary>The peak amplitude in volts.</summary>
    internal double PeakVolts => Frequency.SiValue == 0 ? Complex.Abs(Coefficient) : 2 * Complex.Abs(Coefficient);

    /// <summary>The number of the harmonic: 1 is the fundamental, 0 is DC; -1 for a line that is no harmonic.</summary>
    public int Number { get; }

    /// <summary>The frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>The peak amplitude.</summary>
    public PeakVoltage Peak => PeakVoltage.FromSi(PeakVolts, "amplitude");

    /// <summary>The rms amplitude: the peak over √2, or the magnitude itself at DC.</summary>
    public RmsVoltage Rms => RmsVoltage.FromSi(Frequency.SiValue == 0 ? PeakVolts : PeakVolts / Math.Sqrt(2), "amplitude");

    /// <summary>The phase φ of amplitude · cos(2π f t + φ).</summary>
    public Angle Phase => Angle.FromSi(Coefficient.Phase, "phase");

    /// <summary>The level relative to the carrier (the fundamental, or the strongest line of a signal that has none), in dBc; null where this line or the carrier is absent.</summary>
    public DecibelRatio? RelativeToCarrier => PeakVolts > 0 && _carrier > 0 ? DecibelRatio.FromSi(20 * Math.Log10(PeakVolts / _carrier), "level") : (DecibelRatio?)null;

    /// <summary>Frequency and peak amplitude.</summary>
    public override string ToString() => $"{Frequency.InWords(6)}: {Peak.InWords()}";
}
