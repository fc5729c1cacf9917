namespace Acquisition.Core.Planning;

/// <summary>What one element of the set-up costs.</summary>
public sealed class Contribution
{
    internal Contribution(string element, Ratio share, string effect)
    {
        Element = element;
        Share = share;
        Effect = effect;
    }

    /// <summary>The element: a stage of the chain, the sampling, the converter.</summary>
    public string Element { get; }

    /// <summary>How much better the reading would be without it: of the edge's duration, or of the amplitude where the signal has no edge; 0 where it would be no better, as without a ringing lead that makes an edge faster.</summary>
    public Ratio Share { get; }

    /// <summary>What it does, in words.</summary>
    public string Effect { get; }

    /// <summary>Element and effect.</summary>
    public override string ToString() => $"{Element}: {Effect}";
}
