using System.Numerics;

namespace Acquisition.Core;

/// <summary>A fraction of integers without limit, not reduced: what a number in a unit is before it is rounded, once.</summary>
internal readonly struct ExactFraction
{
    /// <summary>π, 20/ln 10 and 10 lg 0.6 to 60 places, far more than any rounding to a double can see. Source: computed with mpmath at 80 digits.</summary>
    private static readonly BigInteger Places = BigInteger.Pow(10, 60);
    private static readonly BigInteger Pi = BigInteger.Parse("3141592653589793238462643383279502884197169399375105820974945", System.Globalization.CultureInfo.InvariantCulture);
    private static readonly BigInteger DecibelsPerNeper = BigInteger.Parse("8685889638065036553022578378332101645887940116073331322289076", System.Globalization.CultureInfo.InvariantCulture);
    private static readonly BigInteger ZeroDecibelU = BigInteger.Parse("-2218487496163563674912332020203916640316812543471955938597069", System.Globalization.CultureInfo.InvariantCulture);

    internal ExactFraction(BigInteger numerator, BigInteger denominator)
    {
        Numerator = numerator;
        Denominator = denominator;
    }

    internal BigInteger Numerator { get; }

    /// <summary>Above zero.</summary>
    internal BigInteger Denominator { get; }

    internal static ExactFraction Of(double value)
    {
        long bits = System.BitConverter.DoubleToInt64Bits(value);
        int exponent = (int)(bits >> 52 & 0x7FF);
        long mantissa = bits & (1L << 52) - 1;
        if (exponent == 0) exponent = 1;
        else mantissa |= 1L << 52;
        if (bits < 0) mantissa = -mantissa;
        exponent -= 1075;
        return exponent >= 0 ? new ExactFraction(new BigInteger(mantissa) << exponent, 1) : new ExactFraction(mantissa, BigInteger.One << -exponent);
    }

    internal ExactFraction TimesTen(int power) => power >= 0
        ? new ExactFraction(Numerator * BigInteger.Pow(10, power), Denominator)
        : new ExactFraction(Numerator, Denominator * BigInteger.Pow(10, -power));

    internal ExactFraction Times(in UnitScale scale)
    {
        ExactFraction value = new ExactFraction(Numerator * scale.Numerator, Denominator * scale.Denominator).TimesTen(scale.PowerOfTen);
        value = scale.PowerOfTwo >= 0
            ? new ExactFraction(value.Numerator << scale.PowerOfTwo, value.Denominator)
            : new ExactFraction(value.Numerator, value.Denominator << -scale.PowerOfTwo);
        for (int i = scale.PowerOfPi; i > 0; i--) value = new ExactFraction(value.Numerator * Pi, value.Denominator * Places);
        for (int i = scale.PowerOfPi; i < 0; i++) value = new ExactFraction(value.Numerator * Places, value.Denominator * Pi);
        return value;
    }

    internal ExactFraction Over(in UnitScale scale) =>
        Times(new UnitScale(scale.Denominator, scale.Numerator, -scale.PowerOfTen, -scale.PowerOfTwo, -scale.PowerOfPi));

    /// <summary>After scaling: the constant and the offset of the unit applied.</summary>
    internal ExactFraction InHeldUnit(UnitConstant constant, int offsetInHundredths) => constant switch
    {
        UnitConstant.DecibelsPerNeper => new ExactFraction(Numerator * DecibelsPerNeper, Denominator * Places),
        UnitConstant.ZeroDecibelU => Plus(ZeroDecibelU, Places),
        _ => offsetInHundredths == 0 ? this : Plus(offsetInHundredths, 100),
    };

    /// <summary>The reverse of <see cref="InHeldUnit"/>.</summary>
    internal ExactFraction FromHeldUnit(UnitConstant constant, int offsetInHundredths) => constant switch
    {
        UnitConstant.DecibelsPerNeper => new ExactFraction(Numerator * Places, Denominator * DecibelsPerNeper),
        UnitConstant.ZeroDecibelU => Plus(-ZeroDecibelU, Places),
        _ => offsetInHundredths == 0 ? this : Plus(-offsetInHundredths, 100),
    };

    private ExactFraction Plus(BigInteger numerator, BigInteger denominator) => new(Numerator * denominator + numerator * Denominator, Denominator * denominator);
}
