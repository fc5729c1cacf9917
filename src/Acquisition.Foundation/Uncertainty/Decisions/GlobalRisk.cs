using System;
using System.Globalization;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>The risks of a decision rule before anything is measured: how often a product will be wrongly accepted (consumer's risk) or wrongly rejected (producer's risk), given how the process scatters (JCGM 106 9.5).</summary>
/// <remarks>Normal production and normal readings. Immutable.</remarks>
public sealed class GlobalRisk
{
    private GlobalRisk(double falseAcceptance, double falseRejection, double conforming)
    {
        FalseAcceptance = Ratio.FromSi(falseAcceptance, "risk");
        FalseRejection = Ratio.FromSi(falseRejection, "risk");
        ConformingPart = Ratio.FromSi(conforming, "part");
    }

    /// <summary>The probability that a product does not conform and is accepted (consumer's risk).</summary>
    public Ratio FalseAcceptance { get; }

    /// <summary>The probability that a product conforms and is rejected (producer's risk).</summary>
    public Ratio FalseRejection { get; }

    /// <summary>The part of the production that conforms.</summary>
    public Ratio ConformingPart { get; }

    /// <summary>The risks of a rule.</summary>
    /// <param name="processMean">The mean of the production.</param>
    /// <param name="processStandardDeviation">The standard deviation of the production, above 0; in the unit of the limits (decibels for levels in decibels).</param>
    /// <param name="standardUncertainty">The standard uncertainty of a reading, above 0.</param>
    /// <param name="limits">The tolerance limits.</param>
    /// <param name="rule">The rule; what it accepts conditionally counts as rejected where the guard band lies inside the limits, and as accepted where it lies outside.</param>
    /// <param name="coverageFactor">k of the expanded uncertainty that the rule speaks of.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation or the coverage factor is not above 0.</exception>
    public static GlobalRisk Of<T>(T processMean, T processStandardDeviation, T standardUncertainty, ToleranceLimits<T> limits, DecisionRule rule, double coverageFactor = 2)
        where T : struct, IQuantity
    {
        if (limits is null) throw new ArgumentNullException(nameof(limits));
        if (rule is null) throw new ArgumentNullException(nameof(rule));
        double spread = Refuse.UnlessAboveZero(processStandardDeviation.ToQuantity().SiValue, StrongType<T>.Kind, nameof(processStandardDeviation));
        double u = Refuse.UnlessAboveZero(standardUncertainty.ToQuantity().SiValue, StrongType<T>.Kind, nameof(standardUncertainty));
        Refuse.UnlessAboveZero(coverageFactor, QuantityKind.Ratio, nameof(coverageFactor));
        double mean = processMean.ToQuantity().SiValue, guard = rule.GuardBand(limits.Si.Low, limits.Si.High, u, coverageFactor * u);
        (double acceptance, double rejection) = ConformityRisk.Global(mean, spread, u, limits.Si.Low, limits.Si.High, limits.Si.Low + guard, limits.Si.High - guard);
        return new GlobalRisk(acceptance, rejection, ConformityRisk.Conformance(mean, spread, double.PositiveInfinity, limits.Si.Low, limits.Si.High));
    }

    /// <summary>Both risks in one line.</summary>
    public override string ToString() =>
        string.Format(CultureInfo.InvariantCulture, "falsely accepted {0:0.###} %, falsely rejected {1:0.###} %, conforming {2:0.##} %", FalseAcceptance.Percent, FalseRejection.Percent, ConformingPart.Percent);
}
