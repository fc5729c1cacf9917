using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas.Binding;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Formulas.Worksheets.Checks;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Worksheets;

/// <summary>Binds the statements of a worksheet, one after the other, into one program.</summary>
internal static class WorksheetBinder
{
    internal static (Program? Program, WorksheetPlace[] Places) Bind(string text, IReadOnlyList<WorksheetStatement> statements, FormulaContext context, ProblemList problems, bool deviates, out bool hasUncertainTerms)
    {
        var program = new ProgramBuilder(0, 0, 2 * statements.Count);
        var scope = new FormulaScope(statements.Count);
        var binder = new FormulaBinder(text, context, scope, problems, program, deviates) { AllowsForRounding = true };
        var places = new WorksheetPlace[statements.Count];
        var below = scope.DeclaredBelow = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (WorksheetStatement statement in statements) below[statement.Name] = statement.Line;
        var apart = new List<DemandPlace>();
        DemandReader? demands = deviates ? new DemandReader(node => Compile(node, binder, program, scope, apart)) : null;
        for (int i = 0; i < places.Length; i++)
        {
            below.Remove(statements[i].Name);
            var used = scope.Used = new HashSet<string>(StringComparer.Ordinal);
            places[i] = Bind(statements[i], binder, program, scope, problems);
            statements[i].Uses = used;
            if (demands is null) continue;
            if (statements[i].Kind.IsTruth) places[i].Demand = demands.Read(statements[i].Formula, isWanted: true);
            places[i].Conditions = demands.Declare(statements[i], i);
        }
        hasUncertainTerms = binder.HasUncertainTerms;
        if (problems.Count > 0) return (null, places);
        Program built = program.Build();
        for (int i = 0; i < places.Length; i++)
        {
            bool isNumber = statements[i].Kind.IsHeldAsNumber;
            places[i].Register = isNumber ? program.Place(places[i].Register) : program.ObjectPlace(places[i].Register);
            places[i].Slot = isNumber ? program.Place(places[i].Slot) : program.ObjectPlace(places[i].Slot);
            if (places[i].Comparison is not { } comparison) continue;
            comparison.Checked = program.Place(comparison.Checked);
            comparison.Limit = program.Place(comparison.Limit);
            comparison.Margin = program.Place(comparison.Margin);
        }
        foreach (DemandPlace place in apart)
        {
            place.Left = program.Place(place.Left);
            place.Right = program.Place(place.Right);
            place.Margin = program.Place(place.Margin);
        }
        return (built, places);
    }

    /// <summary>Computes the sides of a comparison once more, so that each can be asked for its uncertainty; of what compares no quantities, the truth value.</summary>
    private static DemandPlace Compile(FormulaNode node, FormulaBinder binder, ProgramBuilder program, FormulaScope scope, List<DemandPlace> apart)
    {
        var used = scope.Used = new HashSet<string>(StringComparer.Ordinal);
        var place = new DemandPlace { From = program.Length, Uses = used };
        if (node is BinaryNode { Left.Kind.IsText: false, Operator: >= Operator.Less and <= Operator.NotEqual } pair)
        {
            place.IsUpper = pair.Operator is Operator.Less or Operator.LessOrEqual;
            FormulaNode greater = place.IsUpper ? pair.Right : pair.Left, smaller = place.IsUpper ? pair.Left : pair.Right;
            (place.Left, place.LeftKind) = Apart(pair.Left, binder, program);
            (place.Right, place.RightKind) = Apart(pair.Right, binder, program);
            (place.Margin, place.MarginKind) = Apart(new BinaryNode(Operator.Subtract, pair.OperatorStart, greater, smaller, false), binder, program);
        }
        else
        {
            (place.Left, _) = Apart(node, binder, program);
            place.Right = place.Margin = place.Left;
        }
        place.To = program.Length;
        apart.Add(place);
        return place;
    }

    private static (int Register, QuantityKind? Kind) Apart(FormulaNode node, FormulaBinder binder, ProgramBuilder program)
    {
        var mark = program.Mark;
        Operand value = binder.BindFormula(node);
        if (value.Kind is null) return (0, null);
        int kept = program.KeptNumber(), source = binder.Register(value);
        program.Add(Operation.Copy, node, kept, source, source);
        program.Release(mark);
        return (kept, value.Kind.Quantity);
    }

    private static WorksheetPlace Bind(WorksheetStatement statement, FormulaBinder binder, ProgramBuilder program, FormulaScope scope, ProblemList problems)
    {
        var place = new WorksheetPlace { From = program.Length };
        var mark = program.Mark;
        Operand value = !binder.Deviates && statement.Keyword == WorksheetKeyword.Check && AsComparison(statement.Formula) is { } comparison
            ? BindComparison(comparison, binder, program, scope, out place.Comparison)
            : binder.BindFormula(statement.Formula);
        bool isGiven = statement.Keyword == WorksheetKeyword.Given;
        if (value.Kind is not null)
        {
            if (statement.Keyword == WorksheetKeyword.Check && !value.Kind.IsTruth)
                problems.Add(statement.Formula.Start, statement.Formula.End, $"found {Quotation.WithArticle(value.Kind.Name)} ({statement.FormulaText}), expected a truth value, such as a comparison");
            bool isNumber = value.Kind.IsHeldAsNumber;
            int source = binder.Register(value);
            place.Register = isNumber ? program.KeptNumber() : program.KeptObject();
            program.Add(isNumber ? Operation.Copy : Operation.CopyObject, statement.Formula, place.Register, source, source);
            if (isGiven) place.Slot = isNumber ? program.OpenConstant() : program.ConstantObject(null);
            // A let whose value is known stays known to the lines below; a given may be overridden.
            value = isGiven || !value.IsKnown ? Operand.In(place.Register, value.Kind) : value;
        }
        program.Release(mark);
        place.To = program.Length;
        if (statement.Name.Length > 0) scope.Set(statement.Name, value);
        return place;
    }

    /// <summary>A check that compares and nothing else. <c>==</c> and <c>!=</c> have no margin.</summary>
    private static BinaryNode? AsComparison(FormulaNode check) => check is BinaryNode { Operator: >= Operator.Less and <= Operator.GreaterOrEqual } comparison ? comparison : null;

    /// <summary>Binds a comparison so that both sides and the margin are kept: the greater side less the smaller one.</summary>
    private static Operand BindComparison(BinaryNode comparison, FormulaBinder binder, ProgramBuilder program, FormulaScope scope, out ComparisonPlace? place)
    {
        place = null;
        var mark = program.Mark;
        HashSet<string> used = scope.Used!, usedLeft = scope.Used = new HashSet<string>(StringComparer.Ordinal);
        Operand left = Kept(binder.BindFormula(comparison.Left), comparison.Left, binder, program);
        program.Release(mark);
        HashSet<string> usedRight = scope.Used = new HashSet<string>(StringComparer.Ordinal);
        Operand right = Kept(binder.BindNext(comparison.Right), comparison.Right, binder, program);
        program.Release(mark);
        used.UnionWith(usedLeft);
        used.UnionWith(usedRight);
        scope.Used = used;
        Operand truth = binder.BindSides(comparison, left, right);
        if (truth.Kind is null) return truth;
        bool isLess = comparison.Operator is Operator.Less or Operator.LessOrEqual, isLimitLeft = usedLeft.Count == 0 && usedRight.Count > 0;
        FormulaNode greater = isLess ? comparison.Right : comparison.Left, smaller = isLess ? comparison.Left : comparison.Right;
        Operand margin = binder.BindSides(new BinaryNode(Operator.Subtract, comparison.OperatorStart, greater, smaller, false), isLess ? right : left, isLess ? left : right);
        if (margin.Kind?.Quantity is not { } marginKind) return truth;
        Operand judged = isLimitLeft ? right : left;
        place = new ComparisonPlace(isLess != isLimitLeft, judged.Kind!.Quantity!, marginKind)
        {
            Checked = binder.Register(judged), Limit = binder.Register(isLimitLeft ? left : right), Margin = program.KeptNumber(),
        };
        int source = binder.Register(margin);
        program.Add(Operation.Copy, comparison, place.Margin, source, source);
        return truth;
    }

    /// <summary>A side stays where it is while the other one is computed, and after.</summary>
    private static Operand Kept(Operand side, FormulaNode node, FormulaBinder binder, ProgramBuilder program)
    {
        if (side.Kind is not { IsQuantity: true } || side.IsKnown) return side;
        int kept = program.KeptNumber(), source = binder.Register(side);
        program.Add(Operation.Copy, node, kept, source, source);
        return Operand.In(kept, side.Kind);
    }
}
