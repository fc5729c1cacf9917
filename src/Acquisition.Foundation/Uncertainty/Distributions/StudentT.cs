using System;
using MathNet.Numerics;

namespace Acquisition.Core.Uncertainty;

/// <summary>Student's t-distribution: distribution function and quantile for any positive degrees of freedom, on the incomplete beta function of MathNet.Numerics.</summary>
internal static class StudentT
{
    /// <summary>Beyond this the expansion about the normal quantile is good to more digits than the incomplete beta function.</summary>
    private const double ExpansionSuffices = 2000;

    /// <summary>The probability of at most <paramref name="t"/>.</summary>
    internal static double Cumulative(double t, double degreesOfFreedom)
    {
        if (double.IsPositiveInfinity(degreesOfFreedom)) return Normal.Cumulative(t);
        double tail = SpecialFunctions.BetaRegularized(degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t)) / 2;
        return t > 0 ? 1 - tail : tail;
    }

    /// <summary>The value that is not exceeded with <paramref name="probability"/>, above 0 and below 1.</summary>
    internal static double Quantile(double probability, double degreesOfFreedom)
    {
        if (probability < 0.5) return -UpperQuantile(probability, degreesOfFreedom);
        return probability == 0.5 ? 0 : UpperQuantile(1 - probability, degreesOfFreedom);
    }

    /// <summary>The coverage factor t_p of a two-sided coverage probability (JCGM 100 G.3).</summary>
    internal static double CoverageFactor(double probability, double degreesOfFreedom) => UpperQuantile((1 - probability) / 2, degreesOfFreedom);

    /// <summary>The value that is exceeded with the probability <paramref name="tail"/>, below one half.</summary>
    private static double UpperQuantile(double tail, double nu)
    {
        if (double.IsPositiveInfinity(nu)) return -Normal.Quantile(tail);
        if (nu == 1) return 1 / Math.Tan(Math.PI * tail);
        if (nu == 2) return (1 - 2 * tail) / Math.Sqrt(2 * tail * (1 - tail));
        double t = StartingValue(tail, nu);
        if (nu > ExpansionSuffices) return t;
        double logScale = SpecialFunctions.GammaLn((nu + 1) / 2) - SpecialFunctions.GammaLn(nu / 2) - Math.Log(nu * Math.PI) / 2;
        for (int step = 0; step < 60; step++)
        {
            double excess = SpecialFunctions.BetaRegularized(nu / 2, 0.5, nu / (nu + t * t)) / 2 - tail;
            double density = Math.Exp(logScale - (nu + 1) / 2 * Math.Log(1 + t * t / nu));
            // Halley's step: the second derivative of the tail is known from the density.
            double newton = excess / density;
            double change = newton / (1 - newton * (nu + 1) * t / (2 * (nu + t * t)));
            double next = t + change;
            if (!(next > 0)) next = t / 2;
            if (Math.Abs(next - t) <= 4e-15 * t || next == t) return next;
            bool done = Math.Abs(change) < 1e-6 * t;
            t = next;
            if (done) return t;
        }
        return t;
    }

    /// <summary>An expansion about the normal quantile (Abramowitz and Stegun 26.7.5), or the tail's power law where few degrees of freedom make that fail.</summary>
    private static double StartingValue(double tail, double nu)
    {
        double z = -Normal.Quantile(tail);
        double z2 = z * z;
        double expansion = z * (1 + (z2 + 1) / (4 * nu) + ((5 * z2 + 16) * z2 + 3) / (96 * nu * nu) + (((3 * z2 + 19) * z2 + 17) * z2 - 15) / (384 * nu * nu * nu)
            + ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945) / (92160 * nu * nu * nu * nu));
        if (z2 < nu) return expansion;
        double logConstant = SpecialFunctions.GammaLn((nu + 1) / 2) - SpecialFunctions.GammaLn(nu / 2) - Math.Log(nu * Math.PI) / 2 + Math.Log(nu) * (nu + 1) / 2;
        return Math.Exp((logConstant - Math.Log(nu * tail)) / nu);
    }
}
