using System;
using System.Globalization;

namespace Acquisition.Core;

/// <summary>Values in sentences and tables for people: as few digits as a reader can use, with their unit. Counts are written in full, ratios in percent, ppm or ppb.</summary>
internal static class FewDigits
{
    internal static string InWords<T>(this T value, int digits = 4)
        where T : struct, IQuantity
    {
        Quantity quantity = value.ToQuantity();
        return Of(quantity.SiValue, quantity.Kind, digits);
    }

    internal static string Of(double value, QuantityKind kind, int digits = 4) =>
        ReferenceEquals(kind, Ratio.Kind) ? Share(value, digits) : QuantityText.Format(ReferenceEquals(kind, PointCount.Kind) ? value : Round(value, digits), kind, null, null);

    internal static string Hertz(double value, int digits = 6) => Of(value, QuantityKind.Frequency, digits);

    internal static string Seconds(double value, int digits = 4) => Of(value, QuantityKind.Duration, digits);

    internal static string Volts(double value, int digits = 4) => Of(value, QuantityKind.Voltage, digits);

    /// <summary>Decibels with the digits that a reader can use: two decimals.</summary>
    internal static string Decibels(double value, int decimals = 2) =>
        Math.Round(value, decimals).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " dB";

    /// <summary>A plain number.</summary>
    internal static string Number(double value, int digits = 4) => Round(value, digits).ToString(CultureInfo.InvariantCulture);

    /// <summary>From a margin of this on, ten times what is needed, a factor says more than percents.</summary>
    internal const double Tenfold = 9;

    /// <summary>A margin, by how much something is better than needed: in percent, from ten times on as that factor.</summary>
    internal static string Margin(Ratio margin, int digits = 4) => margin.SiValue < Tenfold ? margin.InWords(digits) : Number(1 + margin.SiValue, digits) + " times";

    /// <summary>The next value of four significant digits that is no smaller: what "at least" may be printed as.</summary>
    internal static double RoundUp(double value)
    {
        double rounded = Round(value);
        return rounded >= value * (1 - 1e-12) ? rounded : Round(rounded + Math.Pow(10, Math.Floor(Math.Log10(value)) - 3));
    }

    /// <summary>The next value of four significant digits that is no larger: what "at most" may be printed as.</summary>
    internal static double RoundDown(double value)
    {
        double rounded = Round(value);
        return rounded <= value * (1 + 1e-12) ? rounded : Round(rounded - Math.Pow(10, Math.Floor(Math.Log10(value)) - 3));
    }

    /// <summary>Fifteen digits are what every runtime writes alike, and what a person would have computed: 2/2.56 is 78.125 %, and so 78.13 %, although its double is a little less.</summary>
    private const int Alike = 15;

    internal static double Round(double value, int digits = 4)
    {
        if (digits >= Alike || value == 0 || double.IsNaN(value) || double.IsInfinity(value))
            return double.Parse(value.ToString("E" + (digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        string[] text = Math.Abs(value).ToString("E14", CultureInfo.InvariantCulture).Split('E');
        long all = long.Parse(text[0].Remove(1, 1), CultureInfo.InvariantCulture), part = (long)Math.Round(Math.Pow(10, Alike - digits));
        long kept = (all + part / 2) / part;
        int exponent = int.Parse(text[1], CultureInfo.InvariantCulture) - digits + 1;
        return Math.Sign(value) * double.Parse(kept.ToString(CultureInfo.InvariantCulture) + "E" + exponent.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    // Percent where a person thinks in percent, ppm and ppb below.
    private static string Share(double value, int digits)
    {
        double size = Math.Abs(value);
        (double scaled, string unit) = size >= 1e-4 || size < 1e-12 ? (100 * value, " %") : size >= 1e-7 ? (1e6 * value, " ppm") : (1e9 * value, " ppb");
        return (size < 1e-12 ? "0" : Number(scaled, digits)) + unit;
    }
}
