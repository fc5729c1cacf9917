using System;

namespace Acquisition.Core;

/// <summary>Something a person should know about a result: what is the matter, with numbers and units, and what would cure it.</summary>
/// <remarks>The code is stable: software may act on it. The texts may be improved at any time. Immutable.</remarks>
public sealed class Finding
{
    /// <summary>Makes a finding.</summary>
    /// <param name="code">The stable code: lower-case words with hyphens, such as <c>memory-caps-rate</c>.</param>
    /// <param name="severity">How much it matters.</param>
    /// <param name="message">What is the matter, with numbers and units.</param>
    /// <param name="remedy">What would cure it, with the number that would; null where nothing does.</param>
    /// <param name="source">Where the rule comes from: standard and clause, or handbook section; null where the finding only states a fact.</param>
    /// <exception cref="ArgumentNullException"><paramref name="code"/> or <paramref name="message"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="code"/> is not lower-case words joined by hyphens, or <paramref name="message"/> says nothing.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="severity"/> is none of the four.</exception>
    public Finding(string code, Severity severity, string message, string? remedy = null, string? source = null)
    {
        Code = code ?? throw new ArgumentNullException(nameof(code));
        Message = message ?? throw new ArgumentNullException(nameof(message));
        if (!IsCode(code)) throw new ArgumentException($"code must be lower-case words joined by hyphens, such as memory-caps-rate; was '{code}'", nameof(code));
        if (severity is < Severity.Note or > Severity.Safety) throw new ArgumentOutOfRangeException(nameof(severity), $"severity must be Note, Warning, Failure or Safety; was {(int)severity}");
        if (string.IsNullOrWhiteSpace(message)) throw new ArgumentException("message must say what is the matter; was empty", nameof(message));
        Severity = severity;
        Remedy = remedy;
        Source = source;
    }

    private static bool IsCode(string code)
    {
        bool isWord = false;
        foreach (char c in code)
        {
            bool isHyphen = c == '-';
            if (isHyphen ? !isWord : c is not ((>= 'a' and <= 'z') or (>= '0' and <= '9'))) return false;
            isWord = !isHyphen;
        }
        return isWord;
    }

    /// <summary>The stable code.</summary>
    public string Code { get; }

    /// <summary>How much it matters.</summary>
    public Severity Severity { get; }

    /// <summary>What is the matter, with numbers and units.</summary>
    public string Message { get; }

    /// <summary>What would cure it; null where nothing does.</summary>
    public string? Remedy { get; }

    /// <summary>Where the rule comes from; null where the finding only states a fact.</summary>
    public string? Source { get; }

    /// <summary>Severity, code, message and remedy in one line.</summary>
    public override string ToString() => $"{Severity} {Code}: {Message}" + (Remedy is null ? "" : $" -> {Remedy}");
}
