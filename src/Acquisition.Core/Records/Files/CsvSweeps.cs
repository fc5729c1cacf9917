using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// Sweeps in tables of text (RFC 4180 and what is commonly written in its place): a column of frequencies and one of levels for each sweep, heads with units such as <c>f/MHz</c>, <c>direct (dB)</c>,
/// <c>probe A [dBm]</c> or <c>out_mV</c>. A column headed <c>u</c>, <c>u(...)</c> or <c>uncertainty</c> holds the standard uncertainties of the column before it.
/// </summary>
/// <remarks>
/// Levels in dB, dBm and dBV are taken as they are, voltages and currents as 20 lg, powers as 10 lg of the value in the SI unit. A column of levels must state its unit, because 0.7 may be a ratio or decibels.
/// Rows may come in any order. Extra columns of times or sample numbers are left out.
/// </remarks>
public static class CsvSweeps
{
    /// <summary>Reads a table, UTF-8 unless a byte order mark says otherwise.</summary>
    /// <param name="stream">The text.</param>
    /// <param name="format">What is known of it; null finds it out. Its default kind is that of columns of levels without a unit.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <returns>A sweep for each column of levels, in order, with the name in its head.</returns>
    /// <exception cref="RecordFormatException">The table is damaged, has gaps, or cannot be told apart; the message names line and column.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static IReadOnlyList<Sweep> Read(Stream stream, CsvFormat? format = null, CancellationToken cancellation = default)
    {
        _ = stream ?? throw new ArgumentNullException(nameof(stream));
        using var reader = new StreamReader(stream, Encoding.UTF8, true, 1 << 16, leaveOpen: true);
        return Read(reader, format, cancellation);
    }

    /// <summary>Reads a table.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="format">What is known of it; null finds it out. Its default kind is that of columns of levels without a unit.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <returns>A sweep for each column of levels, in order, with the name in its head.</returns>
    /// <exception cref="RecordFormatException">The table is damaged, has gaps, or cannot be told apart; the message names line and column.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static IReadOnlyList<Sweep> Read(TextReader reader, CsvFormat? format = null, CancellationToken cancellation = default)
    {
        format ??= CsvFormat.Sniffed;
        var table = new CsvTable(reader ?? throw new ArgumentNullException(nameof(reader)), format, null, LongCall.Of(null, cancellation));
        if (!format.StatesKind)
            table.RefuseUnknownUnits("write levels in dB, dBm, dBV, V or W and frequencies in Hz, with prefixes, or leave the column out");
        int frequencies = FrequencyColumn(table);
        List<(int Level, int? Uncertainty)> columns = LevelColumns(table, frequencies, format);
        table.ReadRows();
        int[] rows = Ordered(table, frequencies);
        double[] hertz = Picked(table.Columns[frequencies], rows);
        return columns.Select(column => SweepOf(table, hertz, rows, column.Level, column.Uncertainty, table.Heads[column.Level].Kind ?? format.DefaultKind)
            .With(Assumptions(table, frequencies)).WithName(table.Heads[column.Level].Name)).ToArray();
    }

    private static int FrequencyColumn(CsvTable table)
    {
        int[] found = Enumerable.Range(0, table.Heads.Count).Where(i => ReferenceEquals(table.Heads[i].Kind, QuantityKind.Frequency)).ToArray();
        if (found.Length > 1)
            throw RecordFormatException.At(table.HeadingLine, found[1] + 1, $"{table.HeadOf(found[1])} holds frequencies, as column {found[0] + 1} does: a sweep has one; split the table");
        if (found.Length == 1)
            return found[0];
        int named = table.Heads.FindIndex(head => head.Kind is null && head.Name.ToUpperInvariant() is "F" or "FREQ" or "FREQUENCY" or "FREQUENCIES");
        return named >= 0 ? named : throw RecordFormatException.At(table.HeadingLine, null, "no column of frequencies: head it f/Hz, or with a prefix, f/MHz");
    }

    private static List<(int Level, int? Uncertainty)> LevelColumns(CsvTable table, int frequencies, CsvFormat format)
    {
        var columns = new List<(int Level, int? Uncertainty)>();
        for (int i = 0; i < table.Heads.Count; i++)
        {
            ColumnHead head = table.Heads[i];
            if (i == frequencies || head.IsTime || head.IsIndex)
                continue;
            if (IsUncertainty(head))
            {
                if (columns.Count == 0 || columns[columns.Count - 1] is var (level, taken) && (taken is not null || level != i - 1))
                    throw RecordFormatException.At(table.HeadingLine, i + 1, $"{table.HeadOf(i)} is headed as an uncertainty and does not stand right behind a column of levels");
                QuantityKind of = table.Heads[i - 1].Kind ?? format.DefaultKind, expected = Scale(of) == 0 ? QuantityKind.DecibelRatio : of;
                if (!ReferenceEquals(head.Kind ?? (table.Heads[i - 1].Kind is null ? expected : null), expected))
                    throw RecordFormatException.At(table.HeadingLine, i + 1, $"{table.HeadOf(i)} must state its unit, one of {expected.Name} as the levels before it have: {expected.Symbol}");
                columns[columns.Count - 1] = (i - 1, i);
                continue;
            }
            if (head.Kind is null && !format.StatesKind)
                throw RecordFormatException.At(table.HeadingLine, i + 1, $"{table.HeadOf(i)} says no unit, and a level without one may be decibels or a ratio: state it in the head, as level/dB, or with WithDefaultKind of the format");
            if (Scale(head.Kind ?? format.DefaultKind) is null)
                throw RecordFormatException.At(table.HeadingLine, i + 1, $"{table.HeadOf(i)} holds {(head.Kind ?? format.DefaultKind).Name}, which is no level: write dB, dBm, dBV, V, A or W, or leave the column out");
            columns.Add((i, null));
        }
        return columns.Count > 0 ? columns : throw RecordFormatException.At(table.HeadingLine, null, "the table holds frequencies and no levels");
    }

    private static bool IsUncertainty(ColumnHead head) =>
        head.Name is "u" || head.Name.StartsWith("u(", StringComparison.Ordinal) || head.Name.StartsWith("uncertainty", StringComparison.OrdinalIgnoreCase);

    /// <summary>By how much the logarithm to base 10 of a value is multiplied: 0 where it is in decibels already. Null where it is no level.</summary>
    private static double? Scale(QuantityKind kind) =>
        kind.Nature is QuantityNature.DecibelRatio or QuantityNature.Level ? 0
        : ReferenceEquals(kind, QuantityKind.Power) ? 10
        : kind.Nature is QuantityNature.Peak or QuantityNature.PeakToPeak or QuantityNature.Rms || ReferenceEquals(kind, QuantityKind.Voltage) || ReferenceEquals(kind, QuantityKind.Current) || ReferenceEquals(kind, QuantityKind.Ratio) ? 20
        : null;

    /// <summary>The rows by rising frequency; two of the same frequency are refused.</summary>
    private static int[] Ordered(CsvTable table, int frequencies)
    {
        double[] hertz = table.Columns[frequencies].Items;
        int[] rows = Enumerable.Range(0, table.Count).OrderBy(row => hertz[row]).ToArray();
        for (int i = 0; i < rows.Length; i++)
        {
            if (!(hertz[rows[i]] > 0))
                throw RecordFormatException.At(table.LineOf(rows[i]), frequencies + 1, $"a frequency must be above 0 Hz; was {FewDigits.Hertz(hertz[rows[i]])}. The level at DC has no place on an axis of decades: leave the row out");
            if (i > 0 && hertz[rows[i]] == hertz[rows[i - 1]])
                throw RecordFormatException.At(table.LineOf(rows[i]), frequencies + 1, $"{FewDigits.Hertz(hertz[rows[i]])} stands in line {table.LineOf(rows[i - 1])} already: a sweep has one level at a frequency; combine repeated readings first");
        }
        return rows;
    }

    private static double[] Picked(GrowingArray<double> column, int[] rows) => rows.Select(row => column[row]).ToArray();

    private static Sweep SweepOf(CsvTable table, double[] hertz, int[] rows, int level, int? uncertainty, QuantityKind kind)
    {
        double scale = Scale(kind)!.Value;
        double[] values = Picked(table.Columns[level], rows);
        double[]? deviations = uncertainty is { } column ? Picked(table.Columns[column], rows) : null;
        for (int i = 0; i < values.Length; i++)
        {
            if (scale > 0 && !(values[i] > 0))
                throw RecordFormatException.At(table.LineOf(rows[i]), level + 1, $"{new Quantity(values[i], kind)} has no level in decibels: it must be above 0");
            if (deviations is not null && !(deviations[i] >= 0))
                throw RecordFormatException.At(table.LineOf(rows[i]), uncertainty!.Value + 1, "a standard uncertainty must be at least 0");
            if (scale > 0 && deviations is not null)
                deviations[i] = scale / Math.Log(10) * deviations[i] / values[i];
            if (scale > 0)
                values[i] = scale * Math.Log10(values[i]);
            if (Math.Abs(values[i]) > Sweep.LargestDecibels || deviations?[i] > Sweep.LargestDecibels)
                throw RecordFormatException.At(table.LineOf(rows[i]), level + 1, FormattableString.Invariant($"levels and their uncertainties go up to {Sweep.LargestDecibels} dB either way"));
        }
        return Sweep.OfDecibels(hertz, values, deviations);
    }

    private static Finding[] Assumptions(CsvTable table, int frequencies) => table.Heads[frequencies].Kind is not null ? [] :
    [
        new("unit-assumed", Severity.Warning, $"{table.Named(frequencies)} says no unit: hertz are assumed", "state it in the head, as f/Hz"),
    ];
}
