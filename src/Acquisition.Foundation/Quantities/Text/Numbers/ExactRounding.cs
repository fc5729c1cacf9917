using System;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>Rounds an exact fraction to the nearest double, ties to even (IEEE 754-2019 clause 4.3.1), on every runtime alike.</summary>
internal static class ExactRounding
{
    private const int FractionBits = 52;
    private const int LowestExponent = -1074;

    /// <summary>The double nearest to <paramref name="numerator"/> / <paramref name="denominator"/>; infinity where it lies beyond the largest one.</summary>
    /// <param name="numerator">Not negative.</param>
    /// <param name="denominator">Above zero.</param>
    internal static double Quotient(BigInteger numerator, BigInteger denominator)
    {
        if (numerator.IsZero) return 0;
        // Shift so that the quotient has 55 or 56 bits: all of the result and at least two more, what is cut off being seen in the remainder.
        int exponent = BitLength(numerator) - BitLength(denominator) - 55;
        BigInteger quotient = exponent >= 0
            ? BigInteger.DivRem(numerator, denominator << exponent, out BigInteger remainder)
            : BigInteger.DivRem(numerator << -exponent, denominator, out remainder);
        ulong bits = (ulong)quotient;
        int length = 0;
        while (length < 64 && bits >> length != 0) length++;
        int lowest = Math.Max(exponent + length - FractionBits - 1, LowestExponent);
        int drop = lowest - exponent;
        if (drop > 60) return 0;
        ulong kept = bits >> drop, half = 1UL << drop - 1, cut = bits & (1UL << drop) - 1;
        bool isUp = cut > half || (cut == half && (!remainder.IsZero || (kept & 1) != 0));
        return Compose(isUp ? kept + 1 : kept, lowest);
    }

    internal static int BitLength(BigInteger value)
    {
        byte[] bytes = value.ToByteArray();
        int top = bytes.Length - 1;
        while (top > 0 && bytes[top] == 0) top--;
        int length = 8 * top;
        for (int high = bytes[top]; high != 0; high >>= 1) length++;
        return length;
    }

    private static double Compose(ulong mantissa, int exponent)
    {
        if (mantissa >> FractionBits + 1 != 0)
        {
            mantissa >>= 1;
            exponent++;
        }
        if (mantissa >> FractionBits == 0) return BitConverter.Int64BitsToDouble((long)mantissa);
        long biased = exponent + 1075L;
        return biased >= 2047 ? double.PositiveInfinity : BitConverter.Int64BitsToDouble(biased << FractionBits | (long)(mantissa & (1UL << FractionBits) - 1));
    }
}
