using System;
using System.Collections.Generic;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>Something in the path from the source to the front end: a probe, a cable, a terminator, a pad, a filter.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public abstract class ChainElement
{
    private protected ChainElement(string name) => Name = name;

    /// <summary>What it is called.</summary>
    public string Name { get; private protected set; }

    /// <summary>By how much the element divides the voltage on purpose; a chain's response is multiplied by it, so that it refers to the tip.</summary>
    internal virtual double NominalFactor => 1;

    /// <summary>The element as a network, before this front end.</summary>
    internal abstract ChainStage Stage(FrontEnd frontEnd);

    /// <summary>The element with nothing wrong with it; null where that is a piece of wire of no length.</summary>
    internal abstract ChainElement? Ideal { get; }

    /// <summary>What is to be said about the element in front of this front end, and of the resistance that it ends in: that of the front end with the terminators between.</summary>
    internal virtual IEnumerable<Finding> Examine(FrontEnd frontEnd, Resistance load) => Array.Empty<Finding>();

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private protected static string RequireName(string name) => name ?? throw new ArgumentNullException(nameof(name));
}
