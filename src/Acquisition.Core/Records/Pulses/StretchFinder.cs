using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Looks for stretches in which a record rests at either state. Noise does not need all of a long record: blocks are read evenly over it, and where they hold too little of a state, which is then rare, the rest is
/// searched. What it needs beside the record is one block and the windows, whatever the length.
/// </summary>
internal sealed class StretchFinder
{
    /// <summary>Samples of a block, and how many blocks are read.</summary>
    private const int BlockLength = 1 << 14, MostBlocks = 8;

    /// <summary>Of each state, so many samples are enough: their variance is known to 3 %.</summary>
    private const int Enough = 4096;

    /// <summary>A rare state is looked for in so many samples at once.</summary>
    private const int SearchLength = 1 << 12;

    private readonly SampleStore _samples;
    private readonly double _atMostLow, _atLeastHigh;
    private readonly double[] _block;

    /// <param name="samples">The samples.</param>
    /// <param name="low">The low state.</param>
    /// <param name="high">The high state.</param>
    /// <param name="reach">How far from a state, seen from the other, samples belong to it. What is beyond it does too: ringing and spikes do not end a stretch.</param>
    internal StretchFinder(SampleStore samples, double low, double high, double reach)
    {
        _samples = samples;
        _atMostLow = low + reach;
        _atLeastHigh = high - reach;
        _block = new double[Math.Min(BlockLength, samples.Length)];
        Low = new StretchNoise(low);
        High = new StretchNoise(high);
    }

    internal StretchNoise Low { get; }

    internal StretchNoise High { get; }

    internal void Read(LongCall? call)
    {
        int length = _samples.Length, blocks = (int)Math.Min(MostBlocks, (length + (long)BlockLength - 1) / BlockLength);
        for (int k = 0; k < blocks; k++)
            Add(blocks == 1 ? 0 : (int)((long)k * (length - _block.Length) / (blocks - 1)), _block.Length, true, true);
        if (length > blocks * (long)BlockLength && (Low.Samples < Enough || High.Samples < Enough))
            Search(call);
    }

    private void Search(LongCall? call)
    {
        for (int from = 0, count; from < _samples.Length; from += count)
        {
            bool low = Low.Samples < Enough, high = High.Samples < Enough;
            if (!low && !high)
                return;
            if (from % SampleStore.SamplesPerLook == 0)
                call?.Reached(from, _samples.Length);
            count = Math.Min(SearchLength, _samples.Length - from);
            _samples.Extremes(from, from + count, out double lowest, out double highest);
            if ((low && lowest <= _atMostLow) || (high && highest >= _atLeastHigh))
                Add(from, count, low, high);
        }
    }

    private void Add(int from, int count, bool low, bool high)
    {
        _samples.Copy(from, _block, 0, count);
        for (int i = 0, since = 0; i < count; since = i)
        {
            bool isLow = _block[i] <= _atMostLow, isHigh = _block[i] >= _atLeastHigh;
            for (i++; i < count && _block[i] <= _atMostLow == isLow && _block[i] >= _atLeastHigh == isHigh; i++)
            {
            }
            if (isLow && low)
                Low.Add(_block, since, i);
            else if (isHigh && high)
                High.Add(_block, since, i);
        }
    }
}
