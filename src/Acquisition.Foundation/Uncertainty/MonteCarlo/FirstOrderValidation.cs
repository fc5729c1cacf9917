using System;
using System.Globalization;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>Whether a first-order budget agrees with a Monte Carlo evaluation of the same model, by the rule of JCGM 101 clause 8.</summary>
/// <remarks>Immutable.</remarks>
public sealed class FirstOrderValidation
{
    private FirstOrderValidation(Quantity low, Quantity high, Quantity tolerance, Ratio probability)
    {
        DifferenceOfLowerEnds = low;
        DifferenceOfUpperEnds = high;
        Tolerance = tolerance;
        CoverageProbability = probability;
    }

    /// <summary>How far the lower end of y ± U lies from that of the Monte Carlo interval, without sign.</summary>
    public Quantity DifferenceOfLowerEnds { get; }

    /// <summary>How far the upper end of y ± U lies from that of the Monte Carlo interval, without sign.</summary>
    public Quantity DifferenceOfUpperEnds { get; }

    /// <summary>The numerical tolerance: half a unit in the last digit of the standard uncertainty (JCGM 101 7.9.2).</summary>
    public Quantity Tolerance { get; }

    /// <summary>The coverage probability of both intervals.</summary>
    public Ratio CoverageProbability { get; }

    /// <summary>Whether both differences are within the tolerance.</summary>
    public bool IsValidated => DifferenceOfLowerEnds.SiValue <= Tolerance.SiValue && DifferenceOfUpperEnds.SiValue <= Tolerance.SiValue;

    /// <summary>Compares a budget with a Monte Carlo evaluation at the budget's coverage probability, end by end with the probabilistically symmetric interval.</summary>
    /// <param name="budget">The budget.</param>
    /// <param name="monteCarlo">The evaluation of the same model with the same inputs.</param>
    /// <param name="significantDigits">The digits of the standard uncertainty that count, 1 to 4; 2 as a rule. The evaluation should be stable to a fifth of this (JCGM 101 8.2).</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="significantDigits"/> is not from 1 to 4.</exception>
    /// <exception cref="ArgumentException">The two are not of one kind.</exception>
    public static FirstOrderValidation Of(UncertaintyBudget budget, MonteCarloResult monteCarlo, int significantDigits = 2)
    {
        if (budget is null) throw new ArgumentNullException(nameof(budget));
        if (monteCarlo is null) throw new ArgumentNullException(nameof(monteCarlo));
        if (significantDigits < 1 || significantDigits > 4)
            throw new ArgumentOutOfRangeException(nameof(significantDigits), significantDigits, $"significantDigits must be from 1 to 4; was {significantDigits}");
        CoverageInterval interval = monteCarlo.SymmetricInterval(budget.CoverageProbability);
        interval.Low.Require(budget.Value.Kind, nameof(monteCarlo));
        QuantityKind kind = UncertaintyKind.Of(budget.Value.Kind);
        double y = budget.Value.SiValue, u = budget.SiExpandedUncertainty;
        return new FirstOrderValidation(
            new Quantity(Math.Abs(y - u - interval.Low.SiValue), kind),
            new Quantity(Math.Abs(y + u - interval.High.SiValue), kind),
            new Quantity(NumericalTolerance.Of(monteCarlo.SiStandardUncertainty, significantDigits), kind),
            budget.CoverageProbability);
    }

    /// <summary>The verdict with its figures.</summary>
    public override string ToString() => string.Format(
        CultureInfo.InvariantCulture, "{0}: ends differ by {1} and {2}, tolerance {3}",
        IsValidated ? "first order holds" : "first order does not hold", DifferenceOfLowerEnds, DifferenceOfUpperEnds, Tolerance);
}
