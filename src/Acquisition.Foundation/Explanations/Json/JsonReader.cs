using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Core.Explanations.Json;

/// <summary>
/// Reads JSON (RFC 8259) into values that know their place. It goes on after a mistake wherever the rest still makes sense, so that a person
/// sees every problem of a hand-written file at once; size, depth and the number of problems are bounded.
/// </summary>
internal sealed partial class JsonReader
{
    internal const int LongestText = 16 * 1024 * 1024;
    internal const int DeepestNesting = 64;
    internal const int MostProblems = 100;

    private readonly string _text;
    private readonly List<DocumentProblem> _problems;
    private int _at;
    private int _line = 1;
    private int _lineStart;
    private bool _stopped;

    private JsonReader(string text, List<DocumentProblem> problems)
    {
        _text = text;
        _problems = problems;
    }

    /// <summary>The document, or null where nothing of it could be read; what is wrong with it is added to <paramref name="problems"/>.</summary>
    internal static JsonValue? Read(string text, List<DocumentProblem> problems)
    {
        if (text.Length > LongestText)
        {
            problems.Add(new DocumentProblem(1, 1, "", FormattableString.Invariant($"the text has {text.Length} characters; at most {LongestText} are read")));
            return null;
        }
        var reader = new JsonReader(text, problems);
        if (text.Length > 0 && text[0] == '\uFEFF')
            reader._at = reader._lineStart = 1;
        JsonValue? value = reader.ReadValue(0);
        reader.SkipSpace();
        if (!reader._stopped && reader._at < text.Length)
            reader.Report($"found {reader.Found()} after the end of the document");
        return value;
    }

    private int Column => _at - _lineStart + 1;

    private JsonValue? ReadValue(int depth)
    {
        SkipSpace();
        if (_at >= _text.Length)
        {
            Stop("the document ends where a value was expected");
            return null;
        }
        if (depth > DeepestNesting)
        {
            Stop(FormattableString.Invariant($"nested deeper than {DeepestNesting} levels"));
            return null;
        }
        int line = _line, column = Column;
        char first = _text[_at];
        if (first == '{')
            return ReadObject(depth, line, column);
        if (first == '[')
            return ReadArray(depth, line, column);
        if (first == '"')
            return JsonValue.OfText(ReadText(), line, column);
        if (first == '-' || (first >= '0' && first <= '9'))
            return ReadNumber(line, column);
        return ReadWord(line, column);
    }

    private JsonValue ReadObject(int depth, int line, int column)
    {
        var members = new List<JsonMember>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        _at++;
        SkipSpace();
        while (!_stopped)
        {
            if (TryTake('}'))
                break;
            if (_at >= _text.Length)
            {
                Stop(FormattableString.Invariant($"the object opened at line {line}, column {column} is not closed; expected '}}'"));
                break;
            }
            if (_text[_at] != '"')
            {
                Report($"found {Found()}, expected the name of a member in double quotes");
                if (!SkipToNext('}'))
                    break;
                continue;
            }
            int nameLine = _line, nameColumn = Column;
            string name = ReadText();
            SkipSpace();
            if (!TryTake(':'))
            {
                Report($"found {Found()}, expected ':' after \"{Shorten(name)}\"");
                if (!SkipToNext('}'))
                    break;
                continue;
            }
            JsonValue? value = ReadValue(depth + 1);
            if (!names.Add(name))
                _problems.Add(new DocumentProblem(nameLine, nameColumn, Shorten(name), "this member occurs twice in one object"));
            else if (value is not null)
                members.Add(new JsonMember(name, value, nameLine, nameColumn));
            EndOfEntry('}');
        }
        return JsonValue.OfMembers(members, line, column);
    }

    private JsonValue ReadArray(int depth, int line, int column)
    {
        var items = new List<JsonValue>();
        _at++;
        SkipSpace();
        while (!_stopped)
        {
            if (TryTake(']'))
                break;
            if (_at >= _text.Length)
            {
                Stop(FormattableString.Invariant($"the list opened at line {line}, column {column} is not closed; expected ']'"));
                break;
            }
            if (ReadValue(depth + 1) is { } value)
                items.Add(value);
            EndOfEntry(']');
        }
        return JsonValue.OfItems(items, line, column);
    }

    // After an entry: a comma and another entry, or the closing mark. A forgotten comma and a comma too many are reported and forgiven.
    private void EndOfEntry(char closing)
    {
        if (_stopped)
            return;
        SkipSpace();
        int line = _line, column = Column;
        if (TryTake(','))
        {
            SkipSpace();
            if (_at < _text.Length && _text[_at] == closing)
                AddProblem(line, column, $"found ',' before '{closing}'; remove it");
            return;
        }
        if (_at >= _text.Length || _text[_at] == closing)
            return;
        Report($"found {Found()}, expected ',' or '{closing}'");
        if (_stopped)
            return;
        char next = _text[_at];
        if (next != '"' && next != '{' && next != '[' && !char.IsLetterOrDigit(next) && next != '-')
            SkipToNext(closing);
    }

    private bool TryTake(char c)
    {
        if (_at >= _text.Length || _text[_at] != c)
            return false;
        _at++;
        return true;
    }

    // Skips what makes no sense, to the next comma or closing mark of this level or the next line.
    private bool SkipToNext(char closing)
    {
        while (_at < _text.Length && _text[_at] != closing && _text[_at] != ',' && _text[_at] != '\n')
            _at++;
        TryTake(',');
        SkipSpace();
        if (_at < _text.Length)
            return !_stopped;
        Stop($"the document ends where '{closing}' was expected");
        return false;
    }

    private void SkipSpace()
    {
        for (; _at < _text.Length; _at++)
        {
            char c = _text[_at];
            if (c == '\n')
            {
                _line++;
                _lineStart = _at + 1;
            }
            else if (c is not (' ' or '\t' or '\r'))
            {
                return;
            }
        }
    }

    private string Found() => _at >= _text.Length ? "the end of the document" : _text[_at] < ' ' ? FormattableString.Invariant($"the control character U+{(int)_text[_at]:X4}") : $"'{_text[_at]}'";

    private static string Shorten(string text) => text.Length <= 40 ? text : text.Remove(40) + "...";

    private void Report(string message) => AddProblem(_line, Column, message);

    private void AddProblem(int line, int column, string message)
    {
        if (_stopped)
            return;
        _problems.Add(new DocumentProblem(line, column, "", message));
        if (_problems.Count >= MostProblems)
            Stop(FormattableString.Invariant($"{MostProblems} problems are enough; the rest was not read"));
    }

    private void Stop(string message)
    {
        if (_stopped)
            return;
        _problems.Add(new DocumentProblem(_line, Column, "", message));
        _stopped = true;
        _at = _text.Length;
    }
}
