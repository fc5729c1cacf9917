using System;
using System.Collections.Generic;
using System.Globalization;

namespace Acquisition.Core.Uncertainty;

/// <summary>When a first-order budget is not to be trusted, and Monte Carlo is (JCGM 100 5.1.2 note, G.2, G.4; JCGM 101 5.7, 5.8; handbook 11.8).</summary>
internal static class BudgetFindings
{
    /// <summary>One input of another shape than the bell beyond this part of the combined uncertainty rules the result's shape (handbook 11.8).</summary>
    private const double Dominance = 0.7;

    private const double FewDegreesOfFreedom = 10;

    /// <summary>Beyond about 1 dB an interval in decibels is visibly lopsided in linear terms (handbook 11.5).</summary>
    private const double LinearDecibels = 1;

    private const string MonteCarloRemedy = "evaluate by Monte Carlo (JCGM 101) and compare";

    internal static IReadOnlyList<Finding> Of(UncertaintyBudget budget)
    {
        var findings = new List<Finding>(budget.OwnFindings);
        if (budget.LateFinding() is { } late) findings.Add(late);
        double u = budget.SiStandardUncertainty;
        for (int i = 0; i < budget.Sources.Length; i++) AboutInput(budget, budget.Sources[i], budget.Sensitivities[i], u, findings);

        if (budget.EffectiveDegreesOfFreedom < FewDegreesOfFreedom)
        {
            findings.Add(new Finding(
                "few-degrees-of-freedom", Severity.Warning,
                Text($"the uncertainty rests on {budget.EffectiveDegreesOfFreedom:0.0} effective degrees of freedom, so it is itself uncertain by about {100 / Math.Sqrt(2 * budget.EffectiveDegreesOfFreedom):0} %"),
                "take more readings of the inputs with the largest shares, or " + MonteCarloRemedy, "JCGM 100 E.4.3, G.4"));
        }
        if (ReferenceEquals(UncertaintyKind.Of(budget.Value.Kind), QuantityKind.DecibelRatio) && u > LinearDecibels)
        {
            findings.Add(new Finding(
                "decibels-not-linear", Severity.Warning,
                Text($"a standard uncertainty of {u:0.##} dB is beyond the {LinearDecibels} dB up to which decibels and linear terms give like intervals"),
                "state the end points of the interval, converted one by one; " + MonteCarloRemedy, "handbook 11.5"));
        }
        double value = Math.Abs(budget.Value.SiValue);
        if (budget.Value.Kind.Nature < QuantityNature.Point && u > 0 && value < 2 * u)
        {
            findings.Add(new Finding(
                "value-near-zero", Severity.Note,
                Text($"the value, {budget.Value.InWords()}, is less than two standard uncertainties ({budget.StandardUncertainty.InWords(3)}) from zero: a relative uncertainty, a quotient by it or its decibels would mean little"),
                "state the uncertainty in the unit of the value; " + MonteCarloRemedy + " if it is used as a divisor or in decibels", "JCGM 100 5.1.2 note"));
        }
        return findings;
    }

    private static void AboutInput(UncertaintyBudget budget, UncertaintySource source, double sensitivity, double u, List<Finding> findings)
    {
        if (source.Finding is { } own && sensitivity != 0) findings.Add(own);
        double contribution = Math.Abs(sensitivity * source.StandardUncertainty);
        if (contribution == 0 && source.StandardUncertainty > 0)
        {
            findings.Add(new Finding(
                "zero-sensitivity", Severity.Warning,
                $"the result does not move to first order with {source.Name} ({source.Estimate.InWords()}), " +
                    (budget.IncludesSecondOrder ? "so second-order terms were added" : "so its uncertainty does not show in this budget"),
                MonteCarloRemedy, "JCGM 100 5.1.2 note"));
        }
        if (!source.Distribution.IsBellShaped && contribution > Dominance * u && u > 0)
        {
            findings.Add(new Finding(
                "dominant-input-not-normal", Severity.Warning,
                Text($"{source.Name} ({source.Distribution.Name}) brings {contribution * contribution / (u * u):P0} of the combined variance, so the result is not normal and k = {budget.CoverageFactor:0.##} is too wide for it"),
                MonteCarloRemedy, "JCGM 100 G.2; handbook 11.4"));
        }
        if (ReferenceEquals(UncertaintyKind.Of(source.Estimate.Kind), QuantityKind.DecibelRatio) && source.StandardUncertainty > LinearDecibels && budget.Value.Kind.Nature < QuantityNature.DecibelRatio)
        {
            findings.Add(new Finding(
                "decibels-not-linear", Severity.Warning,
                Text($"{source.Name} is uncertain by {source.StandardUncertainty:0.##} dB, beyond the {LinearDecibels} dB up to which its conversion is nearly linear"),
                "keep the budget in decibels, or " + MonteCarloRemedy, "handbook 11.5"));
        }
        if (source.Set is not null && !double.IsPositiveInfinity(source.DegreesOfFreedom) && contribution > 0 && !findings.Exists(finding => finding.Code == "correlated-readings"))
        {
            findings.Add(new Finding(
                "correlated-readings", Severity.Note,
                $"{source.Name} is correlated with another input and has {source.DegreesOfFreedom.ToString("0.#", CultureInfo.InvariantCulture)} degrees of freedom: the Welch-Satterthwaite formula does not hold, so no finite effective degrees of freedom are claimed and k may be too small",
                "form the result from each set of simultaneous readings and take the mean of the results", "JCGM 100 G.4.1, H.2.4"));
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
