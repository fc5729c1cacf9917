namespace Acquisition.Core;

/// <summary>One row of the unit table: a symbol, what it measures, and how many SI units it is.</summary>
internal sealed class Unit
{
    /// <summary>A unit of a kind, equal to the one that the kind is held in.</summary>
    internal Unit(string symbol, QuantityKind kind, UnitPrefixes prefixes = UnitPrefixes.None)
        : this(symbol, kind, prefixes, UnitScale.One) { }

    /// <summary>A unit of another size.</summary>
    internal Unit(string symbol, QuantityKind kind, UnitPrefixes prefixes, UnitScale scale)
    {
        Symbol = symbol;
        Kind = kind;
        Prefixes = prefixes;
        Scale = scale;
    }

    /// <summary>A unit with another zero, or a constant that is no fraction.</summary>
    internal Unit(string symbol, QuantityKind kind, int offsetInHundredths, UnitConstant constant)
        : this(symbol, kind)
    {
        OffsetInHundredths = offsetInHundredths;
        Constant = constant;
    }

    internal readonly string Symbol;

    internal readonly QuantityKind Kind;

    internal Dimension Dimension => Kind.Dimension;

    internal readonly UnitPrefixes Prefixes;

    internal readonly UnitScale Scale;

    internal QuantityNature Nature => Kind.Nature;

    internal LevelReference Reference => Kind.Reference;

    /// <summary>What is added after scaling, in hundredths: 273.15 for °C, 30 for dBW, -60 for dBmV.</summary>
    internal readonly int OffsetInHundredths;

    internal readonly UnitConstant Constant;

    internal bool IsLogarithmic => Nature >= QuantityNature.DecibelRatio;
}

/// <summary>A number that is no fraction and enters a unit.</summary>
internal enum UnitConstant : byte
{
    /// <summary>None.</summary>
    None,

    /// <summary>The decibels in one neper, 20 / ln 10, as a factor (handbook 1.1).</summary>
    DecibelsPerNeper,

    /// <summary>0 dBu as a level re 1 V, 10 lg 0.6, added (handbook 1.3).</summary>
    ZeroDecibelU,
}
