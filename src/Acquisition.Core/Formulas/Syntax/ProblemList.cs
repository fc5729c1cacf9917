using System;
using System.Collections.Generic;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Collects what is wrong with one text and finds lines and columns for it.</summary>
internal sealed class ProblemList(string text, int firstLine = 1, int firstColumn = 1, bool hasLines = false)
{
    /// <summary>Enough for a person to work on; a hostile text gets no longer answer.</summary>
    internal const int Most = 50;

    private List<FormulaProblem>? _problems;

    internal int Count { get; private set; }

    internal void Add(int start, int end, string message, string? suggestion = null) => Add(start, end, message, suggestion is null ? null : () => suggestion);

    internal void Add(int start, int end, string message, Func<string?>? suggest)
    {
        _problems ??= new List<FormulaProblem>();
        if (_problems.Count >= Most) return;
        foreach (FormulaProblem earlier in _problems)
        {
            if (earlier.Start == start && earlier.Length == end - start) return;
        }
        _problems.Add(At(start, end, message, suggest));
        Count++;
    }

    /// <summary>Whether something at a place is reported already.</summary>
    internal bool HasAt(int start)
    {
        return _problems is not null && _problems.Exists(problem => problem.Start == start);
    }

    /// <summary>A problem with its line and column.</summary>
    internal FormulaProblem At(int start, int end, string message, Func<string?>? suggest = null)
    {
        int line = firstLine, lineStart = 1 - firstColumn;
        bool isMultiLine = hasLines;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] != '\n') continue;
            isMultiLine = true;
            if (i >= start) break;
            line++;
            lineStart = i + 1;
        }
        return new FormulaProblem(start, Math.Max(0, end - start), line, start - lineStart + 1, isMultiLine, message, suggest);
    }

    internal IReadOnlyList<FormulaProblem> Sorted()
    {
        return _problems is null ? Array.Empty<FormulaProblem>() : InOrder(_problems);
    }

    private static FormulaProblem[] InOrder(List<FormulaProblem> problems)
    {
        problems.Sort(static (left, right) => left.Start != right.Start ? left.Start.CompareTo(right.Start) : right.Length.CompareTo(left.Length));
        return problems.ToArray();
    }
}
