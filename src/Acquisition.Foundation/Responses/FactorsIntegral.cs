using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// ∫|H|² df of an analogue model by the trapezoidal rule over the logarithm of frequency: the integrand is analytic there and dies at both ends, so that the rule
/// converges geometrically; the step follows the least damped pole.
/// </summary>
internal static class FactorsIntegral
{
    private const int MostPoints = 200_000;

    internal static double? OfPower(Factors factors)
    {
        if (factors.Variance == 0 && factors.RollOffOrder == 0)
            return null;
        // The strip without singularities reaches to the angle between the imaginary axis and the nearest pole; a Gaussian allows 45 degrees.
        double strip = factors.Variance > 0 ? Math.PI / 4 : Math.PI / 2, low = double.PositiveInfinity, high = 0;
        foreach (Complex pole in factors.Poles())
        {
            double magnitude = Complex.Abs(pole);
            strip = Math.Min(strip, Math.Asin(Math.Min(1, -pole.Real / magnitude)));
            low = Math.Min(low, magnitude);
            high = Math.Max(high, magnitude);
        }
        if (factors.Variance > 0)
        {
            low = Math.Min(low, 1 / Math.Sqrt(factors.Variance));
            high = Math.Max(high, 1 / Math.Sqrt(factors.Variance));
        }
        double step = Math.Min(0.25, 2 * Math.PI * strip / 34);
        // Below the corners the integrand falls as f, above as f^(1 - 2 order) at least.
        double from = Math.Log(low) - 34, to = Math.Log(high) + (factors.Variance > 0 ? 3 : 34.0 / Math.Max(1, 2 * factors.RollOffOrder - 1) + 3);
        // The rule needs as many points as the sharpest resonance has Q: beyond reason, panels are halved around it instead.
        if ((to - from) / step > MostPoints)
            return AdaptiveIntegral.Of(hertz => factors.PowerAt(2 * Math.PI * hertz), FrequencyGrid.Of(factors), 1e-11);
        double sum = 0;
        for (int i = 0; from + i * step <= to; i++)
        {
            double omega = Math.Exp(from + i * step);
            sum += omega * factors.PowerAt(omega);
        }
        return sum * step / (2 * Math.PI);
    }
}
