using System;
using System.Collections.Generic;
using System.IO;
using Acquisition.Core.Records;

namespace Acquisition.Core;

// A table while it is read.
public static partial class CsvRecords
{
    /// <summary>One reading of one table.</summary>
    private sealed class CsvTable
    {
        internal const string IntervalMark = "interval = ";

        private readonly CsvLines _lines;
        private readonly CsvFormat _format;
        private readonly List<(int Row, long Line)> _jumps = new();
        private List<ColumnHead> _heads = new();
        private int _timeColumn = -1;
        private GrowingArray<double>[] _columns = Array.Empty<GrowingArray<double>>();
        private CsvDialect _dialect = null!;

        private readonly Stream? _source;
        private readonly LongCall? _call;
        private readonly long _begin;

        internal CsvTable(TextReader reader, CsvFormat format, Stream? source, LongCall? call)
        {
            _source = source;
            _call = call;
            _begin = source?.Position ?? 0;
            _lines = new CsvLines(reader);
            _format = format;
        }

        internal List<Record> Read()
        {
            var rows = new List<string>();
            var lines = new List<long>();
            var comments = new List<string?>();
            while (rows.Count < RowsLookedAt && _lines.Next() is { } row)
            {
                rows.Add(row);
                lines.Add(_lines.Line);
                comments.Add(_lines.CommentAbove);
            }
            if (rows.Count == 0)
                throw RecordFormatException.At(1, null, "the table is empty");
            _dialect = CsvDialect.Find(rows, _format) ?? throw NoNumbers(rows, lines);
            if (_dialect.Columns > MostColumns)
                throw RecordFormatException.At(lines[_dialect.FirstData], null, FormattableString.Invariant($"{_dialect.Columns} columns; at most {MostColumns} can be"));
            ReadHeads(rows, lines, comments[_dialect.FirstData]);
            for (int i = _dialect.FirstData; i < rows.Count; i++)
                AddRow(rows[i], lines[i]);
            while (_lines.Next() is { } row)
                AddRow(row, _lines.Line);
            return MakeRecords();
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

        private void ReadHeads(List<string> rows, List<long> lines, string? comment)
        {
            int first = _dialect.FirstData, columns = _dialect.Columns;
            List<string>? above = first > 0 ? Heads(rows[first - 1]) : HeadsInComment(comment), aboveThat = first > 1 ? Heads(rows[first - 2]) : null;
            if (above is not null && above.Count != columns && _format.Delimiter is not null && _format.DecimalSeparator is not null)
                above = null;
            if (above is not null && above.Count != columns)
            {
                // A heading row of another length: a decimal comma read as delimiter, or a row that belongs to no table.
                throw RecordFormatException.At(lines[first], null, FormattableString.Invariant($"{columns} fields below a heading row of {above.Count}; give the delimiter and the decimal separator if a comma was misread"));
            }
            if (above is not null && aboveThat?.Count == columns && above.Exists(x => CsvNumber.TryRead(x, 0, x.Length, _dialect.DecimalSeparator, 0, out _)))
                throw RecordFormatException.At(lines[first - 1], null, "some fields of this row are numbers and some are not: it is neither a heading nor samples");
            bool unitsBelow = above is not null && aboveThat?.Count == columns && above.TrueForAll(x => ColumnHead.TryUnit(x.Trim().Trim('(', ')', '[', ']'), out _, out _));
            for (int i = 0; i < columns; i++)
                _heads.Add(above is null ? ColumnHead.Parse("") : unitsBelow ? ColumnHead.Parse(aboveThat![i], above[i]) : ColumnHead.Parse(above[i]));
            if (_heads.FindIndex(x => x.UnknownUnit is not null) is >= 0 and var unknown && !_format.StatesKind)
            {
                string unit = _heads[unknown].UnknownUnit!;
                throw RecordFormatException.At(lines[Math.Max(0, first - 1)], unknown + 1,
                    $"'{unit}' is not a unit that is known here: write the column in one that is, as ch1 (V), T (K) or t (s), leave it out, or state with WithDefaultKind of the format what columns without a known unit hold");
            }
            _timeColumn = _heads.FindIndex(x => x.IsTime);
            if (_timeColumn < 0 && above is null && _format.SampleRate is null && columns > 1)
                _timeColumn = 0;
            if (_timeColumn < 0 && _format.SampleRate is null)
                throw RecordFormatException.At(lines[Math.Max(0, first - 1)], null, "no column of times, such as time/s: give the sample rate");
            _columns = new GrowingArray<double>[columns];
            for (int i = 0; i < columns; i++)
                _columns[i] = new GrowingArray<double>();
        }

        private List<string> Heads(string row)
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
            List<string> heads = Heads(comment.Substring(1).TrimStart());
            if (heads.Count != _dialect.Columns || heads.TrueForAll(head => CsvNumber.TryRead(head, 0, head.Length, _dialect.DecimalSeparator, 0, out _)))
                return null;
            if (heads[0].Trim().Length == 0)
                heads[0] = comment.Substring(0, 1);
            return heads;
        }

        private void AddRow(string row, long line)
        {
            int count = _columns[0].Count;
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
            if (column >= _columns.Length)
            {
                // A delimiter at the end of each row is common and means nothing.
                if (text.Substring(from, end - from).Trim().Length == 0)
                    return;
                throw RecordFormatException.At(line, column + 1, FormattableString.Invariant($"more than the {_columns.Length} fields of the rows before"));
            }
            if (CsvNumber.TryRead(text, from, end, _dialect.DecimalSeparator, _heads[column].PowerOfTen, out double value))
            {
                if (NoReading.OfNumber(value, _heads[column].PowerOfTen) is { } mark)
                    throw RecordFormatException.At(line, column + 1, mark);
                if (_columns[column].IsFull)
                    throw RecordFormatException.At(line, null, FormattableString.Invariant($"more than {GrowingArray<double>.Longest} rows"));
                _columns[column].Add(value);
                return;
            }
            string field = text.Substring(from, end - from).Trim();
            throw RecordFormatException.At(line, column + 1, NoReading.OfText(field) ?? $"'{Shown(field)}' is not a finite number with the decimal separator '{_dialect.DecimalSeparator}'");
        }

        private void RequireColumns(int count, long line)
        {
            if (count < _columns.Length)
                throw RecordFormatException.At(line, count + 1, FormattableString.Invariant($"{count} fields; the rows before have {_columns.Length}"));
        }

        private List<Record> MakeRecords()
        {
            int count = _columns[0].Count;
            (double start, double interval, double off) = _format.SampleRate is { } rate
                ? (0, 1 / rate.SiValue, 0)
                : TimeColumn.Uniform(_columns[_timeColumn].Items, count, LineOf, _timeColumn + 1);
            if (_format.SampleRate is null && StatedInterval() is { } stated && Math.Abs(stated - interval) <= 1e-9 * interval)
                interval = stated;
            var assumptions = new List<Finding>();
            if (_format.SampleRate is null && _heads[_timeColumn].Kind is null)
            {
                start *= _format.TimeUnit.SiValue;
                interval *= _format.TimeUnit.SiValue;
                if (!_format.StatesTimeUnit)
                    assumptions.Add(Assumed(_timeColumn, "seconds", "state it in the head, as time/s, or with WithTimeUnit of the format"));
            }
            if (off > TimeColumn.Exact)
                assumptions.Add(TimeColumn.NotExact(off, interval));
            var records = new List<Record>();
            for (int i = 0; i < _columns.Length; i++)
            {
                if (i == _timeColumn || _heads[i].IsTime || _heads[i].IsIndex && _columns.Length > 1)
                    continue;
                SampleStore samples = NumberSamples.Of(_columns[i].Items).Slice(0, count);
                QuantityKind kind = _heads[i].Kind ?? _format.DefaultKind;
                Record record = _format.SampleRate is { } given ? Record.OfRate(samples, kind, given.SiValue) : Record.OfInterval(samples, kind, interval, start);
                List<Finding> findings = new(assumptions);
                if (_heads[i].Kind is null && !_format.StatesKind)
                    findings.Add(Assumed(i, "volts", "state it in the head, as ch1/V, or with WithDefaultKind of the format"));
                records.Add(record.WithName(_heads[i].Name).With(findings: findings));
            }
            return records.Count > 0 ? records : throw RecordFormatException.At(LineOf(0), null, "the table holds times and nothing else");
        }

        private Finding Assumed(int column, string unit, string remedy) => new(
            "unit-assumed",
            Severity.Warning,
            FormattableString.Invariant($"column {column + 1}{(_heads[column].Name.Length > 0 ? $" ('{_heads[column].Name}')" : "")} says no unit: {unit} are assumed"),
            remedy);

        private double? StatedInterval()
        {
            foreach (string comment in _lines.Comments)
            {
                if (comment.StartsWith(IntervalMark, StringComparison.Ordinal) && comment.EndsWith(" s", StringComparison.Ordinal)
                    && CsvNumber.TryRead(comment, IntervalMark.Length, comment.Length - 2, '.', 0, out double interval))
                    return interval;
            }
            return null;
        }

        private long LineOf(int row)
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
    }
}
