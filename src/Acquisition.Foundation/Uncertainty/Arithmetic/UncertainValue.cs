namespace Acquisition.Core.Uncertainty;

/// <summary>An uncertain value whose kind is known at run time only, such as the result of a formula.</summary>
internal sealed class UncertainValue : UncertainQuantity
{
    internal UncertainValue(double value, QuantityKind kind, LinearCombination combination)
        : base(value, combination) => Kind = kind;

    internal override QuantityKind Kind { get; }

    internal override UncertainQuantity WithCombination(LinearCombination combination) => new UncertainValue(SiEstimate, Kind, combination);
}
