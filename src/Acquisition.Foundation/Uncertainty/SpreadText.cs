using System;
using System.Globalization;

namespace Acquisition.Core.Uncertainty;

/// <summary>Reads a spread as data sheets and certificates state it: <c>± 5 %</c>, <c>5 % (k=2)</c>, <c>0.2 dB (p=95 %)</c>, <c>10 mV (triangular)</c>.</summary>
internal static class SpreadText
{
    private const string Expected = "a width such as '5 %', and after it nothing, (k=2), (p=95 %), (standard), (rectangular), (triangular) or (arcsine)";

    /// <summary>Null with the reason where the text is no spread.</summary>
    internal static Spread? Read(string? text, out string? problem)
    {
        problem = null;
        string rest = (text ?? "").Trim();
        if (rest.Length > 0 && rest[0] == '±') rest = rest.Substring(1).TrimStart();
        else if (rest.StartsWith("+-", StringComparison.Ordinal)) rest = rest.Substring(2).TrimStart();
        string statement = "";
        int open = rest.LastIndexOf('(');
        if (open > 0 && rest[rest.Length - 1] == ')' && Statement(rest.Substring(open + 1, rest.Length - open - 2)) is { } found)
        {
            statement = found;
            rest = rest.Substring(0, open).TrimEnd();
        }
        if (!Quantity.TryParse(rest, out Quantity width) || width.SiValue < 0)
        {
            problem = $"found '{text}', expected {Expected}";
            return null;
        }
        try
        {
            return Of(width, statement);
        }
        catch (ArgumentOutOfRangeException refusal)
        {
            problem = refusal.Message;
            return null;
        }
    }

    /// <summary>What stands between the parentheses, without spaces; null where it is no statement (a unit may have parentheses too).</summary>
    private static string? Statement(string text)
    {
        string compact = text.Replace(" ", "");
        return compact is "standard" or "rectangular" or "triangular" or "arcsine" || compact.StartsWith("k=", StringComparison.Ordinal) || compact.StartsWith("p=", StringComparison.Ordinal) ? compact : null;
    }

    private static Spread? Of(Quantity width, string statement) => statement switch
    {
        "" or "rectangular" => Spread.Bound(width),
        "standard" => Spread.Standard(width),
        "triangular" => Spread.Triangular(width),
        "arcsine" => Spread.Arcsine(width),
        _ when statement[0] == 'k' => Spread.Expanded(width, Number(statement.Substring(2), "coverageFactor")),
        _ => Spread.WithProbability(width, Ratio.FromFraction(statement.Length > 0 && statement[statement.Length - 1] == '%'
            ? Number(statement.Substring(2, statement.Length - 3), "probability") / 100
            : Number(statement.Substring(2), "probability"))),
    };

    /// <summary>A number, read as every other quantity is.</summary>
    private static double Number(string text, string what) =>
        Quantity.TryParse(text, out Quantity number) && ReferenceEquals(number.Kind, QuantityKind.Ratio)
            ? number.SiValue
            : throw new ArgumentOutOfRangeException(what, string.Format(CultureInfo.InvariantCulture, "{0} must be a plain number; was '{1}'", what, text));
}
