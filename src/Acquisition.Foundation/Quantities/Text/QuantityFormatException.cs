using System;

namespace Acquisition.Core;

/// <summary>Text that is no quantity of the wanted kind. The message names place, finding, expectation and, where one is near, a suggestion, in one line.</summary>
public sealed class QuantityFormatException : FormatException
{
    /// <summary>An exception without a message of its own.</summary>
    public QuantityFormatException() { }

    /// <summary>An exception with a message.</summary>
    public QuantityFormatException(string message) : base(message) { }

    /// <summary>An exception with a message and a cause.</summary>
    public QuantityFormatException(string message, Exception innerException) : base(message, innerException) { }

    internal QuantityFormatException(int position, string found, string expected, string? suggestion)
        : base($"column {position + 1}: found {found}, expected {expected}" + (suggestion is null ? "" : $"; did you mean {suggestion}?"))
    {
        Position = position;
        Found = found;
        Expected = expected;
        Suggestion = suggestion;
    }

    /// <summary>The place of the first character at fault, counted from 0; -1 where there is none.</summary>
    public int Position { get; } = -1;

    /// <summary>What stands there.</summary>
    public string Found { get; } = "";

    /// <summary>What may stand there.</summary>
    public string Expected { get; } = "";

    /// <summary>What was probably meant; null where nothing is near.</summary>
    public string? Suggestion { get; }
}
