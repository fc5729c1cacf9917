using System;

namespace Acquisition.Core;

/// <summary>One thing wrong with a document, and the place where it is.</summary>
/// <remarks>Lines and columns count from 1; a column counts UTF-16 units. Immutable.</remarks>
public sealed class DocumentProblem
{
    /// <summary>Makes a problem.</summary>
    /// <param name="line">The line, from 1.</param>
    /// <param name="column">The column, from 1.</param>
    /// <param name="path">The member concerned, such as <c>digitizer.memory</c>; empty for the document itself.</param>
    /// <param name="message">What is wrong and what was expected.</param>
    /// <exception cref="ArgumentNullException"><paramref name="path"/> or <paramref name="message"/> is null.</exception>
    public DocumentProblem(int line, int column, string path, string message)
    {
        Line = line;
        Column = column;
        Path = path ?? throw new ArgumentNullException(nameof(path));
        Message = message ?? throw new ArgumentNullException(nameof(message));
    }

    /// <summary>The line, from 1.</summary>
    public int Line { get; }

    /// <summary>The column, from 1.</summary>
    public int Column { get; }

    /// <summary>The member concerned; empty for the document itself.</summary>
    public string Path { get; }

    /// <summary>What is wrong and what was expected.</summary>
    public string Message { get; }

    /// <summary>Place, member and message in one line.</summary>
    public override string ToString() => FormattableString.Invariant($"line {Line}, column {Column}: ") + (Path.Length == 0 ? Message : $"{Path}: {Message}");
}
