using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Core.Explanations.Json;

/// <summary>Writes JSON (RFC 8259) with two spaces per level and line feeds, the same bytes on every runtime and culture.</summary>
internal sealed class JsonWriter
{
    private readonly StringBuilder _text = new();
    private int _depth;
    private bool _first = true;

    internal JsonWriter BeginObject(string? name = null) => Begin(name, '{');

    internal JsonWriter EndObject() => End('}');

    internal JsonWriter BeginArray(string? name = null) => Begin(name, '[');

    internal JsonWriter EndArray() => End(']');

    internal JsonWriter Text(string? name, string? value)
    {
        Entry(name);
        if (value is null)
            _text.Append("null");
        else
            Quote(value);
        return this;
    }

    /// <summary>A text member, left out where there is none.</summary>
    internal JsonWriter OptionalText(string name, string? value) => value is null ? this : Text(name, value);

    internal JsonWriter Truth(string? name, bool value)
    {
        Entry(name);
        _text.Append(value ? "true" : "false");
        return this;
    }

    /// <summary>A number in its shortest form that reads back to the same bits, written by the library's own digits since those of runtimes differ; null where it is not finite, which JSON cannot carry.</summary>
    internal JsonWriter Number(string? name, double value)
    {
        Entry(name);
        _text.Append(Math.Abs(value) <= double.MaxValue ? new Quantity(value, QuantityKind.Ratio).ToString() : "null");
        return this;
    }

    /// <summary>An array of numbers, some to a line.</summary>
    internal JsonWriter Numbers(string name, IReadOnlyList<double> values)
    {
        const int numbersOfALine = 10;
        Entry(name);
        _text.Append('[');
        for (int i = 0; i < values.Count; i++)
        {
            if (i > 0) _text.Append(i % numbersOfALine == 0 ? "," : ", ");
            if (i > 0 && i % numbersOfALine == 0) _text.Append('\n').Append(' ', 2 * (_depth + 1));
            _text.Append(Math.Abs(values[i]) <= double.MaxValue ? new Quantity(values[i], QuantityKind.Ratio).ToString() : "null");
        }
        _text.Append(']');
        return this;
    }

    internal JsonWriter Integer(string? name, long value)
    {
        Entry(name);
        _text.Append(value.ToString(CultureInfo.InvariantCulture));
        return this;
    }

    /// <summary>The text so far.</summary>
    public override string ToString() => _text + "\n";

    private JsonWriter Begin(string? name, char mark)
    {
        Entry(name);
        _text.Append(mark);
        _depth++;
        _first = true;
        return this;
    }

    private JsonWriter End(char mark)
    {
        _depth--;
        if (!_first)
            NewLine();
        _text.Append(mark);
        _first = false;
        return this;
    }

    private void Entry(string? name)
    {
        if (_depth > 0)
        {
            if (!_first)
                _text.Append(',');
            NewLine();
        }
        _first = false;
        if (name is not null)
        {
            Quote(name);
            _text.Append(": ");
        }
    }

    private void NewLine() => _text.Append('\n').Append(' ', 2 * _depth);

    /// <summary>Separators of lines, marks of direction and the byte order mark: whoever looks at the text must see them.</summary>
    private static bool ChangesTheLine(char c) =>
        c is '\u2028' or '\u2029' or '\u200E' or '\u200F' or '\u061C' or '\uFEFF' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    private void Quote(string value)
    {
        _text.Append('"');
        for (int i = 0; i < value.Length; i++)
        {
            char c = value[i];
            switch (c)
            {
                case '"': _text.Append("\\\""); break;
                case '\\': _text.Append("\\\\"); break;
                case '\n': _text.Append("\\n"); break;
                case '\r': _text.Append("\\r"); break;
                case '\t': _text.Append("\\t"); break;
                default:
                    // A lone surrogate has no UTF-8 form; escaped it survives.
                    bool paired = char.IsHighSurrogate(c) && i + 1 < value.Length && char.IsLowSurrogate(value[i + 1]);
                    if (paired)
                        _text.Append(c).Append(value[++i]);
                    else if (char.IsControl(c) || char.IsSurrogate(c) || ChangesTheLine(c))
                        _text.Append("\\u").Append(((int)c).ToString("x4", CultureInfo.InvariantCulture));
                    else
                        _text.Append(c);
                    break;
            }
        }
        _text.Append('"');
    }
}
