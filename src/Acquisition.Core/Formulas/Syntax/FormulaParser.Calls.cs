using System;
using System.Collections.Generic;

namespace Acquisition.Core.Formulas.Syntax;

// Groups, choices and calls.
internal sealed partial class FormulaParser
{
    private FormulaNode Group()
    {
        int start = _at++;
        FormulaNode inner = Expression(0);
        if (_stopped) return inner;
        SkipSpaces();
        if (_at < _end && _text[_at] == ')')
            _at++;
        else
            ReportUnclosed(start, "'('");
        return inner;
    }

    private FormulaNode Choice(int start)
    {
        _at += 2;
        FormulaNode condition = Expression(0);
        int calls = _calls;
        FormulaNode whenTrue = Branch("then", start);
        FormulaNode whenFalse = Branch("else", start);
        return Count(new ChoiceNode(start, condition, whenTrue, whenFalse, _calls > calls));
    }

    private FormulaNode Branch(string word, int start)
    {
        if (_stopped) return new MissingNode(_at, _at);
        SkipSpaces();
        if (!IsWord(word))
        {
            _problems.Add(_at, _at, $"{FoundHere()}, expected '{word}' of the 'if' at column {ColumnOf(start)}");
            return new MissingNode(_at, _at);
        }
        _at += word.Length;
        return Expression(0);
    }

    private FormulaNode Call(int start, string name)
    {
        int open = _at++;
        _calls++;
        _operations++;
        SkipSpaces();
        bool isClosed = TryStep(')');
        ArgumentNode[] arguments = isClosed ? Array.Empty<ArgumentNode>() : Arguments(out isClosed);
        if (!isClosed && !_stopped) ReportUnclosed(open, $"'(' of {name}");
        return Count(new CallNode(start, _at, name, arguments));
    }

    private ArgumentNode[] Arguments(out bool isClosed)
    {
        isClosed = false;
        var arguments = new ArgumentNode[1];
        int count = 0;
        while (!_stopped)
        {
            if (count == arguments.Length) Array.Resize(ref arguments, 2 * count);
            arguments[count++] = Argument();
            SkipSpaces();
            if (_stopped || TryStep(',')) continue;
            isClosed = TryStep(')');
            break;
        }
        if (count < arguments.Length) Array.Resize(ref arguments, count);
        return arguments;
    }

    private bool TryStep(char expected)
    {
        if (_at >= _end || _text[_at] != expected) return false;
        _at++;
        return true;
    }

    private ArgumentNode Argument()
    {
        SkipSpaces();
        int start = _at;
        if (_at < _end && IsNameStart(_text[_at]))
        {
            int end = WordEnd(_at);
            int colon = end;
            while (colon < _end && IsSpace(_text[colon])) colon++;
            if (colon < _end && _text[colon] == ':')
            {
                string name = _text.Substring(start, end - start);
                _at = colon + 1;
                return new ArgumentNode(name, start, Expression(0));
            }
        }
        return new ArgumentNode(null, start, Expression(0));
    }
}
