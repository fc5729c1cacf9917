using System;
using System.Collections.Generic;

namespace Acquisition.Core.Explanations.Json;

internal enum JsonKind
{
    Null,
    Boolean,
    Number,
    Text,
    Array,
    Object,
}

/// <summary>One value of a JSON document (RFC 8259) that knows its place.</summary>
internal sealed class JsonValue
{
    private static readonly JsonValue[] NoItems = [];
    private static readonly JsonMember[] NoMembers = [];

    private JsonValue(JsonKind kind, int line, int column)
    {
        Kind = kind;
        Line = line;
        Column = column;
        Text = "";
        Items = NoItems;
        Members = NoMembers;
    }

    internal JsonKind Kind { get; }

    internal int Line { get; }

    internal int Column { get; }

    /// <summary>The text of a text, decoded; the literal of a number.</summary>
    internal string Text { get; private set; }

    internal double Number { get; private set; }

    internal bool Truth { get; private set; }

    internal IReadOnlyList<JsonValue> Items { get; private set; }

    internal IReadOnlyList<JsonMember> Members { get; private set; }

    /// <summary>How a message names this kind of value.</summary>
    internal string KindName => Kind switch
    {
        JsonKind.Null => "null",
        JsonKind.Boolean => "true or false",
        JsonKind.Number => "a number",
        JsonKind.Text => "a text",
        JsonKind.Array => "a list",
        _ => "an object",
    };

    internal static JsonValue Null(int line, int column) => new(JsonKind.Null, line, column);

    internal static JsonValue OfTruth(bool truth, int line, int column) => new(JsonKind.Boolean, line, column) { Truth = truth };

    internal static JsonValue OfNumber(double number, string literal, int line, int column) => new(JsonKind.Number, line, column) { Number = number, Text = literal };

    internal static JsonValue OfText(string text, int line, int column) => new(JsonKind.Text, line, column) { Text = text };

    internal static JsonValue OfItems(IReadOnlyList<JsonValue> items, int line, int column) => new(JsonKind.Array, line, column) { Items = items };

    internal static JsonValue OfMembers(IReadOnlyList<JsonMember> members, int line, int column) => new(JsonKind.Object, line, column) { Members = members };

    internal JsonValue? Member(string name)
    {
        foreach (JsonMember member in Members)
        {
            if (string.Equals(member.Name, name, StringComparison.Ordinal))
                return member.Value;
        }
        return null;
    }
}

/// <summary>A named value of an object, with the place of its name.</summary>
internal readonly struct JsonMember(string name, JsonValue value, int line, int column)
{
    internal string Name { get; } = name;

    internal JsonValue Value { get; } = value;

    internal int Line { get; } = line;

    internal int Column { get; } = column;
}
