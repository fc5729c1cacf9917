using System;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A <see cref="SetupAdvice"/> as a report: the settings with their reasons, and the outlook they lead to.</summary>
public static class SetupAdviceReport
{
    /// <summary>The report of an advice.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this SetupAdvice advice, string title = "Set-up")
    {
        if (advice is null) throw new ArgumentNullException(nameof(advice));
        return new Report(title)
            .WithTable(new ReportTable("settings", "Settings", "setting", "value", "because", "lost").WithRows(advice.Settings.Select(x => new ReportCell[]
            {
                x.Setting, Cell(x.Value), x.Reason, x.Loses,
            })))
            .WithReport(advice.Outlook.ToReport("What will be seen"));
    }

    /// <summary>A setting is text; where it reads as a quantity, machines get it as one.</summary>
    private static ReportCell Cell(string value) => Quantity.TryParse(value, out Quantity quantity) ? ReportCell.Of(quantity, value) : ReportCell.Of(value);
}
