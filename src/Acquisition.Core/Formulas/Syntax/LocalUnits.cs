using System.Collections.Generic;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Units that a host adds for its own formulas, such as a tick of its counter: a name and the quantity that one of it is.</summary>
internal sealed class LocalUnits
{
    internal static readonly LocalUnits None = new(null);

    /// <summary>Null where there are none, as for nearly every formula.</summary>
    private readonly Dictionary<string, Quantity>? _units;

    private LocalUnits(Dictionary<string, Quantity>? units) => _units = units;

    internal IEnumerable<string> Names => _units is null ? System.Array.Empty<string>() : _units.Keys;

    internal bool TryFind(string name, out Quantity quantity)
    {
        quantity = default;
        return _units is not null && _units.TryGetValue(name, out quantity);
    }

    internal bool IsEmpty => _units is null;

    internal LocalUnits With(string name, Quantity quantity) => new(_units is null ? new Dictionary<string, Quantity> { [name] = quantity } : new Dictionary<string, Quantity>(_units) { [name] = quantity });
}
