using System;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>What is said about text that cannot be read.</summary>
internal sealed partial class FormulaParser
{
    private const int LongestQuotation = 40;

    private FormulaNode Count(FormulaNode node)
    {
        if (++_nodes > _limits.Nodes && !_stopped) StopAtNodes();
        return node;
    }

    private void StopAtNodes() => Stop(FormattableString.Invariant($"more than {_limits.Nodes} numbers, names and operators"));

    private MissingNode Stop(string reason)
    {
        if (!_stopped) _problems.Add(_at, Math.Min(_at + 1, _end), reason + "; the formula is not read further");
        _stopped = true;
        int at = _at;
        _at = _end;
        return new MissingNode(at, at);
    }

    private MissingNode Missing(string expected)
    {
        _problems.Add(_at, _at < _end ? _at + 1 : _at, $"{FoundHere()}, expected {expected}");
        return new MissingNode(_at, _at);
    }

    private MissingNode Refused(TextProblem problem)
    {
        int start = problem.Start, end = problem.Start + problem.Length;
        string text = _text;
        _problems.Add(start, end, $"found {ProblemText.Found(_text, problem, '.')}, expected {ProblemText.Expected(_text, problem, null, '.')}", () => ProblemText.Suggestion(text, problem, null, '.'));
        int from = _at;
        _at = Math.Min(_end, Math.Max(end, _at));
        while (_at < _end && (IsNamePart(_text[_at]) || IsUnitLetter(_text[_at]) || (_text[_at] == '.' && _at > from) || char.IsDigit(_text[_at]))) _at++;
        if (_at == from) _at++;
        return new MissingNode(start, _at);
    }

    private void ReportNoUnit(int start, int end)
    {
        var problem = new TextProblem(TextFault.UnknownUnit, start, end - start);
        string text = _text;
        if (ProblemText.InsteadOfFahrenheit(text, start) is { } instead)
        {
            _problems.Add(start, end, $"found {Shown(start, end)}, expected {instead}");
            return;
        }
        _problems.Add(start, end, $"{Shown(start, end)} is not a unit", () => ProblemText.Suggestion(text, problem, null, '.'));
    }

    private void ReportChain(BinaryNode chain, Operator op, int start, FormulaNode right)
    {
        string middle = Slice(chain.Right.Start, chain.Right.End);
        string both = $"{Slice(chain.Left.Start, chain.Left.End)} {Tightness.Spelling(chain.Operator)} {middle} and {middle} {Tightness.Spelling(op)} {Slice(right.Start, right.End)}";
        _problems.Add(start, start + 1, "comparisons do not follow one another", both.Length <= 2 * LongestQuotation ? both : null);
    }

    private void ReportUnclosed(int open, string what) =>
        _problems.Add(_at, _at, FormattableString.Invariant($"{FoundHere()}, expected ')' for the {what} at column {ColumnOf(open)}"));

    private void ReportTrailing()
    {
        int start = _at;
        if (_problems.HasAt(start)) return;
        char c = _text[start];
        char next = start + 1 < _end ? _text[start + 1] : '\0';
        int end = IsWordStart(c) || NumberReader.IsDigit(_text, start) ? WordEnd(start) : start + 1;
        string found = "found " + Shown(start, end);
        int wide = c is 'p' or 'P' && next == '-' ? Math.Min(_end, start + 3) : end;
        if (UnitSuggestions.AmplitudeOf(_text, start, wide - start) is { } unit)
        {
            _problems.Add(start, wide, $"found {Shown(start, wide)}, expected how the amplitude is stated in its unit", unit);
            return;
        }
        if (ProblemText.InsteadOfFahrenheit(_text, start) is { } instead)
        {
            _problems.Add(start, end, found + ", expected " + instead);
            return;
        }
        if (end - start == 2 && c == 'o' && next == 'f')
        {
            _problems.Add(start, end, found + ", expected an operator", "*");
            return;
        }
        switch (c)
        {
            case ')':
                _problems.Add(start, end, "found ')' without '(' before it");
                break;
            case ',' when start > 0 && NumberReader.IsDigit(_text, start - 1) && NumberReader.IsDigit(_text, start + 1):
                _problems.Add(start, end, "found ',', expected a decimal point or an operator", DecimalPointFor(start));
                break;
            case '=':
                _problems.Add(start, end, found + ", expected an operator", "==");
                break;
            case '*' when next == '*':
                _problems.Add(start, start + 2, "found '**', expected an operator", "^");
                break;
            case '×' or '·' or '⋅':
                _problems.Add(start, end, found + ", expected an operator", "*");
                break;
            case '÷':
                _problems.Add(start, end, found + ", expected an operator", "/");
                break;
            case '&' or '|':
                _problems.Add(start, next == c ? start + 2 : end, $"found {Shown(start, next == c ? start + 2 : end)}, expected an operator", c == '&' ? "and" : "or");
                break;
            default:
                int digit = UnitFactor.SuperscriptDigit(c);
                _problems.Add(start, end, found + ", expected an operator or the end of the formula", digit >= 0 ? "^" + (char)('0' + digit) : null);
                break;
        }
    }

    private string DecimalPointFor(int comma)
    {
        int start = comma, end = comma + 1;
        while (start > 0 && NumberReader.IsDigit(_text, start - 1)) start--;
        while (NumberReader.IsDigit(_text, end)) end++;
        return Slice(start, comma) + "." + Slice(comma + 1, end);
    }

    private string FoundHere()
    {
        if (_at >= _end) return "found the end of the formula";
        int end = IsWordStart(_text[_at]) || NumberReader.IsDigit(_text, _at) ? WordEnd(_at) : _at + 1;
        return "found " + Shown(_at, end);
    }

    private int ColumnOf(int place)
    {
        return _problems.At(place, place, "").Column;
    }

    private string Shown(int start, int end) => "'" + Slice(start, end) + "'";

    /// <summary>A part of the text, cut and without control characters, for a message.</summary>
    private string Slice(int start, int end) => Quotation.Of(_text, start, end);
}
