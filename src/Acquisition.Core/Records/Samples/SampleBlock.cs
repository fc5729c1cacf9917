namespace Acquisition.Core.Records;

/// <summary>A stretch of samples as doubles, in an array that may hold others around them.</summary>
internal readonly struct SampleBlock
{
    private readonly int _shift;

    /// <param name="items">Where they are.</param>
    /// <param name="shift">Sample n is item n less this.</param>
    /// <param name="from">The first sample.</param>
    /// <param name="to">The sample after the last.</param>
    internal SampleBlock(double[] items, int shift, int from, int to)
    {
        Items = items;
        _shift = shift;
        From = from;
        To = to;
    }

    internal double[] Items { get; }

    internal int From { get; }

    internal int To { get; }

    internal double this[int sample] => Items[sample - _shift];

    /// <summary>The item that a sample is.</summary>
    internal int ItemOf(int sample) => sample - _shift;

    /// <summary>A part of it.</summary>
    internal SampleBlock Between(int from, int to) => new(Items, _shift, from, to);
}
