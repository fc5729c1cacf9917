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

    /// <summary>Anything.</summary>
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
