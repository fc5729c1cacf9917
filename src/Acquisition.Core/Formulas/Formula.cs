using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Binding;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core;

/// <summary>A formula over quantities: built once, with kinds and dimensions checked, and evaluated any number of times.</summary>
/// <remarks>
/// Immutable: any number of threads may evaluate one formula. The same text and inputs give the same bits on every thread and culture. The language is
/// described in docs/formulas.md, the functions in docs/functions.md.
/// </remarks>
public sealed partial class Formula
{
    private readonly string _text;
    private readonly FormulaNode _root;
    private readonly Program _program;
    private readonly Program _uncertain;
    private readonly int _result;
    private readonly int _uncertainResult;
    private readonly bool _givesNumberFromNumbers;
    private readonly string? _unit;
    private readonly double _unitFactor;

    private Formula(string text, FormulaNode root, IReadOnlyList<FormulaInput> inputs, Program nominal, int result, Program uncertain, int uncertainResult)
    {
        _text = text;
        _root = root;
        Inputs = inputs.Frozen();
        ResultKind = root.Kind!;
        _program = nominal;
        _result = result;
        _uncertain = uncertain;
        _uncertainResult = uncertainResult;
        _givesNumberFromNumbers = ResultKind.IsHeldAsNumber && _program.ObjectInputs == 0;
        if (root is not ConversionNode conversion) return;
        _unit = conversion.Unit;
        _unitFactor = conversion.LocalFactor;
    }

    /// <summary>The inputs, in the order in which they are given by place.</summary>
    public IReadOnlyList<FormulaInput> Inputs { get; }

    /// <summary>What the formula gives.</summary>
    public ValueKind ResultKind { get; }

    /// <summary>The unit after <c>in</c>; null where the formula asks for none.</summary>
    public string? Unit => _unit;

    /// <summary>Builds a formula over the standard functions and no inputs.</summary>
    /// <param name="text">The formula.</param>
    /// <exception cref="FormulaException">The text is no formula; the exception carries every problem with its place.</exception>
    public static Formula Build(string text) => FormulaContext.Standard.Build(text);

    /// <summary>Builds a formula over a context.</summary>
    /// <param name="text">The formula.</param>
    /// <param name="context">Functions, inputs, units and limits.</param>
    /// <exception cref="FormulaException">The text is no formula over this context; the exception carries every problem with its place.</exception>
    public static Formula Build(string text, FormulaContext context) => (context ?? throw new ArgumentNullException(nameof(context))).Build(text);

    /// <summary>Builds a formula over the standard functions and no inputs, without ever throwing.</summary>
    /// <param name="text">The formula.</param>
    /// <param name="formula">The formula; null where there are problems.</param>
    /// <param name="problems">Everything that is wrong with it.</param>
    public static bool TryBuild(string? text, out Formula? formula, out IReadOnlyList<FormulaProblem> problems) => FormulaContext.Standard.TryBuild(text, out formula, out problems);

    /// <summary>The formula as text that is built to the same formula again.</summary>
    public override string ToString() => FormulaWriter.Write(_root);

    /// <summary>The text as it was given.</summary>
    public string Text => _text;

    internal FormulaNode Root => _root;

    /// <summary>Builds a formula over a context, returning what is wrong with it instead of throwing.</summary>
    /// <param name="text">The formula.</param>
    /// <param name="context">Functions, inputs, units and limits.</param>
    /// <param name="formula">The formula; null where there are problems.</param>
    /// <param name="problems">Everything that is wrong with it, in the order of the places.</param>
    public static bool TryBuild(string? text, FormulaContext context, out Formula? formula, out IReadOnlyList<FormulaProblem> problems)
    {
        if (context is null) throw new ArgumentNullException(nameof(context));
        text ??= "";
        var found = new ProblemList(text);
        FormulaNode root = FormulaParser.Parse(text, 0, text.Length, context.Limits, context.Units, found, out int operations);
        formula = Bind(text, root, context, found, operations);
        problems = found.Sorted();
        return formula is not null;
    }

    /// <summary>Checks a tree and makes it a formula; null where anything is wrong with the text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="root">The tree.</param>
    /// <param name="context">What the formula may use.</param>
    /// <param name="problems">Where mistakes go.</param>
    /// <param name="operations">How many operators and calls are in the tree.</param>
    internal static Formula? Bind(string text, FormulaNode root, FormulaContext context, ProblemList problems, int operations)
    {
        Program? nominal = Bind(text, root, context, problems, operations, deviates: false, out int result, out bool hasUncertainTerms);
        if (nominal is null) return null;
        int uncertainResult = result;
        Program uncertain = hasUncertainTerms ? Bind(text, root, context, problems, operations, deviates: true, out uncertainResult, out _)! : nominal;
        return new Formula(text, root, context.Inputs, nominal, result, uncertain, uncertainResult);
    }

    private static Program? Bind(string text, FormulaNode root, FormulaContext context, ProblemList problems, int operations, bool deviates, out int result, out bool hasUncertainTerms)
    {
        var program = new ProgramBuilder(context.NumberInputs, context.ObjectInputs, operations);
        var binder = new FormulaBinder(text, context, context.Scope, problems, program, deviates);
        Operand whole = binder.BindFormula(root);
        hasUncertainTerms = binder.HasUncertainTerms;
        result = 0;
        if (whole.Kind is null || problems.Count > 0) return null;
        int register = binder.Register(whole);
        Program built = program.Build();
        result = whole.Kind.IsHeldAsNumber ? program.Place(register) : program.ObjectPlace(register);
        return built;
    }
}
