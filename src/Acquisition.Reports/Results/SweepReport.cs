using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Records;

namespace Acquisition.Reports;

/// <summary>A <see cref="Sweep"/> as a report: its points, and the bandwidth and the model found from it.</summary>
public static class SweepReport
{
    /// <summary>The report of a sweep.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="title">The title of the report.</param>
    /// <param name="bandwidth">The bandwidth that was found from it; null leaves it out.</param>
    /// <param name="fit">The model that was fitted to it; null leaves it out.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sweep"/> or <paramref name="title"/> is null.</exception>
    public static Report ToReport(this Sweep sweep, string title = "Sweep", SweepBandwidth? bandwidth = null, SweepFit? fit = null)
    {
        if (sweep is null) throw new ArgumentNullException(nameof(sweep));
        Report report = new Report(title).WithParagraph(FormattableString.Invariant($"{sweep.Count} points, relative to {sweep.ReferenceText}."));
        if (bandwidth is not null) report = Bandwidth(report, bandwidth);
        if (fit is not null) report = Fit(report, fit);
        return report.WithPlot(fit is null ? SweepPlot.Of(sweep) : SweepPlot.Of(sweep, fit)).WithTable(new ReportTable("points", "Points", "frequency", "level", "relative level", "standard uncertainty").WithRows(sweep.Points.Select(x => new[]
        {
            ReportCell.Of(x.Frequency), ReportCell.Of(x.Level), ReportCell.Of(sweep.RelativeLevelAt(x.Frequency)), ReportCell.OfAny(x.Uncertainty),
        })));
    }

    private static Report Bandwidth(Report report, SweepBandwidth bandwidth) => report
        .WithFindings(bandwidth.Findings)
        .WithValues(new ReportValues("bandwidth", "Where the level falls by " + ReportCell.Of(bandwidth.Drop).Text)
            .With("lower limit", bandwidth.Lower is { } lower ? ReportCell.Of(lower.Frequency) : null)
            .With("upper limit", bandwidth.Upper is { } upper ? ReportCell.Of(upper.Frequency) : null)
            .With("relative to", bandwidth.Reference))
        .WithTable(new ReportTable("crossings", "Crossings", "frequency", "direction", "standard uncertainty", "of the spacing", "of the noise", "by straight line", "between", "and")
            .WithRows(bandwidth.Crossings.Select(x => new[]
            {
                ReportCell.Of(x.Frequency), x.IsFalling ? "falling" : "rising", ReportCell.Of(x.Uncertainty), ReportCell.Of(x.SpacingUncertainty), ReportCell.OfAny(x.NoiseUncertainty),
                ReportCell.Of(x.LinearFrequency), ReportCell.Of(x.PointBelow), ReportCell.Of(x.PointAbove),
            })));

    private static Report Fit(Report report, SweepFit fit) => report
        .WithFindings(fit.Findings)
        .WithValues(new ReportValues("fit", "Fitted model")
            .With("model", fit.Response?.Name)
            .With("bandwidth", ReportCell.OfAny(fit.Bandwidth))
            .With("standard uncertainty of the bandwidth", ReportCell.OfAny(fit.BandwidthUncertainty))
            .With("gain", ReportCell.OfAny(fit.Gain))
            .With("standard uncertainty of the gain", ReportCell.OfAny(fit.GainUncertainty))
            .With("standard deviation of the residuals", ReportCell.Of(fit.ResidualDeviation))
            .With("chi-squared", fit.ChiSquared is { } squares ? ReportCell.Number(squares) : null)
            .With("degrees of freedom", ReportCell.Count(fit.DegreesOfFreedom)));
}
