namespace Acquisition.Core;

/// <summary>How many SI units one of a unit is, exactly: n/d × 10^t × 2^b × π^p.</summary>
internal readonly struct UnitScale
{
    internal static UnitScale One => new(1, 1, 0, 0, 0);

    internal readonly long Numerator;
    internal readonly long Denominator;
    internal readonly int PowerOfTen;
    internal readonly int PowerOfTwo;
    internal readonly int PowerOfPi;

    internal UnitScale(long numerator, long denominator, int powerOfTen, int powerOfTwo, int powerOfPi)
    {
        Numerator = numerator;
        Denominator = denominator;
        PowerOfTen = powerOfTen;
        PowerOfTwo = powerOfTwo;
        PowerOfPi = powerOfPi;
    }

    internal static UnitScale Ten(int power) => new(1, 1, power, 0, 0);

    /// <summary>Whether nothing but a power of ten is left, so that the scale merges into the exponent of a decimal number.</summary>
    internal bool IsPowerOfTen => Numerator == 1 && Denominator == 1 && PowerOfTwo == 0 && PowerOfPi == 0;

    internal UnitScale WithPrefix(in UnitPrefix prefix) => new(Numerator, Denominator, PowerOfTen + prefix.PowerOfTen, PowerOfTwo + prefix.PowerOfTwo, PowerOfPi);

    /// <summary>The scale of a product; false where it leaves 64-bit integers.</summary>
    internal static bool TryMultiply(UnitScale left, UnitScale right, out UnitScale product)
    {
        bool fits = TryMultiply(left.Numerator, right.Numerator, out long numerator) & TryMultiply(left.Denominator, right.Denominator, out long denominator);
        long divisor = fits ? GreatestCommonDivisor(numerator, denominator) : 1;
        product = new UnitScale(numerator / divisor, denominator / divisor, left.PowerOfTen + right.PowerOfTen, left.PowerOfTwo + right.PowerOfTwo, left.PowerOfPi + right.PowerOfPi);
        return fits;
    }

    /// <summary>The scale to a power of so many halves; false where it is no such product, or leaves 64-bit integers.</summary>
    internal bool TryPower(int halves, out UnitScale power)
    {
        // "power" may be the variable this is called on, so it is written last.
        if (halves % 2 != 0)
        {
            bool isSquare = Numerator == 1 && Denominator == 1 && PowerOfTen % 2 == 0 && PowerOfTwo % 2 == 0 && PowerOfPi % 2 == 0;
            power = new UnitScale(1, 1, PowerOfTen * halves / 2, PowerOfTwo * halves / 2, PowerOfPi * halves / 2);
            return isSquare;
        }
        UnitScale factor = halves < 0 ? new UnitScale(Denominator, Numerator, -PowerOfTen, -PowerOfTwo, -PowerOfPi) : this;
        UnitScale result = One;
        bool fits = true;
        for (int left = System.Math.Abs(halves / 2); left > 0; left--) fits &= TryMultiply(result, factor, out result);
        power = result;
        return fits;
    }

    private static bool TryMultiply(long left, long right, out long product)
    {
        product = unchecked(left * right);
        return left <= int.MaxValue && right <= int.MaxValue || product / right == left && product > 0;
    }

    private static long GreatestCommonDivisor(long a, long b)
    {
        while (b != 0) (a, b) = (b, a % b);
        return a;
    }
}
