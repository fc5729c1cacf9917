using System.Collections.Generic;

namespace Acquisition.Core.Formulas.Syntax;

/// <summary>Units that a host adds for its own formulas, such as a tick of its counter: a name and the quantity that one of it is.</summary>
internal sealed class LocalUnits
{
    internal static readonly LocalUnits None = new(new Dictionary<string, Quantity>());

    private readonly Dictionary<string, Quantity> _units;

    private LocalUnits(Dictionary<string, Quantity> units) => _units = units;

    internal IEnumerable<string> Names => _units.Keys;

    internal bool TryFind(string name, out Quantity quantity) => _units.TryGetValue(name, out quantity);

    internal bool IsEmpty => _units.Count == 0;

    internal LocalUnits With(string name, Quantity quantity) => new(new Dictionary<string, Quantity>(_units) { [name] = quantity });
}
