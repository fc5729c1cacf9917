using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Writes a tree as text that reads back to the same tree, with the parentheses it needs and no others.</summary>
internal static class FormulaWriter
{
    internal static string Write(FormulaNode node)
    {
        var text = new StringBuilder();
        Write(text, node, 0);
        return text.ToString();
    }

    private static void Write(StringBuilder text, FormulaNode node, int loosest)
    {
        bool isWrapped = TightnessOf(node) < loosest;
        if (isWrapped) text.Append('(');
        WriteBare(text, node);
        if (isWrapped) text.Append(')');
    }

    private static int TightnessOf(FormulaNode node) => node switch
    {
        ConversionNode => Tightness.Conversion,
        UncertainNode => Tightness.Uncertainty,
        // Its last branch takes in whatever follows.
        ChoiceNode => 0,
        UnaryNode unary => Tightness.Of(unary.Operator),
        BinaryNode binary => Tightness.Of(binary.Operator),
        NumberNode number when number.Has(NumberTraits.IsNegative) => Tightness.Sign,
        _ => Tightness.Operand,
    };

    private static void WriteBare(StringBuilder text, FormulaNode node)
    {
        switch (node)
        {
            case NumberNode number: text.Append(number.Source, number.Start, number.End - number.Start); break;
            case RatioNode ratio: text.Append(ratio.Source, ratio.Start, ratio.End - ratio.Start); break;
            case TextNode quoted: text.Append('"').Append(quoted.Value.Replace("\"", "\"\"")).Append('"'); break;
            case TruthNode truth: text.Append(truth.Value ? "true" : "false"); break;
            case NameNode name: text.Append(name.Name); break;
            case UnaryNode unary: WriteUnary(text, unary); break;
            case BinaryNode binary: WriteBinary(text, binary); break;
            case ChoiceNode choice:
                text.Append("if ");
                Write(text, choice.Condition, 0);
                text.Append(" then ");
                Write(text, choice.WhenTrue, 0);
                text.Append(" else ");
                Write(text, choice.WhenFalse, 0);
                break;
            case CallNode call: WriteCall(text, call); break;
            case ConversionNode conversion:
                Write(text, conversion.Operand, Tightness.Conversion);
                text.Append(" in ").Append(conversion.Unit);
                break;
            case UncertainNode uncertain:
                Write(text, uncertain.Value, Tightness.Uncertainty);
                text.Append(" ± ");
                Write(text, uncertain.HalfWidth, Tightness.Product);
                if (uncertain.CoverageFactor is { } factor) text.Append(" (k=").Append(factor.ToString("R", CultureInfo.InvariantCulture)).Append(')');
                break;
        }
    }

    private static void WriteUnary(StringBuilder text, UnaryNode node)
    {
        text.Append(node.Operator == Operator.Not ? "not " : "-");
        // A minus directly before a number would become part of it.
        bool isNumber = node.Operator == Operator.Negate && node.Operand is NumberNode number && !number.Has(NumberTraits.IsNegative);
        Write(text, node.Operand, isNumber ? Tightness.Operand + 1 : Tightness.Of(node.Operator));
    }

    private static void WriteBinary(StringBuilder text, BinaryNode node)
    {
        var spine = new Stack<BinaryNode>();
        FormulaNode left = node;
        int open = 0;
        while (left is BinaryNode inner)
        {
            if (spine.Count > 0 && TightnessOf(inner) < LeftLoosest(spine.Peek()))
            {
                text.Append('(');
                open++;
            }
            spine.Push(inner);
            left = inner.Left;
        }
        Write(text, left, LeftLoosest(spine.Peek()));
        while (spine.Count > 0)
        {
            BinaryNode next = spine.Pop();
            text.Append(' ').Append(Tightness.Spelling(next.Operator)).Append(' ');
            int tightness = Tightness.Of(next.Operator);
            Write(text, next.Right, next.Operator == Operator.Power ? Tightness.Sign : tightness + 1);
            if (open > 0 && spine.Count > 0 && tightness < LeftLoosest(spine.Peek()))
            {
                text.Append(')');
                open--;
            }
        }
    }

    /// <summary>How loose a left operand may be without parentheses: powers lean to the right, comparisons do not lean.</summary>
    private static int LeftLoosest(BinaryNode node)
    {
        int tightness = Tightness.Of(node.Operator);
        return node.Operator == Operator.Power || tightness == Tightness.Comparison ? tightness + 1 : tightness;
    }

    private static void WriteCall(StringBuilder text, CallNode node)
    {
        text.Append(node.Name).Append('(');
        for (int i = 0; i < node.Arguments.Length; i++)
        {
            if (i > 0) text.Append(", ");
            if (node.Arguments[i].Name is { } name) text.Append(name).Append(": ");
            Write(text, node.Arguments[i].Value, 0);
        }
        text.Append(')');
    }
}
