using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas.Binding;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Worksheets;

/// <summary>Binds the statements of a worksheet, one after the other, into one program.</summary>
internal static class WorksheetBinder
{
    internal static (Program? Program, WorksheetPlace[] Places) Bind(string text, IReadOnlyList<WorksheetStatement> statements, FormulaContext context, ProblemList problems, bool deviates, out bool hasUncertainTerms)
    {
        var program = new ProgramBuilder(0, 0, 2 * statements.Count);
        var scope = new FormulaScope(statements.Count);
        var binder = new FormulaBinder(text, context, scope, problems, program, deviates);
        var places = new WorksheetPlace[statements.Count];
        var below = scope.DeclaredBelow = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (WorksheetStatement statement in statements) below[statement.Name] = statement.Line;
        for (int i = 0; i < places.Length; i++)
        {
            below.Remove(statements[i].Name);
            var used = scope.Used = new HashSet<string>(StringComparer.Ordinal);
            places[i] = Bind(statements[i], binder, program, scope, problems);
            statements[i].Uses = used;
        }
        hasUncertainTerms = binder.HasUncertainTerms;
        if (problems.Count > 0) return (null, places);
        Program built = program.Build();
        for (int i = 0; i < places.Length; i++)
        {
            bool isNumber = statements[i].Kind.IsHeldAsNumber;
            places[i].Register = isNumber ? program.Place(places[i].Register) : program.ObjectPlace(places[i].Register);
            places[i].Slot = isNumber ? program.Place(places[i].Slot) : program.ObjectPlace(places[i].Slot);
            if (places[i].Margin >= 0) places[i].Margin = program.Place(places[i].Margin);
        }
        return (built, places);
    }

    private static WorksheetPlace Bind(WorksheetStatement statement, FormulaBinder binder, ProgramBuilder program, FormulaScope scope, ProblemList problems)
    {
        var place = new WorksheetPlace { From = program.Length, Margin = -1 };
        var mark = program.Mark;
        Operand value = binder.BindFormula(statement.Formula);
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
        if (statement.Keyword == WorksheetKeyword.Check && value.Kind is not null) (place.Margin, place.MarginKind) = BindMargin(statement.Formula, binder, program);
        program.Release(mark);
        place.To = program.Length;
        if (statement.Name.Length > 0) scope.Set(statement.Name, value);
        return place;
    }

    /// <summary>By how much a comparison is met, for the guard band: the greater side less the smaller one.</summary>
    private static (int Register, QuantityKind? Kind) BindMargin(FormulaNode check, FormulaBinder binder, ProgramBuilder program)
    {
        if (check is not BinaryNode { Operator: >= Operator.Less and <= Operator.GreaterOrEqual } comparison) return (-1, null);
        bool isLess = comparison.Operator is Operator.Less or Operator.LessOrEqual;
        FormulaNode greater = isLess ? comparison.Right : comparison.Left, smaller = isLess ? comparison.Left : comparison.Right;
        Operand margin = binder.BindFormula(new BinaryNode(Operator.Subtract, comparison.OperatorStart, greater, smaller, false));
        if (margin.Kind is null) return (-1, null);
        int kept = program.KeptNumber(), source = binder.Register(margin);
        program.Add(Operation.Copy, check, kept, source, source);
        return (kept, margin.Kind.Quantity);
    }
}
