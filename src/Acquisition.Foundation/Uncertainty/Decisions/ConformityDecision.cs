using System;
using System.Collections.Generic;
using System.Globalization;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>A statement of conformity: the verdict, the rule it was made by, and how likely it is right (JCGM 106).</summary>
/// <remarks>Immutable.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed class ConformityDecision
{
    /// <summary>A test uncertainty ratio below this is customarily called too low (common practice, no source).</summary>
    private const double UsualTestUncertaintyRatio = 4;

    private readonly ToleranceInterval _limits;
    private readonly double _guardBand;

    /// <param name="rule">The rule.</param>
    /// <param name="measured">The measured value.</param>
    /// <param name="limits">The tolerance limits.</param>
    /// <param name="guardBand">The width of the guard band.</param>
    /// <param name="rounding">What the value and its limits have lost to the rounding of arithmetic, where that is known to be more than their own last places.</param>
    internal ConformityDecision(DecisionRule rule, UncertaintyBudget measured, ToleranceInterval limits, double guardBand, double rounding = 0)
    {
        Rule = rule;
        Measured = measured;
        _limits = limits;
        _guardBand = guardBand;
        double y = measured.Value.SiValue, nu = measured.EffectiveDegreesOfFreedom;
        double reach = measured.SiStandardUncertainty == 0 ? 0 : measured.SiReach;
        bool isCertain = !double.IsInfinity(reach) && limits.Contains(y - reach, rounding) && limits.Contains(y + reach, rounding);
        // No guard band asks for more than certainty.
        Verdict = isCertain ? Verdict.Pass : Judge(y, limits, guardBand, rounding);
        SiConformance = measured.SiStandardUncertainty == 0
            ? limits.Contains(y, rounding) ? 1 : 0
            : isCertain ? 1
            : !double.IsInfinity(reach) && measured.Sources.Length == 1 ? ConformityRisk.Conformance(y, measured.Sources[0].Distribution, measured.Sensitivities[0], limits.Low, limits.High)
            : ConformityRisk.Conformance(y, measured.SiStandardUncertainty, nu, limits.Low, limits.High);
        Findings = FindingsOf(rounding, isCertain || (!double.IsInfinity(reach) && measured.Sources.Length == 1)).Frozen();
    }

    /// <summary>The verdict.</summary>
    public Verdict Verdict { get; }

    /// <summary>The rule that the verdict was made by.</summary>
    public DecisionRule Rule { get; }

    /// <summary>The measured value with its uncertainty.</summary>
    public UncertaintyBudget Measured { get; }

    /// <summary>The width of the guard band; negative where it lies outside the tolerance limits.</summary>
    public Quantity GuardBand => new(_guardBand, UncertaintyKind.Of(Measured.Value.Kind));

    /// <summary>The lower tolerance limit; null where there is none.</summary>
    public Quantity? LowerLimit => OrNull(_limits.Low);

    /// <summary>Whether a value exactly at the lower limit does not conform.</summary>
    public bool IsLowerLimitExcluded => _limits.IsLowExcluded;

    /// <summary>The upper tolerance limit; null where there is none.</summary>
    public Quantity? UpperLimit => OrNull(_limits.High);

    /// <summary>Whether a value exactly at the upper limit does not conform.</summary>
    public bool IsUpperLimitExcluded => _limits.IsHighExcluded;

    /// <summary>The lower acceptance limit; null where there is none.</summary>
    public Quantity? LowerAcceptanceLimit => OrNull(_limits.Low + _guardBand);

    /// <summary>The upper acceptance limit; null where there is none.</summary>
    public Quantity? UpperAcceptanceLimit => OrNull(_limits.High - _guardBand);

    /// <summary>The probability that the quantity conforms, given this measurement and nothing else (JCGM 106 7.1 to 7.4): normal, or a t-distribution where the degrees of freedom are finite. Where the value follows from one stated limit alone, that of its own distribution. 0 only where the value is exact; 1 there too, and where all that was stated about the value leaves it within the limits.</summary>
    public Ratio ConformanceProbability => Ratio.FromSi(SiConformance, "probability");

    /// <summary>The specific risk of this verdict: of false acceptance where it is a pass of either kind, of false rejection where it is a fail of either kind (JCGM 106 9.3).</summary>
    public Ratio SpecificRisk => Ratio.FromSi(IsAccepted ? 1 - SiConformance : SiConformance, "risk");

    /// <summary>Whether the verdict is a pass, conditional or not.</summary>
    public bool IsAccepted => Verdict is Verdict.Pass or Verdict.ConditionalPass;

    /// <summary>The test uncertainty ratio T/U, T being the half-width between two limits; null for one limit, or without uncertainty.</summary>
    public double? TestUncertaintyRatio =>
        double.IsInfinity(_limits.Low) || double.IsInfinity(_limits.High) || Measured.SiExpandedUncertainty == 0 ? null : (_limits.High - _limits.Low) / 2 / Measured.SiExpandedUncertainty;

    /// <summary>What limits the trust in the verdict.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    internal double SiConformance { get; }

    /// <summary>Verdict, value, limits, rule and probability in one line.</summary>
    public override string ToString() =>
        string.Format(CultureInfo.InvariantCulture, "{0}: {1}, limits {2}, {3}, conformance {4}", InWords(Verdict), Measured, _limits.InWords(LowerLimit, UpperLimit), Rule, ProbabilityText.Of(ConformanceProbability));

    internal static string InWords(Verdict verdict) => verdict switch
    {
        Verdict.Pass => "pass",
        Verdict.ConditionalPass => "conditional pass",
        Verdict.ConditionalFail => "conditional fail",
        _ => "fail",
    };

    /// <summary>
    /// The acceptance limits decide, and belong to what is accepted (JCGM 106 8.3). A guard band inside the tolerance limits leaves some values between the two, which are conditional; with one outside of
    /// them only rejection is to be sure, and whatever is not rejected passes (JCGM 106 8.3.3).
    /// </summary>
    private static Verdict Judge(double y, ToleranceInterval limits, double guardBand, double rounding)
    {
        rounding = Math.Max(rounding, ToleranceInterval.LastPlaces * Math.Abs(guardBand));
        bool isAccepted = limits.Narrowed(guardBand).Contains(y, rounding);
        if (guardBand < 0) return isAccepted ? Verdict.Pass : Verdict.Fail;
        if (limits.Contains(y, rounding)) return isAccepted ? Verdict.Pass : Verdict.ConditionalPass;
        return guardBand > 0 && limits.Narrowed(-guardBand).Contains(y, rounding) ? Verdict.ConditionalFail : Verdict.Fail;
    }

    private Quantity? OrNull(double si) => double.IsInfinity(si) ? null : new Quantity(si, Measured.Value.Kind);

    private List<Finding> FindingsOf(double rounding, bool isLimited)
    {
        var findings = new List<Finding>(Measured.Findings);
        // Where limits are taken as limits, nothing hangs on the normal distribution any more.
        if (isLimited) findings.RemoveAll(finding => finding.Code == "dominant-input-not-normal");
        if (_limits.Low + _guardBand > _limits.High - _guardBand)
        {
            findings.Add(new Finding(
                "no-acceptance-interval", Severity.Failure,
                string.Format(CultureInfo.InvariantCulture, "the guard bands ({0} each) meet: with this uncertainty nothing can pass by the rule {1}", GuardBand, Rule),
                "measure with a smaller uncertainty, or agree on another rule", "JCGM 106 8.3"));
        }
        else if (TestUncertaintyRatio < UsualTestUncertaintyRatio)
        {
            findings.Add(new Finding(
                "low-test-uncertainty-ratio", Severity.Warning,
                string.Format(CultureInfo.InvariantCulture, "the tolerance is only {0:0.0} times the expanded uncertainty, below the usual {1}:1", TestUncertaintyRatio, UsualTestUncertaintyRatio),
                "measure with a smaller uncertainty, or state the risk", "common practice, no source"));
        }
        if (_guardBand < 0 && Verdict == Verdict.Pass && !_limits.Contains(Measured.Value.SiValue, rounding))
        {
            findings.Add(new Finding(
                "accepted-beyond-limit", Severity.Note,
                string.Format(CultureInfo.InvariantCulture, "the value is beyond its tolerance limit, by less than the guard band of {0}: it is accepted because only rejection is to be sure, and conforms with a probability of {1}", new Quantity(-_guardBand, GuardBand.Kind).InWords(3), ProbabilityText.Of(ConformanceProbability)),
                "agree on simple or guarded acceptance where a false acceptance costs more than a false rejection", "JCGM 106 8.3.3"));
        }
        return findings;
    }
}
