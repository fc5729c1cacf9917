using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>An <see cref="AttributionResult"/> as a report: which element of a path takes how much, at the frequencies that matter, and what the sweeps do not tell.</summary>
public static class AttributionReport
{
    /// <summary>The report of an attribution.</summary>
    /// <param name="result">The result.</param>
    /// <param name="frequencies">The frequencies to tell about; the nearest solved ones are taken.</param>
    /// <param name="title">The title of the report.</param>
    /// <param name="path">The elements of the path; none for the measured path with the most elements.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency lies outside the solved ones.</exception>
    public static Report ToReport(this AttributionResult result, IReadOnlyList<Frequency> frequencies, string title = "Attribution of the roll-off", params string[] path)
    {
        if (result is null) throw new ArgumentNullException(nameof(result));
        if (frequencies is null) throw new ArgumentNullException(nameof(frequencies));
        Report report = new Report(title).WithFindings(result.Findings);
        foreach (Frequency frequency in frequencies) report = report.WithParagraph(result.ExplainAt(frequency, path));
        return report
            .WithTable(new ReportTable("shares", "What each element takes", "frequency", "element", "level", "standard uncertainty", "share", "note")
                .WithRows(frequencies.SelectMany(frequency => result.SharesAt(frequency, path).Select(x => new[]
                {
                    ReportCell.Of(frequency), string.Join(" + ", x.Elements), ReportCell.Of(x.Level), ReportCell.OfAny(x.Uncertainty), ReportCell.OfAny(x.Fraction),
                    x.IsNotSeparated ? "not separated" : ReportCell.Empty,
                }))))
            .WithTable(new ReportTable("ambiguities", "What the sweeps do not tell apart", "elements", "from", "to", "what is open", "what would tell").WithRows(result.Ambiguities.Select(x => new[]
            {
                string.Join(", ", x.Elements), ReportCell.Of(x.From), ReportCell.Of(x.To), x.Text, string.Join("; or ", x.Remedies),
            })))
            .WithPlot(AttributionPlot.Of(result))
            .WithValues(Check(result));
    }

    private static ReportValues Check(AttributionResult result)
    {
        ReportValues values = new ReportValues("check", "How far it can be trusted")
            .With("elements", string.Join(", ", result.Elements))
            .With("rank", ReportCell.Count(result.Rank))
            .With("frequencies", ReportCell.Count(result.Frequencies.Count))
            .With("reference frequency", ReportCell.Of(result.ReferenceFrequency))
            .With("degrees of freedom", ReportCell.Count(result.DegreesOfFreedom))
            .With("chi-squared", result.ChiSquared is { } squares ? ReportCell.Number(squares) : null);
        foreach (string assumption in result.Assumptions) values = values.With("assumes", assumption);
        return values;
    }
}
