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
}
