using System;

namespace Acquisition.Core;

/// <summary>A chain that has no front end yet: each call adds what comes next, <see cref="Into"/> ends it.</summary>
/// <remarks>Immutable: a beginning can be shared by several chains.</remarks>
public sealed class UnterminatedChain
{
    private readonly SourceImpedance _source;
    private readonly ChainElement[] _elements;

    internal UnterminatedChain(SourceImpedance source, ChainElement[] elements)
    {
        _source = source;
        _elements = elements;
    }

    /// <summary>A probe.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="probe"/> is null.</exception>
    public UnterminatedChain Probe(Probe probe) => Through(probe);

    /// <summary>A cable.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="cable"/> is null.</exception>
    public UnterminatedChain Cable(Cable cable) => Through(cable);

    /// <summary>An attenuator pad.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="pad"/> is null.</exception>
    public UnterminatedChain Pad(AttenuatorPad pad) => Through(pad);

    /// <summary>A feed-through terminator.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public UnterminatedChain FeedThrough(Resistance resistance) => Through(new FeedThroughTerminator(resistance));

    /// <summary>A filter in the line.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="limiter"/> is null.</exception>
    public UnterminatedChain Limiter(BandwidthLimiter limiter) => Through(limiter);

    /// <summary>Something else on the node reached so far, such as a second probe.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="load"/> is null.</exception>
    public UnterminatedChain Load(NodeLoad load) => Through(load);

    /// <summary>Any element.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="element"/> is null.</exception>
    public UnterminatedChain Through(ChainElement element)
    {
        _ = element ?? throw new ArgumentNullException(nameof(element));
        var elements = new ChainElement[_elements.Length + 1];
        _elements.CopyTo(elements, 0);
        elements[_elements.Length] = element;
        return new UnterminatedChain(_source, elements);
    }

    /// <summary>The front end, which completes the chain.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="frontEnd"/> is null.</exception>
    public MeasurementChain Into(FrontEnd frontEnd) => new(_source, _elements, frontEnd ?? throw new ArgumentNullException(nameof(frontEnd)));
}
