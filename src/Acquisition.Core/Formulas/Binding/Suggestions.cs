using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>What was probably meant by a name that is not known: offered in the message, never accepted.</summary>
internal static class Suggestions
{
    private const int LongestName = 60;

    /// <summary>What other languages and calculators call a function.</summary>
    private static readonly Dictionary<string, string> Elsewhere = new(StringComparer.OrdinalIgnoreCase)
    {
        ["log10"] = "lg", ["log"] = "lg", ["log2"] = "lb", ["average"] = "mean", ["avg"] = "mean", ["rss"] = "hypot",
    };

    internal static string? ForName(string name, IEnumerable<string> names, FunctionSet catalog) =>
        Nearest(name, names.Concat(catalog.Names)) ?? UnitSuggestions.Near(name, 0, name.Length, null, '.');

    internal static string? ForFunction(string name, FunctionSet catalog) =>
        Elsewhere.TryGetValue(name, out string? here) && catalog.Find(here).Count > 0 ? here : Nearest(name, catalog.Names);

    /// <summary>The candidate that differs by case or by the fewest letters, at most a third of them; null where none is near.</summary>
    internal static string? Nearest(string word, IEnumerable<string> candidates)
    {
        if (word.Length > LongestName) return null;
        string? nearest = null;
        int least = word.Length < 3 ? 1 : Math.Max(1, word.Length / 3) + 1;
        foreach (string candidate in candidates)
        {
            int distance = string.Equals(word, candidate, StringComparison.OrdinalIgnoreCase) ? 0 : Distance(word, candidate, least);
            if (distance < least)
            {
                least = distance;
                nearest = candidate;
            }
        }
        return nearest;
    }

    /// <summary>How many letters must be changed, added or removed to get from one word to the other (Levenshtein); at least <paramref name="limit"/> where it is more.</summary>
    private static int Distance(string left, string right, int limit)
    {
        if (Math.Abs(left.Length - right.Length) >= limit) return limit;
        var row = new int[right.Length + 1];
        for (int j = 0; j <= right.Length; j++) row[j] = j;
        for (int i = 1; i <= left.Length; i++)
        {
            int diagonal = row[0], smallest = row[0] = i;
            for (int j = 1; j <= right.Length; j++)
            {
                int change = diagonal + (left[i - 1] == right[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
                smallest = Math.Min(smallest, row[j]);
            }
            if (smallest >= limit) return limit;
        }
        return row[right.Length];
    }
}
