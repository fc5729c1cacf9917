using System;

namespace Acquisition.Core.Records;

/// <summary>Where the samples of a record are: numbers or integer codes, kept as they came, with the few kernels that every measurement is built on.</summary>
internal abstract class SampleStore
{
    /// <summary>So many samples between two looks at who watches a long call: some milliseconds.</summary>
    internal const int SamplesPerLook = 1 << 22;

    internal abstract int Length { get; }

    internal abstract double this[int index] { get; }

    internal abstract void Copy(int from, double[] destination, int offset, int count);

    /// <summary>Smallest and largest value from <paramref name="from"/> to before <paramref name="to"/>, of at least one sample; NaN for both where one sample is.</summary>
    internal abstract void Extremes(int from, int to, out double lowest, out double highest);

    /// <summary>Smallest and largest of all values, looking at who watches from time to time.</summary>
    internal void Extremes(LongCall? call, out double lowest, out double highest) => Extremes(0, Length, call, out lowest, out highest);

    /// <summary>Smallest and largest value of a stretch of at least one sample, looking at who watches the passage through all of them.</summary>
    internal void Extremes(int from, int to, LongCall? call, out double lowest, out double highest)
    {
        lowest = double.PositiveInfinity;
        highest = double.NegativeInfinity;
        int stretch = call is null ? to - from : SamplesPerLook;
        for (int end; from < to; from = end)
        {
            call?.Reached(from, Length);
            end = from + Math.Min(stretch, to - from);
            Extremes(from, end, out double low, out double high);
            lowest = Math.Min(lowest, low);
            highest = Math.Max(highest, high);
        }
    }

    /// <summary>The array that holds the samples as doubles, and which item is the first sample; false where they are kept in another way.</summary>
    internal virtual bool InPlace(out double[]? items, out int first)
    {
        items = null;
        first = 0;
        return false;
    }

    /// <summary>A scan for the transitions between two states.</summary>
    /// <param name="states">The states.</param>
    /// <param name="settings">What transitions refer to.</param>
    /// <param name="step">The step of the converter, 0 where it is not known.</param>
    internal abstract EdgeScan ScanEdges(StateLevels states, PulseSettings settings, double step);

    /// <summary>The same samples, fewer of them; nothing is copied.</summary>
    internal abstract SampleStore Slice(int from, int count);

    /// <summary>How an item is kept, as letter and size in bytes: f8, f4, i1, u1, i2, u2.</summary>
    internal abstract string ItemType { get; }

    /// <summary>Copies items as they are kept, in the machine's byte order.</summary>
    internal abstract void CopyItems(int from, byte[] destination, int count);

    /// <summary>How often each code occurs; null where the samples are no codes.</summary>
    internal virtual CodeCounts? CountCodes() => null;

    /// <summary>The index of the first sample that is not a finite number, or -1. Codes always are.</summary>
    internal virtual int FirstNotFinite() => -1;

    /// <summary>The same, looking at who watches from time to time.</summary>
    internal int FirstNotFinite(LongCall? call)
    {
        if (call is null || Length <= SamplesPerLook)
            return FirstNotFinite();
        for (int from = 0; from < Length; from += Math.Min(SamplesPerLook, Length - from))
        {
            call.Reached(from, Length);
            int found = Slice(from, Math.Min(SamplesPerLook, Length - from)).FirstNotFinite();
            if (found >= 0)
                return from + found;
        }
        return -1;
    }
}
