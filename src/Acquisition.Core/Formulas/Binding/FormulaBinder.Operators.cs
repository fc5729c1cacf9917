using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>Operators between two operands, and uncertain values.</summary>
internal sealed partial class FormulaBinder
{
    /// <summary>A sum of that many terms is walked by calls; a longer one leans to the left too deeply for that.</summary>
    private const int ShortSpine = 32;

    private Operand Binary(BinaryNode node)
    {
        int spine = 0;
        for (FormulaNode left = node.Left; left is BinaryNode inner && spine < ShortSpine; left = inner.Left) spine++;
        if (spine == ShortSpine) return LongBinary(node);
        var mark = _program.Mark;
        Operand first = Bind(node.Left);
        if (IsLazy(node)) return Lazy(node, first, mark);
        Operand second = Bind(node.Right);
        return first.Kind is null || second.Kind is null ? Operand.Unknown : Combine(node, first, second, mark);
    }

    /// <summary>Walks the left spine in a loop, so that the length of a sum does not become depth.</summary>
    private Operand LongBinary(BinaryNode node)
    {
        var spine = new Stack<BinaryNode>();
        FormulaNode leftmost = node;
        while (leftmost is BinaryNode inner)
        {
            spine.Push(inner);
            leftmost = inner.Left;
        }
        var mark = _program.Mark;
        Operand left = Bind(leftmost);
        while (spine.Count > 0)
        {
            BinaryNode next = spine.Pop();
            if (IsLazy(next))
            {
                left = Lazy(next, left, mark);
            }
            else
            {
                Operand right = Bind(next.Right);
                left = left.Kind is null || right.Kind is null ? Operand.Unknown : Combine(next, left, right, mark);
            }
            next.Kind = left.Kind;
        }
        return left;
    }

    private static bool IsLazy(BinaryNode node) => node.RightHasCalls && node.Operator is Operator.And or Operator.Or;

    /// <summary><c>and</c> and <c>or</c> whose right side calls functions: it is computed only where it decides.</summary>
    private Operand Lazy(BinaryNode node, Operand left, (int Numbers, int Objects) mark)
    {
        bool isTruth = left.Kind is { IsTruth: true };
        if (left.Kind is not null && !isTruth) Refuse(node.Left, left, "a truth value before '" + Tightness.Spelling(node.Operator) + "'");
        int target = Settle(node.Left, isTruth ? left : Operand.Unknown, true, mark);
        int test = target;
        if (node.Operator == Operator.Or)
        {
            test = _program.Number();
            _program.Add(Operation.Not, node.Left, test, target, target);
        }
        int skip = _program.Add(Operation.JumpUnless, node.Left, 0, test);
        _program.Release(mark);
        Operand right = Bind(node.Right);
        if (right.Kind is null || !isTruth) return Operand.Unknown;
        if (!right.Kind.IsTruth) return Refuse(node.Right, right, "a truth value after '" + Tightness.Spelling(node.Operator) + "'");
        Settle(node.Right, right, true, mark);
        _program.Lead(skip, Operation.JumpUnless, target, _program.Length, _program.Length);
        return Operand.In(target, ValueKind.Truth);
    }

    private Operand Combine(BinaryNode node, in Operand left, in Operand right, (int Numbers, int Objects) mark)
    {
        if (left.Kind!.Quantity is not { } leftKind || right.Kind!.Quantity is not { } rightKind) return CombineOthers(node, left, right, mark);
        switch (node.Operator)
        {
            case Operator.Add or Operator.Subtract:
                AgreeOnKelvins(left, right, node.Operator, ref leftKind, ref rightKind);
                return Apply(node, node.Operator == Operator.Add ? SumRules.Add(leftKind, rightKind) : SumRules.Subtract(leftKind, rightKind), left, right, mark, leftKind);
            case Operator.Multiply:
                return Apply(node, ProductRules.Multiply(leftKind, rightKind), left, right, mark, null);
            case Operator.Divide:
                return Apply(node, ProductRules.Divide(leftKind, rightKind), left, right, mark, null);
            case Operator.Power:
                return Power(node, left, right, leftKind, rightKind, mark);
            case Operator.And or Operator.Or:
                return CombineOthers(node, left, right, mark);
            default:
                return Comparison(node, left, right, leftKind, rightKind, mark);
        }
    }

    /// <summary>Operators on truth values and texts, and what is no operand of any.</summary>
    private Operand CombineOthers(BinaryNode node, in Operand left, in Operand right, (int Numbers, int Objects) mark)
    {
        switch (node.Operator)
        {
            case Operator.And or Operator.Or:
                if (!left.Kind!.IsTruth) return Refuse(node.Left, left, "a truth value before '" + Tightness.Spelling(node.Operator) + "'");
                if (!right.Kind!.IsTruth) return Refuse(node.Right, right, "a truth value after '" + Tightness.Spelling(node.Operator) + "'");
                return Emit(node.Operator == Operator.And ? Operation.And : Operation.Or, node, ValueKind.Truth, mark, left, right);
            case Operator.Equal or Operator.NotEqual when left.Kind!.IsText && right.Kind!.IsText:
                return TextComparison(node, left, right, mark);
            case Operator.Equal or Operator.NotEqual when left.Kind!.IsTruth && right.Kind!.IsTruth:
                return Emit(node.Operator == Operator.Equal ? Operation.Equal : Operation.NotEqual, node, ValueKind.Truth, mark, left, right);
        }
        return left.Kind!.Quantity is { } leftKind
            ? Refuse(node.Right, right, "a quantity after '" + Tightness.Spelling(node.Operator) + "'", leftKind)
            : Refuse(node.Left, left, "a quantity before '" + Tightness.Spelling(node.Operator) + "'");
    }

    private Operand Apply(BinaryNode node, in KindRule rule, in Operand left, in Operand right, (int Numbers, int Objects) mark, QuantityKind? wanted)
    {
        if (rule.Result is null) return rule.IsAboutLeft ? Refuse(node.Left, left, rule.Refusal!, wanted) : Refuse(node.Right, right, rule.Refusal!, wanted);
        ValueKind kind = ReferenceEquals(rule.Result, left.Kind!.Quantity) ? left.Kind : ReferenceEquals(rule.Result, right.Kind!.Quantity) ? right.Kind : rule.Result;
        return rule.IsSwapped ? Emit(rule.Operation, node, kind, mark, right, left) : Emit(rule.Operation, node, kind, mark, left, right);
    }

    /// <summary>Where one side is a temperature, a number in kelvins on the other side of a sum is a difference.</summary>
    private static void AgreeOnKelvins(Operand left, Operand right, Operator op, ref QuantityKind leftKind, ref QuantityKind rightKind)
    {
        QuantityKind difference = QuantityKind.TemperatureDifference;
        if (right.CanBeDifference && leftKind.Dimension == difference.Dimension && (op == Operator.Add || leftKind == difference || left.CanBeDifference)) rightKind = difference;
        if (left.CanBeDifference && rightKind == difference) leftKind = difference;
        else if (left.CanBeDifference && rightKind.Nature == QuantityNature.Point && op == Operator.Add) leftKind = difference;
    }

    private Operand Power(BinaryNode node, in Operand left, in Operand right, QuantityKind leftKind, QuantityKind rightKind, (int Numbers, int Objects) mark)
    {
        if (!ProductRules.IsNumber(rightKind)) return Refuse(node.Right, right, "a plain number as exponent");
        if (!right.IsKnown && !leftKind.Dimension.IsNone) return Refuse(node.Right, right, $"an exponent that is known when the formula is built, because the unit of {Quotation.WithArticle(leftKind.Name)} depends on it");
        KindRule rule = ProductRules.Power(leftKind, right.IsKnown ? right.Number : 0);
        if (rule.Result is null) return leftKind.IsLogarithmic || rule.IsAboutLeft ? Refuse(node.Left, left, rule.Refusal!) : Refuse(node.Right, right, rule.Refusal!);
        if (right.IsKnown && right.Number == 2) return Emit(Operation.Square, node, rule.Result, mark, left);
        if (right.IsKnown && right.Number == 0.5) return Emit(Operation.SquareRoot, node, rule.Result, mark, left);
        return Emit(Operation.Power, node, rule.Result, mark, left, right);
    }

    private Operand Comparison(BinaryNode node, Operand left, Operand right, QuantityKind leftKind, QuantityKind rightKind, (int Numbers, int Objects) mark)
    {
        AgreeOnKelvins(left, right, Operator.Subtract, ref leftKind, ref rightKind);
        if (!SumRules.AreAlike(leftKind, rightKind)) return Refuse(node.Right, right, SumRules.Expected(leftKind), leftKind);
        return node.Operator switch
        {
            Operator.Less => Emit(Operation.Less, node, ValueKind.Truth, mark, left, right),
            Operator.LessOrEqual => Emit(Operation.LessOrEqual, node, ValueKind.Truth, mark, left, right),
            Operator.Greater => Emit(Operation.Less, node, ValueKind.Truth, mark, right, left),
            Operator.GreaterOrEqual => Emit(Operation.LessOrEqual, node, ValueKind.Truth, mark, right, left),
            Operator.Equal => Emit(Operation.Equal, node, ValueKind.Truth, mark, left, right),
            _ => Emit(Operation.NotEqual, node, ValueKind.Truth, mark, left, right),
        };
    }

    private Operand TextComparison(BinaryNode node, Operand left, Operand right, (int Numbers, int Objects) mark)
    {
        bool isEqual = node.Operator == Operator.Equal;
        if (left.IsKnown && right.IsKnown) return Operand.Known(ValueKind.Truth, string.Equals((string)left.Object!, (string)right.Object!, StringComparison.Ordinal) == isEqual ? 1 : 0);
        int a = Register(left), b = Register(right);
        _program.Release(mark);
        int target = _program.Number();
        _program.Add(Operation.TextsEqual, node, target, a, b);
        if (!isEqual) _program.Add(Operation.Not, node, target, target, target);
        return Operand.In(target, ValueKind.Truth);
    }

    /// <summary>
    /// An uncertain value. A half-width in %, ppm or ppb is relative to the value, unless the value itself is written so. Evaluated without uncertainty it is the value.
    /// </summary>
    private Operand Uncertain(UncertainNode node)
    {
        if (_isInsideHalfWidth)
        {
            _problems.Add(node.Start, node.End, "a half-width cannot be uncertain itself");
            return Operand.Unknown;
        }
        HasUncertainTerms = true;
        var mark = _program.Mark;
        Operand value = Bind(node.Value);
        _isInsideHalfWidth = true;
        var afterValue = _program.Mark;
        int before = _program.Length;
        Operand halfWidth = Bind(node.HalfWidth);
        _isInsideHalfWidth = false;
        if (value.Kind is null || halfWidth.Kind is null) return Operand.Unknown;
        if (value.Kind.Quantity is not { } kind) return Refuse(node.Value, value, "a quantity before '±'");
        if (halfWidth.Kind.Quantity is not { } widthKind) return Refuse(node.HalfWidth, halfWidth, "a quantity after '±'");
        if (halfWidth.IsKnown && halfWidth.Number < 0) return Refuse(node.HalfWidth, halfWidth, "a half-width of at least 0");

        bool isPercentage = node.HalfWidth is NumberNode width && width.Has(NumberTraits.IsPercentage);
        bool isRelative = isPercentage && !(node.Value is NumberNode number && number.Has(NumberTraits.IsPercentage));
        if (isRelative && ProductRules.IsNumber(kind) && node.Value is not (NumberNode or RatioNode))
            return Refuse(node.HalfWidth, halfWidth, "a half-width without % (of a plain number it could mean points or a part of the value)");
        QuantityKind deviation = DeviationOf(kind);
        if (isRelative && (kind.IsLogarithmic || kind.Nature == QuantityNature.Point)) return Refuse(node.HalfWidth, halfWidth, SumRules.Name(deviation));
        if (isRelative && value.IsKnown && value.Number == 0 && !(halfWidth.IsKnown && halfWidth.Number == 0))
            return Refuse(node.HalfWidth, halfWidth, SumRules.Name(deviation) + ", because a part of zero is none");
        if (!isRelative && !Fits(halfWidth, deviation)) return Refuse(node.HalfWidth, halfWidth, ProductRules.IsNumber(kind) ? SumRules.Name(deviation) : SumRules.Name(deviation) + " or a percentage", deviation);
        if (!_deviates)
        {
            // The half-width was only checked; what it would compute is not needed here.
            _program.Forget(before);
            _program.Release(afterValue);
            return value.As(value.Kind);
        }
        return Deviate(node, value, halfWidth, deviation, isRelative, mark);
    }

    private Operand Deviate(UncertainNode node, Operand value, Operand halfWidth, QuantityKind deviation, bool isRelative, (int Numbers, int Objects) mark)
    {
        int nominal = Register(value);
        int width = Register(halfWidth);
        if (isRelative || !halfWidth.IsKnown)
        {
            int kept = _program.KeptNumber();
            _program.Add(isRelative ? Operation.Multiply : Operation.Copy, node.HalfWidth, kept, width, nominal);
            if (isRelative) _program.Add(Operation.Absolute, node.HalfWidth, kept, kept);
            width = kept;
        }
        int term = _program.Add(new UncertainTerm(node.Start, node.End, value.Kind!.Quantity!, deviation, node.CoverageFactor, isRelative, width));
        _program.Release(mark);
        int target = _program.Number();
        _program.Add(Operation.Deviate, node, target, nominal, term);
        return Operand.In(target, value.Kind!);
    }

    /// <summary>What a value of a kind deviates by: decibels for levels, differences for temperatures, else the same kind.</summary>
    private static QuantityKind DeviationOf(QuantityKind kind) =>
        kind.Nature == QuantityNature.Point ? QuantityKind.TemperatureDifference
        : kind.IsLogarithmic && kind.Reference != LevelReference.None ? QuantityKind.DecibelRatio
        : kind;
}
