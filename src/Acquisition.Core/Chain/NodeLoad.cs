using System;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>Something else on the same node: a second probe, a stray capacitance. It loads the source and is not looked at (handbook 10.4).</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class NodeLoad : ChainElement
{
    /// <summary>A load of resistance beside capacitance.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public NodeLoad(Resistance resistance, Capacitance capacitance)
        : base($"load {resistance} beside {capacitance}")
    {
        Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance));
        Resistance = resistance;
        Capacitance = capacitance;
    }

    /// <summary>The resistance.</summary>
    public Resistance Resistance { get; }

    /// <summary>The capacitance beside it.</summary>
    public Capacitance Capacitance { get; }

    internal override ChainElement? Ideal => null;

    internal override ChainStage Stage(FrontEnd frontEnd) => new(LumpedBranch.Shunt(Resistance.SiValue, Capacitance.SiValue));
}
