using System;

namespace Acquisition.Core.Planning;

/// <summary>What counts when suitable candidates are put in order. The weights are relative to each other.</summary>
/// <remarks>Immutable; each <c>With...</c> method gives a changed copy.</remarks>
public sealed class ShortlistWeights
{
    /// <summary>Price counts twice as much as the margin of the tightest criterion, and that twice as much as how well the figures are assured.</summary>
    public static ShortlistWeights Default { get; } = new();

    /// <summary>The weight of a low price.</summary>
    public double PriceFactor { get; private set; } = 4;

    /// <summary>The weight of the margin of the tightest criterion.</summary>
    public double MarginFactor { get; private set; } = 2;

    /// <summary>The weight of figures that are guaranteed.</summary>
    public double AssuranceFactor { get; private set; } = 1;

    /// <summary>A copy with a weight of the price, at least 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is negative or not finite.</exception>
    public ShortlistWeights WithPriceFactor(double factor) => Copy(copy => copy.PriceFactor = Weight(factor));

    /// <summary>A copy with a weight of the margin, at least 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is negative or not finite.</exception>
    public ShortlistWeights WithMarginFactor(double factor) => Copy(copy => copy.MarginFactor = Weight(factor));

    /// <summary>A copy with a weight of assurance, at least 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is negative or not finite.</exception>
    public ShortlistWeights WithAssuranceFactor(double factor) => Copy(copy => copy.AssuranceFactor = Weight(factor));

    /// <summary>From 0 to 1, more is better.</summary>
    internal double Score(double tightestMargin, double? price, double dearest, Assurance assurance)
    {
        double total = PriceFactor + MarginFactor + AssuranceFactor;
        if (total == 0)
            return 0;
        double cheap = price is { } units && dearest > 0 ? 1 - (units / dearest) : 0, ample = Math.Max(0, tightestMargin) / (1 + Math.Max(0, tightestMargin));
        return ((PriceFactor * cheap) + (MarginFactor * ample) + (AssuranceFactor * (int)assurance / 2.0)) / total;
    }

    private static double Weight(double factor) =>
        factor >= 0 && factor <= double.MaxValue ? factor : throw new ArgumentOutOfRangeException(nameof(factor), FormattableString.Invariant($"factor must be at least 0; was {factor}"));

    private ShortlistWeights Copy(Action<ShortlistWeights> change)
    {
        var copy = (ShortlistWeights)MemberwiseClone();
        change(copy);
        return copy;
    }
}
