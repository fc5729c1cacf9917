using System;

namespace Acquisition.Core;

/// <summary>The amplitude of a signal from its mean to its peak.</summary>
/// <remarks>Held in volts, peak, finite and never negative. The default value is 0 Vpk. Immutable and thread-safe.</remarks>
public readonly partial struct PeakVoltage
{
    private readonly double _value;

    private PeakVoltage(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.PeakVoltage;

    internal double SiValue => _value;

    internal static PeakVoltage FromSi(double value, string argument) =>
        IsInRange(value) ? new PeakVoltage(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static PeakVoltage FromResult(double value, string operand) =>
        IsInRange(value) ? new PeakVoltage(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The peak voltage in volts, peak.</summary>
    public double Volts => _value;

    /// <summary>A peak voltage given in volts, peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static PeakVoltage FromVolts(double volts) => FromSi(volts, nameof(volts));

    /// <summary>The peak voltage in millivolts, peak.</summary>
    public double Millivolts => _value * 1e3;

    /// <summary>A peak voltage given in millivolts, peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static PeakVoltage FromMillivolts(double millivolts) => FromSi(millivolts / 1e3, nameof(millivolts));

    /// <summary>The peak voltage in microvolts, peak.</summary>
    public double Microvolts => _value * 1e6;

    /// <summary>A peak voltage given in microvolts, peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static PeakVoltage FromMicrovolts(double microvolts) => FromSi(microvolts / 1e6, nameof(microvolts));
}
