using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>A result of a chain taken apart by its parts.</summary>
/// <typeparam name="T">The quantity of the result.</typeparam>
/// <remarks>Immutable.</remarks>
public sealed class ChainBreakdown<T>
    where T : struct, IQuantity
{
    internal ChainBreakdown(string name, T total, IReadOnlyList<ChainContribution<T>> contributions, RuleOfThumb<T> rule, ChainContribution<T>? weakest, IReadOnlyList<Finding> findings)
    {
        Name = name;
        Total = total;
        Contributions = contributions.Frozen();
        PartsOnTheirOwn = rule;
        WeakestLink = weakest;
        Findings = findings.Frozen();
    }

    /// <summary>What the result is.</summary>
    public string Name { get; }

    /// <summary>The result for the whole chain.</summary>
    public T Total { get; }

    /// <summary>Each part's, from the source to the front end.</summary>
    public IReadOnlyList<ChainContribution<T>> Contributions { get; }

    /// <summary>What the usual rule makes of the parts, each measured on its own at this source: a sum of decibels, a root sum of squares; and how far that is off.</summary>
    public RuleOfThumb<T> PartsOnTheirOwn { get; }

    /// <summary>The part whose being ideal would improve the result most; null where none would by a thousandth.</summary>
    public ChainContribution<T>? WeakestLink { get; }

    /// <summary>What to know: <c>parts-do-not-add</c>.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Name, total and weakest link.</summary>
    public override string ToString() => $"{Name}: {Total.InWords()}" + (WeakestLink is null ? "" : $", most by {WeakestLink.Part}");
}
