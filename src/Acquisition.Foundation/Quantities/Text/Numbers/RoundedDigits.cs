using System;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>A chosen number of digits, rounded once from the exact value, ties to even: 2.5 to no decimals is 2, and 1.005 to two is 1.00, on every runtime.</summary>
internal static class RoundedDigits
{
    /// <summary>The number, rounded to a multiple of ten to the power of <paramref name="place"/>.</summary>
    /// <param name="magnitude">Not negative.</param>
    /// <param name="place">The power of ten of the last digit that is kept.</param>
    internal static DecimalDigits ToPlace(ExactFraction magnitude, int place)
    {
        ExactFraction scaled = magnitude.TimesTen(-place);
        BigInteger quotient = BigInteger.DivRem(scaled.Numerator, scaled.Denominator, out BigInteger remainder);
        int half = BigInteger.Compare(remainder << 1, scaled.Denominator);
        if (half > 0 || (half == 0 && !quotient.IsEven)) quotient += 1;
        return new DecimalDigits(quotient, place);
    }

    /// <summary>The power of ten of the first digit of a number above zero.</summary>
    internal static int LeadOf(ExactFraction magnitude)
    {
        int lead = (int)Math.Floor(BigInteger.Log10(magnitude.Numerator) - BigInteger.Log10(magnitude.Denominator));
        while (Compare(magnitude, lead) < 0) lead--;
        while (Compare(magnitude, lead + 1) >= 0) lead++;
        return lead;
    }

    /// <summary>
    /// The fewest decimals that read back to the held value when they stand before a unit that is no power of ten, or has an offset: tried from coarse to
    /// fine. Before dBu, whose offset is no fraction, a value near 0 dBV may have none; then 17 digits are written.
    /// </summary>
    internal static DecimalDigits Shortest(ExactFraction magnitude, bool isNegative, double held, in UnitReading unit)
    {
        int lead = magnitude.Numerator.IsZero ? 0 : LeadOf(magnitude);
        for (int place = lead + 2; ; place--)
        {
            DecimalDigits digits = ToPlace(magnitude, place);
            ExactFraction read = digits.ToFraction(isNegative).Times(unit.Scale).InHeldUnit(unit.Constant, unit.OffsetInHundredths);
            double value = ExactRounding.Quotient(BigInteger.Abs(read.Numerator), read.Denominator);
            if (unit.Constant == UnitConstant.ZeroDecibelU && lead - place == 16) return digits.Trimmed();
            if (value == Math.Abs(held) && (value == 0 || read.Numerator.Sign == Math.Sign(held))) return digits.Trimmed();
        }
    }

    private static int Compare(ExactFraction value, int power) => power >= 0
        ? BigInteger.Compare(value.Numerator, value.Denominator * BigInteger.Pow(10, power))
        : BigInteger.Compare(value.Numerator * BigInteger.Pow(10, -power), value.Denominator);
}
