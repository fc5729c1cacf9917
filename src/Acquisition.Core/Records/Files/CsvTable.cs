using System;
using System.Collections.Generic;
using System.IO;

namespace Acquisition.Core.Records;

/// <summary>A table of text while it is read: its dialect and heads first, then its rows of numbers, each with its line.</summary>
internal sealed class CsvTable
{
    private const int MostColumns = 4096;
    private const int RowsLookedAt = 100;
    private const int RowsPerLook = 1024;

    private readonly CsvLines _lines;
    private readonly Stream? _source;
    private readonly LongCall? _call;
    private readonly long _begin;
    private readonly List<string> _rows = new();
    private readonly List<long> _rowLines = new();
    private readonly List<(int Row, long Line)> _jumps = new();
    private readonly CsvDialect _dialect;

    /// <summary>Reads the first rows and finds out how the table is written.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="format">What is known of it.</param>
    /// <param name="source">Where the text comes from, for the progress; null where that is not known.</param>
    /// <param name="call">Is told the progress.</param>
    internal CsvTable(TextReader reader, CsvFormat format, Stream? source, LongCall? call)
    {
        _source = source;
        _call = call;
        _begin = source?.Position ?? 0;
        _lines = new CsvLines(reader);
        var comments = new List<string?>();
        while (_rows.Count < RowsLookedAt && _lines.Next() is { } row)
        {
            _rows.Add(row);
            _rowLines.Add(_lines.Line);
            comments.Add(_lines.CommentAbove);
        }
        if (_rows.Count == 0)
            throw RecordFormatException.At(1, null, "the table is empty");
        _dialect = CsvDialect.Find(_rows, format) ?? throw NoNumbers(_rows, _rowLines);
        if (_dialect.Columns > MostColumns)
            throw RecordFormatException.At(_rowLines[_dialect.FirstData], null, FormattableString.Invariant($"{_dialect.Columns} columns; at most {MostColumns} can be"));
        ReadHeads(comments[_dialect.FirstData], format);
        Columns = new GrowingArray<double>[_dialect.Columns];
        for (int i = 0; i < Columns.Length; i++)
            Columns[i] = new GrowingArray<double>();
    }

    /// <summary>One for each column; without a name where the table has no heading.</summary>
    internal List<ColumnHead> Heads { get; } = new();

    internal bool HasHeading { get; private set; }

    /// <summary>The line of the heading, or of the first row where there is none.</summary>
    internal long HeadingLine => _rowLines[Math.Max(0, _dialect.FirstData - 1)];

    /// <summary>The numbers, with the prefixes of the heads' units applied.</summary>
    internal GrowingArray<double>[] Columns { get; }

    internal int Count => Columns[0].Count;

    internal List<string> Comments => _lines.Comments;

    /// <summary>Reads the rows to the end of the text.</summary>
    internal void ReadRows()
    {
        for (int i = _dialect.FirstData; i < _rows.Count; i++)
            AddRow(_rows[i], _rowLines[i]);
        while (_lines.Next() is { } row)
            AddRow(row, _lines.Line);
    }

    /// <summary>Refuses a head whose unit is not known here.</summary>
    internal void RefuseUnknownUnits(string cure)
    {
        if (Heads.FindIndex(x => x.UnknownUnit is not null) is >= 0 and var unknown)
            throw RecordFormatException.At(HeadingLine, unknown + 1, $"'{Heads[unknown].UnknownUnit}' is not a unit that is known here: {cure}");
    }

    /// <summary>A column in words, with its name where it has one.</summary>
    internal string Named(int column) => FormattableString.Invariant($"column {column + 1}{(Heads[column].Name.Length > 0 ? $" ('{Heads[column].Name}')" : "")}");

    /// <summary>What stands in the head of a column, where the message says the column already.</summary>
    internal string HeadOf(int column) => Heads[column].Name.Length > 0 ? $"'{Heads[column].Name}'" : "the column";

    /// <summary>The line of a row of numbers.</summary>
    internal long LineOf(int row)
    {
        int low = 0, high = _jumps.Count - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            if (_jumps[middle].Row <= row)
                low = middle;
            else
                high = middle - 1;
        }
        return _jumps[low].Line + (row - _jumps[low].Row);
    }

    private static RecordFormatException NoNumbers(List<string> rows, List<long> lines)
    {
        // The first row that begins as a number does is what a person would call the first one of samples.
        int shown = rows.FindIndex(row => row.TrimStart(' ', '"') is { Length: > 0 } text && (char.IsDigit(text[0]) || text[0] is '-' or '\u2212' or '+' or '.'));
        if (shown < 0)
            shown = rows.Count - 1;
        if (rows.Count == 1)
            return RecordFormatException.At(lines[0], null, "no row of numbers: a heading without samples, or " + Misread(rows[0]));
        return RecordFormatException.At(lines[shown], null, Misread(rows[shown]));
    }

    private static string Misread(string row)
    {
        string why = HasTimeOfDay(row) ? "; dates and times of day are not read: write seconds from the trigger, or leave the column out and give the sample rate"
            : HasThousands(row) ? "; marks between thousands are not read: leave them out"
            : "; give the delimiter and the decimal separator, and leave out columns of text";
        return "no reading of delimiter and decimal separator makes numbers of this row: " + Shown(row) + why;
    }

    private static bool HasTimeOfDay(string row)
    {
        for (int i = 1; i + 1 < row.Length; i++)
        {
            if (row[i] == ':' && char.IsDigit(row[i - 1]) && char.IsDigit(row[i + 1]))
                return true;
        }
        return false;
    }

    /// <summary>A mark, three digits, and another mark or the end of the field.</summary>
    private static bool HasThousands(string row)
    {
        for (int i = 1; i + 3 < row.Length; i++)
        {
            if (row[i] is '.' or ',' or '\'' && char.IsDigit(row[i - 1]) && char.IsDigit(row[i + 1]) && char.IsDigit(row[i + 2]) && char.IsDigit(row[i + 3])
                && (i + 4 == row.Length || row[i + 4] is '.' or ',' or '\'' or '"'))
                return true;
        }
        return false;
    }

    private static string Shown(string text) => text.Length > 60 ? text.Remove(60) + "..." : text;

    private void ReadHeads(string? comment, CsvFormat format)
    {
        int first = _dialect.FirstData, columns = _dialect.Columns;
        List<string>? above = first > 0 ? Fields(_rows[first - 1]) : HeadsInComment(comment), aboveThat = first > 1 ? Fields(_rows[first - 2]) : null;
        if (above is not null && above.Count != columns && format.Delimiter is not null && format.DecimalSeparator is not null)
            above = null;
        if (above is not null && above.Count != columns)
        {
            // A heading row of another length: a decimal comma read as delimiter, or a row that belongs to no table.
            throw RecordFormatException.At(_rowLines[first], null, FormattableString.Invariant($"{columns} fields below a heading row of {above.Count}; give the delimiter and the decimal separator if a comma was misread"));
        }
        if (above is not null && aboveThat?.Count == columns && above.Exists(x => CsvNumber.TryRead(x, 0, x.Length, _dialect.DecimalSeparator, 0, out _)))
            throw RecordFormatException.At(_rowLines[first - 1], null, "some fields of this row are numbers and some are not: it is neither a heading nor samples");
        bool unitsBelow = above is not null && aboveThat?.Count == columns && above.TrueForAll(x => ColumnHead.TryUnit(x.Trim().Trim('(', ')', '[', ']'), out _, out _));
        for (int i = 0; i < columns; i++)
            Heads.Add(above is null ? ColumnHead.Parse("") : unitsBelow ? ColumnHead.Parse(aboveThat![i], above[i]) : ColumnHead.Parse(above[i]));
        HasHeading = above is not null;
    }

    private List<string> Fields(string row)
    {
        List<string> heads = CsvLines.Split(row, _dialect.Delimiter);
        while (heads.Count > _dialect.Columns && heads[heads.Count - 1].Trim().Length == 0)
            heads.RemoveAt(heads.Count - 1);
        return heads;
    }

    /// <summary>The heading of a table that has it as a comment; where only the mark stands above the first column, the mark is its head (# for numbers of samples).</summary>
    private List<string>? HeadsInComment(string? comment)
    {
        if (comment is null || _dialect.Columns < 2)
            return null;
        List<string> heads = Fields(comment.Substring(1).TrimStart());
        if (heads.Count != _dialect.Columns || heads.TrueForAll(head => CsvNumber.TryRead(head, 0, head.Length, _dialect.DecimalSeparator, 0, out _)))
            return null;
        if (heads[0].Trim().Length == 0)
            heads[0] = comment.Substring(0, 1);
        return heads;
    }

    private void AddRow(string row, long line)
    {
        int count = Columns[0].Count;
        if (_call is not null && count % RowsPerLook == 0)
            _call.Reached(_source is null ? 0 : _source.Position - _begin, _source is null ? 0 : _source.Length - _begin);
        if (_jumps.Count == 0 || _jumps[_jumps.Count - 1].Line + (count - _jumps[_jumps.Count - 1].Row) != line)
            _jumps.Add((count, line));
        if (CsvLines.HasQuotes(row) || _dialect.Delimiter == ' ')
        {
            List<string> fields = CsvLines.Split(row, _dialect.Delimiter);
            for (int i = 0; i < fields.Count; i++)
                Add(i, fields[i], 0, fields[i].Length, line);
            RequireColumns(fields.Count, line);
            return;
        }
        int column = 0;
        for (int from = 0; from <= row.Length; column++)
        {
            int end = row.IndexOf(_dialect.Delimiter, from);
            if (end < 0)
                end = row.Length;
            Add(column, row, from, end, line);
            from = end + 1;
        }
        RequireColumns(column, line);
    }

    private void Add(int column, string text, int from, int end, long line)
    {
        if (column >= Columns.Length)
        {
            // A delimiter at the end of each row is common and means nothing.
            if (text.Substring(from, end - from).Trim().Length == 0)
                return;
            throw RecordFormatException.At(line, column + 1, FormattableString.Invariant($"more than the {Columns.Length} fields of the rows before"));
        }
        if (CsvNumber.TryRead(text, from, end, _dialect.DecimalSeparator, Heads[column].PowerOfTen, out double value))
        {
            if (NoReading.OfNumber(value, Heads[column].PowerOfTen) is { } mark)
                throw RecordFormatException.At(line, column + 1, mark);
            if (Columns[column].IsFull)
                throw RecordFormatException.At(line, null, FormattableString.Invariant($"more than {GrowingArray<double>.Longest} rows"));
            Columns[column].Add(value);
            return;
        }
        string field = text.Substring(from, end - from).Trim();
        throw RecordFormatException.At(line, column + 1, NoReading.OfText(field) ?? $"'{Shown(field)}' is not a finite number with the decimal separator '{_dialect.DecimalSeparator}'");
    }

    private void RequireColumns(int count, long line)
    {
        if (count < Columns.Length)
            throw RecordFormatException.At(line, count + 1, FormattableString.Invariant($"{count} fields; the rows before have {Columns.Length}"));
    }
}
