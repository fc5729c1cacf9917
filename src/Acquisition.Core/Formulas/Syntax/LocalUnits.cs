using System;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Units that a host adds for its own formulas, such as a tick of its counter: a name and the quantity that one of it is.</summary>
internal sealed class LocalUnits
{
    internal static readonly LocalUnits None = new([], []);

    /// <summary>A host has a few, and nearly every formula none: comparing finds them.</summary>
    private readonly string[] _names;
    private readonly Quantity[] _quantities;

    private LocalUnits(string[] names, Quantity[] quantities)
    {
        _names = names;
        _quantities = quantities;
    }

    internal bool IsEmpty => _names.Length == 0;

    internal bool TryFind(string name, out Quantity quantity)
    {
        int place = Array.IndexOf(_names, name);
        quantity = place < 0 ? default : _quantities[place];
        return place >= 0;
    }

    internal LocalUnits With(string name, Quantity quantity) => new([.. _names, name], [.. _quantities, quantity]);
}
