namespace Acquisition.Core.Uncertainty;

/// <summary>One thing that is not exactly known. Two values that depend on the same source are correlated by it; identity decides, not equality.</summary>
internal sealed class UncertaintySource
{
    internal UncertaintySource(string name, Quantity estimate, Distribution distribution, string statement)
    {
        Name = name;
        Estimate = estimate;
        Distribution = distribution;
        Statement = statement;
        StandardUncertainty = distribution.StandardUncertainty;
        DegreesOfFreedom = distribution.DegreesOfFreedom;
    }

    internal string Name { get; }

    internal Quantity Estimate { get; }

    internal Distribution Distribution { get; }

    internal string Statement { get; }

    internal double StandardUncertainty { get; }

    internal double DegreesOfFreedom { get; }

    /// <summary>What is to be known about the statement wherever it is used; null where there is nothing to say.</summary>
    internal Finding? Finding { get; init; }

    /// <summary>The set of sources that this one is correlated with, and its place in it; none for an independent source.</summary>
    internal CorrelatedSet? Set { get; private set; }

    internal int Place { get; private set; }

    /// <summary>Called once, while the set is being made and before anybody else sees the source.</summary>
    internal void Join(CorrelatedSet set, int place)
    {
        Set = set;
        Place = place;
    }

    internal double CorrelationWith(UncertaintySource other) =>
        ReferenceEquals(this, other) ? 1 : Set is not null && ReferenceEquals(Set, other.Set) ? Set.Coefficients[Place, other.Place] : 0;
}
