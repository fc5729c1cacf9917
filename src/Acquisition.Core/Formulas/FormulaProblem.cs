using System;
using System.Threading;

namespace Acquisition.Core.Formulas;

/// <summary>One thing wrong with a formula, and the place where it is.</summary>
/// <remarks>Immutable.</remarks>
public sealed class FormulaProblem
{
    private readonly string _message;
    private Func<string?>? _suggest;
    private string? _suggestion;

    internal FormulaProblem(int start, int length, int line, int column, bool hasLines, string message, Func<string?>? suggest)
    {
        Start = start;
        Length = length;
        Line = line;
        Column = column;
        _hasLines = hasLines;
        _message = message;
        _suggest = suggest;
    }

    private readonly bool _hasLines;

    /// <summary>Where it is: UTF-16 units from the start of the text, from 0.</summary>
    public int Start { get; }

    /// <summary>How many UTF-16 units of the text it concerns; 0 where something is missing.</summary>
    public int Length { get; }

    /// <summary>The line, from 1.</summary>
    public int Line { get; }

    /// <summary>The column, from 1, in UTF-16 units.</summary>
    public int Column { get; }

    /// <summary>What was found and what was expected, with a suggestion where one is near.</summary>
    public string Message => Suggestion is { } suggestion ? _message + "; did you mean " + suggestion + "?" : _message;

    /// <summary>What was probably meant; null where nothing is near.</summary>
    public string? Suggestion
    {
        get
        {
            // Looking for what is near costs more than finding the mistake, so it waits until somebody asks. Asked twice at once it is found twice, and the same.
            // Who sees that it was found must see what was found.
            if (Volatile.Read(ref _suggest) is { } suggest)
            {
                _suggestion = suggest();
                Volatile.Write(ref _suggest, null);
            }
            return _suggestion;
        }
    }

    /// <summary>Place and message in one line.</summary>
    public override string ToString() =>
        _hasLines ? FormattableString.Invariant($"line {Line}, column {Column}: {Message}") : FormattableString.Invariant($"column {Column}: {Message}");
}
