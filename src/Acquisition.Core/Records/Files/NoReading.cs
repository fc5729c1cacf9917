using System;
using System.Globalization;

namespace Acquisition.Core.Records;

/// <summary>Fields that stand where an instrument has no reading: empty, NaN, infinite, or the numbers that SCPI instruments write for them.</summary>
internal static class NoReading
{
    /// <summary>SCPI-99 volume 1, 7.2.1 (from memory): 9.9E37 is infinity, an overload; 9.91E37 is not a number.</summary>
    private const double Overload = 9.9e37, NotANumber = 9.91e37;

    /// <summary>No reading is as large in any unit and with any prefix: what lies below is not looked at further.</summary>
    private const double LeastMark = 1e22;

    /// <summary>What a field without a number says; null where it says something else.</summary>
    internal static string? OfText(string field) => field.Trim().ToUpperInvariant() switch
    {
        "" => "a gap: the field is empty" + Cure,
        "NAN" => "a gap: the field is " + field.Trim() + Cure,
        "INF" or "+INF" or "-INF" or "INFINITY" or "+INFINITY" or "-INFINITY" or "\u221E" or "+\u221E" or "-\u221E" => $"'{field.Trim()}' is an overload and no reading: capture again in a larger range, or split the table there",
        _ => null,
    };

    /// <summary>What a number says that stands for no reading; null for readings.</summary>
    /// <param name="value">The number, in the unit without its prefix.</param>
    /// <param name="powerOfTen">The prefix.</param>
    internal static string? OfNumber(double value, int powerOfTen)
    {
        if (!(Math.Abs(value) >= LeastMark))
            return null;
        double written = value / Math.Pow(10, powerOfTen);
        return Is(written, NotANumber) ? $"{InText(written)} stands for 'not a number' (SCPI-99, from memory): a gap" + Cure
            : Is(Math.Abs(written), Overload) ? $"{InText(written)} stands for an overload and no reading (SCPI-99, from memory): capture again in a larger range, or split the table there"
            : null;
    }

    private const string Cure = ". Records have a sample at every time: split the table there, or fill it knowingly";

    private static bool Is(double value, double mark) => Math.Abs(value / mark - 1) < 1e-6;

    private static string InText(double value) => value.ToString("0.##E+0", CultureInfo.InvariantCulture);
}
