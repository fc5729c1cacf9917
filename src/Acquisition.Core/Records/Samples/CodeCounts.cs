using System;

namespace Acquisition.Core.Records;

/// <summary>How often each code of a converter occurs in a record: all that levels and moments of the amplitude need, however long the record.</summary>
internal sealed class CodeCounts
{
    private readonly CodeSamples _codes;

    /// <param name="counts">Occurrences by code, from the lowest code up.</param>
    /// <param name="codes">Where the codes are from.</param>
    internal CodeCounts(long[] counts, CodeSamples codes)
    {
        Counts = counts;
        _codes = codes;
        int first = -1;
        for (int i = 0; i < counts.Length; i++)
        {
            if (counts[i] == 0)
                continue;
            if (first < 0)
                First = first = i;
            Last = i;
        }
    }

    internal long[] Counts { get; }

    /// <summary>The lowest code that occurs.</summary>
    internal int First { get; }

    /// <summary>The highest code that occurs.</summary>
    internal int Last { get; }

    /// <summary>The counts of all codes, looking at who watches from time to time.</summary>
    internal static CodeCounts? Of(SampleStore samples, LongCall? call)
    {
        if (call is null || samples is not CodeSamples codes || samples.Length <= SampleStore.SamplesPerLook)
            return samples.CountCodes();
        var total = new long[codes.Codes];
        for (int from = 0; from < samples.Length; from += Math.Min(SampleStore.SamplesPerLook, samples.Length - from))
        {
            call.Reached(from, samples.Length);
            long[] some = samples.Slice(from, Math.Min(SampleStore.SamplesPerLook, samples.Length - from)).CountCodes()!.Counts;
            for (int i = 0; i < total.Length; i++)
                total[i] += some[i];
        }
        return new CodeCounts(total, codes);
    }

    internal double ValueOf(int code) => _codes.ValueOf(code);
}
