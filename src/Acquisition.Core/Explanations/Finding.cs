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
    public Finding(string code, Severity severity, string message, string? remedy = null, string? source = null)
    {
        Code = code ?? throw new ArgumentNullException(nameof(code));
        Severity = severity;
        Message = message ?? throw new ArgumentNullException(nameof(message));
        Remedy = remedy;
        Source = source;
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
