using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>The trace drawn through the samples of a record, with the stretches at its ends that are not to be trusted (handbook 5.9).</summary>
/// <remarks>Immutable. Nothing is drawn before the first or after the last sample.</remarks>
public sealed class ReconstructedTrace
{
    internal ReconstructedTrace(Record source, Record trace, Reconstruction reconstruction, int factor)
    {
        Source = source;
        Trace = trace;
        Reconstruction = reconstruction;
        int margin = Math.Min(reconstruction.UntrustedAtEnds, source.Length - 1);
        UntrustedPointsAtEachEnd = PointCount.FromPoints((long)margin * factor);
        TrustedFrom = Duration.FromSi(source.TimeSi(margin), "start");
        TrustedTo = Duration.FromSi(source.TimeSi(source.Length - 1 - margin), "end");
        var findings = new List<Finding>(source.Findings);
        if (margin > 0)
        {
            bool any = 2L * margin < source.Length;
            findings.Add(
                new Finding("trace-ends-untrusted", any ? Severity.Note : Severity.Failure,
                    any ? $"within {FewDigits.Seconds(source.Span(margin))} of either end the {reconstruction.Name} lacks samples: errors there reach tens of percent"
                        : $"the record of {source.Length} samples is shorter than what the {reconstruction.Name} needs: no part of the trace is to be trusted",
                    "record longer than what is to be shown, or use straight lines", "handbook 5.9"));
        }
        Findings = findings.Frozen();
    }

    /// <summary>The record that the trace is drawn through.</summary>
    public Record Source { get; }

    /// <summary>The trace as a record of more points, from the first to the last sample of the source.</summary>
    public Record Trace { get; }

    /// <summary>How it is drawn; <see cref="Core.Reconstruction.WorstError"/> states the error of a sine.</summary>
    public Reconstruction Reconstruction { get; }

    /// <summary>How many points at either end of the trace are not to be trusted.</summary>
    public PointCount UntrustedPointsAtEachEnd { get; }

    /// <summary>From when on the trace is to be trusted.</summary>
    public Duration TrustedFrom { get; }

    /// <summary>Until when the trace is to be trusted; before <see cref="TrustedFrom"/> where no part is.</summary>
    public Duration TrustedTo { get; }

    /// <summary>What to know about the trace: what the record says of itself, and which ends are not to be trusted.</summary>
    public IReadOnlyList<Finding> Findings { get; }
}
