using System;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>The samples of a record within a range of time.</summary>
internal static class TimeRange
{
    /// <summary>The first sample and how many, for the times of the options or, without them, the given ones.</summary>
    /// <exception cref="ArgumentException">No sample lies in the range.</exception>
    internal static (long First, long Count) Of(Record record, PlotOptions options, long first, long count)
    {
        if (options.Start is not { } start) return (first, count);
        double interval = record.SampleInterval.Seconds, begin = record.Start.Seconds;
        double from = Math.Max(0, Math.Ceiling(((start.Seconds - begin) / interval) - 1e-6)), to = Math.Min(record.Count.Points - 1, Math.Floor(((options.End!.Value.Seconds - begin) / interval) + 1e-6));
        if (!(from <= to))
            throw new ArgumentException($"no sample lies from {start} to {options.End}: the record runs from {record.TimeAt(0)} to {record.TimeAt(record.Count.Points - 1)}", nameof(options));
        return ((long)from, (long)(to - from) + 1);
    }

    /// <summary>The axis for the values of a record.</summary>
    internal static Axis ValueAxis(Record record) => Axis.Linear(record.Name.Length > 0 ? record.Name : record.Kind.Name, record.Kind.Symbol);
}
