using System;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Parts of a text as they are quoted in messages.</summary>
internal static class Quotation
{
    private const int Longest = 40;

    /// <summary>A part of the text, cut where it is long, control characters shown as spaces.</summary>
    internal static string Of(string text, int start, int end)
    {
        end = Math.Min(end, text.Length);
        bool isCut = end - start > Longest;
        char[] part = text.Substring(start, Math.Max(0, isCut ? Longest - 3 : end - start)).ToCharArray();
        for (int i = 0; i < part.Length; i++)
        {
            if (char.IsControl(part[i])) part[i] = ' ';
        }
        return new string(part) + (isCut ? "..." : "");
    }

    internal static string WithArticle(string name) => ProblemText.Article(name);
}
