namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Units that a host adds for its own formulas, such as a tick of its counter: a name and the quantity that one of it is, and the units before it.</summary>
internal sealed class LocalUnits
{
    internal static readonly LocalUnits None = new(null, "", default);

    /// <summary>A host has a few, and nearly every formula none: comparing one after the other finds them.</summary>
    private readonly LocalUnits? _before;
    private readonly string _name;
    private readonly Quantity _quantity;

    private LocalUnits(LocalUnits? before, string name, Quantity quantity)
    {
        _before = before;
        _name = name;
        _quantity = quantity;
    }

    internal bool IsEmpty => _before is null;

    internal bool TryFind(string name, out Quantity quantity)
    {
        for (LocalUnits unit = this; unit._before is not null; unit = unit._before)
        {
            quantity = unit._quantity;
            if (unit._name == name) return true;
        }
        quantity = default;
        return false;
    }

    internal LocalUnits With(string name, Quantity quantity) => new(this, name, quantity);
}
