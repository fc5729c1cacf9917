using System;

namespace Acquisition.Core.Records;

/// <summary>An array that grows with what really arrives: a file that promises more than it holds costs no memory.</summary>
internal sealed class GrowingArray<T>
{
    /// <summary>The longest array that every runtime can make.</summary>
    internal const int Longest = 0x7FFFFFC7;

    private T[] _items;

    internal GrowingArray(long expected = 0) => _items = new T[(int)Math.Min(Math.Max(expected, 16), Longest)];

    internal int Count { get; private set; }

    internal bool IsFull => Count == Longest;

    /// <summary>The array with <see cref="Count"/> items and room beyond them.</summary>
    internal T[] Items => _items;

    internal T this[int index] => _items[index];

    internal void Add(T item)
    {
        if (Count == _items.Length)
            Grow(1);
        _items[Count++] = item;
    }

    internal void Add(T[] items, int offset, int count)
    {
        if (count > _items.Length - Count)
            Grow(count);
        Array.Copy(items, offset, _items, Count, count);
        Count += count;
    }

    private void Grow(int more)
    {
        long wanted = (long)Count + more;
        if (wanted > Longest)
            throw new InvalidOperationException(FormattableString.Invariant($"a record holds at most {Longest} samples"));
        Array.Resize(ref _items, (int)Math.Min(Longest, Math.Max(wanted, 2L * _items.Length)));
    }
}
