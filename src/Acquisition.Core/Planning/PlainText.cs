using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace Acquisition.Core.Planning;

/// <summary>Lays results out as plain text. It prints what is there and computes nothing.</summary>
internal sealed class PlainText
{
    private const int LabelWidth = 22;
    private readonly StringBuilder _text = new();
    private readonly HashSet<string> _assumed = [];

    internal void Line(string line) => _text.Append(line).Append('\n');

    internal void Row(string label, string value) => _text.Append("  ").Append(label.PadRight(LabelWidth)).Append(label.Length >= LabelWidth ? " " : "").Append(value).Append('\n');

    internal void Note(string text) => _text.Append(' ', LabelWidth + 4).Append(text).Append('\n');

    /// <summary>An explained value with its reason, the rules of thumb and what it assumes below it, each assumption once in a text; nothing where there is none.</summary>
    internal void Value<T>(string label, string bound, Explained<T>? value, string? verdict = null)
        where T : struct, IQuantity
    {
        if (value is null)
            return;
        Row(label, (bound.Length == 0 ? "" : bound + " ") + value.Value.InWords() + (verdict is null ? "" : "   " + verdict));
        Note(value.Method + " (" + value.Source + ")");
        foreach (RuleOfThumb<T> rule in value.Rules)
            Note(FormattableString.Invariant($"rule of thumb {rule.Rule}: {rule.Value.InWords()} ({rule.Difference.Percent:+0.0;-0.0;0} %)"));
        foreach (string assumption in value.Assumptions.Where(_assumed.Add))
            Note("assumes: " + assumption);
    }

    internal void Findings(IReadOnlyList<Finding> findings)
    {
        foreach (Finding finding in findings)
        {
            Line(finding.Severity.ToString().ToUpperInvariant() + " " + finding.Code + ": " + finding.Message);
            if (finding.Remedy is not null)
                Line("    -> " + finding.Remedy);
        }
    }

    public override string ToString() => _text.ToString();
}
