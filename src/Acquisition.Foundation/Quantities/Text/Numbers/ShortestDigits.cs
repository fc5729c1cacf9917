using System;
using System.Globalization;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>The fewest digits that read back to the same double, and of those the nearest; the same on every runtime.</summary>
internal static class ShortestDigits
{
    /// <summary>Two decimals of at most 15 digits never share a double, so one that reads back is the only one and the shortest.</summary>
    private const ulong UniqueLimit = 1_000_000_000_000_000UL;

    private static readonly double[] PowersOfTen = { 1e0, 1e3, 1e6, 1e9, 1e12, 1e15, 1e18, 1e21 };

    /// <param name="magnitude">Finite and above zero.</param>
    internal static DecimalDigits Of(double magnitude)
    {
        if (TryFew(magnitude, out DecimalDigits few)) return few;
#if NET8_0_OR_GREATER
        // The framework's shortest text of a power of two may read back as its neighbour (measured on .NET 10: 2^-958).
        if ((BitConverter.DoubleToInt64Bits(magnitude) & (1L << 52) - 1) == 0) return OfExact(magnitude);
        Span<char> text = stackalloc char[32];
        magnitude.TryFormat(text, out int length, "R", CultureInfo.InvariantCulture);
        return OfText(text[..length]);
#else
        return OfExact(magnitude);
#endif
    }

    /// <summary>Numbers such as people write: whole after at most 21 moves of the point, with no more than 15 digits.</summary>
    internal static bool TryFew(double magnitude, out DecimalDigits digits)
    {
        for (int thousand = 0; thousand < PowersOfTen.Length; thousand++)
        {
            double power = PowersOfTen[thousand];
            double scaled = magnitude * power;
            if (scaled >= UniqueLimit) break;
            ulong whole = (ulong)(scaled + 0.5);
            if (whole == 0 || whole / power != magnitude) continue;
            digits = new DecimalDigits(whole, -3 * thousand).Trimmed();
            return true;
        }
        digits = default;
        return false;
    }

#if NET8_0_OR_GREATER
    private static DecimalDigits OfText(ReadOnlySpan<char> text)
    {
        ulong digits = 0;
        int place = 0;
        bool isFraction = false;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == 'E') return new DecimalDigits(digits, place + int.Parse(text[(i + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture)).Trimmed();
            if (text[i] == '.')
            {
                isFraction = true;
                continue;
            }
            // The text of a large number has zeros in place of digits that do not matter; 17 do at most.
            if (digits >= UniqueLimit * 100) place++;
            else digits = digits * 10 + (uint)(text[i] - '0');
            if (isFraction) place--;
        }
        return new DecimalDigits(digits, place).Trimmed();
    }
#endif

    /// <summary>By integers without limit (the free-format algorithm of Steele and White, as in Dybvig and Burger 1996): the only way on netstandard2.0.</summary>
    internal static DecimalDigits OfExact(double magnitude)
    {
        long bits = BitConverter.DoubleToInt64Bits(magnitude);
        int biased = (int)(bits >> 52 & 0x7FF);
        long fraction = bits & (1L << 52) - 1;
        long mantissa = biased == 0 ? fraction : fraction | 1L << 52;
        int exponent = Math.Max(biased, 1) - 1075;
        bool isEven = (mantissa & 1) == 0;
        // At a power of two the neighbour below is half as far as the one above.
        bool isNarrow = fraction == 0 && biased > 1;
        int shift = isNarrow ? 2 : 1;
        BigInteger value = new BigInteger(mantissa) << shift + Math.Max(exponent, 0);
        BigInteger unit = BigInteger.One << shift + Math.Max(-exponent, 0);
        BigInteger above = BigInteger.One << Math.Max(exponent, 0) + shift - 1;
        BigInteger below = BigInteger.One << Math.Max(exponent, 0);

        int lead = (int)Math.Ceiling(Math.Log10(magnitude) - 1e-10);
        if (lead >= 0) unit *= BigInteger.Pow(10, lead);
        else
        {
            BigInteger scale = BigInteger.Pow(10, -lead);
            value *= scale;
            above *= scale;
            below *= scale;
        }
        if (isEven ? value + above >= unit : value + above > unit) lead++;
        else
        {
            value *= 10;
            above *= 10;
            below *= 10;
        }

        ulong digits = 0;
        for (int place = lead - 1; ; place--)
        {
            int digit = (int)BigInteger.DivRem(value, unit, out value);
            bool isLowEnough = isEven ? value <= below : value < below;
            bool isHighEnough = isEven ? value + above >= unit : value + above > unit;
            if (!isLowEnough && !isHighEnough)
            {
                digits = digits * 10 + (uint)digit;
                value *= 10;
                above *= 10;
                below *= 10;
                continue;
            }
            int half = BigInteger.Compare(value << 1, unit);
            bool isUp = isHighEnough && (!isLowEnough || half > 0 || (half == 0 && digit % 2 != 0));
            digits = digits * 10 + (uint)digit + (isUp ? 1u : 0u);
            return new DecimalDigits(digits, place).Trimmed();
        }
    }
}
