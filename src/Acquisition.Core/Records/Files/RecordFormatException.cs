using System;

namespace Acquisition.Core;

/// <summary>A file or stream of samples that cannot be read: what is wrong, where, and where possible what would cure it.</summary>
public sealed class RecordFormatException : FormatException
{
    /// <summary>Makes the exception without a message.</summary>
    public RecordFormatException()
    {
    }

    /// <summary>Makes the exception with what is wrong.</summary>
    public RecordFormatException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception with what is wrong and what was thrown before it.</summary>
    public RecordFormatException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    private RecordFormatException(string message, long? line, int? column, long? byteOffset)
        : base(message)
    {
        Line = line;
        Column = column;
        ByteOffset = byteOffset;
    }

    /// <summary>The line of a text file, from 1; null for binary files.</summary>
    public long? Line { get; }

    /// <summary>The column of a table, from 1; null where the whole line or a binary file is meant.</summary>
    public int? Column { get; }

    /// <summary>The place in a binary file, from 0; null for text files.</summary>
    public long? ByteOffset { get; }

    internal static RecordFormatException At(long line, int? column, string message) =>
        new(FormattableString.Invariant($"line {line}") + (column is { } c ? FormattableString.Invariant($", column {c}") : "") + ": " + message, line, column, null);

    internal static RecordFormatException AtByte(long offset, string message) =>
        new(FormattableString.Invariant($"byte {offset}: {message}"), null, null, offset);
}
