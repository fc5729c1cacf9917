using System;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>
/// Checks kinds and dimensions and gathers instructions, in one walk over the tree. Parts whose value is known are computed on the way.
/// </summary>
internal sealed partial class FormulaBinder
{
    private const string Pi = "π";

    private readonly string _text;
    private readonly FormulaContext _context;
    private readonly FormulaScope _scope;
    private readonly ProblemList _problems;
    private readonly ProgramBuilder _program;
    private readonly bool _deviates;
    private int _callsBefore;
    private bool _isInsideHalfWidth;

    /// <summary>Whether anything bound so far is uncertain.</summary>
    internal bool HasUncertainTerms { get; private set; }

    /// <summary>Whether uncertain terms may deviate from their stated value.</summary>
    internal bool Deviates => _deviates;

    /// <summary>Whether comparisons are left to an evaluation that allows for rounding, also of values that are known.</summary>
    internal bool AllowsForRounding { get; init; }

    /// <summary>Prepares binding of one or several formulas of a text into one program.</summary>
    /// <param name="text">The text.</param>
    /// <param name="context">What may be called, and how much may be asked for.</param>
    /// <param name="scope">What may be named.</param>
    /// <param name="problems">Where mistakes go.</param>
    /// <param name="program">Where instructions go.</param>
    /// <param name="deviates">Whether uncertain terms may deviate from their stated value.</param>
    internal FormulaBinder(string text, FormulaContext context, FormulaScope scope, ProblemList problems, ProgramBuilder program, bool deviates)
    {
        _text = text;
        _context = context;
        _scope = scope;
        _problems = problems;
        _program = program;
        _deviates = deviates;
    }

    /// <summary>Binds a whole formula.</summary>
    internal Operand BindFormula(FormulaNode root)
    {
        _callsBefore = _program.CallCount;
        return Bind(root);
    }

    /// <summary>Binds a further part of the formula that <see cref="BindFormula"/> has begun.</summary>
    internal Operand BindNext(FormulaNode node) => Bind(node);

    /// <summary>Binds an operator whose sides are bound and stay where they are.</summary>
    internal Operand BindSides(BinaryNode node, Operand left, Operand right)
    {
        Operand operand = left.Kind is null || right.Kind is null ? Operand.Unknown : Combine(node, left, right, _program.Mark);
        node.Kind = operand.Kind;
        return operand;
    }

    private Operand Bind(FormulaNode node)
    {
        Operand operand = node switch
        {
            NameNode name => Name(name),
            NumberNode number => Operand.Known(number.Quantity, number.SiValue, number.Has(NumberTraits.CanBeDifference)),
            BinaryNode binary => Binary(binary),
            CallNode call => Call(call),
            ConversionNode conversion => Conversion(conversion),
            UnaryNode unary => Unary(unary),
            RatioNode ratio => Operand.Known(ValueKind.Number, ratio.Value),
            TextNode text => Operand.KnownObject(ValueKind.Text, text.Value),
            TruthNode truth => Operand.Known(ValueKind.Truth, truth.Value ? 1 : 0),
            ChoiceNode choice => Choice(choice),
            UncertainNode uncertain => Uncertain(uncertain),
            _ => Operand.Unknown,
        };
        node.Kind = operand.Kind;
        return operand;
    }

    /// <summary>The register an operand's value is in, putting a known one there first.</summary>
    internal int Register(in Operand operand) =>
        !operand.IsKnown ? operand.Register
        : operand.Kind!.IsHeldAsNumber ? _program.ConstantNumber(operand.Number, operand.Rounding)
        : _program.ConstantObject(operand.Object!);

    private Operand Name(NameNode node)
    {
        return _scope.TryFind(node, out Operand operand) ? operand : NameOfFunction(node);
    }

    /// <summary>A constant, or a name that is reported.</summary>
    private Operand NameOfFunction(NameNode node)
    {
        FunctionDefinition[] functions = _context.Functions.DefinitionsOf(node.Name == Pi ? "pi" : node.Name);
        foreach (FunctionDefinition function in functions)
        {
            if (function.Parameters.Count == 0) return Operand.Known(function.Result, function.Kernel!.Number(Array.Empty<double>(), Array.Empty<object?>(), Array.Empty<int>()));
        }
        if (functions.Length > 0)
            _problems.Add(node.Start, node.End, $"found the function '{node.Name}' without its arguments, expected {functions[0].Signature}");
        else if (_scope.DeclaredBelow is { } below && below.TryGetValue(node.Name, out int line))
            _problems.Add(node.Start, node.End, FormattableString.Invariant($"'{node.Name}' is declared in line {line}, below; a line uses the ones above it"), (string?)null);
        else
            _problems.Add(node.Start, node.End, $"'{Quotation.Of(_text, node.Start, node.End)}' is not known", () => Suggestions.ForName(node.Name, _scope.Names, _context.Functions));
        return Operand.Unknown;
    }

    private Operand Unary(UnaryNode node)
    {
        var mark = _program.Mark;
        Operand operand = Bind(node.Operand);
        if (operand.Kind is null) return Operand.Unknown;
        if (node.Operator == Operator.Not)
        {
            if (!operand.Kind.IsTruth) return Refuse(node.Operand, operand, "a truth value after 'not'");
            return Emit(Operation.Not, node, ValueKind.Truth, mark, operand);
        }
        QuantityKind? kind = operand.Kind.Quantity;
        if (kind is null) return Refuse(node.Operand, operand, "a quantity after '-'");
        if (kind.Nature == QuantityNature.Point && !operand.CanBeDifference) return Refuse(node.Operand, operand, "a quantity that can be negated (a temperature is a point on a scale)");
        if (kind.IsLogarithmic && kind.Reference != LevelReference.None) return Refuse(node.Operand, operand, "a quantity that can be negated (a level is a point on a scale)");
        return Emit(Operation.Negate, node, kind.Nature == QuantityNature.Point ? QuantityKind.TemperatureDifference : operand.Kind, mark, operand);
    }

    private Operand Choice(ChoiceNode node)
    {
        var mark = _program.Mark;
        Operand condition = Bind(node.Condition);
        bool isCondition = condition.Kind is { IsTruth: true };
        if (condition.Kind is not null && !isCondition) Refuse(node.Condition, condition, "a truth value after 'if'");
        if (!node.BranchesHaveCalls) return ChoiceOfValues(node, condition, mark);

        int skip = _program.Add(Operation.JumpUnless, node.Condition, 0, isCondition ? Register(condition) : 0);
        _program.Release(mark);
        Operand whenTrue = Bind(node.WhenTrue);
        bool isNumber = whenTrue.Kind is null || whenTrue.Kind.IsHeldAsNumber;
        int target = Settle(node.WhenTrue, whenTrue, isNumber, mark);
        int leave = _program.Add(Operation.Jump, node, 0);
        int elseStart = _program.Length;
        _program.Release(mark);
        Operand whenFalse = Bind(node.WhenFalse);
        if (whenTrue.Kind is null || whenFalse.Kind is null || !isCondition) return Operand.Unknown;
        if (!AreAlike(whenTrue, whenFalse, out ValueKind? common)) return Refuse(node.WhenFalse, whenFalse, $"{Quotation.WithArticle(whenTrue.Kind.Name)} as after 'then'");
        Settle(node.WhenFalse, whenFalse, isNumber, mark);
        _program.Lead(leave, Operation.Jump, 0, _program.Length, 0);
        _program.Lead(skip, isNumber ? Operation.JumpUnless : Operation.JumpUnlessForObject, target, elseStart, _program.Length);
        return Operand.In(target, common!);
    }

    /// <summary>Puts the value of a branch where the choice expects it.</summary>
    private int Settle(FormulaNode node, Operand value, bool isNumber, (int Numbers, int Objects) mark)
    {
        int source = value.Kind is null ? 0 : Register(value);
        _program.Release(mark);
        int target = isNumber ? _program.Number() : _program.Object();
        if (source != target) _program.Add(isNumber ? Operation.Copy : Operation.CopyObject, node, target, source);
        return target;
    }

    /// <summary>Both branches cost no more than the choice itself: compute both and take one, which columns do without branching.</summary>
    private Operand ChoiceOfValues(ChoiceNode node, Operand condition, (int Numbers, int Objects) mark)
    {
        Operand whenTrue = Bind(node.WhenTrue), whenFalse = Bind(node.WhenFalse);
        if (condition.Kind is not { IsTruth: true } || whenTrue.Kind is null || whenFalse.Kind is null) return Operand.Unknown;
        if (!AreAlike(whenTrue, whenFalse, out ValueKind? common)) return Refuse(node.WhenFalse, whenFalse, $"{Quotation.WithArticle(whenTrue.Kind.Name)} as after 'then'");
        if (condition.IsKnown) return (condition.Number != 0 ? whenTrue : whenFalse).As(common!);
        int test = Register(condition), left = Register(whenTrue), right = Register(whenFalse);
        _program.Release(mark);
        int target = common!.IsHeldAsNumber ? _program.Number() : _program.Object();
        _program.Add(common.IsHeldAsNumber ? Operation.Select : Operation.SelectObject, node, target, test, left, right);
        return Operand.In(target, common);
    }

    private Operand Conversion(ConversionNode node)
    {
        Operand operand = Bind(node.Operand);
        if (operand.Kind is null) return Operand.Unknown;
        if (Fits(operand, node.UnitKind)) return operand.As(node.UnitKind);
        return Refuse(node.Operand, operand, $"{Quotation.WithArticle(node.UnitKind.Name)} before 'in {node.Unit}'", node.UnitKind);
    }

    /// <summary>Whether a value may stand where a kind is asked for; a number in kelvins is a temperature or a difference as is needed.</summary>
    internal static bool Fits(Operand operand, QuantityKind kind) =>
        operand.Kind?.Quantity is { } found && (found == kind || (operand.CanBeDifference && kind == QuantityKind.TemperatureDifference));

    private static bool AreAlike(Operand left, Operand right, out ValueKind? common)
    {
        common = left.Kind!.Equals(right.Kind) ? left.Kind
            : left.CanBeDifference && right.Kind!.Quantity == QuantityKind.TemperatureDifference ? right.Kind
            : right.CanBeDifference && left.Kind.Quantity == QuantityKind.TemperatureDifference ? left.Kind
            : null;
        return common is not null;
    }

    /// <summary>Computes now what is known, else adds an instruction whose target may be a register that its operands leave free.</summary>
    private Operand Emit(Operation operation, FormulaNode node, ValueKind kind, (int Numbers, int Objects) mark, in Operand a, in Operand b = default)
    {
        bool isBinary = b.Kind is not null;
        bool isComparison = operation is Operation.Less or Operation.LessOrEqual or Operation.Equal or Operation.NotEqual;
        if (a.IsKnown && (!isBinary || b.IsKnown) && !(isComparison && AllowsForRounding))
        {
            double value = Arithmetic.Apply(operation, a.Number, b.Number);
            if (Arithmetic.IsFinite(value)) return Operand.Known(kind, value, rounding: AllowsForRounding && !kind.IsTruth ? Rounding.Of(operation, a.Number, a.Rounding, b.Number, b.Rounding) : 0);
        }
        int left = Register(a), right = isBinary ? Register(b) : left;
        _program.Release(mark);
        int target = _program.Number();
        _program.Add(operation, node, target, left, right);
        return Operand.In(target, kind);
    }

    private Operand Refuse(FormulaNode node, in Operand operand, string expected, QuantityKind? wanted = null)
    {
        string text = _text;
        if (wanted is not null && operand.Kind?.Quantity is { } found && KindConversions.Hint(found, wanted) is { } hint) expected += "; " + hint;
        _problems.Add(node.Start, node.End, $"found {Describe(node, operand)}, expected {expected}",
            wanted is not null && node is NumberNode ? () => UnitSuggestions.OfKind(text.Substring(node.Start, node.End - node.Start), 0, wanted, '.') : null);
        return Operand.Unknown;
    }

    private string Describe(FormulaNode node, Operand operand) => $"{Quotation.WithArticle(operand.Kind!.Name)} ({Quotation.Of(_text, node.Start, node.End)})";
}
