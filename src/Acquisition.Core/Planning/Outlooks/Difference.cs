namespace Acquisition.Core.Planning;

/// <summary>A value that differs between two set-ups.</summary>
public sealed class Difference
{
    internal Difference(string name, string first, string second, Ratio? relative, bool isAbsolute, Quantity? firstQuantity, Quantity? secondQuantity)
    {
        FirstQuantity = firstQuantity;
        SecondQuantity = secondQuantity;
        Name = name;
        First = first;
        Second = second;
        Relative = relative;
        IsAbsolute = isAbsolute;
    }

    /// <summary>What differs.</summary>
    public string Name { get; }

    /// <summary>Its text in the first set-up; a dash where it has none.</summary>
    public string First { get; }

    /// <summary>Its text in the second set-up; a dash where it has none.</summary>
    public string Second { get; }

    /// <summary>Its value in the first set-up; null where it has none.</summary>
    public Quantity? FirstQuantity { get; }

    /// <summary>Its value in the second set-up; null where it has none.</summary>
    public Quantity? SecondQuantity { get; }

    /// <summary>The change, relative to the first; for values that are shares themselves (see <see cref="IsAbsolute"/>) the difference. Null where one of them is missing.</summary>
    public Ratio? Relative { get; }

    /// <summary>Whether the value is a share itself, so that <see cref="Relative"/> is a difference of shares.</summary>
    public bool IsAbsolute { get; }

    /// <summary>The change in words.</summary>
    public string Change => Relative is { } change ? (change.SiValue > 0 ? "+" : "") + change.InWords() + (IsAbsolute ? " (difference)" : "") : "";

    /// <summary>Name and both values.</summary>
    public override string ToString() => $"{Name}: {First} -> {Second}";
}
