namespace Acquisition.Core;

/// <summary>One row of the unit table: a symbol, what it measures, and how many SI units it is.</summary>
internal sealed class Unit
{
    internal Unit(string symbol, Dimension dimension, UnitPrefixes prefixes = UnitPrefixes.None, UnitScale? scale = null, QuantityNature nature = QuantityNature.Linear, LevelReference reference = LevelReference.None, int offsetInHundredths = 0, UnitConstant constant = UnitConstant.None)
    {
        Symbol = symbol;
        Dimension = dimension;
        Prefixes = prefixes;
        Scale = scale ?? UnitScale.One;
        Nature = nature;
        Reference = reference;
        OffsetInHundredths = offsetInHundredths;
        Constant = constant;
        Kind = QuantityKind.Of(dimension, nature, reference);
    }

    internal string Symbol { get; }

    internal Dimension Dimension { get; }

    internal UnitPrefixes Prefixes { get; }

    internal UnitScale Scale { get; }

    internal QuantityNature Nature { get; }

    internal LevelReference Reference { get; }

    /// <summary>What is added after scaling, in hundredths: 273.15 for °C, 30 for dBW, -60 for dBmV.</summary>
    internal int OffsetInHundredths { get; }

    internal UnitConstant Constant { get; }

    internal QuantityKind Kind { get; }

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
