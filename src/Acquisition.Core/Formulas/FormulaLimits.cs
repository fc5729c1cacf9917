using System;

namespace Acquisition.Core.Formulas;

/// <summary>How much a text may ask for, so that a hostile one is refused quickly. A host may lower each limit.</summary>
/// <remarks>Immutable. Reading takes time in proportion to the length of the text; a formula has no loops, so evaluating takes at most one step per node.</remarks>
public sealed class FormulaLimits
{
    private FormulaLimits(int length, int nesting, int nodes, int calls)
    {
        Length = length;
        Nesting = nesting;
        Nodes = nodes;
        Calls = calls;
    }

    /// <summary>16 384 characters, 100 levels of nesting, 4096 nodes, 1000 function calls.</summary>
    public static FormulaLimits Default { get; } = new(16_384, 100, 4096, 1000);

    /// <summary>The most characters of one formula.</summary>
    public int Length { get; }

    /// <summary>The most parentheses, calls, signs and choices inside each other.</summary>
    public int Nesting { get; }

    /// <summary>The most numbers, names, operators and calls in one formula.</summary>
    public int Nodes { get; }

    /// <summary>The most function calls in one evaluation.</summary>
    public int Calls { get; }

    /// <summary>These limits with another length.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The limit is below 1 or above the default.</exception>
    public FormulaLimits WithLength(int characters) => new(Checked(characters, Default.Length, nameof(characters)), Nesting, Nodes, Calls);

    /// <summary>These limits with another nesting.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The limit is below 1 or above the default.</exception>
    public FormulaLimits WithNesting(int levels) => new(Length, Checked(levels, Default.Nesting, nameof(levels)), Nodes, Calls);

    /// <summary>These limits with another number of nodes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The limit is below 1 or above the default.</exception>
    public FormulaLimits WithNodes(int nodes) => new(Length, Nesting, Checked(nodes, Default.Nodes, nameof(nodes)), Calls);

    /// <summary>These limits with another number of calls.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The limit is below 0 or above the default.</exception>
    public FormulaLimits WithCalls(int calls) => new(Length, Nesting, Nodes, calls == 0 ? 0 : Checked(calls, Default.Calls, nameof(calls)));

    private static int Checked(int value, int highest, string argument) =>
        value >= 1 && value <= highest ? value : throw new ArgumentOutOfRangeException(argument, FormattableString.Invariant($"{argument} must be from 1 to {highest}; was {value}"));
}
