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
            while (rows.Count < RowsLookedAt && _lines.Next() is { } row)
            {
                rows.Add(row);
                lines.Add(_lines.Line);
            }
            if (rows.Count == 0)
                throw RecordFormatException.At(1, null, "the table is empty");
            _dialect = CsvDialect.Find(rows, _format) ?? throw NoNumbers(rows, lines);
            if (_dialect.Columns > MostColumns)
                throw RecordFormatException.At(lines[_dialect.FirstData], null, FormattableString.Invariant($"{_dialect.Columns} columns; at most {MostColumns} can be"));
            ReadHeads(rows, lines);
            for (int i = _dialect.FirstData; i < rows.Count; i++)
                AddRow(rows[i], lines[i]);
            while (_lines.Next() is { } row)
                AddRow(row, _lines.Line);
            return MakeRecords();
        }

        private static RecordFormatException NoNumbers(List<string> rows, List<long> lines)
        {
            int last = rows.Count - 1;
            return RecordFormatException.At(lines[last], null, "no reading of delimiter and decimal separator makes numbers of this row: "
                + Shown(rows[last]) + "; give the delimiter and the decimal separator");
        }

        private static string Shown(string text) => text.Length > 60 ? text.Remove(60) + "..." : text;

        private void ReadHeads(List<string> rows, List<long> lines)
        {
            int first = _dialect.FirstData, columns = _dialect.Columns;
            List<string>? above = first > 0 ? CsvLines.Split(rows[first - 1], _dialect.Delimiter) : null, aboveThat = first > 1 ? CsvLines.Split(rows[first - 2], _dialect.Delimiter) : null;
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
            _timeColumn = _heads.FindIndex(x => x.IsTime);
            if (_timeColumn < 0 && above is null && _format.SampleRate is null && columns > 1)
                _timeColumn = 0;
            if (_timeColumn < 0 && _format.SampleRate is null)
                throw RecordFormatException.At(lines[Math.Max(0, first - 1)], null, "no column of times, such as time/s: give the sample rate");
            _columns = new GrowingArray<double>[columns];
            for (int i = 0; i < columns; i++)
                _columns[i] = new GrowingArray<double>();
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
                if (_columns[column].IsFull)
                    throw RecordFormatException.At(line, null, FormattableString.Invariant($"more than {GrowingArray<double>.Longest} rows"));
                _columns[column].Add(value);
                return;
            }
            string field = text.Substring(from, end - from).Trim();
            throw RecordFormatException.At(line, column + 1, field.Length == 0 || string.Equals(field, "nan", StringComparison.OrdinalIgnoreCase)
                ? "a gap: the field is " + (field.Length == 0 ? "empty" : field) + ". Records have a sample at every time: split the table there, or fill it knowingly"
                : $"'{Shown(field)}' is not a finite number with the decimal separator '{_dialect.DecimalSeparator}'");
        }

        private void RequireColumns(int count, long line)
        {
            if (count < _columns.Length)
                throw RecordFormatException.At(line, count + 1, FormattableString.Invariant($"{count} fields; the rows before have {_columns.Length}"));
        }

        private List<Record> MakeRecords()
        {
            int count = _columns[0].Count;
            (double start, double interval) = _format.SampleRate is { } rate
                ? (0, 1 / rate.SiValue)
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
