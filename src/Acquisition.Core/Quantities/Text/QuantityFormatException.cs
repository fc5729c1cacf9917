using System;

namespace Acquisition.Core;

/// <summary>Text that is no quantity of the wanted kind. The message names place, finding, expectation and, where one is near, a suggestion.</summary>
public sealed class QuantityFormatException : FormatException
{
    /// <summary>An exception without a message of its own.</summary>
    public QuantityFormatException() { }

    /// <summary>An exception with a message.</summary>
    public QuantityFormatException(string message) : base(message) { }

    /// <summary>An exception with a message and a cause.</summary>
    public QuantityFormatException(string message, Exception innerException) : base(message, innerException) { }
}
