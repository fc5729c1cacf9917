using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>A record put together over many triggers of a repetitive signal (handbook 5.6).</summary>
/// <remarks>Immutable.</remarks>
public sealed class EquivalentTimeCapture
{
    internal EquivalentTimeCapture(Record record, long triggers, Finding? finding)
    {
        Record = record;
        NumberOfTriggers = triggers;
        Findings = (finding is null ? Array.Empty<Finding>() : new[] { finding }).Frozen();
    }

    /// <summary>The record, at the equivalent rate.</summary>
    public Record Record { get; }

    /// <summary>How many triggers it took.</summary>
    public long NumberOfTriggers { get; }

    /// <summary>What to know about the record: whether it is a picture of the signal at all.</summary>
    public IReadOnlyList<Finding> Findings { get; }
}
