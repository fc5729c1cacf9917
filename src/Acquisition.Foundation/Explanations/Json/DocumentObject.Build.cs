using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Explanations.Json;

// Objects made of the members: what a constructor refuses leads back to the member it came from.
internal sealed partial class DocumentObject
{
    /// <summary>Runs a constructor; what it refuses becomes a problem at the member whose value is refused, else at the place of <paramref name="name"/>, or of the object itself.</summary>
    /// <param name="make">The constructor.</param>
    /// <param name="name">The member to blame where the refusal names none.</param>
    /// <param name="members">For arguments that are called otherwise than their members, the member of each.</param>
    /// <param name="related">The members that limit each other: where one of them is refused, the places of the others are given too.</param>
    internal T? Build<T>(Func<T> make, string? name = null, IReadOnlyDictionary<string, string>? members = null, IReadOnlyList<string>? related = null)
        where T : class
    {
        try
        {
            return make();
        }
        catch (Exception refusal) when (refusal is ArgumentException or OverflowException or NotSupportedException or InvalidOperationException)
        {
            // A value that could not be read stands as its default and is refused again here; saying it once is enough.
            if (_problems.Count == _problemsBefore)
                Refused(refusal, name, members, related ?? []);
            return null;
        }
    }

    private void Refused(Exception refusal, string? name, IReadOnlyDictionary<string, string>? members, IReadOnlyList<string> related)
    {
        string message = FirstLine(refusal), argument = (refusal as ArgumentException)?.ParamName ?? "";
        string? member = members is not null && members.TryGetValue(argument, out string? called) ? called : _known.Contains(argument) ? argument : null;
        // The reader of a file knows its members, not the arguments of a constructor.
        if (member is not null && message.StartsWith(argument + " ", StringComparison.Ordinal))
            message = message.Remove(0, argument.Length).Insert(0, member);
        string? place = member is not null && Has(member) ? member : name;
        JsonValue at = place is null ? _value : _value.Member(place) ?? _value;
        if (member is null || related.Contains(member))
            message += PlacesOf(related.Where(other => other != place));
        Report(at, place is null ? _path : At(place), message);
    }

    /// <summary>Where the members are that a refusal depends on, for the end of its message; those that are not there are left out. A point leads into an object.</summary>
    internal string PlacesOf(IEnumerable<string> members)
    {
        var places = new List<string>();
        foreach (string path in members)
        {
            JsonValue? value = _value;
            foreach (string name in path.Split('.'))
                value = value?.Member(name);
            if (value is { Kind: not JsonKind.Null })
                places.Add(FormattableString.Invariant($"{path} in line {value.Line}"));
        }
        return places.Count == 0 ? "" : "; it depends on " + string.Join(", ", places);
    }

    // The framework appends the argument's name in parentheses, on some runtimes on a line of its own.
    private static string FirstLine(Exception refusal)
    {
        string message = refusal.Message;
        int end = message.IndexOfAny(['\r', '\n']);
        if (end >= 0)
            message = message.Remove(end);
        int parameter = message.LastIndexOf(" (Parameter '", StringComparison.Ordinal);
        return parameter >= 0 ? message.Remove(parameter) : message;
    }
}
