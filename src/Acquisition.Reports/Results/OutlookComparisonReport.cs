using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>An <see cref="OutlookComparison"/> as a report: what the second set-up changes, which findings go and which come.</summary>
public static class OutlookComparisonReport
{
    /// <summary>The report of a comparison.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="title">The title of the report.</param>
    /// <param name="first">The name of the first set-up.</param>
    /// <param name="second">The name of the second set-up.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this OutlookComparison comparison, string title = "Two set-ups", string first = "first", string second = "second")
    {
        if (comparison is null) throw new ArgumentNullException(nameof(comparison));
        if (first is null) throw new ArgumentNullException(nameof(first));
        if (second is null) throw new ArgumentNullException(nameof(second));
        var report = new Report(title);
        bool isSame = comparison.Differences.Count + comparison.FindingsGone.Count + comparison.FindingsAdded.Count == 0;
        if (isSame) return report.WithParagraph("The two set-ups do not differ.");
        report = report.WithTable(new ReportTable("differences", "What differs", "what", first, second, "change").WithRows(comparison.Differences.Select(x => new[]
        {
            x.Name, Cell(x.FirstQuantity, x.First), Cell(x.SecondQuantity, x.Second), x.Relative is { } change ? ReportCell.Of(change, x.Change) : ReportCell.Empty,
        })));
        report = Section(report, "Findings of " + second + " only", comparison.FindingsAdded);
        return comparison.FindingsGone.Count == 0 ? report : report.WithHeading("Findings of " + first + " only").WithTable(Gone(comparison.FindingsGone, first));
    }

    private static Report Section(Report report, string heading, IReadOnlyList<Finding> findings) => findings.Count == 0 ? report : report.WithHeading(heading).WithFindings(findings);

    /// <summary>What is gone is no finding of the set-up that is left, so that it must not stand among the warnings.</summary>
    private static ReportTable Gone(IReadOnlyList<Finding> findings, string first) => new ReportTable("findings-gone", "What " + first + " had and is gone", "severity", "code", "message")
        .WithRows(findings.Select(x => new ReportCell[] { x.Severity.ToString(), x.Code, x.Message }));

    private static ReportCell Cell(Quantity? quantity, string text) => quantity is { } value ? ReportCell.Of(value, text) : ReportCell.Empty;
}
