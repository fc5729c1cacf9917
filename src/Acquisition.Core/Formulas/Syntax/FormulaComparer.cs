using System;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Whether two trees say the same, wherever they stand in their texts.</summary>
internal static class FormulaComparer
{
    internal static bool AreSame(FormulaNode left, FormulaNode right)
    {
        while (left is BinaryNode a && right is BinaryNode b)
        {
            if (a.Operator != b.Operator || !AreSame(a.Right, b.Right)) return false;
            left = a.Left;
            right = b.Left;
        }
        return (left, right) switch
        {
            (NumberNode a, NumberNode b) => a.SiValue.Equals(b.SiValue) && a.Quantity == b.Quantity && a.Traits == b.Traits,
            (RatioNode a, RatioNode b) => a.Value.Equals(b.Value),
            (TextNode a, TextNode b) => a.Value == b.Value,
            (TruthNode a, TruthNode b) => a.Value == b.Value,
            (NameNode a, NameNode b) => a.Name == b.Name,
            (UnaryNode a, UnaryNode b) => a.Operator == b.Operator && AreSame(a.Operand, b.Operand),
            (ChoiceNode a, ChoiceNode b) => AreSame(a.Condition, b.Condition) && AreSame(a.WhenTrue, b.WhenTrue) && AreSame(a.WhenFalse, b.WhenFalse),
            (CallNode a, CallNode b) => a.Name == b.Name && HaveSameArguments(a, b),
            (ConversionNode a, ConversionNode b) => a.Unit == b.Unit && AreSame(a.Operand, b.Operand),
            (UncertainNode a, UncertainNode b) => Nullable.Equals(a.CoverageFactor, b.CoverageFactor) && AreSame(a.Value, b.Value) && AreSame(a.HalfWidth, b.HalfWidth),
            _ => false,
        };
    }

    private static bool HaveSameArguments(CallNode left, CallNode right)
    {
        if (left.Arguments.Length != right.Arguments.Length) return false;
        for (int i = 0; i < left.Arguments.Length; i++)
        {
            if (left.Arguments[i].Name != right.Arguments[i].Name || !AreSame(left.Arguments[i].Value, right.Arguments[i].Value)) return false;
        }
        return true;
    }
}
