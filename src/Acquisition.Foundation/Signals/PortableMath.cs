using System;

namespace Acquisition.Core.Signals;

/// <summary>Logarithm and exponential from additions, multiplications and divisions only: the same bits on every platform, which the C library's are not.</summary>
/// <remarks>Accurate to a few units in the last place, which is ample for what samplers decide with them.</remarks>
internal static class PortableMath
{
    private const double Ln2 = 0.69314718055994530942;

    /// <summary>ln 2 in two parts, the first with zeros at its end, so that a whole multiple of it is exact.</summary>
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;
    private const long MantissaMask = (1L << 52) - 1;
    private const double Sqrt2 = 1.41421356237309504880;

    /// <summary>The natural logarithm of a positive normal number.</summary>
    internal static double Log(double x)
    {
        long bits = BitConverter.DoubleToInt64Bits(x);
        int exponent = (int)(bits >> 52) - 1023;
        double mantissa = BitConverter.Int64BitsToDouble(bits & MantissaMask | 1023L << 52);
        if (mantissa > Sqrt2)
        {
            mantissa /= 2;
            exponent++;
        }
        double z = (mantissa - 1) / (mantissa + 1), z2 = z * z;
        double series = 1.0 / 21;
        for (int k = 19; k >= 1; k -= 2) series = series * z2 + 1.0 / k;
        return exponent * Ln2 + 2 * z * series;
    }

    /// <summary>The exponential of a number from -700 to 700.</summary>
    internal static double Exp(double x)
    {
        int power = (int)Math.Floor(x / Ln2 + 0.5);
        double rest = x - power * Ln2High - power * Ln2Low;
        double series = 1;
        for (int k = 16; k >= 1; k--) series = 1 + rest * series / k;
        return series * BitConverter.Int64BitsToDouble((power + 1023L) << 52);
    }
}
