using System.Globalization;
#if !NET8_0_OR_GREATER
using System;
using System.Numerics;
using System.Text;
#endif

namespace Acquisition.Core;

/// <summary>A plain number of a file format (sign, digits, point, exponent) as the nearest double on every runtime: older ones misread some by one unit in the last place.</summary>
internal static class PortableNumber
{
#if NET8_0_OR_GREATER
    internal static bool TryParse(string text, out double value) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
#else
    private const int ExponentLimit = 100_000;

    internal static bool TryParse(string text, out double value)
    {
        value = 0;
        string number = text.Trim();
        int at = 0, scale = 0;
        bool isNegative = at < number.Length && number[at] == '-';
        if (at < number.Length && number[at] is '-' or '+') at++;
        var digits = new StringBuilder();
        bool hasMore = false, any = false, isFraction = false;
        for (; at < number.Length && (number[at] is >= '0' and <= '9' || (number[at] == '.' && !isFraction)); at++)
        {
            if (number[at] == '.')
            {
                isFraction = true;
                continue;
            }
            any = true;
            if (digits.Length < DecimalConversion.DecidingDigits)
            {
                if (digits.Length > 0 || number[at] != '0') digits.Append(number[at]);
                if (isFraction) scale--;
            }
            else
            {
                hasMore |= number[at] != '0';
                if (!isFraction) scale++;
            }
        }
        if (!any || !TryReadExponent(number, at, out int exponent)) return false;
        BigInteger mantissa = digits.Length == 0 ? BigInteger.Zero : BigInteger.Parse(digits.ToString(), CultureInfo.InvariantCulture);
        if (hasMore) (mantissa, scale) = ((10 * mantissa) + 1, scale - 1);
        double magnitude = DecimalConversion.FromExactDecimal(mantissa, scale + exponent);
        value = isNegative ? -magnitude : magnitude;
        return true;
    }

    private static bool TryReadExponent(string number, int at, out int exponent)
    {
        exponent = 0;
        if (at == number.Length) return true;
        if (number[at] is not ('e' or 'E')) return false;
        at++;
        bool isNegative = at < number.Length && number[at] == '-';
        if (at < number.Length && number[at] is '-' or '+') at++;
        int first = at;
        for (; at < number.Length && number[at] is >= '0' and <= '9'; at++) exponent = Math.Min(ExponentLimit, (10 * exponent) + (number[at] - '0'));
        if (isNegative) exponent = -exponent;
        return at > first && at == number.Length;
    }
#endif
}
