using System;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A <see cref="ChainBreakdown{T}"/> as a report: the total, and what each part of the chain takes.</summary>
public static class ChainBreakdownReport
{
    /// <summary>The report of a breakdown.</summary>
    /// <typeparam name="T">The quantity of the result.</typeparam>
    /// <param name="breakdown">The breakdown.</param>
    /// <param name="title">The title of the report; null takes the name of the result.</param>
    /// <exception cref="ArgumentNullException"><paramref name="breakdown"/> is null.</exception>
    public static Report ToReport<T>(this ChainBreakdown<T> breakdown, string? title = null)
        where T : struct, IQuantity
    {
        if (breakdown is null) throw new ArgumentNullException(nameof(breakdown));
        RuleOfThumb<T> rule = breakdown.PartsOnTheirOwn;
        return new Report(title ?? breakdown.Name)
            .WithFindings(breakdown.Findings)
            .WithValues(new ReportValues("total", "Whole chain")
                .With(breakdown.Name, ReportCell.Of(breakdown.Total))
                .With("weakest link", breakdown.WeakestLink?.Part)
                .With("rule of thumb: " + rule.Rule, ReportCell.Of(rule.Value), "off by " + ReportCell.Of(rule.Difference).Text))
            .WithTable(new ReportTable("parts", "What each part takes", "part", "without it", "by removal", "in order").WithRows(breakdown.Contributions.Select(x => new[]
            {
                x.Part, ReportCell.Of(x.Without), ReportCell.Of(x.ByRemoval), ReportCell.Of(x.InOrder),
            })))
            .WithParagraph("By removal: how the result changes when the part alone is ideal. In order: how it changes when the parts become real one after the other; these add up to the whole.");
    }
}
