using System;
using System.Runtime.CompilerServices;

namespace Acquisition.Core.Signals;

/// <summary>Normal random numbers by the ziggurat method (Marsaglia and Tsang 2000) with 256 layers: one multiplication for 98.8 % of the draws.</summary>
/// <remarks>One 64-bit word gives layer (8 bits), sign (1 bit) and position (52 bits, disjoint), so that the layer does not correlate with the position.</remarks>
internal static class NormalSampler
{
    /// <summary>Where the base layer ends and its tail begins, and the area of each of the 256 layers under exp(-x²/2) (Marsaglia and Tsang 2000).</summary>
    private const double TailStart = 3.6541528853610088;
    private const double LayerArea = 4.92867323399e-3;

    private static readonly double[] Scale = new double[256];
    private static readonly long[] Inside = new long[256];
    private static readonly double[] Height = new double[256];

#pragma warning disable CA1810 // the three tables are computed together
    static NormalSampler()
#pragma warning restore CA1810
    {
        const double Positions = 1L << 52;
        double edge = TailStart, below = TailStart;
        double height = PortableMath.Exp(-0.5 * edge * edge);
        double baseWidth = LayerArea / height;
        Scale[0] = baseWidth / Positions;
        Inside[0] = (long)(TailStart / baseWidth * Positions);
        Height[0] = 1;
        Scale[255] = TailStart / Positions;
        Height[255] = height;
        for (int layer = 254; layer >= 1; layer--)
        {
            edge = Math.Sqrt(-2 * PortableMath.Log(LayerArea / edge + PortableMath.Exp(-0.5 * edge * edge)));
            Inside[layer + 1] = (long)(edge / below * Positions);
            below = edge;
            Height[layer] = PortableMath.Exp(-0.5 * edge * edge);
            Scale[layer] = edge / Positions;
        }
        Inside[1] = 0;
    }

    /// <summary>One draw of the standard normal distribution.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Next(ref RandomStream stream)
    {
        ulong bits = stream.NextBits();
        int layer = (int)(bits & 0xFF);
        long position = (long)(bits >> 12);
        double x = position * Scale[layer];
        if (position >= Inside[layer]) return Unlikely(ref stream, bits, x);
        return (bits & 0x100) != 0 ? -x : x;
    }

    /// <summary>Fills the start of a column with draws of the standard deviation <paramref name="standardDeviation"/>.</summary>
    internal static void Fill(ref RandomStream stream, double[] column, int count, double standardDeviation)
    {
        RandomStream local = stream;
        double[] scale = Scale;
        long[] inside = Inside;
        for (int i = 0; i < column.Length && i < count; i++)
        {
            ulong bits = local.NextBits();
            int layer = (int)(bits & 0xFF);
            long position = (long)(bits >> 12);
            // The sign bit is moved onto the number: a branch on it would be mispredicted every other time.
            double x = BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(position * scale[layer]) | (long)(bits << 55) & long.MinValue);
            if (position >= inside[layer]) x = Unlikely(ref local, bits, position * scale[layer]);
            column[i] = x * standardDeviation;
        }
        stream = local;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static double Unlikely(ref RandomStream stream, ulong bits, double x)
    {
        while (true)
        {
            int layer = (int)(bits & 0xFF);
            bool negative = (bits & 0x100) != 0;
            if (layer == 0)
            {
                x = Tail(ref stream);
                return negative ? -x : x;
            }
            if (Height[layer] + stream.NextUnit() * (Height[layer - 1] - Height[layer]) < PortableMath.Exp(-0.5 * x * x)) return negative ? -x : x;
            bits = stream.NextBits();
            layer = (int)(bits & 0xFF);
            long position = (long)(bits >> 12);
            x = position * Scale[layer];
            if (position < Inside[layer]) return (bits & 0x100) != 0 ? -x : x;
        }
    }

    /// <summary>The tail beyond the base layer by rejection from an exponential (Marsaglia 1964).</summary>
    private static double Tail(ref RandomStream stream)
    {
        while (true)
        {
            double x = -PortableMath.Log(1 - stream.NextUnit()) / TailStart;
            double y = -PortableMath.Log(1 - stream.NextUnit());
            if (2 * y > x * x) return TailStart + x;
        }
    }
}
