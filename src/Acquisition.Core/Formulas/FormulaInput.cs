using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas;

/// <summary>An input of a formula: its name and what it must be.</summary>
/// <remarks>Immutable.</remarks>
public sealed class FormulaInput
{
    internal FormulaInput(string name, ValueKind kind)
    {
        Name = name;
        Kind = kind;
    }

    /// <summary>The name that the formula uses.</summary>
    public string Name { get; }

    /// <summary>What it must be.</summary>
    public ValueKind Kind { get; }

    /// <summary>Name and kind in one line.</summary>
    public override string ToString() => Name + ": " + Kind.Name;
}
