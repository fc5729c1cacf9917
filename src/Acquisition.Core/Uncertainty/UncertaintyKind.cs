namespace Acquisition.Core.Uncertainty;

/// <summary>The kind of an uncertainty of a value: decibels for a level, the value's own kind otherwise (for a temperature, kelvins as a difference).</summary>
internal static class UncertaintyKind
{
    internal static QuantityKind Of(QuantityKind kind) => kind.Nature == QuantityNature.Level ? QuantityKind.DecibelRatio : kind;
}
