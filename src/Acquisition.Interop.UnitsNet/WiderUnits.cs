using System;
using System.Globalization;
using Acquisition.Core;
using Foreign = UnitsNet;

namespace Acquisition.Interop;

/// <summary>Reads quantities in units that the library's own closed table leaves out (feet, psi, litres ...), by asking UnitsNet for the unit. Opt-in: nothing else uses it.</summary>
/// <remarks>
/// Text that the library reads itself means here exactly what it means there, and is rounded there; only an unknown unit goes to UnitsNet, in its English abbreviations, and is as exact as
/// its constants. Abbreviations that UnitsNet gives to several units are refused. Slow: the first call loads the catalogue (hundreds of milliseconds).
/// </remarks>
public static class WiderUnits
{
    private const int LongestText = 100;

    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-US");

    /// <summary>Reads a quantity such as <c>14.7 psi</c>.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    /// <exception cref="QuantityFormatException">The text is no quantity, or its unit is not known here nor, without ambiguity, in UnitsNet.</exception>
    public static Quantity Parse(string text) =>
        TryParse(text ?? throw new ArgumentNullException(nameof(text)), out Quantity quantity) ? quantity : Quantity.Parse(text, null);

    /// <summary>Reads a quantity without ever throwing; false when it is none.</summary>
    public static bool TryParse(string? text, out Quantity quantity)
    {
        if (Quantity.TryParse(text, out quantity)) return true;
        if (text is null || text.Length > LongestText) return false;
        for (int unit = text.Length - 1; unit > 0; unit--)
        {
            if (!Quantity.TryParse(text.Remove(unit), out Quantity number) || number.Kind != QuantityKind.Ratio || text[unit - 1] == '%') continue;
            return TryConvert(number.SiValue, text.Substring(unit).Trim(), out quantity);
        }
        return false;
    }

    private static bool TryConvert(double value, string abbreviation, out Quantity quantity)
    {
        quantity = default;
        try
        {
            if (!Foreign.Quantity.TryFromUnitAbbreviation(English, value, abbreviation, out Foreign.IQuantity? found) || found is null) return false;
            if (!TryDimension(found.QuantityInfo.BaseDimensions, out Dimension dimension)) return false;
            double si = (double)found.As(Foreign.UnitSystem.SI);
            if (double.IsNaN(si) || double.IsInfinity(si)) return false;
            quantity = new Quantity(si, QuantityKind.Of(dimension, dimension == Dimension.Temperature ? QuantityNature.Point : QuantityNature.Linear));
            return true;
        }
        catch (Exception refusal) when (refusal is ArgumentException or FormatException or OverflowException or InvalidOperationException or Foreign.UnitsNetException)
        {
            // UnitsNet refuses units without an SI twin, ambiguous abbreviations and numbers beyond its decimals by exceptions of many types.
            return false;
        }
    }

    /// <summary>False for amounts of substance and luminous intensities, which this library does not know, and for what UnitsNet holds to have no dimension.</summary>
    private static bool TryDimension(Foreign.BaseDimensions dimensions, out Dimension dimension)
    {
        dimension = Dimension.None;
        if (dimensions is null || dimensions.Amount != 0 || dimensions.LuminousIntensity != 0 || dimensions.IsDimensionless()) return false;
        (Dimension Base, int Power)[] factors =
        [
            (Dimension.Length, dimensions.Length), (Dimension.Mass, dimensions.Mass), (Dimension.Time, dimensions.Time),
            (Dimension.Current, dimensions.Current), (Dimension.Temperature, dimensions.Temperature),
        ];
        foreach ((Dimension factor, int power) in factors)
        {
            if (!factor.TryPower(2 * power, out Dimension raised)) return false;
            dimension *= raised;
        }
        return true;
    }
}
