using System.Collections.Generic;
using Acquisition.Core.Formulas.Syntax;

namespace Acquisition.Core.Formulas.Worksheets.Checks;

/// <summary>
/// What a truth value asks for, with every <c>not</c> carried down to the comparisons: <c>not (v &gt; 5 V)</c> asks for <c>v &lt;= 5 V</c>, so that each comparison is decided
/// as the demand it is, by the one rule. Names of earlier lines stand for what they were declared as; the same demand is the same object.
/// </summary>
internal abstract class Demand;

/// <summary>Is met or not whatever is measured.</summary>
internal sealed class FixedDemand(bool isMet) : Demand
{
    internal bool IsMet { get; } = isMet;
}

/// <summary>A truth value that is given: as the sheet says, unless the host says it.</summary>
internal sealed class GivenDemand(int line, bool isWanted, Demand own) : Demand
{
    internal int Line { get; } = line;

    internal bool IsWanted { get; } = isWanted;

    internal Demand Own { get; } = own;
}

/// <summary>Every part must be met: the worst of them decides.</summary>
internal sealed class AllDemand(IReadOnlyList<Demand> parts) : Demand
{
    internal IReadOnlyList<Demand> Parts { get; } = parts;
}

/// <summary>One part must be met: the best of them decides.</summary>
internal sealed class AnyDemand(IReadOnlyList<Demand> parts) : Demand
{
    internal IReadOnlyList<Demand> Parts { get; } = parts;
}

/// <summary>Two quantities compared.</summary>
internal sealed class ComparisonDemand(BinaryNode formula, DemandPlace place, Conditions conditions, string text) : Demand
{
    /// <summary>The comparison as it is asked for, after every <c>not</c> before it.</summary>
    internal BinaryNode Formula { get; } = formula;

    /// <summary>The comparison as a reader knows it: that of the magnitude where it is one of its two limits.</summary>
    internal string Text { get; } = text;

    internal Operator Operator => Formula.Operator;

    internal DemandPlace Place { get; } = place;

    /// <summary>What its sides rest on.</summary>
    internal Conditions Conditions { get; } = conditions;

    internal bool IsUpper => Operator is Operator.Less or Operator.LessOrEqual;

    internal bool IsLower => Operator is Operator.Greater or Operator.GreaterOrEqual;

    internal bool IsStrict => Operator is Operator.Less or Operator.Greater;
}

/// <summary>A lower and an upper limit on one quantity: the two-sided tolerance of JCGM 106.</summary>
internal sealed class RangeDemand(ComparisonDemand lower, bool isLowerOnTheLeft, ComparisonDemand upper, bool isUpperOnTheLeft) : Demand
{
    internal ComparisonDemand Lower { get; } = lower;

    /// <summary>Whether the quantity stands on the left of the lower limit.</summary>
    internal bool IsLowerOnTheLeft { get; } = isLowerOnTheLeft;

    internal ComparisonDemand Upper { get; } = upper;

    /// <summary>Whether the quantity stands on the left of the upper limit.</summary>
    internal bool IsUpperOnTheLeft { get; } = isUpperOnTheLeft;
}

/// <summary>A truth value that is no comparison of quantities: of texts, or what a function answers.</summary>
internal sealed class OtherDemand(FormulaNode formula, bool isWanted, DemandPlace place, Conditions conditions) : Demand
{
    internal FormulaNode Formula { get; } = formula;

    internal bool IsWanted { get; } = isWanted;

    internal DemandPlace Place { get; } = place;

    internal Conditions Conditions { get; } = conditions;
}

/// <summary>The conditions that a value rests on: those of its own choices, and those of the lines it uses.</summary>
internal sealed class Conditions
{
    internal List<Choice> Choices { get; } = new();

    internal List<Conditions> Above { get; } = new();

    internal bool IsEmpty => Choices.Count == 0 && Above.Count == 0;
}

/// <summary>A choice that a value rests on: its condition both ways, and what rests on each branch.</summary>
internal sealed class Choice(Demand holds, Demand fails, Conditions whenTrue, Conditions whenFalse, string text)
{
    internal Demand Holds { get; } = holds;

    internal Demand Fails { get; } = fails;

    internal Conditions WhenTrue { get; } = whenTrue;

    internal Conditions WhenFalse { get; } = whenFalse;

    internal string Text { get; } = text;
}

/// <summary>Where the uncertain program computes the sides of a comparison once more, apart from the line it stands in.</summary>
internal sealed class DemandPlace
{
    internal int From;
    internal int To;

    /// <summary>The register of the left side; of the truth value itself where no quantities are compared.</summary>
    internal int Left;
    internal int Right;

    /// <summary>The register of the greater side less the smaller one, as the comparison is written; of left less right for <c>==</c> and <c>!=</c>.</summary>
    internal int Margin;

    /// <summary>Whether it is written as an upper limit on the left side.</summary>
    internal bool IsUpper;

    internal QuantityKind? LeftKind;
    internal QuantityKind? RightKind;
    internal QuantityKind? MarginKind;

    /// <summary>The names it uses.</summary>
    internal IReadOnlyCollection<string> Uses = System.Array.Empty<string>();
}
