using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Attribution;

namespace Acquisition.Core;

/// <summary>Elements that a set of sweeps cannot tell apart, in words, and the measurements that would (handbook 10.3, 10.6).</summary>
public sealed class Ambiguity
{
    internal Ambiguity(double[] vector, IReadOnlyList<string> elements, IReadOnlyList<AttributionRow> rows, NullSpace open, double low, double high)
    {
        Elements = elements.Where((_, i) => vector[i] != 0).Frozen();
        From = Frequency.FromSi(low, "frequency");
        To = Frequency.FromSi(high, "frequency");
        Text = InText(vector, elements);
        Remedies = Cures(vector, elements, rows, open).Frozen();
    }

    /// <summary>The elements that it is about.</summary>
    public IReadOnlyList<string> Elements { get; }

    /// <summary>From this frequency on.</summary>
    public Frequency From { get; }

    /// <summary>Up to this one.</summary>
    public Frequency To { get; }

    /// <summary>What can change without any sweep noticing.</summary>
    public string Text { get; }

    /// <summary>Measurements each of which would end it.</summary>
    public IReadOnlyList<string> Remedies { get; }

    private static string InText(double[] vector, IReadOnlyList<string> elements)
    {
        string[] more = Terms(vector, elements, 1), less = Terms(vector, elements, -1);
        if (more.Length == 1 && less.Length == 0)
            return $"{more[0]} is in no path: nothing is known of it";
        if (more.Length == 1 && less.Length == 1)
            return $"any number of decibels can move between {more[0]} and {less[0]}: the sweeps know only {more[0]} + {less[0]}";
        return $"x dB more in {And(more)}" + (less.Length > 0 ? $" with x dB less in {And(less)}" : "") + " changes no sweep, whatever x is: sums along the paths are known, the elements are not";
    }

    private static string[] Terms(double[] vector, IReadOnlyList<string> elements, int sign) =>
        Enumerable.Range(0, vector.Length).Where(i => Math.Sign(vector[i]) == sign)
            .Select(i => Math.Abs(vector[i]) == 1 ? elements[i] : $"{elements[i]} ({FewDigits.Number(Math.Abs(vector[i]))} times)").ToArray();

    private static string And(string[] names) =>
        names.Length == 1 ? names[0] : string.Join(", ", names.Take(names.Length - 1).ToArray()) + " and " + names[names.Length - 1] + " each";

    /// <summary>Paths with an inner element left out, then ends and inner elements measured on their own; only what the null vector would show in.</summary>
    private static List<string> Cures(double[] vector, IReadOnlyList<string> elements, IReadOnlyList<AttributionRow> rows, NullSpace open)
    {
        var cures = new List<string>();
        AttributionRow[] measured = rows.Where(r => r.Evidence == AttributionEvidence.Measured).ToArray();
        foreach (AttributionRow row in measured)
        {
            for (int k = 1; k < row.Elements.Count - 1 && cures.Count < 2; k++)
            {
                string[] rest = row.Elements.Where((_, i) => i != k).ToArray();
                double[] combination = elements.Select(e => rest.Contains(e) ? 1.0 : 0).ToArray();
                string cure = $"a sweep of {AttributionRow.Join(rest)}, with {row.Elements[k]} taken out";
                if (NullSpace.Dot(vector, combination) != 0 && !open.Determines(combination) && !cures.Contains(cure))
                    cures.Add(cure);
            }
        }
        for (int i = 0; i < elements.Count; i++)
        {
            if (vector[i] == 0)
                continue;
            string element = elements[i];
            bool source = measured.Any(r => r.Elements.Count > 1 && r.Elements[0] == element), receiver = measured.Any(r => r.Elements.Count > 1 && r.Elements[r.Elements.Count - 1] == element);
            cures.Add(source ? $"{element} on its own: a power sensor at its output, added as known"
                : receiver ? $"{element} on its own: a source of known response into it, added as known"
                : $"{element} on its own: in a fixture of known loss, added as known");
        }
        return cures;
    }

    /// <summary>The text with its cures.</summary>
    public override string ToString() => $"{Text}. To tell: {string.Join("; or ", Remedies.ToArray())}";
}
