namespace Acquisition.Core;

/// <summary>What one part of a chain does to a result, seen two ways: by taking it away, and by adding it in order.</summary>
/// <typeparam name="T">The quantity of the result.</typeparam>
/// <remarks>
/// Parts interact: a source alone loses nothing and a probe alone loses nothing, both together do. So taken away one by one they do not add up to the whole,
/// and added in order what two of them cause together goes to the later one. Both are stated; neither is "the" share. Immutable.
/// </remarks>
public sealed class ChainContribution<T>
    where T : struct, IQuantity
{
    internal ChainContribution(string part, T without, T byRemoval, T inOrder)
    {
        Part = part;
        Without = without;
        ByRemoval = byRemoval;
        InOrder = inOrder;
    }

    /// <summary>The part: source, an element, or the front end.</summary>
    public string Part { get; }

    /// <summary>The result if this part were ideal and the others stayed as they are.</summary>
    public T Without { get; }

    /// <summary>By how much the part being ideal would change the result.</summary>
    public T ByRemoval { get; }

    /// <summary>By how much the result changes when this part becomes real after all the parts before it, from the source on, while those after it are still ideal. These add up to the whole.</summary>
    public T InOrder { get; }

    /// <summary>Part and both figures.</summary>
    public override string ToString() => $"{Part}: {ByRemoval.InWords()} by removal, {InOrder.InWords()} in order";
}
