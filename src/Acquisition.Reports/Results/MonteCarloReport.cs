using System;
using System.Collections.Generic;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A <see cref="MonteCarloResult"/> as a report (JCGM 101): estimate, intervals, and whether the first-order budget holds.</summary>
public static class MonteCarloReport
{
    private const int Digits = 6;

    /// <summary>The report of a propagation of distributions.</summary>
    /// <param name="result">The result.</param>
    /// <param name="title">The title of the report.</param>
    /// <param name="validation">How the first-order budget compares with it; null leaves it out.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> or <paramref name="title"/> is null.</exception>
    public static Report ToReport(this MonteCarloResult result, string title = "Propagation of distributions", FirstOrderValidation? validation = null)
    {
        if (result is null) throw new ArgumentNullException(nameof(result));
        Report report = new Report(title)
            .WithFindings(result.Findings)
            .WithValues(new ReportValues("result", "Result")
                .With("estimate", UncertaintyBudgetReport.Digits(result.Estimate, Digits), "mean of the trials", "JCGM 101 7.6")
                .With("standard uncertainty", UncertaintyBudgetReport.Digits(result.StandardUncertainty, 3), "standard deviation of the trials", "JCGM 101 7.6")
                .With("trials", ReportCell.Count(result.Trials), result.IsStabilized ? "the results have stabilized" : null)
                .With("seed", result.Seed.ToString(System.Globalization.CultureInfo.InvariantCulture), "the same seed gives the same trials"))
            .WithTable(new ReportTable("intervals", "Coverage intervals", "interval", "probability", "from", "to").WithRows(new[] { Row(result.SymmetricInterval()), Row(result.ShortestInterval()) }))
            .WithPlot(MonteCarloPlot.Of(result));
        return validation is null ? report : report.WithVerdicts("validation", "Whether the first-order budget holds (JCGM 101 clause 8)", Verdicts(validation));
    }

    private static ReportCell[] Row(CoverageInterval interval) => new[]
    {
        interval.IsShortest ? "shortest" : "probabilistically symmetric", ConformityDecisionReport.Probability(interval.CoverageProbability), UncertaintyBudgetReport.Digits(interval.Low, Digits), UncertaintyBudgetReport.Digits(interval.High, Digits),
    };

    private static IEnumerable<ReportVerdict> Verdicts(FirstOrderValidation validation)
    {
        foreach ((string name, Quantity difference) in new[] { ("lower end", validation.DifferenceOfLowerEnds), ("upper end", validation.DifferenceOfUpperEnds) })
        {
            bool holds = difference.SiValue <= validation.Tolerance.SiValue;
            yield return new ReportVerdict(name + " of the interval", holds ? Verdict.Pass : Verdict.Fail, holds ? "holds" : "does not hold")
                .WithValue(UncertaintyBudgetReport.Digits(difference, 3))
                .WithLimits(null, UncertaintyBudgetReport.Digits(validation.Tolerance, 3))
                .WithRule("differs by at most the numerical tolerance");
        }
    }
}
