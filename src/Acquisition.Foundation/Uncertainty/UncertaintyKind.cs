namespace Acquisition.Core.Uncertainty;

/// <summary>The kind of an uncertainty of a value: decibels for a level, a difference for a temperature, the value's own kind otherwise.</summary>
internal static class UncertaintyKind
{
    internal static QuantityKind Of(QuantityKind kind) => kind.Nature switch
    {
        QuantityNature.Level or QuantityNature.LevelDensity => QuantityKind.DecibelRatio,
        QuantityNature.Point => QuantityKind.TemperatureDifference,
        _ => kind,
    };
}
