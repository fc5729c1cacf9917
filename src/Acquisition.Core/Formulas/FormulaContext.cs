using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Binding;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core;

/// <summary>What a formula may use: functions, inputs, units of the host's own, and how much it may ask for.</summary>
/// <remarks>Immutable and thread-safe; each <c>With</c> method gives a new context. Nothing is global: a host keeps the contexts it needs.</remarks>
public sealed class FormulaContext
{
    private readonly FunctionSet? _functions;
    private readonly FormulaInput[] _inputs;

    private FormulaContext(FunctionSet? functions, FormulaInput[] inputs, LocalUnits units, FormulaLimits limits)
    {
        _functions = functions;
        _inputs = inputs;
        Units = units;
        Limits = limits;
        Scope = FormulaScope.Of(inputs, out int numbers);
        NumberInputs = numbers;
    }

    /// <summary>Every function of the library, no inputs, no units of its own, the default limits.</summary>
    public static FormulaContext Standard { get; } = new(null, [], LocalUnits.None, FormulaLimits.Default);

    /// <summary>What formulas may call.</summary>
    public FunctionSet Functions => _functions ?? StandardFunctions.Set;

    /// <summary>The inputs, in the order in which they were declared and are given by place.</summary>
    public IReadOnlyList<FormulaInput> Inputs => Array.AsReadOnly(_inputs);

    /// <summary>How much a text may ask for.</summary>
    public FormulaLimits Limits { get; }

    internal LocalUnits Units { get; }

    /// <summary>The inputs as a formula finds them; nobody changes it.</summary>
    internal FormulaScope Scope { get; }

    internal int NumberInputs { get; }

    internal int ObjectInputs => _inputs.Length - NumberInputs;

    /// <summary>This context with one more input.</summary>
    /// <param name="name">The name that formulas use: letters, digits and underscores.</param>
    /// <param name="kind">What it must be.</param>
    /// <exception cref="ArgumentException">The name is taken by an input, a unit, a constant or a word of the language.</exception>
    public FormulaContext WithInput(string name, ValueKind kind)
    {
        if (kind is null) throw new ArgumentNullException(nameof(kind));
        if (kind.IsAnyQuantity) throw new ArgumentException($"input {name} needs a kind of its own", nameof(kind));
        if (WhyNotDeclarable(name) is { } reason) throw new ArgumentException(reason, nameof(name));
        return new FormulaContext(_functions, [.. _inputs, new FormulaInput(name, kind)], Units, Limits);
    }

    /// <summary>This context with an input for every name that a worksheet declares, for formulas and templates over its result.</summary>
    /// <param name="worksheet">The worksheet.</param>
    /// <exception cref="ArgumentException">A name is taken in this context.</exception>
    public FormulaContext WithNamesOf(Worksheet worksheet)
    {
        if (worksheet is null) throw new ArgumentNullException(nameof(worksheet));
        return worksheet.Statements.Where(statement => statement.Name.Length > 0).Aggregate(this, (context, statement) => context.WithInput(statement.Name, statement.Kind));
    }

    /// <summary>This context with more functions.</summary>
    /// <param name="functions">The functions.</param>
    /// <exception cref="ArgumentException">A function cannot be told apart from one that is declared already, or is not complete.</exception>
    public FormulaContext WithFunctions(params FunctionDefinition[] functions) => new(Functions.With(functions), _inputs, Units, Limits);

    /// <summary>This context with a unit of the host's own, such as <c>tick</c> for <c>10 ns</c>. It takes no prefix.</summary>
    /// <param name="name">The unit's symbol: letters, digits and underscores.</param>
    /// <param name="definition">What one of it is, as the text of a linear quantity above zero.</param>
    /// <exception cref="ArgumentException">The name is taken, or the quantity cannot be a unit.</exception>
    /// <exception cref="QuantityFormatException"><paramref name="definition"/> is no quantity.</exception>
    public FormulaContext WithUnit(string name, string definition)
    {
        if (WhyNotDeclarable(name) is { } reason) throw new ArgumentException(reason, nameof(name));
        Quantity quantity = Quantity.Parse(definition, null);
        if (quantity.Kind.Nature != QuantityNature.Linear || !(quantity.SiValue > 0)) throw new ArgumentException($"unit {name} must be a linear quantity above 0; was {definition}", nameof(definition));
        return new FormulaContext(_functions, _inputs, Units.With(name, quantity), Limits);
    }

    /// <summary>This context with other limits.</summary>
    /// <param name="limits">The limits.</param>
    public FormulaContext WithLimits(FormulaLimits limits) => new(_functions, _inputs, Units, limits ?? throw new ArgumentNullException(nameof(limits)));

    /// <summary>Builds a formula.</summary>
    /// <param name="text">The formula.</param>
    /// <exception cref="FormulaException">The text is no formula over this context; the exception carries every problem with its place.</exception>
    public Formula Build(string text) =>
        TryBuild(text ?? throw new ArgumentNullException(nameof(text)), out Formula? formula, out IReadOnlyList<FormulaProblem> problems) ? formula! : throw new FormulaException(problems);

    /// <summary>Builds a formula without ever throwing.</summary>
    /// <param name="text">The formula.</param>
    /// <param name="formula">The formula; null where there are problems.</param>
    /// <param name="problems">Everything that is wrong with it, in the order of the places.</param>
    /// <returns>Whether the text is a formula.</returns>
    public bool TryBuild(string? text, out Formula? formula, out IReadOnlyList<FormulaProblem> problems) => Formula.TryBuild(text, this, out formula, out problems);

    /// <summary>Why a name cannot be declared; null where it can.</summary>
    internal string? WhyNotDeclarable(string name)
    {
        if (string.IsNullOrEmpty(name)) return "a name has at least one letter";
        for (int i = 0; i < name.Length; i++)
        {
            if (!FormulaParser.IsNamePart(name[i]) || (i == 0 && !FormulaParser.IsNameStart(name[0]))) return $"'{EchoedText.Of(name)}' is no name: letters, digits and underscores, a letter first";
        }
        if (FunctionSet.ReservedWords.Contains(name)) return $"'{name}' is a word of the formula language and cannot be a name";
        if (UnitReader.IsUnit(name)) return $"'{name}' is a unit and cannot be a name; did you mean {name}_value?";
        if (Units.TryFind(name, out _)) return $"'{name}' is a unit declared already";
        if (Inputs.Any(input => input.Name == name)) return $"'{name}' is declared already";
        if (name == "π") return "'π' is a constant and cannot be a name; did you mean pi_value?";
        if (Functions.Find(name).Any(function => function.Parameters.Count == 0)) return $"'{name}' is a constant and cannot be a name; did you mean {name}_value?";
        return null;
    }
}
