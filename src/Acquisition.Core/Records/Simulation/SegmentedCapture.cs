using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>The records of a segmented memory, each with the time of its own start, and the triggers that came too early.</summary>
/// <remarks>Immutable.</remarks>
public sealed class SegmentedCapture
{
    internal SegmentedCapture(IReadOnlyList<Record> segments, IReadOnlyList<Duration> missed)
    {
        Segments = segments.Frozen();
        MissedTriggers = missed.Frozen();
    }

    /// <summary>A record for each trigger that was seen, in order of time.</summary>
    public IReadOnlyList<Record> Segments { get; }

    /// <summary>The triggers that came while a segment was filling or the instrument was not armed again.</summary>
    public IReadOnlyList<Duration> MissedTriggers { get; }

    /// <summary>How many segments, of how many points, and how many triggers were missed.</summary>
    public override string ToString() => Segments.Count == 0
        ? $"no segments, {Counted(MissedTriggers.Count, "trigger")} missed"
        : $"{Counted(Segments.Count, "segment")} of {Segments[0].Count} at {Segments[0].SampleRate.InWords()}, {Counted(MissedTriggers.Count, "trigger")} missed";

    private static string Counted(int count, string what) => FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
