using System;
using System.Collections.Generic;

namespace Acquisition.Core.Formulas.Worksheets.Checks;

/// <summary>What became of a demand: the verdict, and the comparisons of uncertain values that it rests on.</summary>
internal sealed class Outcome
{
    private Outcome(Verdict verdict, IReadOnlyList<WorksheetComparison> comparisons, ConformityDecision? decision)
    {
        Verdict = verdict;
        Comparisons = comparisons;
        Decision = decision;
    }

    internal Verdict Verdict { get; }

    internal IReadOnlyList<WorksheetComparison> Comparisons { get; }

    /// <summary>The decision that is the whole of it; null where several comparisons are joined, or none is uncertain.</summary>
    internal ConformityDecision? Decision { get; }

    internal static Outcome Exact(bool isMet) => isMet ? Met : NotMet;

    internal static Outcome Of(WorksheetComparison comparison) => new(comparison.Verdict, new[] { comparison }, comparison.Decision);

    internal static Outcome Undecided(string formula, bool isMet, string reason) =>
        Of(new WorksheetComparison(formula, isMet ? Verdict.ConditionalPass : Verdict.ConditionalFail, null, remark: reason));

    /// <summary>This and another outcome joined.</summary>
    internal Outcome With(Outcome other, Verdict verdict)
    {
        var comparisons = new List<WorksheetComparison>(Comparisons);
        foreach (WorksheetComparison comparison in other.Comparisons)
        {
            if (!comparisons.Contains(comparison)) comparisons.Add(comparison);
        }
        return new Outcome(verdict, comparisons, null);
    }

    private static readonly Outcome Met = new(Verdict.Pass, Array.Empty<WorksheetComparison>(), null);
    private static readonly Outcome NotMet = new(Verdict.Fail, Array.Empty<WorksheetComparison>(), null);
}
