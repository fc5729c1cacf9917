using System.Collections.Generic;
using System.IO;
using System.Text;

namespace Acquisition.Core.Records;

/// <summary>The rows of a table, one after the other, with their line numbers: comments and empty lines left out, quoted line ends kept inside (RFC 4180).</summary>
internal sealed class CsvLines
{
    /// <summary>A row longer than this is no row of a table of samples.</summary>
    private const int LongestRow = 1 << 20;

    private readonly TextReader _reader;
    private long _lineNumber;

    internal CsvLines(TextReader reader) => _reader = reader;

    /// <summary>The line on which the row last read begins, from 1.</summary>
    internal long Line { get; private set; }

    /// <summary>Comment lines without their mark, as long as there are few.</summary>
    internal List<string> Comments { get; } = new();

    /// <summary>The comment just above the row last read, with its mark: often the heading. Null where there is none.</summary>
    internal string? CommentAbove { get; private set; }

    internal string? Next()
    {
        CommentAbove = null;
        while (ReadRow() is { } row)
        {
            if (_lineNumber == 1 || Line == 1)
                row = row.TrimStart('\uFEFF');
            string trimmed = row.Trim();
            if (trimmed.Length == 0)
                continue;
            if (trimmed[0] is '#' or '%' or '!')
            {
                CommentAbove = trimmed;
                if (Comments.Count < 100)
                    Comments.Add(trimmed.Substring(1).Trim());
                continue;
            }
            return row;
        }
        return null;
    }

    /// <summary>The fields of a row; quoted ones without their quotation marks.</summary>
    internal static List<string> Split(string row, char delimiter)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < row.Length; i++)
        {
            char c = row[i];
            if (c == '"' && quoted && i + 1 < row.Length && row[i + 1] == '"')
            {
                field.Append('"');
                i++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == delimiter && !quoted)
            {
                if (delimiter != ' ' || field.Length > 0)
                    fields.Add(field.ToString());
                field.Clear();
            }
            else
            {
                field.Append(c);
            }
        }
        if (delimiter != ' ' || field.Length > 0)
            fields.Add(field.ToString());
        return fields;
    }

    internal static bool HasQuotes(string row)
    {
        foreach (char c in row)
        {
            if (c == '"')
                return true;
        }
        return false;
    }

    private string? ReadRow()
    {
        string? row = ReadLine();
        Line = _lineNumber;
        if (row is null || !HasQuotes(row))
            return row;
        while (HasOpenQuote(row))
        {
            string? next = ReadLine() ?? throw RecordFormatException.At(Line, null, "a quotation has no end");
            row += "\n" + next;
            if (row.Length > LongestRow)
                throw RecordFormatException.At(Line, null, "a quotation goes on for more than a million characters");
        }
        return row;
    }

    private static bool HasOpenQuote(string row)
    {
        int marks = 0;
        foreach (char c in row)
        {
            if (c == '"')
                marks++;
        }
        return marks % 2 != 0;
    }

    /// <summary>A line up to CR, LF or CRLF. The framework's own method would take a file without line ends into memory whole.</summary>
    private string? ReadLine()
    {
        int c = _reader.Read();
        if (c < 0)
            return null;
        _lineNumber++;
        var line = new StringBuilder();
        for (; c >= 0 && c is not ('\r' or '\n'); c = _reader.Read())
        {
            if (line.Length == LongestRow)
                throw RecordFormatException.At(_lineNumber, null, "the line is longer than a million characters");
            line.Append((char)c);
        }
        if (c == '\r' && _reader.Peek() == '\n')
            _reader.Read();
        return line.ToString();
    }
}
