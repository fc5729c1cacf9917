using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Explanations.Json;

/// <summary>Reads the members of one object by name and kind, collecting every problem with its place; at the end the members that nobody asked for are reported.</summary>
internal sealed partial class DocumentObject
{
    private readonly JsonValue _value;
    private readonly string _path;
    private readonly List<DocumentProblem> _problems;
    private readonly List<string> _known = [];
    private readonly int _problemsBefore;
    private readonly bool _brokenText;

    internal DocumentObject(JsonValue value, string path, List<DocumentProblem> problems)
        : this(value, path, problems, problems.Count > 0)
    {
    }

    private DocumentObject(JsonValue value, string path, List<DocumentProblem> problems, bool brokenText)
    {
        _brokenText = brokenText;
        _value = value;
        _path = path;
        _problems = problems;
        _problemsBefore = problems.Count;
        if (value.Kind != JsonKind.Object)
            Report(value, path, $"found {value.KindName}, expected an object");
        Known("note");
        if (path.Length == 0)
            Known("$schema");
    }

    internal bool Has(string name) => _value.Member(name) is { Kind: not JsonKind.Null };

    /// <summary>Whether the member is there, as null: to be read as if it were not, but a place to point at.</summary>
    internal bool IsNull(string name) => _value.Member(name) is { Kind: JsonKind.Null };

    internal bool IsObject(string name) => _value.Member(name) is { Kind: JsonKind.Object };

    internal DocumentObject Known(string name)
    {
        if (!_known.Contains(name))
            _known.Add(name);
        return this;
    }

    /// <summary>A text that must be there; empty where it is not, which is reported.</summary>
    internal string Text(string name) => Required(name, JsonKind.Text)?.Text ?? "";

    internal string? OptionalText(string name) => Member(name, JsonKind.Text)?.Text;

    internal bool Truth(string name, bool otherwise) => Member(name, JsonKind.Boolean)?.Truth ?? otherwise;

    internal double? OptionalNumber(string name, double least, double most)
    {
        if (Member(name, JsonKind.Number) is not { } value)
            return null;
        if (value.Number >= least && value.Number <= most)
            return value.Number;
        Report(value, At(name), FormattableString.Invariant($"found {value.Number}, expected a number from {least} to {most}"));
        return null;
    }

    internal double Number(string name, double least, double most)
    {
        if (!Has(name))
            Missing(name, "a number");
        return OptionalNumber(name, least, most) ?? least;
    }

    /// <summary>A whole number that must be there; the least allowed one where it is not, which is reported.</summary>
    internal int Integer(string name, int least, int most)
    {
        if (!Has(name))
            Missing(name, FormattableString.Invariant($"a whole number from {least} to {most}"));
        return OptionalInteger(name, least, most) ?? least;
    }

    internal int? OptionalInteger(string name, int least, int most)
    {
        if (OptionalNumber(name, least, most) is not { } number)
            return null;
        if (number == Math.Floor(number))
            return (int)number;
        Report(_value.Member(name)!, At(name), FormattableString.Invariant($"found {number}, expected a whole number"));
        return null;
    }

    /// <summary>What a name refers to in another document; null where it is not known there, which is reported with the nearest name.</summary>
    /// <param name="name">The member that holds the name.</param>
    /// <param name="what">What is referred to, for the message.</param>
    /// <param name="entries">The entries of the other document; null where there is no such document.</param>
    /// <param name="nameOf">The name of an entry.</param>
    internal T? Entry<T>(string name, string what, IReadOnlyList<T>? entries, Func<T, string> nameOf)
        where T : class
    {
        if (Member(name, JsonKind.Text) is not { } value)
            return null;
        if (entries is null)
        {
            Report(value, At(name), $"found \"{value.Text}\", but no catalogue was passed beside this file to look it up in");
            return null;
        }
        T? entry = entries.FirstOrDefault(known => nameOf(known) == value.Text);
        if (entry is null)
        {
            string? near = NearestWord.Of(value.Text, entries.Select(nameOf));
            Report(value, At(name), $"found \"{value.Text}\", but the catalogue has no {what} of that name" + (near is null ? "" : $"; did you mean \"{near}\"?"));
        }
        return entry;
    }

    /// <summary>One of a few words; <paramref name="otherwise"/> where there is none, or, reported, another one.</summary>
    internal T Choice<T>(string name, IReadOnlyDictionary<string, T> choices, T otherwise)
    {
        if (Member(name, JsonKind.Text) is not { } value)
            return otherwise;
        return ChoiceOf(value, At(name), choices, otherwise)!;
    }

    internal T RequiredChoice<T>(string name, IReadOnlyDictionary<string, T> choices, T otherwise)
    {
        if (!Has(name))
            Missing(name, "one of " + string.Join(", ", choices.Keys));
        return Choice(name, choices, otherwise);
    }

    internal IReadOnlyList<T> Choices<T>(string name, IReadOnlyDictionary<string, T> choices)
        where T : notnull
    {
        var read = new List<T>();
        int index = 0;
        foreach (JsonValue item in Items(name))
        {
            string path = At(name, index++);
            if (item.Kind != JsonKind.Text)
                Report(item, path, $"found {item.KindName}, expected a text");
            else if (choices.TryGetValue(item.Text, out T? choice))
                read.Add(choice);
            else
                ChoiceOf(item, path, choices, default);
        }
        return read;
    }

    internal DocumentObject? OptionalObject(string name) =>
        Member(name, JsonKind.Object) is { } value ? new DocumentObject(value, At(name), _problems, _brokenText) : null;

    internal DocumentObject? Object(string name)
    {
        if (!Has(name))
            Missing(name, "an object");
        return OptionalObject(name);
    }

    /// <summary>The objects of a list, one after the other: each is to be read to its end before the next.</summary>
    internal IEnumerable<DocumentObject> Objects(string name, bool atLeastOne = false)
    {
        if (atLeastOne && !Has(name))
            Missing(name, "a list of objects");
        IReadOnlyList<JsonValue> items = Items(name);
        if (atLeastOne && items.Count == 0 && _value.Member(name) is { Kind: JsonKind.Array })
            Report(name, "this list is empty; expected at least one object");
        for (int i = 0; i < items.Count; i++)
            yield return new DocumentObject(items[i], At(name, i), _problems, _brokenText);
    }

    internal void Report(string name, string message) => Report(_value.Member(name) ?? _value, At(name), message);

    /// <summary>Reports the members that nobody asked for, with the nearest known name.</summary>
    internal void RefuseOthers()
    {
        foreach (JsonMember member in _value.Members)
        {
            if (_known.Contains(member.Name))
                continue;
            string? near = NearestWord.Of(member.Name, _known.Where(name => name[0] != '$'));
            _problems.Add(new DocumentProblem(member.Line, member.Column, At(member.Name), "this member is not known here; " +
                (near is null ? "known are " + string.Join(", ", _known.Where(name => name[0] != '$')) : $"did you mean \"{near}\"?")));
        }
    }

    private JsonValue? Required(string name, JsonKind kind)
    {
        if (!Has(name))
            Missing(name, kind == JsonKind.Text ? "a text" : "a value");
        return Member(name, kind);
    }

    private JsonValue? Member(string name, JsonKind kind)
    {
        Known(name);
        if (_value.Member(name) is not { Kind: not JsonKind.Null } value)
            return null;
        if (value.Kind == kind)
            return value;
        string expected = kind switch { JsonKind.Text => "a text", JsonKind.Number => "a number", JsonKind.Boolean => "true or false", JsonKind.Array => "a list", _ => "an object" };
        Report(value, At(name), $"found {value.KindName}, expected {expected}");
        return null;
    }

    private IReadOnlyList<JsonValue> Items(string name) => Member(name, JsonKind.Array)?.Items ?? [];

    private T? ChoiceOf<T>(JsonValue value, string path, IReadOnlyDictionary<string, T> choices, T? otherwise)
    {
        if (choices.TryGetValue(value.Text, out T? choice))
            return choice;
        string? near = NearestWord.Of(value.Text, choices.Keys);
        string found = value.Text.Length <= 40 ? value.Text : value.Text.Remove(40) + "...";
        Report(value, path, $"found \"{found}\", expected one of {string.Join(", ", choices.Keys)}" + (near is null ? "" : $"; did you mean \"{near}\"?"));
        return otherwise;
    }

    private void Missing(string name, string expected)
    {
        Known(name);
        // Behind a mistake in the text itself nobody knows what is missing.
        if (_value.Kind == JsonKind.Object && !_brokenText)
            Report(name, _value.Member(name) is null ? $"this member is missing; expected {expected}" : $"found null, expected {expected}");
    }

    private void Report(JsonValue value, string path, string message)
    {
        if (_problems.Count < JsonReader.MostProblems)
            _problems.Add(new DocumentProblem(value.Line, value.Column, path, message));
    }

    private string At(string name) => _path.Length == 0 ? name : _path + "." + name;

    private string At(string name, int index) => FormattableString.Invariant($"{At(name)}[{index}]");
}
