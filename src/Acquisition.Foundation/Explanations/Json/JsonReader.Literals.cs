using System;
using System.Globalization;
using System.Text;

namespace Acquisition.Core.Explanations.Json;

// Texts, numbers and the three words.
internal sealed partial class JsonReader
{
    private string ReadText()
    {
        var decoded = new StringBuilder();
        int line = _line, column = Column;
        _at++;
        while (_at < _text.Length)
        {
            char c = _text[_at];
            if (c == '"')
            {
                _at++;
                return decoded.ToString();
            }
            if (c == '\n' || c == '\r')
                break;
            if (c == '\\')
            {
                ReadEscape(decoded);
                continue;
            }
            if (c < ' ')
                Report(FormattableString.Invariant($"found the control character U+{(int)c:X4} inside a text; write \\u{(int)c:X4}"));
            decoded.Append(c);
            _at++;
        }
        AddProblem(line, column, "this text is not closed; expected '\"' before the end of the line");
        return decoded.ToString();
    }

    private void ReadEscape(StringBuilder decoded)
    {
        char c = _at + 1 < _text.Length ? _text[_at + 1] : '\0';
        int plain = "\"\\/bfnrt".IndexOf(c);
        if (plain >= 0)
        {
            decoded.Append("\"\\/\b\f\n\r\t"[plain]);
            _at += 2;
        }
        else if (c == 'u' && CodeUnit(_at + 2) is { } code)
        {
            decoded.Append(code);
            _at += 6;
        }
        else
        {
            Report("found an escape that JSON does not know; a backslash is written \\\\");
            _at++;
        }
    }

    private char? CodeUnit(int start)
    {
        if (start + 4 > _text.Length)
            return null;
        int code = 0;
        for (int i = start; i < start + 4; i++)
        {
            int digit = "0123456789abcdef".IndexOf(char.ToLowerInvariant(_text[i]));
            if (digit < 0)
                return null;
            code = (16 * code) + digit;
        }
        return (char)code;
    }

    private JsonValue? ReadNumber(int line, int column)
    {
        int start = _at;
        while (_at < _text.Length && (char.IsLetterOrDigit(_text[_at]) || _text[_at] is '+' or '-' or '.'))
            _at++;
        string literal = _text.Substring(start, _at - start);
        if (IsNumber(literal) && PortableNumber.TryParse(literal, out double number) && Math.Abs(number) <= double.MaxValue)
            return JsonValue.OfNumber(number, literal, line, column);
        AddProblem(line, column, $"'{Shorten(literal)}' is not a JSON number; a quantity with its unit is written in double quotes, such as \"100 MHz\"");
        return null;
    }

    // RFC 8259 section 6: no leading zero, no sign but minus, digits on both sides of the point.
    private static bool IsNumber(string literal)
    {
        int at = literal[0] == '-' ? 1 : 0;
        int first = at;
        if (!Digits(literal, ref at) || (literal[first] == '0' && at - first > 1))
            return false;
        if (at < literal.Length && literal[at] == '.')
        {
            at++;
            if (!Digits(literal, ref at))
                return false;
        }
        if (at < literal.Length && literal[at] is 'e' or 'E')
        {
            at++;
            if (at < literal.Length && literal[at] is '+' or '-')
                at++;
            if (!Digits(literal, ref at))
                return false;
        }
        return at == literal.Length;
    }

    private static bool Digits(string literal, ref int at)
    {
        int start = at;
        while (at < literal.Length && literal[at] >= '0' && literal[at] <= '9')
            at++;
        return at > start;
    }

    private JsonValue? ReadWord(int line, int column)
    {
        int start = _at;
        while (_at < _text.Length && (char.IsLetterOrDigit(_text[_at]) || _text[_at] == '_'))
            _at++;
        string word = _text.Substring(start, _at - start);
        switch (word)
        {
            case "null": return JsonValue.Null(line, column);
            case "true": return JsonValue.OfTruth(true, line, column);
            case "false": return JsonValue.OfTruth(false, line, column);
        }
        if (word.Length == 0)
        {
            AddProblem(line, column, $"found {Found()}, expected a value");
            if (!_stopped && _text[_at] is not ('}' or ']' or ','))
                _at++;
        }
        else
        {
            AddProblem(line, column, $"found '{Shorten(word)}', expected a value; a text is written in double quotes");
        }
        return null;
    }
}
