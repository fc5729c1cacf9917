using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>Samples at the ends of the converter, of whose values nothing more is known.</summary>
internal static class ConverterLimits
{
    /// <summary>What a record says of itself, and at which ends of its converter samples lie.</summary>
    /// <param name="record">The record.</param>
    /// <param name="lowest">Its smallest sample.</param>
    /// <param name="highest">Its largest sample.</param>
    /// <param name="consequence">What follows for what is measured.</param>
    /// <param name="call">Who watches.</param>
    internal static List<Finding> Findings(Record record, double lowest, double highest, string consequence, LongCall? call)
    {
        var findings = new List<Finding>(record.Findings);
        if (record.LowLimitSi is { } low && lowest <= low)
            findings.Add(Clipped(Count(record.Samples, value => value <= low, call), "low", low, record.Kind, consequence));
        if (record.HighLimitSi is { } high && highest >= high)
            findings.Add(Clipped(Count(record.Samples, value => value >= high, call), "high", high, record.Kind, consequence));
        return findings;
    }

    internal static Finding Clipped(long count, string side, double limit, QuantityKind kind, string consequence) => new(
        "clipped",
        Severity.Warning,
        FormattableString.Invariant($"{count} samples lie at or beyond the {side} end of the converter, {FewDigits.Of(limit, kind)}: {consequence}"),
        "choose a larger vertical range or another offset",
        "handbook 8.7");

    private static long Count(SampleStore samples, Predicate<double> counts, LongCall? call)
    {
        var block = new double[4096];
        long found = 0;
        for (int from = 0, count; from < samples.Length; from += count)
        {
            if (from % SampleStore.SamplesPerLook == 0)
                call?.Cancellation.ThrowIfCancellationRequested();
            count = Math.Min(block.Length, samples.Length - from);
            samples.Copy(from, block, 0, count);
            for (int i = 0; i < count; i++)
            {
                if (counts(block[i]))
                    found++;
            }
        }
        return found;
    }
}
