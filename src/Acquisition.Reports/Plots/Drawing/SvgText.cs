using System;
using System.Globalization;
using System.Text;

namespace Acquisition.Reports;

/// <summary>Numbers and texts as they stand in the SVG: rounded by integer arithmetic, so that runtimes cannot differ in them, and escaped.</summary>
internal static class SvgText
{
    /// <summary>A coordinate in hundredths.</summary>
    internal static string Number(double value)
    {
        long hundredths = (long)Math.Round(value * 100);
        string sign = hundredths < 0 ? "-" : "";
        long magnitude = Math.Abs(hundredths);
        string whole = (magnitude / 100).ToString(CultureInfo.InvariantCulture);
        string rest = (magnitude % 100).ToString("00", CultureInfo.InvariantCulture).TrimEnd('0');
        return rest.Length == 0 ? sign + whole : $"{sign}{whole}.{rest}";
    }

    /// <summary>Appends a text whose holes are texts already.</summary>
    internal static StringBuilder Put(this StringBuilder svg, FormattableString text) => svg.Append(FormattableString.Invariant(text));

    /// <summary>A text for an element or an attribute; what XML 1.0 (2.2) does not allow becomes U+FFFD, the replacement character.</summary>
    internal static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length + 16);
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            switch (c)
            {
                case '&': escaped.Append("&amp;"); break;
                case '<': escaped.Append("&lt;"); break;
                case '>': escaped.Append("&gt;"); break;
                case '"': escaped.Append("&quot;"); break;
                case '\t' or '\n' or '\r': escaped.Append(c); break;
                default:
                    if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1])) escaped.Append(c).Append(text[++i]);
                    else escaped.Append(c < ' ' || char.IsSurrogate(c) || c >= '\uFFFE' ? '\uFFFD' : c);
                    break;
            }
        }
        return escaped.ToString();
    }

    /// <summary>One line of text: every kind of white space is a plain space.</summary>
    internal static string OneLine(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (char c in text) line.Append(char.IsWhiteSpace(c) || char.IsControl(c) ? ' ' : c);
        return line.ToString();
    }
}
