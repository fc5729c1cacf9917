namespace Acquisition.Core.Formulas;

/// <summary>One comparison of a check of a worksheet, decided by itself: of uncertain values by the decision rule, of exact ones as it is.</summary>
/// <remarks>Immutable.</remarks>
public sealed class WorksheetComparison
{
    internal WorksheetComparison(string formula, Verdict verdict, ConformityDecision? decision, bool isMargin = false, string? remark = null)
    {
        Formula = formula;
        Verdict = verdict;
        Decision = decision;
        IsDecidedByMargin = isMargin;
        Remark = remark;
    }

    /// <summary>The comparison as it is asked for: <c>not (v &gt; 5 V)</c> asks for <c>v &lt;= 5 V</c>.</summary>
    public string Formula { get; }

    /// <summary>The verdict in four states; the two in the middle are not decided.</summary>
    public Verdict Verdict { get; }

    /// <summary>How it was decided; null where a rule has nothing to decide (<c>==</c>, <c>!=</c>, or a reason in <see cref="Remark"/>).</summary>
    public ConformityDecision? Decision { get; }

    /// <summary>Whether the decision is on the margin, which must not be negative, because both sides are uncertain; else it is on the value of one side, and the other is its limit.</summary>
    public bool IsDecidedByMargin { get; }

    /// <summary>Why it cannot be decided, and what to write instead; null where there is nothing to say.</summary>
    public string? Remark { get; }

    /// <summary>The comparison, its verdict, and what is to be said about it.</summary>
    public override string ToString() => $"{Formula}: {ConformityDecision.InWords(Verdict)}{(Remark is null ? "" : " (" + Remark + ")")}";
}
