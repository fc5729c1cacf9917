namespace Acquisition.Core.Functions;

/// <summary>One parameter of a function of the formula language.</summary>
/// <remarks>Immutable.</remarks>
public sealed class FunctionParameter
{
    internal FunctionParameter(string name, ValueKind kind, bool isRepeated = false, object? defaultValue = null)
    {
        Name = name;
        Kind = kind;
        IsRepeated = isRepeated;
        DefaultValue = defaultValue;
    }

    /// <summary>The name in snake case, by which an argument may be given: <c>order: 4</c>.</summary>
    public string Name { get; }

    /// <summary>What the argument must be.</summary>
    public ValueKind Kind { get; }

    /// <summary>Whether the argument may be given more than once; only the last parameter can.</summary>
    public bool IsRepeated { get; }

    /// <summary>The default as a reader would write it; null where the argument must be given.</summary>
    public string? DefaultText => DefaultValue switch
    {
        null => null,
        double siValue => new Quantity(siValue, Kind.Quantity!).ToString(),
        _ => "\"" + DefaultValue + "\"",
    };

    /// <summary>Whether the argument may be left out.</summary>
    public bool IsOptional => DefaultValue is not null;

    /// <summary>The default: a boxed double in SI for quantities, a string for texts.</summary>
    internal object? DefaultValue { get; }
}
