namespace Acquisition.Core;

/// <summary>What a unit expression in a text turned out to be.</summary>
internal readonly struct UnitReading
{
    private readonly QuantityKind? _kind;

    internal UnitReading(Dimension dimension, QuantityNature nature, LevelReference reference, in UnitScale scale, int end, int offsetInHundredths = 0, UnitConstant constant = UnitConstant.None, QuantityKind? kind = null)
    {
        Dimension = dimension;
        Nature = nature;
        Reference = reference;
        Scale = scale;
        End = end;
        OffsetInHundredths = offsetInHundredths;
        Constant = constant;
        _kind = kind;
    }

    /// <summary>The unit of a plain number.</summary>
    internal static UnitReading PlainNumber(int end) => new(Dimension.None, QuantityNature.Linear, LevelReference.None, UnitScale.One, end, kind: QuantityKind.Ratio);

    internal readonly Dimension Dimension;

    internal readonly QuantityNature Nature;

    internal readonly LevelReference Reference;

    /// <summary>How many of the unit that values are held in one of this unit is.</summary>
    internal readonly UnitScale Scale;

    /// <summary>What is added after scaling, in hundredths.</summary>
    internal readonly int OffsetInHundredths;

    internal readonly UnitConstant Constant;

    /// <summary>The place after the last character of the unit expression.</summary>
    internal readonly int End;

    /// <summary>Whether a decimal number in this unit becomes the held one by moving its point, nothing else.</summary>
    internal bool IsDecimal => OffsetInHundredths == 0 && Constant == UnitConstant.None && Scale.IsPowerOfTen;

    internal QuantityKind Kind => _kind ?? QuantityKind.Of(Dimension, Nature, Reference);

    internal bool Is(QuantityKind kind) => ReferenceEquals(_kind, kind) || kind.Is(Dimension, Nature, Reference);
}
