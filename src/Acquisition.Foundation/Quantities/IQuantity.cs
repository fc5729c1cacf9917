namespace Acquisition.Core;

/// <summary>Any of the strong quantity types, seen as a <see cref="Quantity"/>.</summary>
public interface IQuantity
{
    /// <summary>The value as a <see cref="Quantity"/>, the form that text and formulas use.</summary>
    Quantity ToQuantity();
}
