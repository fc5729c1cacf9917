using System;
using System.Globalization;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>How uncertainty counts in a statement of conformity: how wide a guard band lies between the tolerance limits and the acceptance limits (JCGM 106 clause 8, ILAC-G8:09/2019).</summary>
/// <remarks>The rule is agreed before the measurement (ISO/IEC 17025:2017 7.1.3). Immutable.</remarks>
public sealed class DecisionRule
{
    private readonly Func<Limits, double> _guardBand;

    private DecisionRule(string name, Func<Limits, double> guardBand)
    {
        Name = name;
        _guardBand = guardBand;
    }

    /// <summary>The rule in words, such as <c>guard band w = U</c>.</summary>
    public string Name { get; }

    /// <summary>No guard band: the acceptance limits are the tolerance limits, and the risk at a limit is up to 50 % (JCGM 106 8.2). Pass and fail are the only verdicts.</summary>
    public static DecisionRule SimpleAcceptance { get; } = new("simple acceptance, w = 0", _ => 0);

    /// <summary>A guard band as wide as the expanded uncertainty: with k = 2 and one limit, a false acceptance of 2.3 % at most (JCGM 106 8.3.2, ILAC-G8 4.2.3).</summary>
    public static DecisionRule GuardedAcceptance { get; } = new("guarded acceptance, w = U", limits => limits.ExpandedUncertainty);

    /// <summary>Rejection only of what is beyond the limit by more than the expanded uncertainty: the guard band lies outside, and false rejection is what is bounded (JCGM 106 8.3.3). Whatever is not rejected passes, also beyond the tolerance limit; pass and fail are the only verdicts.</summary>
    public static DecisionRule GuardedRejection { get; } = new("guarded rejection, w = -U", limits => -limits.ExpandedUncertainty);

    /// <summary>The root-sum-square guard band: acceptance limit at √(T² - U²) of the tolerance T, the half-width between two limits or the distance of one limit from zero (from memory: NCSL RP-10).</summary>
    public static DecisionRule RootSumSquare { get; } = new("root-sum-square guard band, T - √(T² - U²)", limits =>
    {
        double t = limits.Tolerance, u = limits.ExpandedUncertainty;
        if (!(t > u)) throw new ArgumentException(string.Format(CultureInfo.InvariantCulture, "the root-sum-square guard band needs an expanded uncertainty below the tolerance; U/T was {0:0.###}; measure better, or agree on another rule", u / t));
        // T - √(T² - U²) without cancellation.
        return u * u / (t + Math.Sqrt(t * t - u * u));
    });

    /// <summary>A guard band that is a multiple of the expanded uncertainty (JCGM 106 8.3.2: w = r U).</summary>
    /// <param name="factor">The multiple; negative for a guard band outside the limits.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not a finite number.</exception>
    public static DecisionRule Guarded(double factor)
    {
        if (!(Math.Abs(factor) <= double.MaxValue)) throw Refuse.OutOfRange(factor, QuantityKind.Ratio, nameof(factor), "a finite number");
        return new DecisionRule(string.Format(CultureInfo.InvariantCulture, "guard band w = {0:0.####} U", factor), limits => factor * limits.ExpandedUncertainty);
    }

    /// <summary>A guard band so wide that whatever is accepted conforms with at least this probability at one limit: w = z u (JCGM 106 8.3.2; 95 %: 1.645 u).</summary>
    /// <param name="probability">The least probability of conformity, from 50 % to below 100 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is out of range.</exception>
    public static DecisionRule ForConformance(Ratio probability)
    {
        double p = probability.SiValue;
        if (!(p >= 0.5 && p < 1)) throw Refuse.OutOfRange(p, QuantityKind.Ratio, nameof(probability), "from 0.5 to below 1");
        double z = Normal.Quantile(p);
        return new DecisionRule(string.Format(CultureInfo.InvariantCulture, "conformance with at least {0:0.####} %, w = {1:0.###} u", p * 100, z), limits => z * limits.StandardUncertainty);
    }

    /// <summary>The verdict on an uncertain value.</summary>
    /// <param name="measured">The value.</param>
    /// <param name="limits">The tolerance limits.</param>
    /// <returns>The verdict with the acceptance limits, the probability of conformity and the risk.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public ConformityDecision Decide<T>(Uncertain<T> measured, ToleranceLimits<T> limits)
        where T : struct, IQuantity
    {
        if (measured is null) throw new ArgumentNullException(nameof(measured));
        if (limits is null) throw new ArgumentNullException(nameof(limits));
        return Decide(measured.Budget(), limits.Si);
    }

    /// <summary>The verdict on a budget's result; its coverage says what U is.</summary>
    /// <param name="measured">The budget.</param>
    /// <param name="lower">The lower tolerance limit, of the result's kind, which conforms itself; null where there is none.</param>
    /// <param name="upper">The upper tolerance limit, of the result's kind, which conforms itself; null where there is none.</param>
    /// <exception cref="ArgumentException">There is no limit, or a limit is not of the result's kind, or the upper one is not above the lower one.</exception>
    public ConformityDecision Decide(UncertaintyBudget measured, Quantity? lower, Quantity? upper)
    {
        if (measured is null) throw new ArgumentNullException(nameof(measured));
        if (lower is null && upper is null) throw new ArgumentException("a decision needs a lower limit, an upper limit or both; had none");
        double low = lower?.Require(measured.Value.Kind, nameof(lower)) ?? double.NegativeInfinity;
        double high = upper?.Require(measured.Value.Kind, nameof(upper)) ?? double.PositiveInfinity;
        if (!(high > low)) throw Refuse.OutOfRange(high, measured.Value.Kind, nameof(upper), "above the lower limit " + lower);
        return Decide(measured, new ToleranceInterval(low, high));
    }

    internal ConformityDecision Decide(UncertaintyBudget measured, ToleranceInterval limits, double rounding = 0) =>
        new(this, measured, limits, GuardBand(limits.Low, limits.High, measured.SiStandardUncertainty, Math.Min(measured.SiExpandedUncertainty, measured.SiReach)), rounding);

    /// <summary>The width of the guard band, positive inside the tolerance limits.</summary>
    internal double GuardBand(double low, double high, double standardUncertainty, double expandedUncertainty) =>
        standardUncertainty == 0 ? 0 : _guardBand(new Limits(low, high, standardUncertainty, expandedUncertainty));

    /// <summary>The rule in words.</summary>
    public override string ToString() => Name;

    private readonly struct Limits
    {
        private readonly double _low;
        private readonly double _high;

        internal Limits(double low, double high, double standardUncertainty, double expandedUncertainty)
        {
            _low = low;
            _high = high;
            StandardUncertainty = standardUncertainty;
            ExpandedUncertainty = expandedUncertainty;
        }

        internal double StandardUncertainty { get; }

        internal double ExpandedUncertainty { get; }

        internal double Tolerance => double.IsInfinity(_low) ? Math.Abs(_high) : double.IsInfinity(_high) ? Math.Abs(_low) : (_high - _low) / 2;
    }
}
