using System.Collections.Generic;
using Acquisition.Core.Formulas.Syntax;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>The names a formula may use: the inputs, and in a worksheet the lines above.</summary>
internal sealed class FormulaScope
{
    /// <summary>Among so few names, comparing is quicker than hashing.</summary>
    private const int Few = 8;

    private string[] _names;
    private Operand[] _operands;
    private int _count;

    /// <summary>A scope without names.</summary>
    /// <param name="expected">How many are expected; it takes more.</param>
    internal FormulaScope(int expected)
    {
        _names = new string[expected];
        _operands = new Operand[expected];
    }

    /// <summary>The places of the names, where there are more than a few.</summary>
    private Dictionary<string, int>? _places;

    internal IEnumerable<string> Names => new System.ArraySegment<string>(_names, 0, _count);

    /// <summary>The names asked for, where somebody wants to know.</summary>
    internal HashSet<string>? Used { get; set; }

    /// <summary>In a worksheet, the names that later lines declare, with their lines.</summary>
    internal Dictionary<string, int>? DeclaredBelow { get; set; }

    internal bool TryFind(NameNode node, out Operand operand)
    {
        int place = PlaceOf(node);
        operand = place < 0 ? default : _operands[place];
        if (place >= 0) Used?.Add(_names[place]);
        return place >= 0;
    }

    internal bool Has(string name) => PlaceOf(name) >= 0;

    internal void Set(string name, Operand operand)
    {
        int place = PlaceOf(name);
        if (place < 0) place = Append(name);
        _operands[place] = operand;
    }

    private int PlaceOf(NameNode node)
    {
        if (_places is not null) return PlaceOf(node.Name);
        for (int i = 0; i < _count; i++)
        {
            if (node.Is(_names[i])) return i;
        }
        return -1;
    }

    private int PlaceOf(string name)
    {
        if (_places is not null) return _places.TryGetValue(name, out int known) ? known : -1;
        for (int i = 0; i < _count; i++)
        {
            if (_names[i] == name) return i;
        }
        return -1;
    }

    private int Append(string name)
    {
        if (_count == _names.Length)
        {
            System.Array.Resize(ref _names, System.Math.Max(Few, 2 * _count));
            System.Array.Resize(ref _operands, _names.Length);
        }
        _names[_count] = name;
        if (_count == Few)
        {
            _places = new Dictionary<string, int>(System.StringComparer.Ordinal);
            for (int i = 0; i < _count; i++) _places.Add(_names[i], i);
        }
        _places?.Add(name, _count);
        return _count++;
    }

    /// <summary>The registers of declared inputs: numbers and objects are counted apart.</summary>
    internal static FormulaScope Of(FormulaInput[] inputs, out int numbers)
    {
        var scope = new FormulaScope(inputs.Length);
        int objects = 0;
        numbers = 0;
        foreach (FormulaInput input in inputs) scope.Set(input.Name, Operand.In(input.Kind.IsHeldAsNumber ? numbers++ : objects++, input.Kind));
        return scope;
    }
}
