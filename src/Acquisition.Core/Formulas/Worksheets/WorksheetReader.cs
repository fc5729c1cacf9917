using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas.Binding;
using Acquisition.Core.Formulas.Syntax;

namespace Acquisition.Core.Formulas.Worksheets;

/// <summary>Reads the lines of a worksheet into statements; a mistake in one line does not keep the others from being read.</summary>
internal sealed class WorksheetReader
{
    private static readonly string[] Keywords = { "given", "let", "check", "show" };

    private readonly string _text;
    private readonly FormulaContext _context;
    private readonly ProblemList _problems;
    private readonly List<WorksheetStatement> _statements = new();
    private readonly Dictionary<string, int> _lineOf = new(StringComparer.Ordinal);

    private WorksheetReader(string text, FormulaContext context, ProblemList problems)
    {
        _text = text;
        _context = context;
        _problems = problems;
    }

    internal static IReadOnlyList<WorksheetStatement> Read(string text, FormulaContext context, ProblemList problems)
    {
        var reader = new WorksheetReader(text, context, problems);
        int line = 1;
        for (int start = 0; start < text.Length; line++)
        {
            int end = text.IndexOf('\n', start);
            if (end < 0) end = text.Length;
            if (reader._statements.Count >= Worksheet.MostStatements)
            {
                problems.Add(start, start, FormattableString.Invariant($"more than {Worksheet.MostStatements} lines with a statement; the worksheet is not read further"));
                break;
            }
            reader.ReadLine(start, EndOfStatement(text, start, end), line);
            start = end + 1;
        }
        return reader._statements;
    }

    /// <summary>Where the statement of a line ends: before a comment and the spaces in front of it.</summary>
    private static int EndOfStatement(string text, int start, int end)
    {
        bool isQuoted = false;
        for (int i = start; i < end; i++)
        {
            if (text[i] == '"') isQuoted = !isQuoted;
            if (text[i] != '#' || isQuoted) continue;
            end = i;
            break;
        }
        while (end > start && FormulaParser.IsSpace(text[end - 1])) end--;
        return end;
    }

    private void ReadLine(int start, int end, int line)
    {
        int at = Skip(start, end);
        if (at >= end) return;
        int wordEnd = WordEnd(at, end);
        string word = _text.Substring(at, wordEnd - at);
        int keyword = Array.IndexOf(Keywords, word);
        if (keyword < 0)
        {
            int shownEnd = wordEnd > at ? wordEnd : at + 1;
            _problems.Add(at, shownEnd, $"found '{Quotation.Of(_text, at, shownEnd)}', expected given, let, check or show", Suggestions.Nearest(word, Keywords));
            return;
        }
        at = Skip(wordEnd, end);
        switch ((WorksheetKeyword)keyword)
        {
            case WorksheetKeyword.Given or WorksheetKeyword.Let: ReadDeclaration((WorksheetKeyword)keyword, word, at, end, line); break;
            case WorksheetKeyword.Check: ReadCheck(at, end, line); break;
            default: ReadShow(at, end, line); break;
        }
    }

    private void ReadDeclaration(WorksheetKeyword keyword, string word, int at, int end, int line)
    {
        int nameEnd = WordEnd(at, end);
        string name = _text.Substring(at, nameEnd - at);
        if (name.Length == 0)
        {
            _problems.Add(at, at, at < end ? $"found '{Quotation.Of(_text, at, at + 1)}', expected a name after '{word}'" : $"found the end of the line, expected a name after '{word}'");
            return;
        }
        if (_lineOf.TryGetValue(name, out int earlier))
            _problems.Add(at, nameEnd, FormattableString.Invariant($"'{name}' is declared in line {earlier} already"));
        else if (_context.WhyNotDeclarable(name) is { } reason)
            _problems.Add(at, nameEnd, reason);
        if (earlier == 0) _lineOf[name] = line;
        int equals = Skip(nameEnd, end);
        if (equals >= end || _text[equals] != '=')
        {
            _problems.Add(equals, equals, equals >= end ? $"found the end of the line, expected '=' after {name}" : $"found '{Quotation.Of(_text, equals, equals + 1)}', expected '=' after {name}");
            return;
        }
        FormulaNode formula = FormulaParser.Parse(_text, equals + 1, end, _context.Limits, _context.Units, _problems);
        _statements.Add(new WorksheetStatement(keyword, line, name, formula));
    }

    private void ReadCheck(int at, int end, int line)
    {
        FormulaNode formula = FormulaParser.ParsePrefix(_text, at, end, _context.Limits, _context.Units, _problems, out int rest);
        var statement = new WorksheetStatement(WorksheetKeyword.Check, line, "", formula);
        _statements.Add(statement);
        if (rest >= end) return;
        if (WordEnd(rest, end) - rest == 4 && string.CompareOrdinal(_text, rest, "else", 0, 4) == 0)
        {
            FormulaNode message = FormulaParser.Parse(_text, rest + 4, end, _context.Limits, _context.Units, _problems);
            if (message is TextNode text)
                statement.Message = text.Value;
            else
                _problems.Add(message.Start, message.End, "expected a text between quotes after 'else'");
            return;
        }
        FormulaParser.ReportTrailing(_text, rest, end, _context.Limits, _context.Units, _problems);
    }

    private void ReadShow(int at, int end, int line)
    {
        FormulaNode formula = FormulaParser.ParsePrefix(_text, at, end, _context.Limits, _context.Units, _problems, out int rest);
        var statement = new WorksheetStatement(WorksheetKeyword.Show, line, "", formula);
        _statements.Add(statement);
        if (rest >= end) return;
        if (_text[rest] != ',')
        {
            FormulaParser.ReportTrailing(_text, rest, end, _context.Limits, _context.Units, _problems);
            return;
        }
        while (rest < end && _text[rest] == ',')
        {
            int from = Skip(rest + 1, end);
            rest = Math.Max(from, _text.IndexOf(',', from, end - from) is var comma && comma < 0 ? end : comma);
            if (!TryReadOption(statement, from, rest)) return;
        }
    }

    /// <summary><c>3 digits</c> or <c>value only</c>, each once.</summary>
    private bool TryReadOption(WorksheetStatement statement, int from, int end)
    {
        int digits = 0, numberEnd = from;
        for (; numberEnd < end && NumberReader.IsDigit(_text, numberEnd) && digits < 100; numberEnd++) digits = digits * 10 + _text[numberEnd] - '0';
        string words = string.Join(" ", _text.Substring(numberEnd, end - numberEnd).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        bool hasNumber = numberEnd > from;
        if (hasNumber && digits is >= 1 and <= 17 && words is "digits" or "digit" && statement.Digits == 0)
        {
            statement.Digits = digits;
            return true;
        }
        if (!hasNumber && words == "value only" && !statement.IsValueOnly) return statement.IsValueOnly = true;
        _problems.Add(from, end, $"found '{Quotation.Of(_text, from, end)}', expected how many digits to write, from 1 to 17, or 'value only' to leave its uncertainty out", "3 digits");
        return false;
    }

    private int Skip(int at, int end)
    {
        while (at < end && FormulaParser.IsSpace(_text[at])) at++;
        return at;
    }

    private int WordEnd(int at, int end)
    {
        while (at < end && FormulaParser.IsNamePart(_text[at])) at++;
        return at;
    }
}
