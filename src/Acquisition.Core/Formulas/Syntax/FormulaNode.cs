using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>A part of a formula, with its place in the text.</summary>
internal abstract class FormulaNode(int start, int end)
{
    /// <summary>Where it begins, in UTF-16 units from 0.</summary>
    internal readonly int Start = start;

    /// <summary>Where it ends, exclusive.</summary>
    internal readonly int End = end;

    /// <summary>What its value is; null until it is bound, and where it cannot be.</summary>
    internal ValueKind? Kind;
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
    internal readonly string Source = source;

    internal readonly double SiValue = siValue;

    internal readonly QuantityKind Quantity = quantity;

    internal readonly NumberTraits Traits = traits;

    internal bool Has(NumberTraits trait) => (Traits & trait) != 0;
}

/// <summary>A ratio such as <c>10:1</c>.</summary>
internal sealed class RatioNode(string source, int start, int end, double value) : FormulaNode(start, end)
{
    internal readonly string Source = source;

    internal readonly double Value = value;
}

/// <summary>A text between quotes.</summary>
internal sealed class TextNode(int start, int end, string value) : FormulaNode(start, end)
{
    internal readonly string Value = value;
}

/// <summary>True or false.</summary>
internal sealed class TruthNode(int start, int end, bool value) : FormulaNode(start, end)
{
    internal readonly bool Value = value;
}

/// <summary>The name of an input, of an earlier line of a worksheet, or of a constant.</summary>
internal sealed class NameNode(string source, int start, int end) : FormulaNode(start, end)
{
    private string? _name;

    /// <summary>The name; most are found without ever being cut out of the text.</summary>
    internal string Name => _name ??= source.Substring(Start, End - Start);

    internal bool Is(string name)
    {
        if (name.Length != End - Start) return false;
        for (int i = 0; i < name.Length; i++)
        {
            if (source[Start + i] != name[i]) return false;
        }
        return true;
    }
}

/// <summary>A sign or <c>not</c> before an operand.</summary>
internal sealed class UnaryNode(int start, Operator op, FormulaNode operand) : FormulaNode(start, operand.End)
{
    internal readonly Operator Operator = op;

    internal readonly FormulaNode Operand = operand;
}

/// <summary>An operator between two operands.</summary>
internal sealed class BinaryNode(Operator op, int operatorStart, FormulaNode left, FormulaNode right, bool rightHasCalls) : FormulaNode(left.Start, right.End)
{
    /// <summary>Whether functions are called to the right, so that <c>and</c> and <c>or</c> had better not ask for it in vain.</summary>
    internal readonly bool RightHasCalls = rightHasCalls;

    internal readonly Operator Operator = op;

    internal readonly int OperatorStart = operatorStart;

    internal readonly FormulaNode Left = left;

    internal readonly FormulaNode Right = right;
}

/// <summary><c>if</c> ... <c>then</c> ... <c>else</c>.</summary>
internal sealed class ChoiceNode(int start, FormulaNode condition, FormulaNode whenTrue, FormulaNode whenFalse, bool branchesHaveCalls) : FormulaNode(start, whenFalse.End)
{
    /// <summary>Whether functions are called in a branch, so that only the chosen one may be computed.</summary>
    internal readonly bool BranchesHaveCalls = branchesHaveCalls;

    internal readonly FormulaNode Condition = condition;

    internal readonly FormulaNode WhenTrue = whenTrue;

    internal readonly FormulaNode WhenFalse = whenFalse;
}

/// <summary>One argument of a call, by place or by name.</summary>
internal readonly struct ArgumentNode(string? name, int nameStart, FormulaNode value)
{
    internal readonly string? Name = name;

    internal readonly int NameStart = nameStart;

    internal readonly FormulaNode Value = value;
}

/// <summary>A call of a function.</summary>
internal sealed class CallNode(int start, int end, string name, ArgumentNode[] arguments) : FormulaNode(start, end)
{
    internal readonly string Name = name;

    internal readonly ArgumentNode[] Arguments = arguments;

    /// <summary>The definition that the arguments' kinds have chosen.</summary>
    internal FunctionDefinition? Function;
}

/// <summary><c>in</c>: the same value, written in a unit.</summary>
internal sealed class ConversionNode(string source, FormulaNode operand, int unitStart, int end, QuantityKind unitKind, double localFactor) : FormulaNode(operand.Start, end)
{
    internal readonly FormulaNode Operand = operand;

    internal readonly int UnitStart = unitStart;

    internal readonly QuantityKind UnitKind = unitKind;

    /// <summary>How many SI units one of a unit of the host's own is; 0 for a unit that everyone has.</summary>
    internal readonly double LocalFactor = localFactor;

    internal readonly string Unit = source.Substring(unitStart, end - unitStart);
}

/// <summary><c>a ± b</c>, with a coverage factor where the half-width is an expanded uncertainty.</summary>
internal sealed class UncertainNode(FormulaNode value, FormulaNode halfWidth, int end, double? coverageFactor) : FormulaNode(value.Start, end)
{
    internal readonly FormulaNode Value = value;

    internal readonly FormulaNode HalfWidth = halfWidth;

    internal readonly double? CoverageFactor = coverageFactor;
}
