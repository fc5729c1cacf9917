using System;
using System.Globalization;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>How an expanded uncertainty is to be formed: from a coverage probability, or with a fixed coverage factor (JCGM 100 6.2, 6.3 and annex G).</summary>
/// <remarks>Immutable.</remarks>
public sealed class Coverage
{
    private readonly double _probability;
    private readonly double _factor;

    private Coverage(double probability, double factor)
    {
        _probability = probability;
        _factor = factor;
    }

    /// <summary>95.45 %: k is 2 where the degrees of freedom are infinite, and larger where they are few (handbook 11.4).</summary>
    public static Coverage Usual { get; } = new(2 * Normal.Cumulative(2) - 1, 0);

    /// <summary>A coverage probability; k follows from the effective degrees of freedom.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not above 0 and below 1.</exception>
    public static Coverage WithProbability(Ratio probability) => new(RequireProbability(probability.SiValue, nameof(probability)), 0);

    /// <summary>A fixed coverage factor; the coverage probability follows from the effective degrees of freedom.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not above 0.</exception>
    public static Coverage WithFactor(double coverageFactor) =>
        coverageFactor > 0 && coverageFactor <= double.MaxValue
            ? new Coverage(0, coverageFactor)
            : throw Refuse.OutOfRange(coverageFactor, QuantityKind.Ratio, nameof(coverageFactor), "above 0");

    /// <summary>The coverage factor k for effective degrees of freedom, which are truncated to a whole number as JCGM 100 G.4.1 has it.</summary>
    /// <param name="effectiveDegreesOfFreedom">Above 0; infinite for the normal distribution.</param>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public double CoverageFactorFor(double effectiveDegreesOfFreedom)
    {
        RequireDegreesOfFreedom(effectiveDegreesOfFreedom, nameof(effectiveDegreesOfFreedom));
        if (_factor > 0) return _factor;
        double whole = Truncated(effectiveDegreesOfFreedom);
        if (double.IsPositiveInfinity(whole) && ReferenceEquals(this, Usual)) return 2;
        return StudentT.CoverageFactor(_probability, whole);
    }

    /// <summary>The coverage probability for effective degrees of freedom, truncated likewise.</summary>
    /// <param name="effectiveDegreesOfFreedom">Above 0; infinite for the normal distribution.</param>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public Ratio CoverageProbabilityFor(double effectiveDegreesOfFreedom)
    {
        RequireDegreesOfFreedom(effectiveDegreesOfFreedom, nameof(effectiveDegreesOfFreedom));
        return Ratio.FromSi(_factor > 0 ? 2 * StudentT.Cumulative(_factor, Truncated(effectiveDegreesOfFreedom)) - 1 : _probability, "probability");
    }

    internal static void RequireDegreesOfFreedom(double degreesOfFreedom, string argument)
    {
        if (!(degreesOfFreedom > 0)) throw Refuse.OutOfRange(degreesOfFreedom, QuantityKind.Ratio, argument, "above 0");
    }

    private static double Truncated(double degreesOfFreedom) => degreesOfFreedom < 1 ? degreesOfFreedom : Math.Floor(degreesOfFreedom * (1 + 1e-12));

    internal static double RequireProbability(double probability, string argument) =>
        probability > 0 && probability < 1 ? probability : throw Refuse.OutOfRange(probability, QuantityKind.Ratio, argument, "above 0 and below 1");

    /// <summary>The rule in words.</summary>
    public override string ToString() =>
        _factor > 0
            ? "k = " + _factor.ToString("0.####", CultureInfo.InvariantCulture)
            : "p " + ProbabilityText.Beside(_probability, 4);
}
