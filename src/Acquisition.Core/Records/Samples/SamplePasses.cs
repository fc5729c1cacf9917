using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Samples that are read over and over, each time from some sample to another, a block at a time: numbers in double precision are read where they are, everything else is converted
/// into one block that is used again. So what a fit needs beside a record of codes does not grow with it.
/// </summary>
/// <remarks>Whoever watches is told of every block. Not thread-safe: a fit makes one of its own.</remarks>
internal sealed class SamplePasses
{
    /// <summary>So many samples make a block: converted, they stay in the processor's first cache. A multiple of 512, after which the sums of a fit start their sine anew.</summary>
    internal const int BlockLength = 2048;

    /// <summary>A fit mostly takes so many passes over all samples; how many, nobody knows before.</summary>
    private const double UsualPasses = 5;

    private readonly SampleStore _samples;
    private readonly LongCall? _call;
    private readonly double[] _items;
    private readonly int _first;
    private readonly bool _inPlace;
    private double _read;

    internal SamplePasses(SampleStore samples, LongCall? call = null)
    {
        _samples = samples;
        _call = call;
        _inPlace = samples.InPlace(out double[]? items, out _first);
        _items = items ?? new double[Math.Min(BlockLength, samples.Length)];
    }

    internal int Length => _samples.Length;

    /// <summary>Samples from one to before another, or as many of them as make a block.</summary>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    internal SampleBlock Next(int from, int to)
    {
        int end = from + Math.Min(BlockLength, to - from);
        if (_call is not null)
            Tell(end - from);
        if (_inPlace)
            return new SampleBlock(_items, -_first, from, end);
        _samples.Copy(from, _items, 0, end - from);
        return new SampleBlock(_items, from, from, end);
    }

    /// <summary>The usual passes fill four fifths of the way; if there are more, what is left shrinks.</summary>
    private void Tell(int count)
    {
        double passes = _read / Length;
        _call!.Reached(passes < UsualPasses ? 0.8 * passes / UsualPasses : 1 - 0.2 * UsualPasses / passes);
        _read += count;
    }
}
