using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>The names a formula may use: the inputs, and in a worksheet the lines above.</summary>
internal sealed class FormulaScope
{
    private readonly Dictionary<string, Operand> _operands = new(System.StringComparer.Ordinal);

    internal IReadOnlyCollection<string> Names => _operands.Keys;

    /// <summary>The names asked for, where somebody wants to know.</summary>
    internal HashSet<string>? Used { get; set; }

    internal bool TryFind(string name, out Operand operand)
    {
        bool isFound = _operands.TryGetValue(name, out operand);
        if (isFound) Used?.Add(name);
        return isFound;
    }

    internal void Set(string name, Operand operand) => _operands[name] = operand;

    /// <summary>The registers of declared inputs: numbers and objects are counted apart.</summary>
    internal static FormulaScope Of(IReadOnlyList<FormulaInput> inputs)
    {
        var scope = new FormulaScope();
        int numbers = 0, objects = 0;
        foreach (FormulaInput input in inputs) scope.Set(input.Name, Operand.In(input.Kind.IsHeldAsNumber ? numbers++ : objects++, input.Kind));
        return scope;
    }
}
