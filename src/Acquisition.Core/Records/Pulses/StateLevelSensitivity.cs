using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core;

/// <summary>By how much a transition duration reads wrong when the level of the state it reaches is wrong (handbook 8.8): the reference levels move with it.</summary>
public static class StateLevelSensitivity
{
    /// <summary>Of an exponential edge: relative error of the duration for each part of the amplitude that the level is off.</summary>
    /// <param name="proximal">The reference level nearest to the state that is left.</param>
    /// <param name="distal">The reference level nearest to the state that is reached.</param>
    /// <exception cref="ArgumentOutOfRangeException">The levels are not 0 &lt; proximal &lt; distal &lt; 1.</exception>
    public static Ratio OfExponentialEdge(Ratio proximal, Ratio distal)
    {
        (double low, double high) = Levels(proximal, distal);
        return Ratio.FromSi((high / (1 - high) - low / (1 - low)) / Math.Log((1 - low) / (1 - high)), nameof(distal));
    }

    /// <summary>Of a Gaussian edge: relative error of the duration for each part of the amplitude that the level is off.</summary>
    /// <param name="proximal">The reference level nearest to the state that is left.</param>
    /// <param name="distal">The reference level nearest to the state that is reached.</param>
    /// <exception cref="ArgumentOutOfRangeException">The levels are not 0 &lt; proximal &lt; distal &lt; 1.</exception>
    public static Ratio OfGaussianEdge(Ratio proximal, Ratio distal)
    {
        (double low, double high) = Levels(proximal, distal);
        double from = ErrorFunction.NormalQuantile(low), to = ErrorFunction.NormalQuantile(high);
        return Ratio.FromSi((high / Density(to) - low / Density(from)) / (to - from), nameof(distal));
    }

    private static (double Low, double High) Levels(Ratio proximal, Ratio distal) => proximal.SiValue > 0 && proximal.SiValue < distal.SiValue && distal.SiValue < 1
        ? (proximal.SiValue, distal.SiValue)
        : throw new ArgumentOutOfRangeException(nameof(proximal), $"levels must be 0 < proximal < distal < 1; were {proximal} and {distal}");

    private static double Density(double z) => Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI);
}
