using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Worksheets.Checks;

/// <summary>Takes truth values apart into the comparisons that decide them. Reads bound formulas, line by line, and remembers what it has read.</summary>
/// <param name="compile">Adds the sides of a comparison, or another truth value, to the program.</param>
internal sealed class DemandReader(Func<FormulaNode, DemandPlace> compile)
{
    /// <summary>Looking for two limits on one quantity is worth it among so many parts.</summary>
    private const int MostPaired = 64;

    private static readonly Conditions None = new();

    private readonly Dictionary<string, (WorksheetStatement Statement, int Index, Conditions Conditions)> _lines = new(StringComparer.Ordinal);
    private readonly Dictionary<(FormulaNode, bool), Demand> _read = new();
    private readonly Dictionary<FormulaNode, DemandPlace> _places = new();

    /// <summary>Lets later lines use what a line declares.</summary>
    internal Conditions Declare(WorksheetStatement statement, int index)
    {
        Conditions conditions = statement.Kind.IsTruth ? None : ConditionsOf(statement.Formula);
        if (statement.Name.Length > 0) _lines[statement.Name] = (statement, index, conditions);
        return conditions;
    }

    internal Demand Read(FormulaNode node, bool isWanted)
    {
        if (_read.TryGetValue((node, isWanted), out Demand? known)) return known;
        Demand demand = node switch
        {
            TruthNode truth => new FixedDemand(truth.Value == isWanted),
            NameNode name when _lines.TryGetValue(name.Name, out var line) => OfLine(line.Statement, line.Index, isWanted),
            UnaryNode { Operator: Operator.Not } negation => Read(negation.Operand, !isWanted),
            BinaryNode { Operator: Operator.And or Operator.Or } joined => Joined(joined, isWanted),
            BinaryNode { Operator: Operator.Equal or Operator.NotEqual } pair when pair.Left.Kind!.IsTruth => Agreement(pair, (pair.Operator == Operator.Equal) == isWanted),
            BinaryNode { Operator: >= Operator.Less and <= Operator.NotEqual } pair when pair.Left.Kind!.IsQuantity => Comparison(pair, isWanted ? pair.Operator : Opposite(pair.Operator)),
            ChoiceNode choice => Any(
                All(Read(choice.Condition, true), Read(choice.WhenTrue, isWanted)),
                All(Read(choice.Condition, false), Read(choice.WhenFalse, isWanted))),
            _ => new OtherDemand(node, isWanted, PlaceOf(node), ConditionsOfParts(node)),
        };
        _read[(node, isWanted)] = demand;
        return demand;
    }

    private Demand OfLine(WorksheetStatement statement, int index, bool isWanted)
    {
        Demand own = Read(statement.Formula, isWanted);
        return statement.Keyword == WorksheetKeyword.Given ? new GivenDemand(index, isWanted, own) : own;
    }

    /// <summary><c>and</c>, or <c>or</c> after a <c>not</c>: a long row of them leans to the left and is walked in a loop.</summary>
    private Demand Joined(BinaryNode node, bool isWanted)
    {
        var parts = new List<Demand>();
        FormulaNode left = node;
        for (; left is BinaryNode inner && inner.Operator == node.Operator; left = inner.Left) parts.Add(Read(inner.Right, isWanted));
        parts.Add(Read(left, isWanted));
        parts.Reverse();
        return (node.Operator == Operator.And) == isWanted ? All(parts.ToArray()) : Any(parts.ToArray());
    }

    private Demand Agreement(BinaryNode pair, bool isSame) => Any(
        All(Read(pair.Left, true), Read(pair.Right, isSame)),
        All(Read(pair.Left, false), Read(pair.Right, !isSame)));

    private Demand Comparison(BinaryNode node, Operator op, string? text = null)
    {
        BinaryNode asked = op == node.Operator ? node : new BinaryNode(op, node.OperatorStart, node.Left, node.Right, node.RightHasCalls);
        text ??= FormulaWriter.Write(asked);
        if (op < Operator.Equal && (Split(node, node.Left, node.Right, op, text) ?? Split(node, node.Right, node.Left, Mirrored(op), text)) is { } split) return split;
        return new ComparisonDemand(asked, PlaceOf(node), ConditionsOfParts(node), text);
    }

    /// <summary>
    /// A magnitude, a least or a greatest value against a limit, as comparisons of what is in it: <c>abs(a - b) &lt;= t</c> is two limits on <c>a - b</c>. Where two arguments are
    /// about equal, or a difference about zero, the whole has a kink, and its derivative knows only one of them.
    /// </summary>
    private Demand? Split(BinaryNode node, FormulaNode side, FormulaNode limit, Operator op, string text)
    {
        if (CallOf(side) is not { Function: { } function } call) return null;
        bool isUpper = op is Operator.Less or Operator.LessOrEqual;
        if (function.Intrinsic is not (Intrinsic.Absolute or Intrinsic.Minimum or Intrinsic.Maximum)) return null;
        var parts = new List<Demand>();
        foreach (ArgumentNode argument in call.Arguments)
        {
            bool isMagnitude = function.Intrinsic == Intrinsic.Absolute;
            parts.Add(Comparison(Against(argument.Value, op, limit), op, isMagnitude ? text : null));
            if (isMagnitude) parts.Add(Comparison(Against(argument.Value, Mirrored(op), new UnaryNode(limit.Start, Operator.Negate, limit)), Mirrored(op), text));
        }
        return isUpper == (function.Intrinsic != Intrinsic.Minimum) ? All(parts.ToArray()) : Any(parts.ToArray());

        BinaryNode Against(FormulaNode value, Operator comparison, FormulaNode bound) => new(comparison, node.OperatorStart, value, bound, false);
    }

    /// <summary>The call that a side is, or that the line is which it names. A line that states an uncertainty itself is not read again: its source would become another one.</summary>
    private CallNode? CallOf(FormulaNode side)
    {
        bool isElsewhere = false;
        while (true)
        {
            switch (side)
            {
                case CallNode call:
                    return isElsewhere && StatesUncertainty(call) ? null : call;
                case ConversionNode conversion:
                    side = conversion.Operand;
                    break;
                case NameNode name when _lines.TryGetValue(name.Name, out var line) && line.Statement.Keyword == WorksheetKeyword.Let:
                    side = line.Statement.Formula;
                    isElsewhere = true;
                    break;
                default:
                    return null;
            }
        }
    }

    private static Demand All(params Demand[] parts)
    {
        List<Demand> flat = Flattened(parts, part => (part as AllDemand)?.Parts, isNothing: true);
        if (flat.Count <= MostPaired) Pair(flat);
        return flat.Count == 1 ? flat[0] : new AllDemand(flat);
    }

    private static Demand Any(params Demand[] parts)
    {
        List<Demand> flat = Flattened(parts, part => (part as AnyDemand)?.Parts, isNothing: false);
        return flat.Count == 1 ? flat[0] : new AnyDemand(flat);
    }

    /// <summary>The parts of parts, each once; what adds nothing (<c>and true</c>, <c>or false</c>) is left out.</summary>
    private static List<Demand> Flattened(Demand[] parts, Func<Demand, IReadOnlyList<Demand>?> inner, bool isNothing)
    {
        var flat = new List<Demand>();
        var seen = new HashSet<Demand>();
        foreach (Demand part in parts)
        {
            foreach (Demand each in inner(part) is { Count: <= MostPaired } several ? several : new[] { part })
            {
                if (seen.Add(each) && !(each is FixedDemand truth && truth.IsMet == isNothing)) flat.Add(each);
            }
        }
        if (flat.Count == 0) flat.Add(new FixedDemand(isNothing));
        return flat;
    }

    /// <summary>Puts a lower and an upper limit on the same quantity together.</summary>
    private static void Pair(List<Demand> parts)
    {
        for (int i = 0; i < parts.Count; i++)
        {
            for (int j = i + 1; j < parts.Count && parts[i] is ComparisonDemand first; j++)
            {
                if (parts[j] is not ComparisonDemand second || Range(first, second) is not { } range) continue;
                parts[i] = range;
                parts.RemoveAt(j);
            }
        }
    }

    private static RangeDemand? Range(ComparisonDemand first, ComparisonDemand second)
    {
        for (int i = 0; i < 4; i++)
        {
            bool isFirstLeft = i < 2, isSecondLeft = i % 2 == 0;
            bool isFirstUpper = isFirstLeft ? first.IsUpper : first.IsLower, isFirstLower = isFirstLeft ? first.IsLower : first.IsUpper;
            bool isSecondUpper = isSecondLeft ? second.IsUpper : second.IsLower, isSecondLower = isSecondLeft ? second.IsLower : second.IsUpper;
            if (!(isFirstUpper && isSecondLower) && !(isFirstLower && isSecondUpper)) continue;
            FormulaNode side = isFirstLeft ? first.Formula.Left : first.Formula.Right;
            if (side is NumberNode || !FormulaComparer.AreSame(side, isSecondLeft ? second.Formula.Left : second.Formula.Right)) continue;
            return isFirstLower ? new RangeDemand(first, isFirstLeft, second, isSecondLeft) : new RangeDemand(second, isSecondLeft, first, isFirstLeft);
        }
        return null;
    }

    private DemandPlace PlaceOf(FormulaNode node)
    {
        if (!_places.TryGetValue(node, out DemandPlace? place)) _places[node] = place = compile(node);
        return place;
    }

    private Conditions ConditionsOfParts(FormulaNode node)
    {
        var found = new Conditions();
        switch (node)
        {
            case BinaryNode pair:
                Gather(pair.Left, found);
                Gather(pair.Right, found);
                break;
            case CallNode call:
                foreach (ArgumentNode argument in call.Arguments) Gather(argument.Value, found);
                break;
        }
        return found.IsEmpty ? None : found;
    }

    private Conditions ConditionsOf(FormulaNode node)
    {
        var found = new Conditions();
        Gather(node, found);
        return found.IsEmpty ? None : found;
    }

    private void Gather(FormulaNode root, Conditions found)
    {
        foreach (FormulaNode node in Parts(root, part => part is ChoiceNode || part.Kind is { IsTruth: true }))
        {
            if (node.Kind is { IsTruth: true })
                found.Choices.Add(new Choice(Read(node, true), Read(node, false), None, None, FormulaWriter.Write(node)));
            else if (node is ChoiceNode choice)
                found.Choices.Add(new Choice(Read(choice.Condition, true), Read(choice.Condition, false), ConditionsOf(choice.WhenTrue), ConditionsOf(choice.WhenFalse), FormulaWriter.Write(choice.Condition)));
            else if (node is NameNode name && _lines.TryGetValue(name.Name, out var line) && !line.Conditions.IsEmpty && !found.Above.Contains(line.Conditions))
                found.Above.Add(line.Conditions);
        }
    }

    private static bool StatesUncertainty(FormulaNode root)
    {
        foreach (FormulaNode node in Parts(root, _ => false))
        {
            if (node is UncertainNode) return true;
        }
        return false;
    }

    /// <summary>A formula and what is in it, without going into the parts that are whole.</summary>
    private static IEnumerable<FormulaNode> Parts(FormulaNode root, Func<FormulaNode, bool> isWhole)
    {
        var open = new Stack<FormulaNode>();
        open.Push(root);
        while (open.Count > 0)
        {
            FormulaNode node = open.Pop();
            yield return node;
            if (isWhole(node)) continue;
            switch (node)
            {
                case UnaryNode unary: open.Push(unary.Operand); break;
                case ConversionNode conversion: open.Push(conversion.Operand); break;
                case BinaryNode binary:
                    open.Push(binary.Right);
                    open.Push(binary.Left);
                    break;
                case UncertainNode uncertain:
                    open.Push(uncertain.HalfWidth);
                    open.Push(uncertain.Value);
                    break;
                case ChoiceNode choice:
                    open.Push(choice.WhenFalse);
                    open.Push(choice.WhenTrue);
                    open.Push(choice.Condition);
                    break;
                case CallNode call:
                    foreach (ArgumentNode argument in call.Arguments) open.Push(argument.Value);
                    break;
            }
        }
    }

    private static Operator Opposite(Operator op) => op switch
    {
        Operator.Less => Operator.GreaterOrEqual,
        Operator.LessOrEqual => Operator.Greater,
        Operator.Greater => Operator.LessOrEqual,
        Operator.GreaterOrEqual => Operator.Less,
        Operator.Equal => Operator.NotEqual,
        _ => Operator.Equal,
    };

    /// <summary>The comparison with its sides exchanged.</summary>
    private static Operator Mirrored(Operator op) => op switch
    {
        Operator.Less => Operator.Greater,
        Operator.LessOrEqual => Operator.GreaterOrEqual,
        Operator.Greater => Operator.Less,
        Operator.GreaterOrEqual => Operator.LessOrEqual,
        _ => op,
    };
}
