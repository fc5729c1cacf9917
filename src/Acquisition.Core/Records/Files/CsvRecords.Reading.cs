using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

// Records out of a table.
public static partial class CsvRecords
{
    private const string IntervalMark = "interval = ";

    private static List<Record> RecordsOf(CsvTable table, CsvFormat format)
    {
        if (!format.StatesKind)
            table.RefuseUnknownUnits("write the column in one that is, as ch1 (V), T (K) or t (s), leave it out, or state with WithDefaultKind of the format what columns without a known unit hold");
        int timeColumn = table.Heads.FindIndex(x => x.IsTime);
        if (timeColumn < 0 && !table.HasHeading && format.SampleRate is null && table.Columns.Length > 1)
            timeColumn = 0;
        if (timeColumn < 0 && format.SampleRate is null)
            throw RecordFormatException.At(table.HeadingLine, null, "no column of times, such as time/s: give the sample rate");
        table.ReadRows();
        var assumptions = new List<Finding>();
        (double start, double interval) = format.SampleRate is { } rate ? (0, 1 / rate.SiValue) : Times(table, timeColumn, format, assumptions);
        var records = new List<Record>();
        for (int i = 0; i < table.Columns.Length; i++)
        {
            ColumnHead head = table.Heads[i];
            if (i == timeColumn || head.IsTime || head.IsIndex && table.Columns.Length > 1)
                continue;
            SampleStore samples = NumberSamples.Of(table.Columns[i].Items).Slice(0, table.Count);
            QuantityKind kind = head.Kind ?? format.DefaultKind;
            Record record = format.SampleRate is { } given ? Record.OfRate(samples, kind, given.SiValue) : Record.OfInterval(samples, kind, interval, start);
            List<Finding> findings = new(assumptions);
            if (head.Kind is null && !format.StatesKind)
                findings.Add(Assumed(table, i, "volts", "state it in the head, as ch1/V, or with WithDefaultKind of the format"));
            records.Add(record.WithName(head.Name).With(findings: findings));
        }
        return records.Count > 0 ? records : throw RecordFormatException.At(table.LineOf(0), null, "the table holds times and nothing else");
    }

    private static (double Start, double Interval) Times(CsvTable table, int column, CsvFormat format, List<Finding> assumptions)
    {
        (double start, double interval, double off) = TimeColumn.Uniform(table.Columns[column].Items, table.Count, table.LineOf, column + 1);
        if (StatedInterval(table) is { } stated && Math.Abs(stated - interval) <= 1e-9 * interval)
            interval = stated;
        if (table.Heads[column].Kind is null)
        {
            start *= format.TimeUnit.SiValue;
            interval *= format.TimeUnit.SiValue;
            if (!format.StatesTimeUnit)
                assumptions.Add(Assumed(table, column, "seconds", "state it in the head, as time/s, or with WithTimeUnit of the format"));
        }
        if (off > TimeColumn.Exact)
            assumptions.Add(TimeColumn.NotExact(off, interval));
        return (start, interval);
    }

    private static Finding Assumed(CsvTable table, int column, string unit, string remedy) =>
        new("unit-assumed", Severity.Warning, $"{table.Named(column)} says no unit: {unit} are assumed", remedy);

    private static double? StatedInterval(CsvTable table)
    {
        foreach (string comment in table.Comments)
        {
            if (comment.StartsWith(IntervalMark, StringComparison.Ordinal) && comment.EndsWith(" s", StringComparison.Ordinal)
                && CsvNumber.TryRead(comment, IntervalMark.Length, comment.Length - 2, '.', 0, out double interval))
                return interval;
        }
        return null;
    }
}
