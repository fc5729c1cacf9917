using System;
#if NET8_0_OR_GREATER
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
#endif

namespace Acquisition.Core.Digitizing;

/// <summary>The kernel of upsampling: each sample interval becomes <c>factor</c> points, each a weighted sum of the same samples with weights of its own.</summary>
internal static class Polyphase
{
    /// <param name="padded">The samples with what the first and last points need beyond the ends.</param>
    /// <param name="table">Weights, tap after tap, in each all phases.</param>
    /// <param name="taps">The taps.</param>
    /// <param name="factor">The phases.</param>
    /// <param name="from">The first interval.</param>
    /// <param name="to">The interval after the last.</param>
    /// <param name="values">Where interval i puts its points: at i × factor.</param>
    internal static void Run(double[] padded, double[] table, int taps, int factor, int from, int to, double[] values)
    {
#if NET8_0_OR_GREATER
        // Across the phases of an interval all points use the same sample: one broadcast, one row of weights, no horizontal sums.
        int width = Vector<double>.Count;
        if (factor >= width)
        {
            int i = from;
            for (; i + 1 < to; i += 2)
                TwoIntervals(padded, table, taps, factor, i, values);
            if (i < to)
                Scalar(padded, table, taps, factor, i, i + 1, values);
            return;
        }
#endif
        Scalar(padded, table, taps, factor, from, to, values);
    }

    private static void Scalar(double[] padded, double[] table, int taps, int factor, int from, int to, double[] values)
    {
        for (int i = from; i < to; i++)
        {
            for (int phase = 0; phase < factor; phase++)
            {
                double sum = 0;
                for (int k = 0; k < taps; k++)
                    sum += padded[i + k] * table[k * factor + phase];
                values[i * factor + phase] = sum;
            }
        }
    }

#if NET8_0_OR_GREATER
    /// <summary>Two intervals at once, so that a row of weights is loaded once for both; the last vector of a row overlaps the one before it.</summary>
    /// <remarks>Optimized from its first call: a record is drawn in one call, which would otherwise run to its end before the runtime has noticed.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void TwoIntervals(double[] padded, double[] table, int taps, int factor, int first, double[] values)
    {
        int width = Vector<double>.Count;
        ref double input = ref MemoryMarshal.GetArrayDataReference(padded);
        ref double weights = ref MemoryMarshal.GetArrayDataReference(table);
        ref double output = ref MemoryMarshal.GetArrayDataReference(values);
        for (int block = 0; block < factor; block += width)
        {
            int phase = Math.Min(block, factor - width);
            Vector<double> left = Vector<double>.Zero, right = Vector<double>.Zero, left2 = Vector<double>.Zero, right2 = Vector<double>.Zero;
            int k = 0;
            var before = new Vector<double>(Unsafe.Add(ref input, first));
            for (; k + 1 < taps; k += 2)
            {
                var row = Unsafe.As<double, Vector<double>>(ref Unsafe.Add(ref weights, k * factor + phase));
                var next = new Vector<double>(Unsafe.Add(ref input, first + k + 1));
                left += before * row;
                right += next * row;
                row = Unsafe.As<double, Vector<double>>(ref Unsafe.Add(ref weights, (k + 1) * factor + phase));
                before = new Vector<double>(Unsafe.Add(ref input, first + k + 2));
                left2 += next * row;
                right2 += before * row;
            }
            Unsafe.As<double, Vector<double>>(ref Unsafe.Add(ref output, first * factor + phase)) = left + left2;
            Unsafe.As<double, Vector<double>>(ref Unsafe.Add(ref output, (first + 1) * factor + phase)) = right + right2;
        }
    }
#endif
}
