using System;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A <see cref="SetupAdvice"/> as a report: the settings with their reasons, what does not go together, and the outlook they lead to for each signal.</summary>
public static class SetupAdviceReport
{
    /// <summary>The report of an advice.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this SetupAdvice advice, string title = "Set-up")
    {
        if (advice is null) throw new ArgumentNullException(nameof(advice));
        bool several = advice.Outlooks.Count > 1;
        Report report = new Report(title)
            .WithFindings(advice.Findings)
            .WithTable(new ReportTable("settings", "Settings", "setting", "value", "because", "decided by", "lost").WithRows(advice.Settings.Select(x => new ReportCell[]
            {
                x.Setting, Cell(x.Value), x.Reason, x.DecidedBy?.Name, x.Loses,
            })));
        foreach (Outlook outlook in advice.Outlooks)
            report = report.WithReport(outlook.ToReport(several ? "What will be seen of " + outlook.Signal : "What will be seen"));
        return report;
    }

    /// <summary>A setting is text; where it reads as a quantity, machines get it as one.</summary>
    private static ReportCell Cell(string value) => Quantity.TryParse(value, out Quantity quantity) ? ReportCell.Of(quantity, value) : ReportCell.Of(value);
}
