using System.Globalization;
using System.Text;

namespace Acquisition.Reports;

/// <summary>Text made safe to look at: what a reader cannot see (control characters, marks of direction, halves of characters) is spelt out as \u202E.</summary>
/// <remarks>So a text from elsewhere can neither steer a terminal nor turn the order of what stands beside it, and XML can carry it.</remarks>
internal static class VisibleText
{
    /// <summary>On one line: ends of lines and tabs become spaces.</summary>
    internal static string OneLine(string text) => Write(text, keepsLines: false);

    /// <summary>With its lines.</summary>
    internal static string Lines(string text) => Write(text, keepsLines: true);

    private static string Write(string text, bool keepsLines)
    {
        StringBuilder? visible = null;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            bool isPair = char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
            bool isBreak = c is '\n' or '\r' or '\t';
            if (isPair || (!IsHidden(c) && !isBreak) || (isBreak && keepsLines))
            {
                visible?.Append(c);
                if (isPair)
                {
                    i++;
                    visible?.Append(text[i]);
                }
                continue;
            }
            visible ??= new StringBuilder(text, 0, i, text.Length + 16);
            if (isBreak)
                visible.Append(c == '\n' && i > 0 && text[i - 1] == '\r' ? "" : " ");
            else
                visible.Append("\\u").Append(((int)c).ToString("X4", CultureInfo.InvariantCulture));
        }
        return visible?.ToString() ?? text;
    }

    /// <summary>Listed here rather than asked of the runtime, whose tables of Unicode differ.</summary>
    private static bool IsHidden(char c) =>
        c < ' ' || (c >= '\u007F' && c <= '\u009F') || c is '\u061C' or '\u200B' or '\u200E' or '\u200F' or '\u2028' or '\u2029' or '\uFEFF'
        || (c >= '\u202A' && c <= '\u202E') || (c >= '\u2060' && c <= '\u206F') || (c >= '\uFFF9' && c <= '\uFFFB') || c >= '\uFFFE' || (c >= '\uD800' && c <= '\uDFFF');
}
