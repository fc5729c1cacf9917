using System;
using System.Globalization;

namespace Acquisition.Core.Records;

/// <summary>Numbers in the fields of a table, with the prefix of the column's unit merged into the exponent, so that 2.8 in a column of ns is the double nearest to 2.8e-9.</summary>
internal static class CsvNumber
{
    /// <summary>The minus sign of typesetting (U+2212), which spreadsheets and documents write; docs/notation.md reads it everywhere.</summary>
    private const char Minus = '\u2212';

    private static readonly double[] ExactPowers = MakePowers();

    internal static bool TryRead(string text, int start, int end, char decimalSeparator, int powerOfTen, out double value)
    {
        value = 0;
        while (start < end && text[start] == ' ')
            start++;
        while (end > start && text[end - 1] == ' ')
            end--;
        int at = start, point = -1, digits = 0, significant = 0, exponent = 0;
        long mantissa = 0;
        bool exact = true, negative = false;
        if (at < end && text[at] is '+' or '-' or Minus)
            negative = text[at++] != '+';
        for (; at < end; at++)
        {
            char c = text[at];
            if (c == decimalSeparator && point < 0)
            {
                point = digits;
                continue;
            }
            if (c is < '0' or > '9')
                break;
            digits++;
            if (significant > 0 || c != '0')
                significant++;
            if (significant <= 18)
                mantissa = 10 * mantissa + (c - '0');
            else
                exact = false;
        }
        if (digits == 0)
            return false;
        if (at < end && text[at] is 'e' or 'E')
        {
            at++;
            bool down = false;
            if (at < end && text[at] is '+' or '-' or Minus)
                down = text[at++] != '+';
            int from = at;
            for (; at < end && text[at] is >= '0' and <= '9'; at++)
                exponent = Math.Min(100_000, 10 * exponent + (text[at] - '0'));
            if (at == from)
                return false;
            if (down)
                exponent = -exponent;
        }
        if (at != end)
            return false;
        int scale = exponent + powerOfTen - (point < 0 ? 0 : digits - point);
        if (exact && mantissa <= 1L << 53 && scale is >= -22 and <= 22)
        {
            // Both factors are exact doubles: one rounding, the right one.
            double magnitude = scale < 0 ? mantissa / ExactPowers[-scale] : mantissa * ExactPowers[scale];
            value = negative ? -magnitude : magnitude;
            return true;
        }
        return TryReadLong(text, start, at, decimalSeparator, exponent, powerOfTen, out value);
    }

    private static bool TryReadLong(string text, int start, int end, char decimalSeparator, int exponent, int powerOfTen, out double value)
    {
        int mark = Math.Max(text.IndexOf('e', start, end - start), text.IndexOf('E', start, end - start));
        string number = text.Substring(start, (mark < 0 ? end : mark) - start).Replace(decimalSeparator, '.').Replace(Minus, '-')
            + "e" + (exponent + powerOfTen).ToString(CultureInfo.InvariantCulture);
        return PortableNumber.TryParse(number, out value) && Math.Abs(value) <= double.MaxValue;
    }

    private static double[] MakePowers()
    {
        var powers = new double[23];
        powers[0] = 1;
        for (int i = 1; i < powers.Length; i++)
            powers[i] = 10 * powers[i - 1];
        return powers;
    }
}
