using System.Collections.Generic;

namespace Acquisition.Reports;

/// <summary>Breaks text into lines at spaces; a word longer than a line is cut between characters, never within one.</summary>
internal static class TextWrap
{
    /// <summary>How many columns a text takes: its characters, a pair of surrogates being one.</summary>
    internal static int Columns(string text)
    {
        int columns = 0;
        for (int i = 0; i < text.Length; i++)
        {
            if (!char.IsLowSurrogate(text[i])) columns++;
        }
        return columns;
    }

    internal static int LongestWord(string text)
    {
        int longest = 1;
        foreach (string word in text.Split(' ')) longest = System.Math.Max(longest, Columns(word));
        return longest;
    }

    /// <param name="text">The text.</param>
    /// <param name="width">The columns of a line.</param>
    /// <param name="indent">What stands before all lines but the first; left out where it would take half the line.</param>
    internal static List<string> Of(string text, int width, string indent = "")
    {
        if (indent.Length > width / 2) indent = "";
        var lines = new List<string>();
        string rest = text;
        while (Columns(rest) > width)
        {
            int most = Index(rest, width), cut = most;
            while (cut > 0 && rest[cut] != ' ') cut--;
            bool isBlank = cut == 0 || rest.Substring(0, cut).Trim(' ').Length == 0;
            if (isBlank) cut = most;
            lines.Add(rest.Substring(0, cut).TrimEnd(' '));
            rest = indent + rest.Substring(cut).TrimStart(' ');
        }
        lines.Add(rest);
        return lines;
    }

    /// <summary>The index of the first character beyond so many columns.</summary>
    private static int Index(string text, int columns)
    {
        int i = 0;
        for (int taken = 0; i < text.Length && taken < columns; taken++) i += char.IsHighSurrogate(text[i]) && i + 1 < text.Length ? 2 : 1;
        return i;
    }
}
