using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Formulas.Worksheets;

namespace Acquisition.Core;

/// <summary>A list of named formulas with checks: text that a test department can review and keep under version control.</summary>
/// <remarks>
/// One statement per line: <c>given name = formula</c>, <c>let name = formula</c>, <c>check formula else "text"</c>, <c>show formula, 3 digits</c>; <c>#</c>
/// begins a comment. A line may use the names of the lines above. Immutable and thread-safe. See docs/formulas.md.
/// </remarks>
public sealed partial class Worksheet
{
    /// <summary>The most statements of a worksheet.</summary>
    public const int MostStatements = 1000;

    private const int MostFormulasOfText = 64;

    private Worksheet(string text, IReadOnlyList<WorksheetStatement> statements, (Program Program, WorksheetPlace[] Places) nominal, (Program? Program, WorksheetPlace[] Places) uncertain)
    {
        Text = text;
        Statements = statements;
        (Program, Places) = nominal;
        (Uncertain, UncertainPlaces) = uncertain;
        Givens = statements.Where(statement => statement.Keyword == WorksheetKeyword.Given).Select(statement => new FormulaInput(statement.Name, statement.Kind)).Frozen();
    }

    /// <summary>The text as it was given.</summary>
    public string Text { get; }

    /// <summary>What a host may override, in the order of the lines.</summary>
    public IReadOnlyList<FormulaInput> Givens { get; }

    internal IReadOnlyList<WorksheetStatement> Statements { get; }

    internal Program Program { get; }

    internal WorksheetPlace[] Places { get; }

    /// <summary>The same program with uncertain terms that may deviate; null where nothing is uncertain.</summary>
    internal Program? Uncertain { get; }

    internal WorksheetPlace[] UncertainPlaces { get; }

    /// <summary>Builds a worksheet over the standard functions.</summary>
    /// <param name="text">The worksheet.</param>
    /// <exception cref="FormulaException">The text is no worksheet; the exception carries every problem with its line and column.</exception>
    public static Worksheet Build(string text) => Build(text, FormulaContext.Standard);

    /// <summary>Builds a worksheet over a context.</summary>
    /// <param name="text">The worksheet.</param>
    /// <param name="context">Functions, units and limits; its inputs must be none, because a worksheet declares its own.</param>
    /// <exception cref="ArgumentException">The context has inputs.</exception>
    /// <exception cref="FormulaException">The text is no worksheet; the exception carries every problem with its line and column.</exception>
    public static Worksheet Build(string text, FormulaContext context)
    {
        if (text is null) throw new ArgumentNullException(nameof(text));
        return TryBuild(text, context, out Worksheet? worksheet, out IReadOnlyList<FormulaProblem> problems) ? worksheet! : throw new FormulaException(problems);
    }

    /// <summary>Builds a worksheet over the standard functions, without ever throwing.</summary>
    /// <param name="text">The worksheet.</param>
    /// <param name="worksheet">The worksheet; null where there are problems.</param>
    /// <param name="problems">Everything that is wrong with it, in the order of the places.</param>
    public static bool TryBuild(string? text, out Worksheet? worksheet, out IReadOnlyList<FormulaProblem> problems) => TryBuild(text, FormulaContext.Standard, out worksheet, out problems);

    /// <summary>Builds a worksheet over a context, returning what is wrong with it instead of throwing.</summary>
    /// <param name="text">The worksheet.</param>
    /// <param name="context">Functions, units and limits.</param>
    /// <param name="worksheet">The worksheet; null where there are problems.</param>
    /// <param name="problems">Everything that is wrong with it, in the order of the places.</param>
    /// <exception cref="ArgumentException">The context has inputs.</exception>
    public static bool TryBuild(string? text, FormulaContext context, out Worksheet? worksheet, out IReadOnlyList<FormulaProblem> problems)
    {
        if (context is null) throw new ArgumentNullException(nameof(context));
        if (context.Inputs.Count > 0) throw new ArgumentException("a worksheet declares its inputs itself, with 'given'; the context must have none", nameof(context));
        text ??= "";
        worksheet = null;
        var found = new ProblemList(text, hasLines: true);
        int longest = MostFormulasOfText * context.Limits.Length;
        if (text.Length > longest)
        {
            found.Add(0, 0, FormattableString.Invariant($"the worksheet has {text.Length} characters; at most {longest} are read"));
            problems = found.Sorted();
            return false;
        }
        IReadOnlyList<WorksheetStatement> statements = WorksheetReader.Read(text, context, found);
        (Program? Program, WorksheetPlace[] Places) nominal = WorksheetBinder.Bind(text, statements, context, found, deviates: false, out bool hasUncertainTerms);
        problems = found.Sorted();
        if (nominal.Program is null || problems.Count > 0) return false;
        (Program? Program, WorksheetPlace[] Places) uncertain = hasUncertainTerms ? WorksheetBinder.Bind(text, statements, context, found, deviates: true, out _) : (null, nominal.Places);
        // A sheet whose uncertainty cannot be followed must not be evaluated as if it had none.
        problems = found.Sorted();
        if (problems.Count > 0) return false;
        worksheet = new Worksheet(text, statements, nominal!, uncertain);
        return true;
    }

    /// <summary>Evaluates the worksheet with its own givens.</summary>
    public WorksheetResult Evaluate() => Evaluate(NoOverrides);

    /// <summary>Evaluates the worksheet with givens of the host, which count as exact.</summary>
    /// <param name="overrides">Values by the names of givens; those left out keep what the text says.</param>
    /// <exception cref="ArgumentException">A name is not given in the sheet, or a value is of another kind.</exception>
    public WorksheetResult Evaluate(IReadOnlyDictionary<string, FormulaValue> overrides) => Evaluation(overrides, DecisionRule.GuardedAcceptance).Run();

    private WorksheetEvaluation Evaluation(IReadOnlyDictionary<string, FormulaValue> overrides, DecisionRule rule)
    {
        if (overrides is null) throw new ArgumentNullException(nameof(overrides));
        foreach (KeyValuePair<string, FormulaValue> pair in overrides)
        {
            FormulaInput? given = Givens.FirstOrDefault(input => input.Name == pair.Key);
            if (given is null) throw new ArgumentException($"'{pair.Key}' is not given in the worksheet; given are {string.Join(", ", Givens.Select(input => input.Name))}", nameof(overrides));
            if (!given.Kind.Equals(pair.Value.Kind)) throw new ArgumentException($"given {given.Name}: found a {pair.Value.Kind.Name} ({pair.Value}), expected a {given.Kind.Name}", nameof(overrides));
            if (given.Kind.IsHeldAsNumber ? !Arithmetic.IsFinite(pair.Value.Number) : pair.Value.Object is null) throw new ArgumentException($"given {given.Name} has no value", nameof(overrides));
        }
        return new WorksheetEvaluation(this, overrides, rule);
    }
}
