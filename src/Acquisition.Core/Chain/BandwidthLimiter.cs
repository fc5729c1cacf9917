using System;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>A filter in the line, or an amplifier that limits the band: it shows its impedance at both ends whatever happens inside, and has unity gain between lines of it.</summary>
/// <remarks>Immutable and thread-safe. A filter that reflects what it stops is a network of its own; this one absorbs it. The bandwidth limit of the instrument belongs to <see cref="FrontEnd"/>.</remarks>
public sealed class BandwidthLimiter : ChainElement
{
    /// <summary>A limiter.</summary>
    /// <param name="response">From matched input to matched output.</param>
    /// <param name="impedance">The impedance at both ends.</param>
    /// <exception cref="ArgumentNullException"><paramref name="response"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="impedance"/> is 0 Ω.</exception>
    public BandwidthLimiter(Response response, Resistance impedance)
        : base("limiter")
    {
        Response = response ?? throw new ArgumentNullException(nameof(response));
        Refuse.UnlessAboveZero(impedance.SiValue, Resistance.Kind, nameof(impedance));
        Impedance = impedance;
    }

    /// <summary>From matched input to matched output.</summary>
    public Response Response { get; }

    /// <summary>The impedance at both ends.</summary>
    public Resistance Impedance { get; }

    /// <summary>The same with a name.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public BandwidthLimiter WithName(string name)
    {
        var copy = (BandwidthLimiter)MemberwiseClone();
        copy.Name = RequireName(name);
        return copy;
    }

    internal override ChainElement Ideal => new BandwidthLimiter(Core.Response.Cascade(), Impedance) { Name = "ideal " + Name };

    // Twice the voltage before it behind its impedance: what a matched load gets is what the line brought.
    internal override ChainStage Stage(FrontEnd frontEnd) => new(LumpedBranch.Shunt(Impedance.SiValue))
    {
        Own = Response,
        IsBuffer = true,
        BufferGain = 2,
        OutputOhms = Impedance.SiValue,
    };
}
