using System;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas;

/// <summary>How results are written: a format text (docs/notation.md), and the unit that a formula asks for with <c>in</c>.</summary>
internal static class ResultFormat
{
    private const double CelsiusZero = 273.15;

    /// <summary>A double holds every decimal number of fifteen digits; what comes after them is the rounding of arithmetic: 1000 ps, not 999.9999999999999 ps.</summary>
    private const string AllThatCounts = "G15";

    private const double LargestWhole = 9007199254740992;

    internal static string Write(Quantity quantity, string? format, string? unit, double unitFactor)
    {
        if (string.IsNullOrEmpty(format) && !IsWhole(quantity)) format = AllThatCounts;
        if (unit is null) return quantity.ToString(format, null);
        if (unitFactor != 0 && !NamesUnit(format)) return new Quantity(quantity.SiValue / unitFactor, QuantityKind.Ratio).ToString(format, null) + " " + unit;
        if (string.IsNullOrEmpty(format)) return quantity.ToString("R " + unit, null);
        return quantity.ToString(NamesUnit(format) ? format : format + " " + unit, null);
    }

    /// <summary>
    /// A value with its expanded uncertainty, as the language reads it: <c>5.020 V ± 12 mV (k=2)</c>. The uncertainty has two digits; without a format the value ends at the same place
    /// (JCGM 100 7.2.6).
    /// </summary>
    internal static string Write(Quantity quantity, double expandedUncertainty, double coverageFactor, string? format, string? unit, double unitFactor)
    {
        if (!(expandedUncertainty > 0)) return Write(quantity, format, unit, unitFactor);
        QuantityKind kind = UncertaintyKind.Of(quantity.Kind);
        var width = new Quantity(expandedUncertainty, kind);
        string u = kind == quantity.Kind ? Write(width, "2", unit, unitFactor) : width.ToString("2", null);
        string value = Write(quantity, string.IsNullOrEmpty(format) ? DigitsBeside(Shown(quantity, unit), expandedUncertainty) : format, unit, unitFactor);
        return FormattableString.Invariant($"{value} ± {u} (k={coverageFactor:0.##})");
    }

    /// <summary>The number a reader sees of a temperature in degrees Celsius counts from another zero; without a unit it is written in kelvins.</summary>
    private static double Shown(Quantity quantity, string? unit) =>
        quantity.Kind.Nature == QuantityNature.Point && unit is "°C" or "degC" ? quantity.SiValue - CelsiusZero : quantity.SiValue;

    /// <summary>So many digits that the last one of the value stands where the second one of the uncertainty does.</summary>
    private static string DigitsBeside(double value, double uncertainty)
    {
        int lead = value == 0 ? 0 : PlaceOf(Math.Abs(value)), last = PlaceOf(uncertainty) - 1;
        return value == 0 ? "1" : Math.Max(1, Math.Min(15, lead - last + 1)).ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    private static int PlaceOf(double magnitude) => (int)Math.Floor(Math.Log10(magnitude) + 1e-12);

    /// <summary>A whole number, such as a count of points, is exact to its last digit.</summary>
    private static bool IsWhole(Quantity quantity) => Math.Abs(quantity.SiValue) <= LargestWhole && Math.Floor(quantity.SiValue) == quantity.SiValue;

    /// <summary>Whether a format says more than how many digits to write.</summary>
    private static bool NamesUnit(string? format)
    {
        if (string.IsNullOrEmpty(format)) return false;
        int at = format![0] is 'R' or 'G' or 'F' or 'E' or 'r' or 'g' or 'f' or 'e' ? 1 : 0;
        while (at < format.Length && NumberReader.IsDigit(format, at)) at++;
        return at < format.Length;
    }
}
