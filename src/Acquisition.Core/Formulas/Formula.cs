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

    private Formula(string text, FormulaNode root, IReadOnlyList<FormulaInput> inputs, (Program Program, int Result) nominal, (Program Program, int Result) uncertain)
    {
        _text = text;
        _root = root;
        Inputs = inputs;
        ResultKind = root.Kind!;
        (_program, _result) = nominal;
        (_uncertain, _uncertainResult) = uncertain;
        _givesNumberFromNumbers = ResultKind.IsHeldAsNumber && _program.ObjectInputs == 0;
        if (root is ConversionNode conversion) (_unit, _unitFactor) = (conversion.Unit, conversion.LocalFactor);
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

    internal static bool TryBuild(string text, FormulaContext context, out Formula? formula, out IReadOnlyList<FormulaProblem> problems)
    {
        var found = new ProblemList(text);
        FormulaNode root = FormulaParser.Parse(text, 0, text.Length, context.Limits, context.Units, found);
        formula = Bind(text, root, context, found);
        problems = found.Sorted();
        return formula is not null;
    }

    /// <summary>Checks a tree and makes it a formula; null where anything is wrong with the text.</summary>
    internal static Formula? Bind(string text, FormulaNode root, FormulaContext context, ProblemList problems)
    {
        (Program? Program, int Result) nominal = Bind(text, root, context, problems, deviates: false, out bool hasUncertainTerms);
        if (nominal.Program is null || problems.Count > 0) return null;
        (Program? Program, int Result) uncertain = hasUncertainTerms ? Bind(text, root, context, problems, deviates: true, out _) : nominal;
        return new Formula(text, root, context.Inputs, nominal!, uncertain!);
    }

    private static (Program? Program, int Result) Bind(string text, FormulaNode root, FormulaContext context, ProblemList problems, bool deviates, out bool hasUncertainTerms)
    {
        var program = new ProgramBuilder(context.NumberInputs, context.Inputs.Count - context.NumberInputs);
        var binder = new FormulaBinder(text, context.Functions, context.Scope, context.Limits, problems, program, deviates);
        Operand result = binder.BindFormula(root);
        hasUncertainTerms = binder.HasUncertainTerms;
        if (result.Kind is null || problems.Count > 0) return (null, 0);
        int register = binder.Register(result);
        Program built = program.Build();
        return (built, result.Kind.IsHeldAsNumber ? program.Place(register) : program.ObjectPlace(register));
    }
}
