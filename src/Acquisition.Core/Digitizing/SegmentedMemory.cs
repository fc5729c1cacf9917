using System;

namespace Acquisition.Core;

/// <summary>Memory cut into segments, one per trigger, so that the silence between bursts costs nothing; between segments only the re-arm time is blind (handbook 5.6, 5.14).</summary>
public static class SegmentedMemory
{
    /// <summary>The points of one segment: memory / segments, rounded down.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="segments"/> is below 1, or more than the memory has points.</exception>
    public static PointCount SegmentLength(PointCount memory, int segments)
    {
        if (segments < 1 || segments > memory.Points)
            throw new ArgumentOutOfRangeException(nameof(segments), FormattableString.Invariant($"segments must be 1 to the {memory} of the memory; was {segments}"));
        return PointCount.FromPoints(memory.Points / segments);
    }

    /// <summary>The window of one segment at a rate.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="segments"/> is out of range, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public static Duration SegmentWindow(PointCount memory, int segments, SampleRate rate) => Sampling.Window(SegmentLength(memory, segments), rate);

    /// <summary>The memory that so many segments of a window need at a rate.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="segments"/> is below 1, or another argument is not above zero.</exception>
    public static PointCount MemoryFor(int segments, Duration window, SampleRate rate)
    {
        if (segments < 1)
            throw new ArgumentOutOfRangeException(nameof(segments), FormattableString.Invariant($"segments must be at least 1; was {segments}"));
        return Sampling.RecordLength(rate, window) * segments;
    }

    /// <summary>The highest rate of triggers at which none is lost: 1 / (window + re-arm time).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="segmentWindow"/> is not above 0 s, or <paramref name="rearm"/> is negative.</exception>
    public static Frequency HighestTriggerRate(Duration segmentWindow, Duration rearm)
    {
        if (rearm.SiValue < 0)
            throw Refuse.OutOfRange(rearm.SiValue, Duration.Kind, nameof(rearm), "at least 0 s");
        return Frequency.FromSi(1 / (Sampling.RequireTime(segmentWindow, nameof(segmentWindow)) + rearm.SiValue), nameof(segmentWindow));
    }
}
