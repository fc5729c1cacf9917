using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Samples as the codes of a converter with the value of a step. A code is counted from the lowest one, 0, whatever its bits: two's complement is turned into that by
/// flipping its sign bit, so that codes compare as values do.
/// </summary>
internal abstract class CodeSamples : SampleStore
{
    private protected CodeSamples(double scale, double atZero, int zero)
    {
        Scale = scale;
        AtZero = atZero;
        Zero = zero;
    }

    /// <summary>The value of one step, above zero.</summary>
    internal double Scale { get; }

    /// <summary>The value of the code that is written as 0.</summary>
    internal double AtZero { get; }

    /// <summary>Which code is written as 0, counted from the lowest.</summary>
    internal int Zero { get; }

    internal abstract int Codes { get; }

    internal double ValueOf(int code) => AtZero + (code - Zero) * Scale;

    /// <summary>The lowest code whose value is at or above a level; the number of codes where none is.</summary>
    internal int Threshold(double level)
    {
        double estimate = Math.Ceiling((level - AtZero) / Scale) + Zero;
        if (double.IsNaN(estimate) || estimate > Codes)
            return Codes;
        int code = Math.Max(0, (int)estimate);
        while (code > 0 && ValueOf(code - 1) >= level)
            code--;
        while (code < Codes && !(ValueOf(code) >= level))
            code++;
        return code;
    }
}
