using System;
using System.Diagnostics;

namespace Acquisition.Core;

/// <summary>What a quantity is: its name in the trade, its dimension, how it behaves, and the unit it is held and written in.</summary>
/// <remarks>Immutable. Two kinds are the same when dimension, nature and reference are; name and symbol are for people.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed partial class QuantityKind : IEquatable<QuantityKind>
{
    private readonly WrittenPrefix _prefix;
    private string? _name;
    private string? _symbol;
    private string? _asciiSymbol;

    private QuantityKind(string name, string symbol, Dimension dimension, QuantityNature nature = QuantityNature.Linear, LevelReference reference = LevelReference.None, WrittenPrefix prefix = WrittenPrefix.Engineering)
    {
        Dimension = dimension;
        Nature = nature;
        Reference = reference;
        _name = name;
        _symbol = symbol;
        _prefix = IsLogarithmic ? WrittenPrefix.None : prefix;
    }

    /// <summary>A kind without a name in the trade. Its unit is spelt when somebody asks: what formulas compute on their way is rarely written.</summary>
    private QuantityKind(Dimension dimension, QuantityNature nature, LevelReference reference)
    {
        Dimension = dimension;
        Nature = nature;
        Reference = reference;
    }

    /// <summary>The name in the trade, such as <c>sample rate</c>.</summary>
    public string Name => _name ??= "quantity in " + Symbol;

    /// <summary>The symbol of the unit without prefix that the value is held in, such as <c>Sa/s</c>; empty for a plain number.</summary>
    public string Symbol => _symbol ??= UnitSpelling.Of(Dimension, Nature, Reference);

    /// <summary>The dimension.</summary>
    public Dimension Dimension { get; }

    /// <summary>How a value of this kind behaves.</summary>
    public QuantityNature Nature { get; }

    /// <summary>What a logarithmic kind is stated relative to.</summary>
    public LevelReference Reference { get; }

    /// <summary>Whether a value is counted in decibels, so that it follows the rules of decibels.</summary>
    public bool IsLogarithmic => Nature >= QuantityNature.DecibelRatio;

    internal string AsciiSymbol => _asciiSymbol ??= UnitSpelling.ToAscii(Symbol);

    internal WrittenPrefix Prefix => _prefix == WrittenPrefix.FromSpelling ? PrefixOfSpelling() : _prefix;

    /// <summary>The kind of that dimension, nature and reference: the trade's where it has a name, else one that is named by its unit.</summary>
    /// <param name="dimension">The dimension; of a level, that of what it is the logarithm of; of a slope or density, with what it is per.</param>
    /// <param name="nature">How a value behaves.</param>
    /// <param name="reference">What a logarithmic kind is stated relative to.</param>
    public static QuantityKind Of(Dimension dimension, QuantityNature nature = QuantityNature.Linear, LevelReference reference = LevelReference.None)
    {
        for (QuantityKind? kind = ByDimension[PlaceOf(dimension)]; kind is not null; kind = kind._next)
        {
            if (kind.Is(dimension, nature, reference)) return kind;
        }
        return new QuantityKind(dimension, nature, reference);
    }

    /// <summary>With a prefix, S/s would be read as samples per second, as front panels mean it.</summary>
    private WrittenPrefix PrefixOfSpelling() =>
        !IsLogarithmic && UnitSpelling.StartsWithPlainSymbol(Symbol) && Symbol != "S/s" ? WrittenPrefix.Engineering : WrittenPrefix.None;

    internal bool Is(Dimension dimension, QuantityNature nature, LevelReference reference) =>
        Dimension == dimension && Nature == nature && Reference == reference;

    /// <inheritdoc/>
    public bool Equals(QuantityKind? other) =>
        ReferenceEquals(this, other) || (other is not null && Is(other.Dimension, other.Nature, other.Reference));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as QuantityKind);

    /// <inheritdoc/>
    public override int GetHashCode() => Dimension.GetHashCode() * 31 + (int)Nature * 8 + (int)Reference;

    /// <summary>Whether the two are the same kind.</summary>
    public static bool operator ==(QuantityKind? left, QuantityKind? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether the two are different kinds.</summary>
    public static bool operator !=(QuantityKind? left, QuantityKind? right) => !(left == right);

    /// <summary>The kind in words, such as <c>voltage level (dBV)</c>.</summary>
    public override string ToString() =>
        Symbol.Length == 0 || Name.EndsWith(Symbol, StringComparison.Ordinal) ? Name : Name + " (" + Symbol + ")";
}

/// <summary>Which prefixes a kind is written with.</summary>
internal enum WrittenPrefix : byte
{
    /// <summary>As the spelling of the unit allows: for kinds without a name in the trade.</summary>
    FromSpelling,

    /// <summary>None: decibels, percent, bits, divisions.</summary>
    None,

    /// <summary>Those from k upwards: points.</summary>
    Multiples,

    /// <summary>Those whose exponent is a multiple of three.</summary>
    Engineering,
}
