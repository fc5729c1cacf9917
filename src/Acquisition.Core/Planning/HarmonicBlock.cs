using System;
using System.Collections.Generic;

namespace Acquisition.Core.Planning;

/// <summary>A run of neighbouring harmonics of a slow signal, which can have millions behind a fast chain: a few of them stand for all.</summary>
internal readonly struct HarmonicBlock
{
    private const int Representing = 18;

    private HarmonicBlock(double first, double next)
    {
        First = (int)first;
        Last = (int)(next - 1);
    }

    internal int First { get; }

    internal int Last { get; }

    /// <summary>How many harmonics each representative stands for.</summary>
    internal double Weight => ((double)Last - First + 1) / Representing;

    /// <summary>Blocks of a tenth of their number each, from a harmonic up to the first block that reaches another.</summary>
    internal static IEnumerable<HarmonicBlock> From(int first, double reach)
    {
        double number = first;
        while (number < reach && number < int.MaxValue / 2.0)
        {
            double next = Math.Floor(number * 1.1) + 1;
            yield return new HarmonicBlock(number, next);
            number = next;
        }
    }

    /// <summary>Odd and even harmonics by turns, because a square wave has the odd ones only, in steps that share no factor with a duty factor's nulls.</summary>
    internal IEnumerable<int> Representatives()
    {
        int pairs = (Last - First + 1) / 2;
        for (int i = 0; i < Representing; i++)
            yield return First + 2 * (int)(pairs * (i * 0.6180339887498949 % 1)) + i % 2;
    }
}
