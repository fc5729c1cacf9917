using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Reports;

/// <summary>How much room a text takes at most, without asking for a font: the wider of two usual sans serif faces for each character, so that nothing is clipped whatever the reader has.</summary>
internal static class TextExtent
{
    /// <summary>Room above the base line, and below it, in parts of the font size.</summary>
    internal const double Ascent = 0.95, Descent = 0.25;

    private const int Widest = 1100;

    private static readonly char[] Space = { ' ' };

    /// <summary>Space to tilde, in thousandths of the font size: the larger of DejaVu Sans 2.37 and Liberation Sans 2.1 (tests/scripts/font-widths.py).</summary>
    private static readonly short[] Ascii =
    {
        318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361, 318, 337, 637, 637, 637, 637, 637, 637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 557,
        1016, 685, 686, 723, 770, 667, 611, 778, 752, 295, 500, 667, 558, 863, 748, 788, 667, 788, 723, 667, 611, 732, 685, 989, 686, 667, 686, 391, 337, 391, 838, 557,
        500, 613, 635, 550, 635, 616, 353, 635, 634, 278, 278, 580, 278, 975, 634, 612, 635, 635, 412, 521, 393, 634, 592, 818, 592, 592, 525, 637, 337, 637, 838,
    };

    /// <summary>The width of a text in the units of its font size.</summary>
    internal static double Width(string text, double fontSize)
    {
        int thousandths = 0;
        foreach (char c in text) thousandths += WidthOf(c);
        return thousandths * fontSize / 1000;
    }

    /// <summary>The text, or its beginning and an ellipsis where it is wider than allowed.</summary>
    internal static string Fit(string text, double width, double fontSize)
    {
        if (Width(text, fontSize) <= width) return text;
        double room = width - Width("…", fontSize);
        if (room < 0) return "";
        int length = 0;
        while (length < text.Length)
        {
            int next = length + (char.IsHighSurrogate(text[length]) && length + 1 < text.Length ? 2 : 1);
            if (Width(text.Substring(0, next), fontSize) > room) break;
            length = next;
        }
        return text.Substring(0, length).TrimEnd() + "…";
    }

    /// <summary>The text in lines of at most a width, broken at spaces; what does not fit into the last line ends in an ellipsis.</summary>
    internal static IReadOnlyList<string> Wrap(string text, double width, double fontSize, int mostLines)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        string[] words = text.Split(Space, StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < words.Length; i++)
        {
            string longer = line.Length == 0 ? words[i] : line + " " + words[i];
            if (Width(longer, fontSize) <= width)
            {
                line.Clear().Append(longer);
                continue;
            }
            if (lines.Count == mostLines - 1)
            {
                lines.Add(Fit(line.Length == 0 ? string.Join(" ", words, i, words.Length - i) : line + " " + string.Join(" ", words, i, words.Length - i), width, fontSize));
                return lines;
            }
            if (line.Length > 0) lines.Add(line.ToString());
            line.Clear().Append(Fit(words[i], width, fontSize));
        }
        if (line.Length > 0) lines.Add(line.ToString());
        return lines;
    }

    private static int WidthOf(char c)
    {
        if (c >= ' ' && c <= '~') return Ascii[c - ' '];
        switch (c)
        {
            case 'µ': return 637;
            case '°': return 500;
            case '−' or '±' or '×' or 'ω' or '≤' or '≥': return 838;
            case '²' or '³' or '·' or '₀': return 401;
        }
        return CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark ? 0 : Widest;
    }
}
