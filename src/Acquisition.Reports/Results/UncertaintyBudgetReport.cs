using System;
using System.Globalization;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>An <see cref="UncertaintyBudget"/> as a report (JCGM 100 clause 7 and annex H): the result, and what each input brings.</summary>
public static class UncertaintyBudgetReport
{
    /// <summary>The report of a budget.</summary>
    /// <param name="budget">The budget.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this UncertaintyBudget budget, string title = "Uncertainty budget")
    {
        if (budget is null) throw new ArgumentNullException(nameof(budget));
        return new Report(title)
            .WithFindings(budget.Findings)
            .WithValues(Result(budget))
            .WithTable(Inputs(budget))
            .WithPlot(BudgetPlot.Of(budget));
    }

    private static ReportValues Result(UncertaintyBudget budget) => new ReportValues("result", "Result")
        .With("measured value", Whole(budget), "value with its expanded uncertainty", "JCGM 100 7.2")
        .With("standard uncertainty", Digits(budget.StandardUncertainty, 3), "law of propagation" + (budget.IncludesSecondOrder ? ", with second order" : ""), "JCGM 100 5.1, 5.2")
        .With("expanded uncertainty", Digits(budget.ExpandedUncertainty, 3), FormattableString.Invariant($"k = {budget.CoverageFactor:0.####}, coverage probability {ProbabilityText.Of(budget.CoverageProbability)}"), "JCGM 100 6.2")
        .With("coverage factor", ReportCell.Number(budget.CoverageFactor))
        .With("coverage probability", ConformityDecisionReport.Probability(budget.CoverageProbability))
        .With("effective degrees of freedom", ReportCell.Number(budget.EffectiveDegreesOfFreedom), "Welch-Satterthwaite", "JCGM 100 G.4")
        .With("share of correlations", budget.CorrelationShare.Fraction != 0 ? ReportCell.Of(budget.CorrelationShare) : null)
        .With("share of second order", budget.IncludesSecondOrder ? ReportCell.Of(budget.SecondOrderShare) : null);

    private static ReportTable Inputs(UncertaintyBudget budget) =>
        new ReportTable("inputs", "What each input brings", "input", "estimate", "stated as", "distribution", "standard uncertainty", "degrees of freedom", "sensitivity (SI)", "contribution", "share")
            .WithRows(budget.Lines.Select(x => new[]
            {
                x.Name, Digits(x.Estimate, 7), x.Statement, x.Distribution, Digits(x.StandardUncertainty, 3), ReportCell.Number(x.DegreesOfFreedom),
                ReportCell.Number(x.SensitivityInSi), Digits(x.Contribution, 3), ReportCell.Of(x.Share),
            }));

    /// <summary>The value with the text of the whole result, whose digits go by the uncertainty.</summary>
    internal static ReportCell Whole(UncertaintyBudget budget) => ReportCell.Of(budget.Value, budget.ToString());

    internal static ReportCell Digits(Quantity quantity, int digits) =>
        ReportCell.Of(quantity, quantity.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
}
