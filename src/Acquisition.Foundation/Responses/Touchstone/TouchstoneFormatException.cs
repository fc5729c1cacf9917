using System;

namespace Acquisition.Core.Responses;

/// <summary>A Touchstone text that is not understood: what was found, what was expected, and where.</summary>
public sealed class TouchstoneFormatException : FormatException
{
    /// <summary>Makes the exception.</summary>
    public TouchstoneFormatException()
        : this("the text is not Touchstone")
    {
    }

    /// <summary>Makes the exception with a message.</summary>
    public TouchstoneFormatException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception with a message and what caused it.</summary>
    public TouchstoneFormatException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal TouchstoneFormatException(int line, string message)
        : base(FormattableString.Invariant($"line {line}: {message}")) => Line = line;

    /// <summary>The line, counted from 1; 0 where it is the text as a whole.</summary>
    public int Line { get; }
}
