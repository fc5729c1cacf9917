using System;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>A value that is not exactly known, together with all that its uncertainty comes from; <see cref="Uncertain{T}"/> is the same with a strong type.</summary>
/// <remarks>
/// Two values that depend on the same source are correlated by it, and arithmetic keeps that: a value less itself is exactly 0 ± 0. Propagation is to first order
/// (JCGM 100 5.1.2 and 5.2.2). Immutable and thread-safe.
/// </remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public abstract class UncertainQuantity
{
    private protected UncertainQuantity(double value, LinearCombination combination)
    {
        SiEstimate = value;
        Combination = combination;
    }

    internal double SiEstimate { get; }

    internal LinearCombination Combination { get; }

    internal abstract QuantityKind Kind { get; }

    internal abstract UncertainQuantity WithCombination(LinearCombination combination);

    /// <summary>The estimate.</summary>
    public Quantity Estimate => new(SiEstimate, Kind);

    /// <summary>The combined standard uncertainty; of a level in decibels, of a temperature as a difference in kelvins.</summary>
    public Quantity StandardUncertainty => new(SiStandardUncertainty, UncertaintyKind.Of(Kind));

    internal double SiStandardUncertainty => Math.Sqrt(Combination.Variance());

    /// <summary>The standard uncertainty over the magnitude of the estimate.</summary>
    /// <exception cref="InvalidOperationException">The estimate is zero, or a level, decibel ratio or temperature, where a relative uncertainty has no meaning.</exception>
    public Ratio RelativeStandardUncertainty =>
        Kind.Nature >= QuantityNature.Point || SiEstimate == 0
            ? throw new InvalidOperationException($"a relative uncertainty of {Estimate} has no meaning; use the standard uncertainty, {StandardUncertainty}")
            : Ratio.FromSi(SiStandardUncertainty / Math.Abs(SiEstimate), "estimate");

    /// <summary>The correlation coefficient of two values: 1 for a value and itself, 0 where they share nothing or one of them is exact.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public double CorrelationWith(UncertainQuantity other)
    {
        if (other is null) throw new ArgumentNullException(nameof(other));
        double product = Math.Sqrt(Combination.Variance() * other.Combination.Variance());
        return product == 0 ? 0 : Math.Max(-1, Math.Min(1, LinearCombination.Covariance(Combination, other.Combination) / product));
    }

    /// <summary>The uncertainty budget at the usual coverage probability of 95.45 %.</summary>
    public UncertaintyBudget Budget() => Budget(Coverage.Usual);

    /// <summary>The uncertainty budget: value, contributions and their shares, combined and expanded uncertainty.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="coverage"/> is null.</exception>
    public UncertaintyBudget Budget(Coverage coverage) =>
        new(Estimate, Combination.Sources, Combination.Sensitivities, coverage ?? throw new ArgumentNullException(nameof(coverage)));

    /// <summary>This value as a strong type.</summary>
    /// <exception cref="InvalidOperationException">It is of another kind.</exception>
    public Uncertain<T> As<T>()
        where T : struct, IQuantity =>
        this as Uncertain<T> ?? (Kind.Equals(StrongType<T>.Kind)
            ? Uncertain<T>.Made(SiEstimate, Combination, "estimate")
            : throw new InvalidOperationException($"found a {Kind.Name} ({this}), expected a {StrongType<T>.Kind.Name}"));

    /// <summary>Value and standard uncertainty as JCGM 100 7.2.2 writes them, such as <c>10.020(15) V</c>.</summary>
    public override string ToString() => ResultText.Concise(Estimate, SiStandardUncertainty, 2);
}
