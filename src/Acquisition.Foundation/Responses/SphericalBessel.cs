using System;

namespace Acquisition.Core.Responses;

/// <summary>Spherical Bessel functions of the first kind, j0 ... j(n-1), of one argument.</summary>
internal static class SphericalBessel
{
    internal static void Fill(double x, double[] values)
    {
        int count = values.Length;
        double magnitude = Math.Abs(x);
        if (magnitude < 1e-3)
        {
            // Two terms of the series of each.
            double term = 1;
            for (int k = 0; k < count; k++)
            {
                values[k] = term * (1 - x * x / (2 * (2 * k + 3)));
                term *= x / (2 * k + 3);
            }
            return;
        }
        double sine = Math.Sin(x), cosine = Math.Cos(x), inverse = 1 / x;
        if (magnitude > count)
        {
            // Upwards is stable while the order stays below the argument.
            values[0] = sine * inverse;
            values[1] = (values[0] - cosine) * inverse;
            for (int k = 1; k + 1 < count; k++)
                values[k + 1] = (2 * k + 1) * inverse * values[k] - values[k - 1];
            return;
        }
        // Downwards from far enough (Miller), scaled by j0 or j1, whichever is not near a zero.
        double above = 0, here = 1e-280;
        for (int k = count + 14 + (int)magnitude; k > 0; k--)
        {
            double below = (2 * k + 1) * inverse * here - above;
            (above, here) = (here, below);
            if (k - 1 < count)
                values[k - 1] = here;
            if (Math.Abs(here) > 1e200)
            {
                above *= 1e-250;
                here *= 1e-250;
                for (int i = Math.Max(0, k - 1); i < count; i++)
                    values[i] *= 1e-250;
            }
        }
        double zeroth = sine * inverse, first = (zeroth - cosine) * inverse;
        double scale = Math.Abs(zeroth) > Math.Abs(first) ? zeroth / values[0] : first / values[1];
        for (int k = 0; k < count; k++)
            values[k] *= scale;
    }
}
