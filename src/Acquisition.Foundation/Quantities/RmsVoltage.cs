using System;

namespace Acquisition.Core;

/// <summary>The root-mean-square voltage of a signal or of noise.</summary>
/// <remarks>Held in volts, rms, finite and never negative. The default value is 0 Vrms. Immutable and thread-safe.</remarks>
public readonly partial struct RmsVoltage
{
    private readonly double _value;

    private RmsVoltage(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.RmsVoltage;

    internal double SiValue => _value;

    internal static RmsVoltage FromSi(double value, string argument) =>
        IsInRange(value) ? new RmsVoltage(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static RmsVoltage FromResult(double value, string operand) =>
        IsInRange(value) ? new RmsVoltage(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The rms voltage in volts, rms.</summary>
    public double Volts => _value;

    /// <summary>A rms voltage given in volts, rms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static RmsVoltage FromVolts(double volts) => FromSi(volts, nameof(volts));

    /// <summary>The rms voltage in millivolts, rms.</summary>
    public double Millivolts => _value * 1e3;

    /// <summary>A rms voltage given in millivolts, rms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static RmsVoltage FromMillivolts(double millivolts) => FromSi(millivolts / 1e3, nameof(millivolts));

    /// <summary>The rms voltage in microvolts, rms.</summary>
    public double Microvolts => _value * 1e6;

    /// <summary>A rms voltage given in microvolts, rms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static RmsVoltage FromMicrovolts(double microvolts) => FromSi(microvolts / 1e6, nameof(microvolts));

    /// <summary>The rms voltage in nanovolts, rms.</summary>
    public double Nanovolts => _value * 1e9;

    /// <summary>A rms voltage given in nanovolts, rms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static RmsVoltage FromNanovolts(double nanovolts) => FromSi(nanovolts / 1e9, nameof(nanovolts));

    /// <summary>The mean power of this voltage in a resistance: V² / R.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public Power PowerInto(Resistance resistance) => Power.FromSi(_value * _value / resistance.SiValue, nameof(resistance));

    /// <summary>This voltage as a level re 1 V (dBV): 20 lg (handbook 1.3).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is 0 V: its logarithm does not exist.</exception>
    public VoltageLevel ToLevel() => VoltageLevel.FromSi(20 * Math.Log10(_value), "voltage");

    /// <summary>This voltage across a resistance as a level re 1 mW (dBm) (handbook 1.3).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The voltage or the resistance is 0.</exception>
    public PowerLevel ToPowerLevel(Resistance resistance) => PowerInto(resistance).ToLevel();
}
