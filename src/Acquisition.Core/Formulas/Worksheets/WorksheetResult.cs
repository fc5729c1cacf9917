using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Core.Formulas;

/// <summary>An evaluated worksheet: the lines in their order with values and verdicts.</summary>
/// <remarks>Immutable.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed class WorksheetResult
{
    internal WorksheetResult(IReadOnlyList<WorksheetEntry> entries) => Entries = entries.Frozen();

    /// <summary>The lines, in the order of the sheet.</summary>
    public IReadOnlyList<WorksheetEntry> Entries { get; }

    /// <summary>Whether there is a check, every check is met, and every line has a value.</summary>
    public bool HasPassed
    {
        get
        {
            bool isChecked = false;
            foreach (WorksheetEntry entry in Entries)
            {
                if (entry.Problem is not null || entry.Verdict is not (null or WorksheetVerdict.Passed)) return false;
                isChecked |= entry.Verdict is not null;
            }
            return isChecked;
        }
    }

    /// <summary>The value of a declared name.</summary>
    /// <param name="name">The name after <c>given</c> or <c>let</c>.</param>
    /// <exception cref="KeyNotFoundException">No line declares the name.</exception>
    /// <exception cref="InvalidOperationException">The line has no value.</exception>
    public FormulaValue this[string name]
    {
        get
        {
            foreach (WorksheetEntry entry in Entries)
            {
                if (entry.Name == name && name.Length > 0) return entry.Value ?? throw new InvalidOperationException($"'{name}' has no value: {entry.Problem}");
            }
            throw new KeyNotFoundException($"no line declares '{name}'");
        }
    }

    /// <summary>The values of the declared names, for formulas and templates; names without a value are left out.</summary>
    public IReadOnlyDictionary<string, FormulaValue> Values
    {
        get
        {
            var values = new Dictionary<string, FormulaValue>(StringComparer.Ordinal);
            foreach (WorksheetEntry entry in Entries)
            {
                if (entry.Name.Length > 0 && entry.Value is { } value) values[entry.Name] = value;
            }
            return values;
        }
    }

    /// <summary>The result as JSON; docs/worksheet.schema.json describes it.</summary>
    public string ToJson() => WorksheetJson.Write(this);

    /// <summary>One line for each entry: its line in the sheet, the verdict where there is one, name or formula, and value; below a check, its findings.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        foreach (WorksheetEntry entry in Entries)
        {
            if (text.Length > 0) text.Append('\n');
            text.AppendFormat(CultureInfo.InvariantCulture, "{0,4}  {1}", entry.Line, entry.InWords());
            if (entry.Verdict is not null and not WorksheetVerdict.Passed && entry.Message is { } message) text.Append(": ").Append(message);
            if (entry.Remark is { } remark) text.Append(" (").Append(remark).Append(')');
            text.Append(entry.FindingLines());
        }
        return text.ToString();
    }
}
