using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>A part of a formula, with its place in the text.</summary>
internal abstract class FormulaNode(int start, int end)
{
    /// <summary>Where it begins, in UTF-16 units from 0.</summary>
    internal int Start { get; } = start;

    /// <summary>Where it ends, exclusive.</summary>
    internal int End { get; } = end;

    /// <summary>What its value is; null until it is bound, and where it cannot be.</summary>
    internal ValueKind? Kind { get; set; }
}

/// <summary>A place where a mistake was reported already, so that what contains it is not reported again.</summary>
internal sealed class MissingNode(int start, int end) : FormulaNode(start, end);

/// <summary>What else is known of a number in a formula.</summary>
[System.Flags]
internal enum NumberTraits
{
    None = 0,

    /// <summary>A unit is written with it.</summary>
    HasUnit = 1,

    /// <summary>A minus sign belongs to it.</summary>
    IsNegative = 2,

    /// <summary>It is written in %, ppm or ppb.</summary>
    IsPercentage = 4,

    /// <summary>It is written in kelvins, which can be a temperature or a difference of two.</summary>
    CanBeDifference = 8,
}

/// <summary>A number with or without a unit, or a bare unit, which stands for one of it.</summary>
internal sealed class NumberNode(string source, int start, int end, double siValue, QuantityKind quantity, NumberTraits traits) : FormulaNode(start, end)
{
    internal string Source { get; } = source;

    internal double SiValue { get; } = siValue;

    internal QuantityKind Quantity { get; } = quantity;

    internal NumberTraits Traits { get; } = traits;

    internal bool Has(NumberTraits trait) => (Traits & trait) != 0;
}

/// <summary>A ratio such as <c>10:1</c>.</summary>
internal sealed class RatioNode(string source, int start, int end, double value) : FormulaNode(start, end)
{
    internal string Source { get; } = source;

    internal double Value { get; } = value;
}

/// <summary>A text between quotes.</summary>
internal sealed class TextNode(int start, int end, string value) : FormulaNode(start, end)
{
    internal string Value { get; } = value;
}

/// <summary>True or false.</summary>
internal sealed class TruthNode(int start, int end, bool value) : FormulaNode(start, end)
{
    internal bool Value { get; } = value;
}

/// <summary>The name of an input, of an earlier line of a worksheet, or of a constant.</summary>
internal sealed class NameNode(int start, int end, string name) : FormulaNode(start, end)
{
    internal string Name { get; } = name;
}

/// <summary>A sign or <c>not</c> before an operand.</summary>
internal sealed class UnaryNode(int start, Operator op, FormulaNode operand) : FormulaNode(start, operand.End)
{
    internal Operator Operator { get; } = op;

    internal FormulaNode Operand { get; } = operand;
}

/// <summary>An operator between two operands.</summary>
internal sealed class BinaryNode(Operator op, int operatorStart, FormulaNode left, FormulaNode right, bool rightHasCalls) : FormulaNode(left.Start, right.End)
{
    /// <summary>Whether functions are called to the right, so that <c>and</c> and <c>or</c> had better not ask for it in vain.</summary>
    internal bool RightHasCalls { get; } = rightHasCalls;

    internal Operator Operator { get; } = op;

    internal int OperatorStart { get; } = operatorStart;

    internal FormulaNode Left { get; } = left;

    internal FormulaNode Right { get; } = right;
}

/// <summary><c>if</c> ... <c>then</c> ... <c>else</c>.</summary>
internal sealed class ChoiceNode(int start, FormulaNode condition, FormulaNode whenTrue, FormulaNode whenFalse, bool branchesHaveCalls) : FormulaNode(start, whenFalse.End)
{
    /// <summary>Whether functions are called in a branch, so that only the chosen one may be computed.</summary>
    internal bool BranchesHaveCalls { get; } = branchesHaveCalls;

    internal FormulaNode Condition { get; } = condition;

    internal FormulaNode WhenTrue { get; } = whenTrue;

    internal FormulaNode WhenFalse { get; } = whenFalse;
}

/// <summary>One argument of a call, by place or by name.</summary>
internal readonly struct ArgumentNode(string? name, int nameStart, FormulaNode value)
{
    internal string? Name { get; } = name;

    internal int NameStart { get; } = nameStart;

    internal FormulaNode Value { get; } = value;
}

/// <summary>A call of a function.</summary>
internal sealed class CallNode(int start, int end, string name, IReadOnlyList<ArgumentNode> arguments) : FormulaNode(start, end)
{
    internal string Name { get; } = name;

    internal IReadOnlyList<ArgumentNode> Arguments { get; } = arguments;

    /// <summary>The definition that the arguments' kinds have chosen.</summary>
    internal FunctionDefinition? Function { get; set; }
}

/// <summary><c>in</c>: the same value, written in a unit.</summary>
internal sealed class ConversionNode(string source, FormulaNode operand, int unitStart, int end, QuantityKind unitKind, double localFactor) : FormulaNode(operand.Start, end)
{
    internal FormulaNode Operand { get; } = operand;

    internal int UnitStart { get; } = unitStart;

    internal QuantityKind UnitKind { get; } = unitKind;

    /// <summary>How many SI units one of a unit of the host's own is; 0 for a unit that everyone has.</summary>
    internal double LocalFactor { get; } = localFactor;

    internal string Unit { get; } = source.Substring(unitStart, end - unitStart);
}

/// <summary><c>a ± b</c>, with a coverage factor where the half-width is an expanded uncertainty.</summary>
internal sealed class UncertainNode(FormulaNode value, FormulaNode halfWidth, int end, double? coverageFactor) : FormulaNode(value.Start, end)
{
    internal FormulaNode Value { get; } = value;

    internal FormulaNode HalfWidth { get; } = halfWidth;

    internal double? CoverageFactor { get; } = coverageFactor;
}
