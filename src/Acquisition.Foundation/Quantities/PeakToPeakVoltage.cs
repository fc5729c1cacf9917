using System;

namespace Acquisition.Core;

/// <summary>The swing of a signal from its lowest to its highest value.</summary>
/// <remarks>Held in volts, peak to peak, finite and never negative. The default value is 0 Vpp. Immutable and thread-safe.</remarks>
public readonly partial struct PeakToPeakVoltage
{
    private readonly double _value;

    private PeakToPeakVoltage(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.PeakToPeakVoltage;

    internal double SiValue => _value;

    internal static PeakToPeakVoltage FromSi(double value, string argument) =>
        IsInRange(value) ? new PeakToPeakVoltage(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static PeakToPeakVoltage FromResult(double value, string operand) =>
        IsInRange(value) ? new PeakToPeakVoltage(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The peak-to-peak voltage in volts, peak to peak.</summary>
    public double Volts => _value;

    /// <summary>A peak-to-peak voltage given in volts, peak to peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static PeakToPeakVoltage FromVolts(double volts) => FromSi(volts, nameof(volts));

    /// <summary>The peak-to-peak voltage in millivolts, peak to peak.</summary>
    public double Millivolts => _value * 1e3;

    /// <summary>A peak-to-peak voltage given in millivolts, peak to peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static PeakToPeakVoltage FromMillivolts(double millivolts) => FromSi(millivolts / 1e3, nameof(millivolts));

    /// <summary>The peak-to-peak voltage in microvolts, peak to peak.</summary>
    public double Microvolts => _value * 1e6;

    /// <summary>A peak-to-peak voltage given in microvolts, peak to peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static PeakToPeakVoltage FromMicrovolts(double microvolts) => FromSi(microvolts / 1e6, nameof(microvolts));
}
