using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>
/// How far random bits swing behind a response: over all patterns, at the worst place in a bit. Every bit adds what is left of it, up or down, so that the extremes are the sum of the magnitudes, at the phase where that is largest.
/// </summary>
internal static class ExtremesOfBits
{
    private const int Phases = 512;
    private const int MostBits = 2000;

    /// <summary>From the lowest to the highest value, V; null where the answer to a bit goes on too long, or cannot be computed.</summary>
    /// <param name="bits">The bits.</param>
    /// <param name="response">The response.</param>
    /// <param name="settling">What a transition takes to settle behind it, s.</param>
    internal static double? Of(RandomBitsSignal bits, Response response, double settling)
    {
        double bit = bits.BitSeconds, around = Math.Ceiling(2 * settling / bit) + 2;
        if (!(around <= MostBits))
            return null;
        Edge edge = bits.SteepestEdge!;
        Signal one;
        try
        {
            one = response.Apply(new PulseSignal("bit", 0, bits.PeakToPeak.SiValue, bit, edge, edge));
        }
        catch (NotSupportedException)
        {
            return null;
        }
        double most = 0;
        for (int phase = 0; phase < Phases; phase++)
        {
            double sum = 0;
            for (int k = -(int)around; k <= (int)around; k++)
                sum += Math.Abs(one.Value((k + ((double)phase / Phases)) * bit));
            most = Math.Max(most, sum);
        }
        return most;
    }
}
