using System;
using System.Collections.Generic;

namespace Acquisition.Core.Explanations.Json;

/// <summary>What a misspelt name was probably meant to be.</summary>
internal static class NearestWord
{
    /// <summary>The candidate that differs from <paramref name="word"/> by the fewest single-character changes, if they are few; null otherwise.</summary>
    internal static string? Of(string word, IEnumerable<string> candidates)
    {
        if (word.Length > 60)
            return null;
        string? nearest = null;
        int fewest = Math.Max(1, word.Length / 3) + 1;
        foreach (string candidate in candidates)
        {
            int changes = Changes(word.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (changes < fewest)
            {
                fewest = changes;
                nearest = candidate;
            }
        }
        return nearest;
    }

    // The edit distance of Levenshtein 1966, one row at a time.
    private static int Changes(string from, string to)
    {
        int[] row = new int[to.Length + 1];
        for (int j = 0; j <= to.Length; j++)
            row[j] = j;
        for (int i = 1; i <= from.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.Length; j++)
            {
                int above = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (from[i - 1] == to[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }
        return row[to.Length];
    }
}
