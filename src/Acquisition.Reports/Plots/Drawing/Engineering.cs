using System;
using System.Globalization;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>Values in words: few digits, SI prefixes (BIPM, The International System of Units, 9th edition, table 7), a true minus sign.</summary>
internal static class Engineering
{
    internal const string Minus = "\u2212";

    private const string Prefixes = "qryzafpnµm kMGTPEZYRQ";

    /// <summary>The exponent, in thousands, of the prefix that leaves one to three digits before the point.</summary>
    internal static int ThousandsOf(double magnitude)
    {
        if (magnitude == 0) return 0;
        int thousands = (int)Math.Floor(Math.Floor(Math.Log10(magnitude) + 1e-12) / 3);
        return Math.Min(Math.Max(thousands, -10), 10);
    }

    internal static string PrefixOf(int thousands) => thousands == 0 ? "" : Prefixes[thousands + 10].ToString();

    /// <summary>Whether a unit is written with SI prefixes: not percent, degrees, decibels, plain numbers, and what begins with a power or a reciprocal.</summary>
    internal static bool TakesPrefix(string unit)
    {
        if (unit.Length == 0 || unit == "%" || unit.StartsWith("dB", StringComparison.Ordinal) || !char.IsLetter(unit[0])) return false;
        string first = unit.Split('/', '·', ' ')[0];
        foreach (char c in first)
        {
            if (c is '²' or '³' or '⁴' or '^') return false;
        }
        return true;
    }

    /// <summary>A value with its unit in so many digits.</summary>
    internal static string Text(double value, string unit, int digits = 4, bool keepsZeros = false)
    {
        int thousands = TakesPrefix(unit) ? ThousandsOf(Math.Abs(value)) : 0;
        string number = Number(Scaled(value, -thousands), digits, keepsZeros);
        if (thousands < 10 && (number == "1000" || number == Minus + "1000") && TakesPrefix(unit)) (number, thousands) = (number.Replace("1000", "1"), thousands + 1);
        return unit.Length == 0 ? number : number + " " + PrefixOf(thousands) + unit;
    }

    /// <summary>A number in so many digits, without exponent as far as that is short.</summary>
    internal static string Number(double value, int digits, bool keepsZeros = false)
    {
        if (value == 0) return "0";
        double magnitude = Math.Abs(value);
        int whole = (int)Math.Floor(Math.Log10(magnitude) + 1e-12) + 1;
        string text = whole > 9 || whole < -5
            ? magnitude.ToString("E" + Math.Max(0, digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            : magnitude.ToString("F" + Math.Max(0, digits - whole).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        bool isShort = whole is <= 9 and >= -5;
        return (value < 0 ? Minus : "") + (keepsZeros && isShort ? text : WithoutTrailingZeros(text));
    }

    /// <summary>Any quantity in few digits.</summary>
    internal static string Words<T>(T value, int digits = 4)
        where T : struct, IQuantity => value.ToQuantity().ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace("-", Minus);

    /// <summary>A value times 1000 to a whole power, by one exact power of ten.</summary>
    internal static double Scaled(double value, int thousands) => thousands >= 0 ? value * PowerOfTen(3 * thousands) : value / PowerOfTen(-3 * thousands);

    internal static double PowerOfTen(int exponent) => double.Parse("1e" + exponent.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string WithoutTrailingZeros(string text)
    {
        int e = text.IndexOf('E');
        string mantissa = e < 0 ? text : text.Substring(0, e);
        int point = mantissa.LastIndexOf('.');
        if (point >= 0) mantissa = mantissa.TrimEnd('0').TrimEnd('.');
        if (e < 0) return mantissa;
        string digits = text.Substring(e + 1);
        int exponent = int.Parse(digits, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        return mantissa + "e" + (exponent < 0 ? Minus : "") + Math.Abs(exponent).ToString(CultureInfo.InvariantCulture);
    }
}
