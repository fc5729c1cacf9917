using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Formulas;
using Acquisition.Core.Functions;

namespace Acquisition.Reports;

/// <summary>A <see cref="WorksheetResult"/> as a report: whether it passed, each check with the numbers of its verdict, each line with its value as the sheet writes it.</summary>
public static class WorksheetReport
{
    /// <summary>The report of an evaluated worksheet.</summary>
    /// <param name="result">The result.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this WorksheetResult result, string title = "Worksheet")
    {
        if (result is null) throw new ArgumentNullException(nameof(result));
        return new Report(title)
            .WithFindings(result.Entries.SelectMany(entry => entry.Findings.Select(finding => About(entry, finding))).ToArray())
            .WithVerdicts("result", "Result", new[] { Whole(result) })
            .WithVerdicts("checks", "Checks", result.Entries.Where(entry => entry.Verdict is not null).SelectMany(VerdictsOf))
            .WithTable(new ReportTable("lines", "Lines", "line", "name", "formula", "value", "standard uncertainty", "note")
                .WithRows(result.Entries.Where(entry => entry.Verdict is null).Select(entry => new[]
                {
                    ReportCell.Count(entry.Line), entry.Name, entry.Formula, Value(entry), Uncertainty(entry), entry.Problem ?? (entry.IsOverridden ? "given by the host" : ""),
                })));
    }

    /// <summary>A finding with the line it is about, because a report lists all of them in one place.</summary>
    private static Finding About(WorksheetEntry entry, Finding finding) =>
        new(finding.Code, finding.Severity, $"{(entry.Name.Length > 0 ? entry.Name : entry.Formula)}: {finding.Message}", finding.Remedy, finding.Source);

    private static ReportVerdict Whole(WorksheetResult result)
    {
        int open = result.Entries.Count(entry => entry.Problem is not null || entry.Verdict is not (null or WorksheetVerdict.Passed));
        bool isUnchecked = open == 0 && !result.HasPassed;
        return new ReportVerdict("lines without a value, and checks that are not met", isUnchecked ? null : open == 0 ? Verdict.Pass : Verdict.Fail, isUnchecked ? "nothing was checked" : open == 0 ? "passed" : "not passed")
            .WithValue(ReportCell.Count(open))
            .WithLimits(null, ReportCell.Count(0))
            .WithRule("every line has a value and every check is met");
    }

    /// <summary>A check; where it joins comparisons of uncertain values, each of them below it.</summary>
    private static IEnumerable<ReportVerdict> VerdictsOf(WorksheetEntry entry)
    {
        yield return VerdictOf(entry);
        if (entry.Decision is not null || entry.Problem is not null) yield break;
        foreach (WorksheetComparison comparison in entry.Comparisons)
        {
            string name = "part: " + comparison.Formula, text = ReportVerdict.InWords(comparison.Verdict);
            yield return (comparison.Decision is { } decision ? ConformityDecisionReport.VerdictOf(decision, name, text) : new ReportVerdict(name, comparison.Verdict, text)).WithRemark(comparison.Remark);
        }
    }

    private static ReportVerdict VerdictOf(WorksheetEntry entry)
    {
        string remarks = string.Join("; ", new[] { entry.Verdict == WorksheetVerdict.Passed ? null : entry.Message, entry.Remark }.Where(each => each is not null));
        string? remark = entry.Problem ?? (remarks.Length > 0 ? remarks : null);
        return (entry.Decision is { } decision ? Decided(entry, decision) : Compared(entry)).WithRemark(remark);
    }

    /// <summary>A decision on the value stands as it is; where the limit is uncertain too, it was one on the difference.</summary>
    private static ReportVerdict Decided(WorksheetEntry entry, ConformityDecision decision)
    {
        ReportVerdict verdict = ConformityDecisionReport.VerdictOf(decision, entry.Formula, Words(entry));
        return entry.Comparisons[0].IsDecidedByMargin && entry.Checked is { } value ? verdict
            .WithValue(ConformityDecisionReport.Limit(value)!, UncertaintyBudgetReport.Digits(decision.Measured.StandardUncertainty, 3))
            .WithLimits(ConformityDecisionReport.Limit(entry.LowerLimit), ConformityDecisionReport.Limit(entry.UpperLimit), entry.IsLowerLimitExcluded, entry.IsUpperLimitExcluded)
            .WithMargin(ReportCell.Of(decision.Measured.Value, decision.Measured.ToString(UncertaintyNotation.Concise))) : verdict;
    }

    private static ReportVerdict Compared(WorksheetEntry entry)
    {
        Verdict? outcome = entry.Verdict switch
        {
            WorksheetVerdict.Passed => Verdict.Pass,
            WorksheetVerdict.Failed => Verdict.Fail,
            WorksheetVerdict.Inconclusive => entry.Value is { IsTrue: true } ? Verdict.ConditionalPass : Verdict.ConditionalFail,
            _ => null,
        };
        var verdict = new ReportVerdict(entry.Formula, outcome, Words(entry));
        if (entry.Comparisons.Count > 0) return verdict.WithRule("each comparison by itself");
        if (entry.Checked is { } value && entry.Margin is { } margin)
        {
            return verdict.WithValue(ConformityDecisionReport.Limit(value)!)
                .WithLimits(ConformityDecisionReport.Limit(entry.LowerLimit), ConformityDecisionReport.Limit(entry.UpperLimit), entry.IsLowerLimitExcluded, entry.IsUpperLimitExcluded)
                .WithMargin(UncertaintyBudgetReport.Digits(margin, 4))
                .WithRule("by the values alone");
        }
        // Several conditions have no one value and no one limit, and no guard band either.
        return entry.Value is { Kind.IsTruth: true } truth ? verdict.WithValue(ReportCell.Of(truth.IsTrue, entry.Text)).WithRule("the condition is true, by the values alone") : verdict;
    }

    private static string Words(WorksheetEntry entry) => entry.Verdict switch
    {
        WorksheetVerdict.Passed => "passed",
        WorksheetVerdict.Failed => "failed",
        WorksheetVerdict.Inconclusive => "inconclusive",
        _ => "not evaluated",
    };

    private static ReportCell Value(WorksheetEntry entry)
    {
        if (entry.Value is not { } value) return ReportCell.Empty;
        return value.Kind.IsQuantity ? ReportCell.Of(value.Quantity, entry.Text) : value.Kind.IsTruth ? ReportCell.Of(value.IsTrue, entry.Text) : ReportCell.Of(entry.Text);
    }

    /// <summary>A level has its uncertainty in decibels, a temperature in kelvins of difference.</summary>
    private static ReportCell Uncertainty(WorksheetEntry entry)
    {
        if (entry.StandardUncertaintyInSi is not { } uncertainty || entry.Value?.Kind.Quantity is not { } kind) return ReportCell.Empty;
        QuantityKind own = kind.IsLogarithmic ? QuantityKind.DecibelRatio : kind.Nature == QuantityNature.Point ? QuantityKind.TemperatureDifference : kind;
        return UncertaintyBudgetReport.Digits(new Quantity(uncertainty, own), 3);
    }
}
