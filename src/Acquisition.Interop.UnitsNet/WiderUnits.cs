using System;
using System.Collections.Generic;
using System.Globalization;
using Acquisition.Core;
using Foreign = UnitsNet;

namespace Acquisition.Interop;

/// <summary>Reads quantities in units that the library's own closed table leaves out (feet, psi, litres ...), by asking UnitsNet for the unit. Opt-in: nothing else uses it.</summary>
/// <remarks>
/// Text that the library reads itself means here exactly what it means there, and is rounded there; only an unknown unit goes to UnitsNet, in its English abbreviations, and is as exact as
/// its constants: most are exact, but <c>torr</c> is 2.2 ppm high and <c>hp(I)</c> 13 ppm low in 5.75.1. Abbreviations that UnitsNet gives to several units are refused. Slow: the first call loads the catalogue (hundreds of milliseconds).
/// </remarks>
public static class WiderUnits
{
    private const int LongestText = 100;

    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-US");

    /// <summary>Quantities for which UnitsNet finds no unit of the SI, though its base unit is the coherent one.</summary>
    private static readonly HashSet<string> WithCoherentBase =
    [
        "Density", "DynamicViscosity", "ElectricCharge", "ElectricConductance", "ElectricResistivity", "Entropy", "Irradiance", "KinematicViscosity", "MagneticField", "MagneticFlux", "Mass",
        "TemperatureDelta", "ThermalConductivity", "VolumeFlow",
    ];

    /// <summary>Quantities whose dimension is that of another kind here: a decay or a revolution is no hertz, a torque no energy.</summary>
    private static readonly HashSet<string> SharedDimension = ["Radioactivity", "RotationalSpeed", "Torque"];

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

    /// <summary>A context in which formulas may use units of UnitsNet by their abbreviations, such as <c>psi</c> or <c>ft</c>. They take no prefix.</summary>
    /// <remarks>For a unit whose abbreviation is no name (<c>ft²</c>) declare one: <c>context.WithUnit("sqft", WiderUnits.Parse("1 ft²").ToString())</c>.</remarks>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">An abbreviation is no name, is taken (a unit of the library is), or its unit is none of multiples, such as a level or a temperature.</exception>
    /// <exception cref="QuantityFormatException">UnitsNet does not know the unit, or gives the abbreviation to several.</exception>
    public static FormulaContext WithWiderUnits(this FormulaContext context, params string[] abbreviations)
    {
        if (context is null) throw new ArgumentNullException(nameof(context));
        foreach (string abbreviation in abbreviations ?? throw new ArgumentNullException(nameof(abbreviations)))
            context = context.WithUnit(abbreviation, Parse("1 " + abbreviation).ToString());
        return context;
    }

    /// <summary>A context in which formulas may use all units of one quantity of UnitsNet, such as <c>Pressure.Info</c>, as far as their abbreviations are names, free and without ambiguity.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static FormulaContext WithWiderUnits(this FormulaContext context, Foreign.QuantityInfo quantity)
    {
        if (context is null) throw new ArgumentNullException(nameof(context));
        foreach (Foreign.UnitInfo unit in (quantity ?? throw new ArgumentNullException(nameof(quantity))).UnitInfos)
        {
            foreach (string abbreviation in Foreign.UnitsNetSetup.Default.UnitAbbreviations.GetUnitAbbreviations(unit.Value.GetType(), Convert.ToInt32(unit.Value, CultureInfo.InvariantCulture), English))
            {
                if (!TryParse("1 " + abbreviation, out Quantity one)) continue;
                try
                {
                    context = context.WithUnit(abbreviation, one.ToString());
                }
                catch (ArgumentException)
                {
                    // No name, taken, or no unit of multiples.
                }
            }
        }
        return context;
    }

    private static bool TryConvert(double value, string abbreviation, out Quantity quantity)
    {
        quantity = default;
        try
        {
            if (!Foreign.Quantity.TryFromUnitAbbreviation(English, value, abbreviation, out Foreign.IQuantity? found) || found is null) return false;
            if (SharedDimension.Contains(found.QuantityInfo.Name) || !TryDimension(found.QuantityInfo.BaseDimensions, out Dimension dimension)) return false;
            double si = (double)(WithCoherentBase.Contains(found.QuantityInfo.Name) ? found.As(found.QuantityInfo.BaseUnitInfo.Value) : found.As(Foreign.UnitSystem.SI));
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
