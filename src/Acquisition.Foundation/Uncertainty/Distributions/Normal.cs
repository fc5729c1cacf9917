using System;

namespace Acquisition.Core.Uncertainty;

/// <summary>The standard normal distribution: density, distribution function and quantile.</summary>
internal static class Normal
{
    private static readonly double DensityAtZero = 1 / Math.Sqrt(2 * Math.PI);

    internal static double Density(double z) => DensityAtZero * Math.Exp(-z * z / 2);

    /// <summary>The probability of at most <paramref name="z"/>; keeps its relative accuracy in the lower tail.</summary>
    internal static double Cumulative(double z) => ErrorFunction.NormalBelow(z);

    /// <summary>The probability between two values, without cancellation in either tail.</summary>
    internal static double Between(double low, double high) =>
        low > 0 ? Cumulative(-low) - Cumulative(-high) : Cumulative(high) - Cumulative(low);

    /// <summary>The value that is not exceeded with <paramref name="probability"/>, above 0 and below 1.</summary>
    internal static double Quantile(double probability) =>
        probability <= 0.5 ? ErrorFunction.NormalQuantile(probability) : -ErrorFunction.NormalQuantile(1 - probability);
}
