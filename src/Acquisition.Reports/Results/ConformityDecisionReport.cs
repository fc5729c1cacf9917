using System;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A <see cref="ConformityDecision"/> as a report (JCGM 106): the verdict with value, limits, guard band and risk, and the budget it rests on.</summary>
public static class ConformityDecisionReport
{
    private const int LimitDigits = 7;

    /// <summary>The report of a decision.</summary>
    /// <param name="decision">The decision.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this ConformityDecision decision, string title = "Decision on conformity")
    {
        if (decision is null) throw new ArgumentNullException(nameof(decision));
        return new Report(title)
            .WithFindings(decision.Findings)
            .WithVerdicts("decision", "Decision", new[] { VerdictOf(decision, "measured value", ReportVerdict.InWords(decision.Verdict)) })
            .WithValues(new ReportValues("risk", "Limits and risk")
                .With("lower acceptance limit", Limit(decision.LowerAcceptanceLimit), null, "JCGM 106 8.3")
                .With("upper acceptance limit", Limit(decision.UpperAcceptanceLimit), null, "JCGM 106 8.3")
                .With(decision.IsAccepted ? "risk of false acceptance" : "risk of false rejection", Probability(decision.SpecificRisk), null, "JCGM 106 9.3")
                .With("test uncertainty ratio", decision.TestUncertaintyRatio is { } ratio ? ReportCell.Number(ratio) : null, "half the tolerance over the expanded uncertainty"))
            .WithReport(decision.Measured.ToReport());
    }

    internal static ReportVerdict VerdictOf(ConformityDecision decision, string name, string text) => new ReportVerdict(name, decision.Verdict, text)
        .WithValue(ReportCell.Of(decision.Measured.Value, decision.Measured.ToString(UncertaintyNotation.Concise)), UncertaintyBudgetReport.Digits(decision.Measured.StandardUncertainty, 3))
        .WithLimits(Limit(decision.LowerLimit), Limit(decision.UpperLimit), decision.IsLowerLimitExcluded, decision.IsUpperLimitExcluded)
        .WithMargin(UncertaintyBudgetReport.Digits(Margin(decision), 4))
        .WithRule(decision.Rule.Name, UncertaintyBudgetReport.Digits(decision.GuardBand, 3), Probability(decision.ConformanceProbability));

    /// <summary>Rounding must not make a probability a certainty.</summary>
    internal static ReportCell Probability(Ratio probability) => ReportCell.Of(probability, ProbabilityText.Of(probability));

    /// <summary>To the nearer limit; what differences of the value are, the guard band is.</summary>
    private static Quantity Margin(ConformityDecision decision)
    {
        double y = decision.Measured.Value.SiValue, above = y - decision.LowerLimit?.SiValue ?? double.PositiveInfinity, below = decision.UpperLimit?.SiValue - y ?? double.PositiveInfinity;
        return new Quantity(Math.Min(above, below), decision.GuardBand.Kind);
    }

    internal static ReportCell? Limit(Quantity? limit) => limit is { } value ? UncertaintyBudgetReport.Digits(value, LimitDigits) : null;
}
