using System;
using System.Numerics;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>
/// What the measured node looks like from the probe: its Thevenin impedance. The voltage that a chain's response refers to is the one the node has while
/// nothing is connected to it.
/// </summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class SourceImpedance
{
    private SourceImpedance(Resistance resistance, Capacitance capacitance, Resistance? statedInto)
    {
        Resistance = resistance;
        Capacitance = capacitance;
        StatedInto = statedInto;
    }

    /// <summary>An ideal voltage: nothing loads it.</summary>
    public static SourceImpedance None { get; } = new(default, default, null);

    /// <summary>A resistance, such as 50 Ω of a generator, or 25 Ω on a line that is terminated at both ends.</summary>
    public static SourceImpedance Resistive(Resistance resistance) => new(resistance, default, null);

    /// <summary>A resistance with the node's own capacitance beside it. The unloaded voltage already contains what that capacitance does.</summary>
    public static SourceImpedance ResistiveCapacitive(Resistance resistance, Capacitance capacitance) => new(resistance, capacitance, null);

    /// <summary>The resistance; 0 Ω for an ideal source.</summary>
    public Resistance Resistance { get; }

    /// <summary>The capacitance beside it; 0 F where there is none.</summary>
    public Capacitance Capacitance { get; }

    /// <summary>The load into which the amplitude is stated, as on a generator that shows what 50 Ω get; null where the open-circuit voltage is meant.</summary>
    public Resistance? StatedInto { get; }

    /// <summary>Whether nothing loads it.</summary>
    public bool IsIdeal => Resistance.SiValue == 0;

    /// <summary>The same source, its amplitude stated as what a load gets: a generator of 50 Ω set to 1 V into 50 Ω has 2 V open.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="load"/> is 0 Ω.</exception>
    public SourceImpedance WithAmplitudeStatedInto(Resistance load)
    {
        Refuse.UnlessAboveZero(load.SiValue, Resistance.Kind, nameof(load));
        return new SourceImpedance(Resistance, Capacitance, load);
    }

    /// <summary>The complex impedance at a frequency, in ohms: real and imaginary part.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public Complex OhmsAt(Frequency frequency) => Impedance.OfParallel(Resistance.SiValue, Capacitance.SiValue, frequency);

    /// <summary>What to multiply the open-circuit response by.</summary>
    internal double Scale => StatedInto is { } load ? (Resistance.SiValue + load.SiValue) / load.SiValue : 1;

    internal LumpedBranch? ToBranch() => IsIdeal ? null : LumpedBranch.SeriesParallel(Resistance.SiValue, Capacitance.SiValue);

    /// <summary>The impedance in words.</summary>
    public override string ToString() =>
        IsIdeal ? "ideal source" : "source " + Resistance + (Capacitance.SiValue > 0 ? " beside " + Capacitance : "") + (StatedInto is { } load ? ", stated into " + load : "");
}
