using System;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Parts of a text as they are quoted in messages.</summary>
internal static class Quotation
{
    /// <summary>A part of the text as a message repeats it.</summary>
    internal static string Of(string text, int start, int end)
    {
        end = Math.Min(end, text.Length);
        return EchoedText.Of(text.Substring(start, Math.Max(0, end - start)));
    }

    internal static string WithArticle(string name) => ProblemText.Article(name);
}
