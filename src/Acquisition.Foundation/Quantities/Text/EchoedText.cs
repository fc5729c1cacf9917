using System.Globalization;
using System.Text;

namespace Acquisition.Core;

/// <summary>
/// Text of a user as a message repeats it: cut where it is long, on one line, and what cannot be seen, or turns the direction of writing, spelt out as <c>U+202E</c>, so that a message says what it
/// looks like it says.
/// </summary>
internal static class EchoedText
{
    private const int Longest = 40;

    internal static string Of(string text)
    {
        bool isCut = text.Length > Longest;
        int end = isCut ? Longest - 3 : text.Length;
        if (isCut && char.IsHighSurrogate(text[end - 1])) end--;
        var plain = new StringBuilder(end + 3);
        for (int i = 0; i < end; i++)
        {
            char c = text[i];
            bool isPair = char.IsHighSurrogate(c) && i + 1 < end && char.IsLowSurrogate(text[i + 1]);
            if (c is '\t' or '\r' or '\n') plain.Append(' ');
            else if (IsHidden(text, i, isPair)) plain.Append("U+").Append((isPair ? char.ConvertToUtf32(c, text[i + 1]) : c).ToString("X4", CultureInfo.InvariantCulture));
            else plain.Append(text, i, isPair ? 2 : 1);
            if (isPair) i++;
        }
        return isCut ? plain.Append("...").ToString() : plain.ToString();
    }

    private static bool IsHidden(string text, int at, bool isPair)
    {
        UnicodeCategory category = isPair ? CharUnicodeInfo.GetUnicodeCategory(text, at) : CharUnicodeInfo.GetUnicodeCategory(text[at]);
        return category is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate;
    }
}
