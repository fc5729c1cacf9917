using System;
using System.Linq;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Syntax;

namespace Acquisition.Core;

/// <summary>The formula language for hosts that can pass only text and numbers. Each call builds what it needs; hosts that can keep objects use <see cref="Formula"/> and <see cref="Worksheet"/>.</summary>
/// <remarks>Inputs come as texts <c>name = formula</c>, such as <c>clock = 24 MHz</c>; later ones may use earlier ones. The one exception is <see cref="FormulaException"/>.</remarks>
public static class TextFormulas
{
    /// <summary>Evaluates a formula to text: <c>Evaluate("0.35 / b in ns", "b = 100 MHz")</c> is <c>3.5 ns</c>. Where something carries ±, with the expanded uncertainty: <c>Evaluate("3 V ± 5 %")</c> is <c>3.00 V ± 170 mV (k=2)</c>.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="inputs">Inputs as <c>name = formula</c>.</param>
    /// <exception cref="FormulaException">A text is wrong, or there is no value.</exception>
    public static string Evaluate(string formula, params string[] inputs)
    {
        FormulaValue value = Value(formula, inputs);
        return value.Kind.IsQuantity && IsUncertain(formula, inputs) ? Line("show ", formula, inputs).TextWithUncertainty : value.ToString();
    }

    /// <summary>Evaluates a formula to a number in a unit: <c>EvaluateNumber("ns", "0.35 / 100 MHz")</c> is 3.5.</summary>
    /// <param name="unit">The unit of the number; empty for a plain number.</param>
    /// <param name="formula">The formula.</param>
    /// <param name="inputs">Inputs as <c>name = formula</c>.</param>
    /// <exception cref="FormulaException">A text is wrong, the formula is of another kind than the unit, or there is no value.</exception>
    public static double EvaluateNumber(string unit, string formula, params string[] inputs)
    {
        FormulaValue value = Value(formula, inputs);
        FormulaValue one = Value(string.IsNullOrWhiteSpace(unit) ? "1" : "1 " + unit, Array.Empty<string>());
        if (!value.Kind.IsQuantity || !one.Kind.Equals(value.Kind)) throw new FormulaException($"found {Quotation.WithArticle(value.Kind.Name)}, expected {Quotation.WithArticle(one.Kind.Name)} for the unit '{EchoedText.Of(unit)}'");
        if (string.IsNullOrWhiteSpace(unit)) return value.SiValue;
        // What the value is written as in the unit is exact where a quotient by 1e-9 is not, and knows the zeros of levels and temperatures.
        try
        {
            string text = new Quantity(value.SiValue, value.Kind.Quantity!).ToString(unit.Trim(), CultureInfo.InvariantCulture);
            return double.Parse(text.Substring(0, text.LastIndexOf(unit.Trim(), StringComparison.Ordinal)).TrimEnd(), NumberStyles.Float, CultureInfo.InvariantCulture);
        }
        catch (FormatException refusal)
        {
            throw new FormulaException($"'{EchoedText.Of(unit)}' is no unit to write a number in: {refusal.Message}", refusal);
        }
    }

    /// <summary>Evaluates a condition: <c>Check("seen &lt;= 1.1 * edge", "seen = 3 ns", "edge = 2.8 ns")</c>.</summary>
    /// <remarks>A value that only the rounding of arithmetic keeps from its limit is at it. Where something carries ±, it is true only where it is met with a guard band as wide as the expanded uncertainty, as a check of a worksheet is.</remarks>
    /// <param name="condition">The condition.</param>
    /// <param name="inputs">Inputs as <c>name = formula</c>.</param>
    /// <exception cref="FormulaException">A text is wrong, or it is no condition.</exception>
    public static bool Check(string condition, params string[] inputs)
    {
        FormulaValue value = Value(condition, inputs);
        return value.Kind.IsTruth ? Line("check ", condition, inputs).Verdict == WorksheetVerdict.Passed : throw new FormulaException($"found {Quotation.WithArticle(value.Kind.Name)}, expected a condition such as value <= 3 ns");
    }

    /// <summary>Checks a measured number against a limit text that names it <c>value</c>: <c>CheckValue(2.9, "ns", "value &gt;= 2 ns and value &lt;= 3 ns")</c>.</summary>
    /// <param name="reading">The number.</param>
    /// <param name="unit">Its unit; empty for a plain number.</param>
    /// <param name="limit">The condition.</param>
    /// <exception cref="FormulaException">A text is wrong, the value is not finite, or the limit is no condition.</exception>
    public static bool CheckValue(double reading, string unit, string limit)
    {
        if (double.IsNaN(reading)) throw new FormulaException("the value to check is not a number (NaN): nothing was measured that a limit could be held against");
        if (double.IsInfinity(reading)) throw new FormulaException("the value to check is not finite: nothing was measured that a limit could be held against");
        string condition = (limit ?? "").Trim();
        if (condition.Length > 0 && (condition[0] is '<' or '>' or '=' or '!')) throw new FormulaException($"the limit '{EchoedText.Of(condition)}' has nothing on its left; write value {EchoedText.Of(condition)}");
        return Check(condition, "value = " + reading.ToString("R", CultureInfo.InvariantCulture) + " " + unit);
    }

    /// <summary>Fills a template: <c>Fill("edge {{ edge : 3 ns }}", "edge = 2.8 ns")</c>. What carries ± is written with its expanded uncertainty unless the template says <c>value only</c>.</summary>
    /// <param name="template">The text with formulas in double braces.</param>
    /// <param name="inputs">Inputs as <c>name = formula</c>.</param>
    /// <exception cref="FormulaException">A text is wrong, or there is no value.</exception>
    public static string Fill(string template, params string[] inputs)
    {
        FormulaContext context = Context(inputs, out Dictionary<string, FormulaValue> values);
        return TextTemplate.Build(template ?? "", context).Fill(values);
    }

    /// <summary>Runs a worksheet to JSON (docs/worksheet.schema.json). What is wrong with the sheet is in the JSON too; this does not throw for it.</summary>
    /// <param name="worksheet">The worksheet.</param>
    /// <param name="overrides">Givens to override, as <c>name = formula</c>.</param>
    /// <exception cref="FormulaException">An override is wrong.</exception>
    public static string RunWorksheet(string worksheet, params string[] overrides)
    {
        Context(overrides, out Dictionary<string, FormulaValue> values);
        if (!Worksheet.TryBuild(worksheet, FormulaContext.Standard, out Worksheet? sheet, out IReadOnlyList<FormulaProblem> problems)) return WorksheetJson.Write(problems);
        try
        {
            return sheet!.Evaluate(values).ToJson();
        }
        catch (ArgumentException refusal)
        {
            throw new FormulaException(refusal.Message, refusal);
        }
    }

    /// <summary>The function list as Markdown, as in docs/functions.md.</summary>
    public static string Functions() => StandardFunctions.Set.ToMarkdown();

    private static bool IsUncertain(string formula, string[]? inputs)
    {
        static bool StatesUncertainty(string text) => text.Any(c => c == '±') || text.Contains("+/-");
        return StatesUncertainty(formula) || Array.Exists(inputs ?? Array.Empty<string>(), StatesUncertainty);
    }

    /// <summary>The same formulas as a worksheet of one line each, which follows their uncertainty. They have been evaluated without it before, so nothing is wrong with them.</summary>
    private static WorksheetEntry Line(string keyword, string formula, string[]? inputs)
    {
        var sheet = new StringBuilder();
        foreach (string input in inputs ?? Array.Empty<string>()) sheet.Append("given ").Append(OnOneLine(input)).Append('\n');
        IReadOnlyList<WorksheetEntry> entries = Worksheet.Build(sheet.Append(keyword).Append(OnOneLine(formula)).ToString()).Evaluate().Entries;
        return entries[entries.Count - 1];
    }

    private static string OnOneLine(string text) => text.Replace('\r', ' ').Replace('\n', ' ');

    private static FormulaValue Value(string formula, string[] inputs)
    {
        FormulaContext context = Context(inputs, out Dictionary<string, FormulaValue> values);
        return context.Build(formula ?? "").Evaluate(values);
    }

    private static FormulaContext Context(string[]? inputs, out Dictionary<string, FormulaValue> values)
    {
        FormulaContext context = FormulaContext.Standard;
        values = new Dictionary<string, FormulaValue>(StringComparer.Ordinal);
        foreach (string input in inputs ?? Array.Empty<string>())
        {
            int equals = (input ?? "").IndexOf('=');
            if (equals <= 0) throw new FormulaException($"input '{EchoedText.Of(input ?? "")}' is not written as name = formula");
            string name = input!.Substring(0, equals).Trim();
            if (context.WhyNotDeclarable(name) is { } reason) throw new FormulaException($"input '{EchoedText.Of(input ?? "")}': {reason}");
            try
            {
                Formula formula = context.Build(input.Substring(equals + 1));
                FormulaValue value = formula.Evaluate(values, out _);
                context = context.WithInput(name, value.Kind);
                values.Add(name, value);
            }
            catch (FormulaException refusal)
            {
                throw new FormulaException($"input {EchoedText.Of(name)}: {refusal.Message}", refusal);
            }
        }
        return context;
    }
}
