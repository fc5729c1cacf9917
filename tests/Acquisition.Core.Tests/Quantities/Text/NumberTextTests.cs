using System;
using System.Globalization;
using System.Numerics;
using Xunit;

namespace Acquisition.Core.Tests.Quantities.Text;

/// <summary>The number code that netstandard2.0 hosts run, compared bit for bit with modern .NET, whose parsing and shortest output are correct by IEEE 754.</summary>
public class NumberTextTests
{
    private const int Many = 1_000_000;

    private static double NextFinite(Random random)
    {
        double value;
        do value = BitConverter.Int64BitsToDouble(random.NextInt64(long.MinValue, long.MaxValue));
        while (!double.IsFinite(value) || value == 0);
        return Math.Abs(value);
    }

    [Fact]
    public void ExactDigits_OfAMillionRandomDoubles_AreThoseOfModernDotNet()
    {
        var random = new Random(20);
        for (int i = 0; i < Many; i++) SameDigits(NextFinite(random));
    }

    [Fact]
    public void ExactDigits_OfAMillionEverydayNumbers_AreThoseOfModernDotNet()
    {
        var random = new Random(21);
        for (int i = 0; i < Many; i++) SameDigits(Math.Round(random.NextDouble() * 1000, random.Next(0, 8)) * Math.Pow(10, random.Next(-15, 15)) + double.Epsilon);
    }

    [Theory]
    [InlineData(double.Epsilon)]
    [InlineData(double.MaxValue)]
    [InlineData(2.2250738585072014E-308)]
    [InlineData(2.2250738585072009E-308)]
    [InlineData(9007199254740992)]
    [InlineData(9007199254740994)]
    [InlineData(1.0)]
    [InlineData(0.84551240822557006)]
    [InlineData(1e23)]
    [InlineData(9.5367431640625e-7)]
    [InlineData(4.4501477170144028E-308)]
    public void ExactDigits_AtTheEdges_AreThoseOfModernDotNet(double value)
    {
        SameDigits(value);
        for (int i = 0; i < 10; i++) SameDigits(value = Math.BitIncrement(value) is var next && double.IsFinite(next) ? next : 1);
    }

    /// <summary>Below a power of two the neighbour is half as far away; "R" of .NET 10 forgets it: its text of 2^-958 reads back as another number.</summary>
    [Fact]
    public void PowersOfTwo_WhoseNeighboursAreUnevenlySpaced_ReadBackAndHaveNoShorterText()
    {
        for (int power = -1074; power <= 1023; power++)
        {
            double value = Math.ScaleB(1, power);
            string text = Text(ShortestDigits.Of(value));
            Assert.Equal(Text(ShortestDigits.OfExact(value)), text);
            Assert.Equal(value, double.Parse(text, CultureInfo.InvariantCulture));
            int digits = text.IndexOf('e', StringComparison.Ordinal);
            if (digits > 1) Assert.NotEqual(value, double.Parse(value.ToString("E" + (digits - 2).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
        }
    }

    [Fact]
    public void ExactReading_OfAMillionRandomDecimals_IsThatOfModernDotNet()
    {
        var random = new Random(22);
        for (int i = 0; i < Many; i++)
        {
            ulong mantissa = (ulong)random.NextInt64() >> random.Next(0, 60);
            int exponent = random.Next(-345, 310);
            double expected = double.Parse(FormattableString.Invariant($"{mantissa}e{exponent}"), CultureInfo.InvariantCulture);
            Assert.Equal(BitConverter.DoubleToInt64Bits(expected), BitConverter.DoubleToInt64Bits(DecimalConversion.FromExactDecimal(mantissa, exponent)));
            Assert.Equal(BitConverter.DoubleToInt64Bits(expected), BitConverter.DoubleToInt64Bits(DecimalConversion.FromDecimal(mantissa, exponent)));
        }
    }

    [Fact]
    public void Ties_BetweenTwoDoubles_AreReadToEven()
    {
        // The exact midpoint of two neighbours has up to 767 digits; one more digit decides.
        var random = new Random(23);
        for (int i = 0; i < 3000; i++)
        {
            double low = NextFinite(random);
            if (low > 1e300) continue;
            string middle = MidpointText(low, Math.BitIncrement(low));
            foreach (string text in new[] { middle, middle + "1", middle + "0000" })
            {
                double expected = double.Parse(text, CultureInfo.InvariantCulture);
                Assert.Equal(expected, Quantity.Parse(text).SiValue);
                Assert.Equal(-expected, Quantity.Parse("-" + text).SiValue);
            }
        }
    }

    /// <summary>The trap cases known from runtimes that misread: measured on .NET Framework-like number code.</summary>
    [Theory]
    [InlineData("1.448997445238699")]
    [InlineData("100000000000000016777216")]
    [InlineData("-0")]
    [InlineData("2.2250738585072011e-308")]
    [InlineData("9007199254740993")]
    [InlineData("0.1000000000000000055511151231257827021181583404541015625")]
    public void KnownTraps_AreReadAsTheNearestDouble(string text) =>
        Assert.Equal(BitConverter.DoubleToInt64Bits(double.Parse(text, CultureInfo.InvariantCulture)), BitConverter.DoubleToInt64Bits(Quantity.Parse(text).SiValue));

    [Theory]
    [InlineData(2.5, "F0", "2")]
    [InlineData(3.5, "F0", "4")]
    [InlineData(1.005, "F2", "1.00")]
    [InlineData(2.675, "G3", "2.67")]
    [InlineData(0.5, "F0", "0")]
    [InlineData(1.5, "F0", "2")]
    [InlineData(0.125, "F2", "0.12")]
    [InlineData(1e300, "F0", "1000000000000000052504760255204420248704468581108159154915854115511802457988908195786371375080447864043704443832883878176942523235360430575644792184786706982848387200926575803737830233794788090059368953234970799945081119038967640880074652742780142494579258788820056842838115669472196386865459400540160")]
    public void FixedDigits_AreRoundedFromTheExactBinaryValue_TiesToEven(double value, string format, string start) =>
        Assert.StartsWith(start, new Quantity(value, QuantityKind.Ratio).ToString(format), StringComparison.Ordinal);

    [Fact]
    public void FixedDigits_OfRandomNumbers_AreThoseOfModernDotNet()
    {
        var random = new Random(24);
        for (int i = 0; i < 100_000; i++)
        {
            double value = random.NextDouble() * Math.Pow(10, random.Next(-4, 12));
            int decimals = random.Next(0, 12);
            Assert.Equal(value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), new Quantity(value, QuantityKind.Ratio).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture)));
            int digits = random.Next(1, 18);
            Assert.Equal(value.ToString("E" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), new Quantity(value, QuantityKind.Ratio).ToString("E" + digits.ToString(CultureInfo.InvariantCulture)));
        }
    }

    [Fact]
    public void FixedDigits_OfNumbersSuchAsPeopleWrite_AreThoseOfTheExactValue()
    {
        var random = new Random(25);
        for (int i = 0; i < 100_000; i++)
        {
            double value = Math.Round(random.NextDouble() * 1000, random.Next(0, 6)) * Math.Pow(10, random.Next(-9, 10));
            if (value == 0 || !ShortestDigits.TryFew(value, out DecimalDigits few)) continue;
            int place = few.Lead - random.Next(-2, 18);
            if (few.TryRound(place, out DecimalDigits rounded)) Assert.Equal(Text(RoundedDigits.ToPlace(ExactFraction.Of(value), place).Trimmed()), Text(rounded.Trimmed()));
        }
    }

    private static void SameDigits(double value)
    {
        DecimalDigits exact = ShortestDigits.OfExact(value);
        Assert.Equal(Normalised(value.ToString("R", CultureInfo.InvariantCulture)), Text(exact));
        Assert.Equal(Text(exact), Text(ShortestDigits.Of(value)));
    }

    private static string Text(DecimalDigits digits)
    {
        char[] text = new char[digits.Count];
        digits.CopyTo(text);
        return new string(text) + "e" + digits.Place.ToString(CultureInfo.InvariantCulture);
    }

    private static string Normalised(string text)
    {
        int e = text.IndexOf('E', StringComparison.Ordinal);
        int place = e < 0 ? 0 : int.Parse(text[(e + 1)..], CultureInfo.InvariantCulture);
        string number = e < 0 ? text : text[..e];
        int point = number.IndexOf('.', StringComparison.Ordinal);
        if (point >= 0)
        {
            place -= number.Length - point - 1;
            number = number.Remove(point, 1);
        }
        string trimmed = number.TrimStart('0').TrimEnd('0');
        return trimmed + "e" + (place + number.Length - number.TrimEnd('0').Length).ToString(CultureInfo.InvariantCulture);
    }

    private static string MidpointText(double low, double high)
    {
        ExactFraction a = ExactFraction.Of(low), b = ExactFraction.Of(high);
        BigInteger numerator = a.Numerator * b.Denominator + b.Numerator * a.Denominator, denominator = 2 * a.Denominator * b.Denominator;
        BigInteger whole = BigInteger.DivRem(numerator, denominator, out BigInteger rest);
        var text = new System.Text.StringBuilder(whole.ToString(CultureInfo.InvariantCulture)).Append('.');
        do
        {
            BigInteger digit = BigInteger.DivRem(rest * 10, denominator, out rest);
            text.Append(digit.ToString(CultureInfo.InvariantCulture));
        }
        while (!rest.IsZero);
        return text.ToString();
    }
}
