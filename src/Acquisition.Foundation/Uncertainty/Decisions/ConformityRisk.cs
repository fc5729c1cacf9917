using System;

namespace Acquisition.Core.Uncertainty;

/// <summary>Probabilities of conformity and of wrong decisions (JCGM 106 clauses 7 and 9), over plain numbers in one unit; a missing limit is infinite.</summary>
internal static class ConformityRisk
{
    /// <summary>What is uncertain is neither certain nor impossible; far from the limits only the numbers round to that.</summary>
    private const double NearlyCertain = 1 - 1.1102230246251565e-16, NearlyImpossible = 2.2250738585072014e-308;

    /// <summary>The probability of lying between the limits, given an estimate and its standard uncertainty, which is not 0 (JCGM 106 7.2 to 7.4).</summary>
    internal static double Conformance(double y, double u, double degreesOfFreedom, double low, double high)
    {
        double a = (low - y) / u, b = (high - y) / u;
        double p = double.IsPositiveInfinity(degreesOfFreedom) ? Normal.Between(a, b) : Cumulative(b, degreesOfFreedom) - Cumulative(a, degreesOfFreedom);
        return Math.Min(NearlyCertain, Math.Max(NearlyImpossible, p));
    }

    /// <summary>The same of an estimate that follows one source with limits, in a straight line.</summary>
    internal static double Conformance(double y, Distribution distribution, double sensitivity, double low, double high)
    {
        double a = (low - y) / sensitivity, b = (high - y) / sensitivity;
        double p = distribution.Cumulative(Math.Max(a, b)) - distribution.Cumulative(Math.Min(a, b));
        return Math.Min(NearlyCertain, Math.Max(NearlyImpossible, p));
    }

    /// <summary>
    /// The global risks (JCGM 106 9.5.2): of accepting a product that does not conform, and of rejecting one that does, when products are normal about the process mean and
    /// readings are normal about the product.
    /// </summary>
    internal static (double FalseAcceptance, double FalseRejection) Global(double mean, double spread, double u, double low, double high, double acceptLow, double acceptHigh)
    {
        double accepted(double x) => Normal.Between((acceptLow - x) / u, (acceptHigh - x) / u);
        double from = mean - 9 * spread, to = mean + 9 * spread;
        double acceptance(double a, double b) => Integrate(x => Normal.Density((x - mean) / spread) / spread * accepted(x), Math.Max(a, from), Math.Min(b, to), Math.Min(u, spread));
        double rejection(double a, double b) => Integrate(x => Normal.Density((x - mean) / spread) / spread * (1 - accepted(x)), Math.Max(a, from), Math.Min(b, to), Math.Min(u, spread));
        return (acceptance(double.NegativeInfinity, low) + acceptance(high, double.PositiveInfinity), rejection(low, high));
    }

    private static double Cumulative(double t, double degreesOfFreedom) =>
        double.IsNegativeInfinity(t) ? 0 : double.IsPositiveInfinity(t) ? 1 : StudentT.Cumulative(t, degreesOfFreedom);

    /// <summary>Composite Gauss-Legendre on panels no wider than half the narrower of the two distributions, where the integrand is smooth to the last bits.</summary>
    private static double Integrate(Func<double, double> f, double a, double b, double scale)
    {
        if (!(b > a)) return 0;
        int panels = (int)Math.Min(20_000, Math.Max(4, Math.Ceiling((b - a) / (0.5 * scale))));
        double width = (b - a) / panels, sum = 0;
        for (int panel = 0; panel < panels; panel++)
        {
            double middle = a + (panel + 0.5) * width;
            for (int i = 0; i < Nodes.Length; i++) sum += Weights[i] * (f(middle + width / 2 * Nodes[i]) + f(middle - width / 2 * Nodes[i]));
        }
        return sum * width / 2;
    }

    /// <summary>The positive nodes and the weights of the ten-point rule (Abramowitz and Stegun table 25.4).</summary>
    private static readonly double[] Nodes = { 0.1488743389816312, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717 };
    private static readonly double[] Weights = { 0.2955242247147529, 0.2692667193099964, 0.2190863625159820, 0.1494513491505806, 0.0666713443086881 };
}
