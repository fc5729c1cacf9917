using System;
using System.Globalization;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>
/// From the decimal number in a text, in its unit, to the double nearest to its exact value in the held unit. The unit's power of ten is added to the
/// decimal exponent before anything is rounded, so 2.8 ns is the double nearest to 2.8e-9; other factors (60, 0.0254, π/180, 273.15) are applied exactly.
/// </summary>
internal static class DecimalConversion
{
    private const ulong LargestExactInteger = 1UL << 53;

    /// <summary>More digits than any tie between two doubles has; those beyond are represented by a last 1.</summary>
    internal const int DecidingDigits = 800;

    private static readonly double[] ExactPowersOfTen = PowersOfTen();

    /// <summary>Converts; infinity where the value is too large, 0 also where it is too small.</summary>
    internal static double ToDouble(Chars text, in DecimalNumber number, in UnitReading unit)
    {
        UnitScale scale = unit.Scale;
        if (unit.IsDecimal && !number.HasMoreDigits)
            return Signed(FromDecimal(number.Mantissa, number.Exponent + scale.PowerOfTen), number.IsNegative);
        bool isWholeFactor = unit.OffsetInHundredths == 0 && unit.Constant == UnitConstant.None && scale.Denominator == 1 && scale.PowerOfPi == 0
            && scale.PowerOfTwo is >= 0 and < 64 && !number.HasMoreDigits;
        if (isWholeFactor && TryMultiply(number.Mantissa, (ulong)scale.Numerator, scale.PowerOfTwo, out ulong mantissa))
            return Signed(FromDecimal(mantissa, number.Exponent + scale.PowerOfTen), number.IsNegative);
        return FromExact(text, number, unit);
    }

    /// <summary>The double nearest to <paramref name="mantissa"/> × 10^<paramref name="exponent"/>.</summary>
    internal static double FromDecimal(ulong mantissa, int exponent) => TryExactly(mantissa, exponent, out double value) ? value : FromLongDecimal(mantissa, exponent);

    /// <summary>The same where mantissa and power of ten are doubles themselves, so that one product or quotient rounds once.</summary>
    internal static bool TryExactly(ulong mantissa, int exponent, out double value)
    {
        bool isExact = mantissa <= LargestExactInteger && exponent >= -22 && exponent <= 22;
        value = !isExact ? 0 : exponent >= 0 ? mantissa * ExactPowersOfTen[exponent] : mantissa / ExactPowersOfTen[-exponent];
        return isExact;
    }

    private static double[] PowersOfTen()
    {
        // Each is a double exactly, so each product is too.
        var powers = new double[23];
        powers[0] = 1;
        for (int i = 1; i < powers.Length; i++) powers[i] = 10 * powers[i - 1];
        return powers;
    }

    private static double FromLongDecimal(ulong mantissa, int exponent)
    {
#if NET8_0_OR_GREATER
        Span<char> text = stackalloc char[40];
        mantissa.TryFormat(text, out int length, default, CultureInfo.InvariantCulture);
        text[length++] = 'e';
        exponent.TryFormat(text[length..], out int exponentLength, default, CultureInfo.InvariantCulture);
        return double.Parse(text[..(length + exponentLength)], NumberStyles.AllowExponent, CultureInfo.InvariantCulture);
#else
        return FromExactDecimal(mantissa, exponent);
#endif
    }

    /// <summary>The same by integers without limit: the only way on netstandard2.0, and the measure for the others.</summary>
    internal static double FromExactDecimal(BigInteger mantissa, int exponent)
    {
        if (mantissa.IsZero) return 0;
        if (exponent > 310) return double.PositiveInfinity;
        if (exponent < -1200) return 0;
        return exponent >= 0
            ? ExactRounding.Quotient(mantissa * BigInteger.Pow(10, exponent), BigInteger.One)
            : ExactRounding.Quotient(mantissa, BigInteger.Pow(10, -exponent));
    }

    private static double FromExact(Chars text, in DecimalNumber number, in UnitReading unit)
    {
        BigInteger mantissa = number.Mantissa;
        int exponent = number.Exponent;
        if (number.HasMoreDigits) mantissa = AllDigits(text, number, out exponent);
        if (exponent > 400) return mantissa.IsZero ? 0 : Signed(double.PositiveInfinity, number.IsNegative);
        if (exponent < -1300)
        {
            mantissa = BigInteger.Zero;
            exponent = 0;
        }
        ExactFraction value = new ExactFraction(number.IsNegative ? -mantissa : mantissa, 1).TimesTen(exponent).Times(unit.Scale).InHeldUnit(unit.Constant, unit.OffsetInHundredths);
        double magnitude = ExactRounding.Quotient(BigInteger.Abs(value.Numerator), value.Denominator);
        bool isNegativeZero = value.Numerator.IsZero && mantissa.IsZero && number.IsNegative;
        return Signed(magnitude, value.Numerator.Sign < 0 || isNegativeZero);
    }

    private static BigInteger AllDigits(Chars text, in DecimalNumber number, out int exponent)
    {
        BigInteger value = BigInteger.Zero;
        ulong block = 0, scale = 1;
        int count = 0, dropped = 0;
        exponent = number.Exponent;
        bool hasMore = false;
        for (int i = number.Start; i < number.DigitsEnd; i++)
        {
            if (!NumberReader.IsDigit(text, i)) continue;
            uint digit = (uint)(text[i] - '0');
            if (count == 0 && digit == 0) continue;
            if (count++ >= DecidingDigits)
            {
                hasMore |= digit != 0;
                dropped++;
                continue;
            }
            block = block * 10 + digit;
            scale *= 10;
            if (scale < 1_000_000_000_000_000_000UL) continue;
            value = value * scale + block;
            block = 0;
            scale = 1;
        }
        value = value * scale + block;
        exponent = number.Exponent - (count - DecimalNumber.DigitsHeld) + dropped;
        if (!hasMore) return value;
        exponent--;
        return value * 10 + 1;
    }

    private static bool TryMultiply(ulong mantissa, ulong factor, int powerOfTwo, out ulong product)
    {
        product = unchecked(mantissa * factor);
        bool fits = product / factor == mantissa;
        ulong shifted = product << powerOfTwo;
        fits &= shifted >> powerOfTwo == product;
        product = shifted;
        return fits;
    }

    private static double Signed(double magnitude, bool isNegative) => isNegative ? -magnitude : magnitude;
}
