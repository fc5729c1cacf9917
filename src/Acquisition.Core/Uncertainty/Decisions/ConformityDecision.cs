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

    internal ConformityDecision(DecisionRule rule, UncertaintyBudget measured, ToleranceInterval limits, double guardBand)
    {
        Rule = rule;
        Measured = measured;
        _limits = limits;
        _guardBand = guardBand;
        double y = measured.Value.SiValue, nu = measured.EffectiveDegreesOfFreedom;
        Verdict = Judge(y, limits, guardBand);
        SiConformance = measured.SiStandardUncertainty == 0
            ? limits.Contains(y) ? 1 : 0
            : ConformityRisk.Conformance(y, measured.SiStandardUncertainty, nu, limits.Low, limits.High);
        Findings = FindingsOf().Frozen();
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

    /// <summary>The probability that the quantity conforms, given this measurement and nothing else (JCGM 106 7.1 to 7.4): normal, or a t-distribution where the degrees of freedom are finite. 0 or 1 only where the value is exact.</summary>
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

    /// <summary>A guard band outside the limits accepts what is just beyond them, conditionally; rejection then needs no condition.</summary>
    private static Verdict Judge(double y, ToleranceInterval limits, double guardBand)
    {
        double width = Math.Abs(guardBand);
        bool within = limits.Contains(y);
        bool surely = within && y >= limits.Low + width && y <= limits.High - width;
        bool nearly = y >= limits.Low - width && y <= limits.High + width;
        if (guardBand < 0) return surely ? Verdict.Pass : nearly ? Verdict.ConditionalPass : Verdict.Fail;
        return surely ? Verdict.Pass : within ? Verdict.ConditionalPass : nearly && width > 0 ? Verdict.ConditionalFail : Verdict.Fail;
    }

    private Quantity? OrNull(double si) => double.IsInfinity(si) ? null : new Quantity(si, Measured.Value.Kind);

    private List<Finding> FindingsOf()
    {
        var findings = new List<Finding>(Measured.Findings);
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
        return findings;
    }
}
