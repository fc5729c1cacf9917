using System;

namespace Acquisition.Core.Uncertainty;

/// <summary>The rules of JCGM 101 for how many trials, how exact, and which places in the sorted results (7.7, 7.9).</summary>
internal static class NumericalTolerance
{
    /// <summary>Half a unit in the last of the digits that an uncertainty is quoted to (JCGM 101 7.9.2): u = c 10^l with c of so many digits gives 0.5 10^l.</summary>
    internal static double Of(double uncertainty, int digits)
    {
        if (!(uncertainty > 0) || double.IsInfinity(uncertainty)) return 0;
        int exponent = (int)Math.Floor(Math.Log10(uncertainty)) - digits + 1;
        double c = Math.Round(uncertainty * Math.Pow(10, -exponent), MidpointRounding.AwayFromZero);
        if (c >= Math.Pow(10, digits)) exponent++;
        return 0.5 * Math.Pow(10, exponent);
    }

    /// <summary>The trials in each block of the adaptive procedure: the larger of 100/(1 - p), rounded up, and 10⁴ (JCGM 101 7.9.4 b).</summary>
    internal static int BlockTrials(double probability) => (int)Math.Max(Math.Ceiling(100 / (1 - probability) * (1 - 1e-12)), 10_000);

    /// <summary>How many of the sorted results a coverage interval spans (JCGM 101 7.7.2).</summary>
    internal static int CoveredCount(double probability, int trials) => Math.Max(1, Math.Min(trials - 1, (int)Math.Floor(probability * trials + 0.5)));
}
