using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Core.Planning;

/// <summary>Lays results out as plain text. It prints what is there and computes nothing.</summary>
internal sealed class PlainText
{
    private const int LabelWidth = 22;
    private readonly StringBuilder _text = new();

    /// <summary>A quantity to four significant digits; counts in full, ratios in percent.</summary>
    internal static string Short<T>(T value)
        where T : struct, IQuantity
    {
        Quantity quantity = value.ToQuantity();
        return ReferenceEquals(quantity.Kind, PointCount.Kind) ? value.ToString()! : Short(quantity.SiValue, quantity.Kind);
    }

    internal static string Short(double value, QuantityKind kind) => ReferenceEquals(kind, Ratio.Kind) ? Share(value) : QuantityText.Format(Round(value), kind, null, null);

    // Percent where a person thinks in percent, ppm and ppb below.
    private static string Share(double value)
    {
        double size = Math.Abs(value);
        (double scaled, string unit) = size >= 1e-4 || size < 1e-12 ? (100 * value, " %") : size >= 1e-7 ? (1e6 * value, " ppm") : (1e9 * value, " ppb");
        return (size < 1e-12 ? "0" : Number(scaled)) + unit;
    }

    /// <summary>A plain number to four significant digits.</summary>
    internal static string Number(double value) => Round(value).ToString(CultureInfo.InvariantCulture);

    internal static double Round(double value) => double.Parse(value.ToString("E3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    internal void Line(string line) => _text.Append(line).Append('\n');

    internal void Row(string label, string value) => _text.Append("  ").Append(label.PadRight(LabelWidth)).Append(label.Length >= LabelWidth ? " " : "").Append(value).Append('\n');

    internal void Note(string text) => _text.Append(' ', LabelWidth + 4).Append(text).Append('\n');

    /// <summary>An explained value with its reason and the rules of thumb below it; nothing where there is none.</summary>
    internal void Value<T>(string label, string bound, Explained<T>? value, string? verdict = null)
        where T : struct, IQuantity
    {
        if (value is null)
            return;
        Row(label, (bound.Length == 0 ? "" : bound + " ") + Short(value.Value) + (verdict is null ? "" : "   " + verdict));
        Note(value.Method + " (" + value.Source + ")");
        foreach (RuleOfThumb<T> rule in value.Rules)
            Note(FormattableString.Invariant($"rule of thumb {rule.Rule}: {Short(rule.Value)} ({rule.Difference.Percent:+0.0;-0.0;0} %)"));
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
