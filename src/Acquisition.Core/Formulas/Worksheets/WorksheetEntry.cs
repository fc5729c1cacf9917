using System;
using System.Collections.Generic;
using System.Text;

namespace Acquisition.Core.Formulas;

/// <summary>One line of an evaluated worksheet.</summary>
/// <remarks>Immutable.</remarks>
public sealed class WorksheetEntry
{
    private IReadOnlyList<Finding>? _findings;

    internal WorksheetEntry(int line, WorksheetKeyword keyword, string name, string formula, FormulaValue? value, string text)
    {
        Line = line;
        Keyword = keyword;
        Name = name;
        Formula = formula;
        Value = value;
        Text = text;
    }

    /// <summary>The line, from 1.</summary>
    public int Line { get; }

    /// <summary>What the line does.</summary>
    public WorksheetKeyword Keyword { get; }

    /// <summary>The declared name; empty for checks and shows.</summary>
    public string Name { get; }

    /// <summary>The formula of the line.</summary>
    public string Formula { get; }

    /// <summary>The value; null where there is none.</summary>
    public FormulaValue? Value { get; }

    /// <summary>
    /// The value as it is written, in the unit and with the digits the line asks for; empty where there is none. Where it asks for none, what is given is written in full, and what is
    /// computed with six digits, or as many as two digits of its standard uncertainty reach; <see cref="Value"/> has them all. A show writes its
    /// expanded uncertainty too, as <c>5020 mV ± 12 mV (k=2)</c>, unless it says <c>value only</c>.
    /// </summary>
    public string Text { get; }

    internal string TextWithUncertainty { get; set; } = "";

    /// <summary>Whether the host has given the value of this line.</summary>
    public bool IsOverridden { get; internal set; }

    /// <summary>The standard uncertainty of the value in SI (of a level in decibels), from the values stated with <c>±</c>; null where nothing is uncertain.</summary>
    public double? StandardUncertaintyInSi { get; internal set; }

    /// <summary>The verdict of a check; null for other lines.</summary>
    public WorksheetVerdict? Verdict { get; internal set; }

    /// <summary>
    /// What a check that compares has judged: its left side, or its right side where the left one is written in numbers only (<c>4.75 V &lt;= supply</c>); of two limits on one uncertain quantity, that. Null
    /// for other lines, also for checks that join conditions on several values.
    /// </summary>
    public Quantity? Checked { get; internal set; }

    /// <summary>The least that <see cref="Checked"/> may be; null where the check is no comparison, or has an upper limit.</summary>
    public Quantity? LowerLimit { get; internal set; }

    /// <summary>The most that <see cref="Checked"/> may be; null where the check is no comparison, or has a lower limit.</summary>
    public Quantity? UpperLimit { get; internal set; }

    /// <summary>By how much a check that compares is met, from its values without their uncertainties: from the lower limit up to what is checked, or from that up to the upper limit; negative where it is not met. Of levels it is in decibels. Null for other lines.</summary>
    public Quantity? Margin { get; internal set; }

    /// <summary>Whether a value exactly at the <see cref="LowerLimit"/> does not meet the check (<c>&gt;</c>, not <c>&gt;=</c>).</summary>
    public bool IsLowerLimitExcluded { get; internal set; }

    /// <summary>Whether a value exactly at the <see cref="UpperLimit"/> does not meet the check (<c>&lt;</c>, not <c>&lt;=</c>).</summary>
    public bool IsUpperLimitExcluded { get; internal set; }

    /// <summary>
    /// How a check was decided that is one comparison of uncertain values, or two limits on one quantity: what is <see cref="Checked"/> as the measured value against its limits or, where both sides are
    /// uncertain, the <see cref="Margin"/> against 0; the rule, the probability that the check is met. Null for other lines, where nothing is uncertain, and where several comparisons are joined: no
    /// probability is claimed for those.
    /// </summary>
    public ConformityDecision? Decision { get; internal set; }

    /// <summary>The comparisons of uncertain values that the verdict of a check rests on, each decided by itself: <c>and</c> is as good as the worst of them, <c>or</c> as the best. Empty where none is uncertain.</summary>
    public IReadOnlyList<WorksheetComparison> Comparisons { get; internal set; } = Array.Empty<WorksheetComparison>().Frozen();

    /// <summary>
    /// What limits the trust in the uncertainty of the line, and the remedy: of a check, the findings of the decisions that its verdict rests on; of a <c>let</c> or <c>show</c>, those of its budget. Empty
    /// where there are none, and for what is given, which the sheet states.
    /// </summary>
    public IReadOnlyList<Finding> Findings => _findings ??= FindFindings().Frozen();

    /// <summary>The budget whose findings are looked for only when somebody asks: some cost evaluations.</summary>
    internal UncertaintyBudget? Budget { get; set; }

    /// <summary>Why a check is not decided, or what is wrong with the way it compares, and what to write instead; null where there is nothing to say.</summary>
    public string? Remark { get; internal set; }

    /// <summary>What the sheet says should a check not be met; null where it says nothing.</summary>
    public string? Message { get; internal set; }

    /// <summary>Why there is no value; null where there is one.</summary>
    public string? Problem { get; internal set; }

    /// <summary>The line and what became of it; of a check, its findings below it, one to a line.</summary>
    public override string ToString() => InWords() + FindingLines();

    internal string FindingLines()
    {
        var text = new StringBuilder();
        if (Keyword != WorksheetKeyword.Check) return "";
        foreach (Finding finding in Findings) text.Append("\n      ").Append(finding);
        return text.ToString();
    }

    private List<Finding> FindFindings()
    {
        var found = new List<Finding>();
        if (Budget is not null && Keyword is WorksheetKeyword.Let or WorksheetKeyword.Show) found.AddRange(Budget.Findings);
        foreach (WorksheetComparison comparison in Comparisons)
        {
            foreach (Finding finding in comparison.Decision?.Findings ?? Array.Empty<Finding>())
            {
                if (!found.Exists(known => known.ToString() == finding.ToString())) found.Add(finding);
            }
        }
        return found;
    }

    internal string InWords()
    {
        string result = Problem ?? (Verdict is { } verdict ? WorksheetJson.Word(verdict) : TextWithUncertainty);
        return Name.Length > 0 ? $"{Name} = {result}" : $"{Formula}: {result}";
    }
}
