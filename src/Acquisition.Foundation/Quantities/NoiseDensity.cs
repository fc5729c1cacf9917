using System;

namespace Acquisition.Core;

/// <summary>The spectral density of a noise voltage, one-sided.</summary>
/// <remarks>Held in volts per root hertz, finite and never negative. The default value is 0 V/√Hz. Immutable and thread-safe.</remarks>
public readonly partial struct NoiseDensity
{
    private readonly double _value;

    private NoiseDensity(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.NoiseDensity;

    internal double SiValue => _value;

    internal static NoiseDensity FromSi(double value, string argument) =>
        IsInRange(value) ? new NoiseDensity(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static NoiseDensity FromResult(double value, string operand) =>
        IsInRange(value) ? new NoiseDensity(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The noise density in volts per root hertz.</summary>
    public double VoltsPerRootHertz => _value;

    /// <summary>A noise density given in volts per root hertz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static NoiseDensity FromVoltsPerRootHertz(double voltsPerRootHertz) => FromSi(voltsPerRootHertz, nameof(voltsPerRootHertz));

    /// <summary>The noise density in nanovolts per root hertz.</summary>
    public double NanovoltsPerRootHertz => _value * 1e9;

    /// <summary>A noise density given in nanovolts per root hertz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static NoiseDensity FromNanovoltsPerRootHertz(double nanovoltsPerRootHertz) => FromSi(nanovoltsPerRootHertz / 1e9, nameof(nanovoltsPerRootHertz));

    /// <summary>The rms noise in a noise bandwidth, for white noise: density times the square root of the bandwidth (handbook 6.5, 6.6).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="noiseBandwidth"/> is negative.</exception>
    public RmsVoltage Over(Frequency noiseBandwidth) => RmsVoltage.FromSi(_value * Math.Sqrt(noiseBandwidth.SiValue), nameof(noiseBandwidth));
}
