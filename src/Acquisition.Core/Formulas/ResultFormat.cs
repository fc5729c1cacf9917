using System;

namespace Acquisition.Core.Formulas;

/// <summary>How results are written: a format text (docs/notation.md), and the unit that a formula asks for with <c>in</c>.</summary>
internal static class ResultFormat
{
    internal static string Write(Quantity quantity, string? format, string? unit, double unitFactor)
    {
        if (unit is null) return quantity.ToString(format, null);
        if (unitFactor != 0 && !NamesUnit(format)) return new Quantity(quantity.SiValue / unitFactor, QuantityKind.Ratio).ToString(format, null) + " " + unit;
        if (string.IsNullOrEmpty(format)) return quantity.ToString("R " + unit, null);
        return quantity.ToString(NamesUnit(format) ? format : format + " " + unit, null);
    }

    /// <summary>Whether a format says more than how many digits to write.</summary>
    private static bool NamesUnit(string? format)
    {
        if (string.IsNullOrEmpty(format)) return false;
        int at = format![0] is 'R' or 'G' or 'F' or 'E' or 'r' or 'g' or 'f' or 'e' ? 1 : 0;
        while (at < format.Length && NumberReader.IsDigit(format, at)) at++;
        return at < format.Length;
    }
}
