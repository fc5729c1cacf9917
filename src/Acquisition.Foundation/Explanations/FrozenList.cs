using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;

namespace Acquisition.Core;

/// <summary>Lists of results: a copy that neither the giver nor a cast can change, because many threads and caches share results.</summary>
internal static class FrozenList
{
    public static IReadOnlyList<T> Frozen<T>(this IEnumerable<T> values)
    {
        T[] copy = values.ToArray();
        return copy.Length == 0 ? Empty<T>.List : new ReadOnlyCollection<T>(copy);
    }

    private static class Empty<T>
    {
        public static readonly ReadOnlyCollection<T> List = new(Array.Empty<T>());
    }
}
