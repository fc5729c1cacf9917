using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core;

/// <summary>A document (bench file, catalogue ...) that could not be read. It carries every problem found, not only the first.</summary>
public sealed class DocumentFormatException : FormatException
{
    /// <summary>An exception without a message of its own.</summary>
    public DocumentFormatException() { }

    /// <summary>An exception with a message.</summary>
    public DocumentFormatException(string message) : base(message) { }

    /// <summary>An exception with a message and a cause.</summary>
    public DocumentFormatException(string message, Exception innerException) : base(message, innerException) { }

    /// <summary>An exception for a document's problems.</summary>
    /// <param name="document">What was read, such as <c>bench file</c>.</param>
    /// <param name="problems">Everything that is wrong with it.</param>
    /// <exception cref="ArgumentNullException"><paramref name="problems"/> is null.</exception>
    public DocumentFormatException(string document, IReadOnlyList<DocumentProblem> problems)
        : base(Describe(document, problems ?? throw new ArgumentNullException(nameof(problems)))) => Problems = problems.Frozen();

    /// <summary>Everything that is wrong with the document, in the order of their places.</summary>
    public IReadOnlyList<DocumentProblem> Problems { get; } = Array.Empty<DocumentProblem>();

    private static string Describe(string document, IReadOnlyList<DocumentProblem> problems) =>
        FormattableString.Invariant($"the {document} has {problems.Count} {(problems.Count == 1 ? "problem" : "problems")}:") +
        string.Concat(problems.Select(problem => Environment.NewLine + "  " + problem));
}
