using System;
using System.Collections.Generic;
using System.Threading;

namespace Acquisition.Core;

/// <summary>
/// A record small enough to draw: for each of some columns of equal duration the smallest and the largest of its samples, so that no spike is lost. Every k-th sample would
/// alias the picture (handbook 5.14).
/// </summary>
/// <remarks>Immutable. One pass; the working memory is that of the columns.</remarks>
public sealed class RecordPreview
{
    private RecordPreview(Record record, double[] lows, double[] highs)
    {
        Record = record;
        LowSiValues = Array.AsReadOnly(lows);
        HighSiValues = Array.AsReadOnly(highs);
    }

    /// <summary>What is shown.</summary>
    public Record Record { get; }

    /// <summary>The smallest sample of each column, in the SI unit of the record's kind; NaN where a column holds a sample that is not a number.</summary>
    public IReadOnlyList<double> LowSiValues { get; }

    /// <summary>The largest sample of each column, in the SI unit of the record's kind; NaN where a column holds a sample that is not a number.</summary>
    public IReadOnlyList<double> HighSiValues { get; }

    /// <summary>How many columns.</summary>
    public int Columns => LowSiValues.Count;

    /// <summary>The first sample of a column; column <see cref="Columns"/> begins after the last sample.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="column"/> is outside the preview.</exception>
    public long FirstSample(int column) => column >= 0 && column <= Columns
        ? FirstSample(column, Columns, Record.Length)
        : throw new ArgumentOutOfRangeException(nameof(column), FormattableString.Invariant($"column must be from 0 to {Columns}; was {column}"));

    /// <summary>The preview of a record.</summary>
    /// <param name="record">The record.</param>
    /// <param name="columns">How many columns, at least 1; no more than there are samples are made.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="columns"/> is not 1 to 1 000 000.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static RecordPreview Of(Record record, int columns, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        _ = record ?? throw new ArgumentNullException(nameof(record));
        if (columns is < 1 or > 1_000_000)
            throw new ArgumentOutOfRangeException(nameof(columns), FormattableString.Invariant($"columns must be 1 to 1000000; was {columns}"));
        LongCall? call = LongCall.Of(progress, cancellation);
        columns = Math.Min(columns, record.Length);
        var lows = new double[columns];
        var highs = new double[columns];
        for (int i = 0; i < columns; i++)
            record.Samples.Extremes((int)FirstSample(i, columns, record.Length), (int)FirstSample(i + 1, columns, record.Length), call, out lows[i], out highs[i]);
        call?.Completed();
        return new RecordPreview(record, lows, highs);
    }

    private static long FirstSample(int column, int columns, int samples) => (long)column * samples / columns;
}
