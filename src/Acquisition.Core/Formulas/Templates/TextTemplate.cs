using System;
using System.Collections.Generic;
using System.Text;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Syntax;

namespace Acquisition.Core;

/// <summary>A text with formulas in double braces, which are replaced by their values: <c>Rise time: {{ 0.35 / bandwidth : 3 ns }}</c>.</summary>
/// <remarks>
/// After a colon stands a format of docs/notation.md, such as <c>G4 MHz</c>. A value that carries ± is written with its expanded uncertainty, <c>5000 mV ± 12 mV (k=2)</c>, unless the braces end
/// in <c>, value only</c>. Everything outside the braces stays as it is; <c>{{ "{{" }}</c> writes braces.
/// Immutable and thread-safe.
/// </remarks>
public sealed class TextTemplate
{
    /// <summary>The most formulas in one template.</summary>
    public const int MostFormulas = 10_000;

    private readonly string _text;
    private readonly IReadOnlyList<Blank> _blanks;

    private TextTemplate(string text, IReadOnlyList<FormulaInput> inputs, IReadOnlyList<Blank> blanks)
    {
        _text = text;
        Inputs = inputs.Frozen();
        _blanks = blanks;
    }

    /// <summary>One place to fill.</summary>
    private sealed class Blank(int start, int end, Formula formula, string? format, bool isValueOnly)
    {
        internal int Start { get; } = start;

        internal int End { get; } = end;

        internal Formula Formula { get; } = formula;

        internal string? Format { get; } = format;

        internal bool IsValueOnly { get; } = isValueOnly;
    }

    /// <summary>The inputs of the formulas.</summary>
    public IReadOnlyList<FormulaInput> Inputs { get; }

    /// <summary>Builds a template over the standard functions and no inputs.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="FormulaException">A formula or format is wrong; the exception carries every problem with its line and column.</exception>
    public static TextTemplate Build(string text) => Build(text, FormulaContext.Standard);

    /// <summary>Builds a template over the standard functions and no inputs, without ever throwing.</summary>
    /// <param name="text">The text.</param>
    /// <param name="template">The template; null where there are problems.</param>
    /// <param name="problems">Everything that is wrong with it, in the order of the places.</param>
    public static bool TryBuild(string? text, out TextTemplate? template, out IReadOnlyList<FormulaProblem> problems) => TryBuild(text, FormulaContext.Standard, out template, out problems);

    /// <summary>Builds a template over a context.</summary>
    /// <param name="text">The text.</param>
    /// <param name="context">What its formulas may use.</param>
    /// <exception cref="FormulaException">A formula or format is wrong; the exception carries every problem with its line and column.</exception>
    public static TextTemplate Build(string text, FormulaContext context)
    {
        if (text is null) throw new ArgumentNullException(nameof(text));
        return TryBuild(text, context, out TextTemplate? template, out IReadOnlyList<FormulaProblem> problems) ? template! : throw new FormulaException(problems);
    }

    /// <summary>Builds a template over a context, returning what is wrong with it instead of throwing.</summary>
    /// <param name="text">The text.</param>
    /// <param name="context">What its formulas may use.</param>
    /// <param name="template">The template; null where there are problems.</param>
    /// <param name="problems">Everything that is wrong with it, in the order of the places.</param>
    public static bool TryBuild(string? text, FormulaContext context, out TextTemplate? template, out IReadOnlyList<FormulaProblem> problems)
    {
        if (context is null) throw new ArgumentNullException(nameof(context));
        text ??= "";
        var found = new ProblemList(text, hasLines: true);
        var blanks = new List<Blank>();
        for (int open = text.IndexOf("{{", StringComparison.Ordinal); open >= 0;)
        {
            int close = CloseOf(text, open + 2);
            if (close < 0)
            {
                found.Add(open, open + 2, "found '{{' without its end, expected '}}'");
                break;
            }
            if (blanks.Count >= MostFormulas)
            {
                found.Add(open, open + 2, FormattableString.Invariant($"more than {MostFormulas} formulas; the template is not read further"));
                break;
            }
            if (TryRead(text, open, close, context, found, out Blank? blank)) blanks.Add(blank!);
            open = text.IndexOf("{{", close + 2, StringComparison.Ordinal);
        }
        problems = found.Sorted();
        template = problems.Count == 0 ? new TextTemplate(text, context.Inputs, blanks) : null;
        return template is not null;
    }

    /// <summary>The text with every formula replaced by its value.</summary>
    /// <remarks>Values of a worksheet's result bring their uncertainty along (<see cref="WorksheetResult.Values"/>), and with it how they hang together.</remarks>
    /// <param name="inputs">A value for each input, by name; names that the template does not know are ignored.</param>
    /// <exception cref="ArgumentException">An input is missing, or of another kind than declared.</exception>
    /// <exception cref="FormulaException">A formula has no value for these inputs; the place is that in the template.</exception>
    public string Fill(IReadOnlyDictionary<string, FormulaValue> inputs)
    {
        if (inputs is null) throw new ArgumentNullException(nameof(inputs));
        foreach (FormulaInput input in Inputs)
        {
            if (!inputs.ContainsKey(input.Name)) throw new ArgumentException($"input {input} is missing", nameof(inputs));
        }
        var filled = new StringBuilder(_text.Length);
        int from = 0;
        foreach (Blank blank in _blanks)
        {
            FormulaValue value = blank.Formula.Evaluate(inputs, out UncertaintyBudget? budget);
            string text = budget is null || blank.IsValueOnly ? value.ToString(blank.Format) : value.ToString(blank.Format, budget);
            filled.Append(_text, from, blank.Start - from).Append(text);
            from = blank.End;
        }
        return filled.Append(_text, from, _text.Length - from).ToString();
    }

    private static bool TryRead(string text, int open, int close, FormulaContext context, ProblemList problems, out Blank? blank)
    {
        blank = null;
        int before = problems.Count;
        FormulaNode root = FormulaParser.ParsePrefix(text, open + 2, close, context.Limits, context.Units, problems, out int rest);
        string? format = null;
        bool isValueOnly = false;
        int end = close;
        if (rest < close && text[rest] is ':' or ',')
        {
            int comma = text.IndexOf(',', rest, close - rest);
            if (comma >= 0 && !(isValueOnly = IsValueOnly(text.Substring(comma + 1, close - comma - 1))))
                problems.Add(comma + 1, close, $"found '{Quotation.Of(text, comma + 1, close)}', expected 'value only', which leaves the uncertainty out, or nothing");
            end = comma < 0 ? close : comma;
            if (text[rest] == ':') format = text.Substring(rest + 1, end - rest - 1).Trim();
        }
        else if (rest < close)
        {
            FormulaParser.ReportTrailing(text, rest, close, context.Limits, context.Units, problems);
        }
        Formula? formula = Formula.Bind(text, root, context, problems, operations: 0);
        if (formula is null || problems.Count > before) return false;
        if (format is not null && WhyNotFormat(formula, format) is { } reason)
        {
            problems.Add(rest + 1, end, reason);
            return false;
        }
        blank = new Blank(open, close + 2, formula, format, isValueOnly);
        return true;
    }

    private static bool IsValueOnly(string words) => string.Join(" ", words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)) == "value only";

    /// <summary>What is wrong with a format for a formula's result, tried on a value of its kind; null where nothing is.</summary>
    private static string? WhyNotFormat(Formula formula, string format)
    {
        if (formula.ResultKind.Quantity is not { } kind) return $"a {formula.ResultKind.Name} takes no format";
        try
        {
            _ = new FormulaValue(kind, 1, null, formula.Unit).ToString(format);
            return null;
        }
        catch (FormatException refusal)
        {
            return refusal.Message;
        }
    }

    private static int CloseOf(string text, int from)
    {
        bool isQuoted = false;
        for (int i = from; i < text.Length; i++)
        {
            if (text[i] == '"') isQuoted = !isQuoted;
            if (!isQuoted && text[i] == '}' && i + 1 < text.Length && text[i + 1] == '}') return i;
        }
        return -1;
    }
}
