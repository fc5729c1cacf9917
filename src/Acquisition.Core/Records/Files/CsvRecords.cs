using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Text;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// Records in tables of text (RFC 4180 and what is commonly written in its place): a column of times and a column for each record, heads with units such as <c>time/s</c>,
/// <c>ch1 (mV)</c> or <c>time_us</c>, comment lines that begin with #, % or !.
/// </summary>
/// <remarks>Times must be uniform and fields filled: a gap is refused with its row, because whatever is measured across it would be wrong.</remarks>
public static partial class CsvRecords
{
    /// <summary>Reads a table, UTF-8 unless a byte order mark says otherwise.</summary>
    /// <param name="stream">The text.</param>
    /// <param name="format">What is known of it; null finds it out.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1 (of a stream whose length is not known, 0 until it ends); null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <returns>A record for each column but the times, in order.</returns>
    /// <exception cref="RecordFormatException">The table is damaged, has gaps, is not uniform, or cannot be told apart; the message names line and column.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static IReadOnlyList<Record> Read(Stream stream, CsvFormat? format = null, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        _ = stream ?? throw new ArgumentNullException(nameof(stream));
        using var reader = new StreamReader(stream, Encoding.UTF8, true, 1 << 16, leaveOpen: true);
        return Read(reader, format, stream.CanSeek ? stream : null, LongCall.Of(progress, cancellation));
    }

    /// <summary>Reads a table.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="format">What is known of it; null finds it out.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <returns>A record for each column but the times, in order.</returns>
    /// <exception cref="RecordFormatException">The table is damaged, has gaps, is not uniform, or cannot be told apart; the message names line and column.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static IReadOnlyList<Record> Read(TextReader reader, CsvFormat? format = null, CancellationToken cancellation = default) =>
        Read(reader ?? throw new ArgumentNullException(nameof(reader)), format, null, LongCall.Of(null, cancellation));

    private static List<Record> Read(TextReader reader, CsvFormat? format, Stream? source, LongCall? call)
    {
        format ??= CsvFormat.Sniffed;
        List<Record> records = RecordsOf(new CsvTable(reader, format, source, call), format);
        call?.Completed();
        return records;
    }

    /// <summary>Writes records of the same times as a table that reads back to the same bits: times, then a column for each record.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="records">At least one; all of the same length, rate and start.</param>
    /// <exception cref="ArgumentException">There is no record, or they differ in length, rate or start.</exception>
    public static void Write(TextWriter writer, params Record[] records)
    {
        _ = writer ?? throw new ArgumentNullException(nameof(writer));
        _ = records ?? throw new ArgumentNullException(nameof(records));
        if (records.Length == 0)
            throw new ArgumentException("records must hold at least one record", nameof(records));
        Record first = records[0];
        foreach (Record record in records)
        {
            if (record.Length != first.Length || record.IntervalSeconds != first.IntervalSeconds || record.Start != first.Start)
                throw new ArgumentException($"records must have the same times: {first} starts at {first.Start}, {record} at {record.Start}", nameof(records));
        }
        // The times are rounded to doubles each for itself; the interval proper is said once.
        writer.Write($"# {IntervalMark}{Number(first.IntervalSeconds)} s\r\ntime/s");
        for (int i = 0; i < records.Length; i++)
        {
            string name = records[i].Name.Length > 0 ? records[i].Name : "ch" + (i + 1).ToString(CultureInfo.InvariantCulture);
            writer.Write("," + Quoted(records[i].Kind.Symbol.Length > 0 ? $"{name} ({records[i].Kind.Symbol})" : name));
        }
        writer.Write("\r\n");
        for (int row = 0; row < first.Length; row++)
        {
            writer.Write(Number(first.TimeSi(row)));
            foreach (Record record in records)
            {
                writer.Write(',');
                writer.Write(Number(record.Samples[row]));
            }
            writer.Write("\r\n");
        }
    }

    /// <summary>The shortest text that reads back where the runtime finds it, 17 digits where it does not.</summary>
    private static string Number(double value) =>
#if NET8_0_OR_GREATER
        value.ToString("R", CultureInfo.InvariantCulture);
#else
        value == 0 && 1 / value < 0 ? "-0" : value.ToString("G17", CultureInfo.InvariantCulture);
#endif

    private static string Quoted(string text)
    {
        foreach (char c in text)
        {
            if (c is ',' or '"' or '\r' or '\n')
                return "\"" + text.Replace("\"", "\"\"") + "\"";
        }
        return text;
    }
}
