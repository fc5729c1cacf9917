using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Uncertainty;

/// <summary>The functions of uncertainty and conformity.</summary>
internal static class UncertaintyFunctions
{
    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "coverage_factor coverage_probability standard_uncertainty guard_band";

    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("coverage_factor", "The coverage factor k of a coverage probability, where the degrees of freedom are infinite.", "JCGM 100 G.1.3; handbook 11.4")
            .Takes("probability", QuantityKind.Ratio)
            .Returns(QuantityKind.Ratio, p => Coverage.WithProbability(Ratio.FromFraction(p)).CoverageFactorFor(double.PositiveInfinity))
            .Example("coverage_factor(95 %)", "1.95996");

        yield return FunctionDefinition.Named("coverage_factor", "The coverage factor k of a coverage probability; the degrees of freedom are truncated to a whole number.", "JCGM 100 G.3, G.4.1; handbook 11.4")
            .Takes("probability", QuantityKind.Ratio)
            .Takes("degrees_of_freedom", QuantityKind.Ratio)
            .Returns(QuantityKind.Ratio, (p, nu) => Coverage.WithProbability(Ratio.FromFraction(p)).CoverageFactorFor(nu))
            .Example("coverage_factor(99 %, 16.7)", "2.92078");

        yield return FunctionDefinition.Named("coverage_probability", "The coverage probability of a coverage factor, where the degrees of freedom are infinite.", "JCGM 100 G.1.3; handbook 11.4")
            .Takes("coverage_factor", QuantityKind.Ratio)
            .Returns(QuantityKind.Ratio, k => Coverage.WithFactor(k).CoverageProbabilityFor(double.PositiveInfinity).Fraction, k => 2 * Normal.Density(k))
            .Example("coverage_probability(2)", "0.9545");

        yield return FunctionDefinition.Named("standard_uncertainty", "The standard uncertainty of limits, by the shape of what lies between them.", "JCGM 100 4.3.7, 4.3.9; JCGM 101 6.4; handbook 11.3")
            .Takes("half_width", ValueKind.AnyQuantity)
            .TakesOptional("shape", ValueKind.Choice("shape", "rectangular", "triangular", "arcsine"), "rectangular")
            .ReturnsSameKind(arguments => Shaped(arguments.SiValue(0), arguments.Text(1)).StandardUncertainty)
            .Example("standard_uncertainty(30 mV)", "17.3205 mV");

        yield return FunctionDefinition.Named("guard_band", "The guard band with which whatever is accepted conforms with a probability, at one limit.", "JCGM 106 8.3.2; handbook 11.9")
            .Takes("standard_uncertainty", ValueKind.AnyQuantity)
            .Takes("conformance_probability", QuantityKind.Ratio)
            .ReturnsSameKind(arguments => DecisionRule.ForConformance(Ratio.FromFraction(arguments.SiValue(1))).GuardBand(double.NegativeInfinity, 0, arguments.SiValue(0), 2 * arguments.SiValue(0)))
            .Example("guard_band(10 mV, 95 %)", "16.4485 mV");
    }

    private static Distribution Shaped(double halfWidth, string shape) => shape switch
    {
        "triangular" => new TrapezoidalDistribution(halfWidth, 0),
        "arcsine" => new ArcsineDistribution(halfWidth),
        _ => new RectangularDistribution(halfWidth),
    };
}
