using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Quantities.Text;

/// <summary>What is written is read back to the same bits: for every kind, in every form that claims it, under every culture of the thread.</summary>
public class RoundTripTests
{
    private static readonly QuantityKind[] Kinds = QuantityKind.Named.Where(kind => kind != QuantityKind.TemperatureDifference).ToArray();

    private static void SameBits(double value, QuantityKind kind, string text, IFormatProvider? provider = null)
    {
        Assert.True(Quantity.TryParse(text, provider, out Quantity read), text);
        Assert.Equal(kind, read.Kind);
        Assert.True(BitConverter.DoubleToInt64Bits(value) == BitConverter.DoubleToInt64Bits(read.SiValue), $"{value:R} was written as '{text}' and read as {read.SiValue:R}");
    }

    [Property(MaxTest = 2000)]
    public void AnyDouble_OfAnyKind_ReadsBackToTheSameBits(long bits, NonNegativeInt place)
    {
        double value = BitConverter.Int64BitsToDouble(bits * 6364136223846793005 + place.Get);
        if (!double.IsFinite(value)) return;
        QuantityKind kind = Kinds[place.Get % Kinds.Length];
        var quantity = new Quantity(value, kind);
        SameBits(value, kind, quantity.ToString());
        SameBits(value, kind, quantity.ToString(QuantityFormat.RoundTrip.WithAsciiSymbols()));
        SameBits(value, kind, quantity.ToString(QuantityFormat.RoundTrip.WithNoBreakSpace()));
        var german = CultureInfo.GetCultureInfo("de-DE");
        SameBits(value, kind, quantity.ToString(null, german), german);
    }

    [Property(MaxTest = 3000)]
    public void EverydayValues_InEveryPrefixedUnit_ReadBackToTheSameBits(int digits, PositiveInt place)
    {
        QuantityKind kind = Kinds[place.Get % Kinds.Length];
        double value = digits / 1000.0 * Math.Pow(10, place.Get % 31 - 15);
        SameBits(value, kind, new Quantity(value, kind).ToString());
    }

    public static TheoryData<string> FixedUnits => new("MHz", "mHz", "ns", "min", "h", "in", "°", "deg", "%", "ppm", "ppb", "°C", "degC", "K", "mK", "dBW", "dBmV", "dBµV", "Np", "kB", "KiB", "Mipts", "km/h", "mV/div", "nV/√Hz", "V/min", "dB/km", "Np/m", "dBm/MHz", "dBc/kHz", "mΩ", "in/h", "rad/min");

    [Theory]
    [MemberData(nameof(FixedUnits))]
    public void RandomDoubles_InAFixedUnit_ReadBackToTheSameBits(string unit)
    {
        QuantityKind kind = Quantity.Parse("1 " + unit).Kind;
        var random = new Random(51);
        for (int i = 0; i < 300; i++)
        {
            double value = (random.NextDouble() - 0.3) * Math.Pow(10, random.Next(-14, 14));
            // The sign of a zero is lost on a scale with an offset, where -0 dBV is 60 dBmV as 0 dBV is.
            if (i % 3 == 0) value = Math.Round(value, 3) + 0.0;
            SameBits(value, kind, new Quantity(value, kind).ToString(unit));
        }
    }

    /// <summary>For a text of at most 15 digits in any unit, the text itself comes back, however the unit scales: the user's digits are never disturbed.</summary>
    [Theory]
    [MemberData(nameof(FixedUnits))]
    public void TypedDigits_InAFixedUnit_ComeBackAsTheyWereTyped(string unit)
    {
        var random = new Random(52);
        for (int i = 0; i < 300; i++)
        {
            string number = Math.Round(random.NextDouble() * 999, random.Next(0, 10)).ToString("0.##########", CultureInfo.InvariantCulture);
            string text = number + " " + unit;
            Assert.Equal(text, Quantity.Parse(text).ToString(unit));
        }
    }

#if NET // which reads doubles correctly rounded; mono does not
    [Fact]
    public void RationalUnits_AreCorrectlyRounded_AgainstDecimalArithmetic()
    {
        // 28 digits of System.Decimal decide the nearest double beyond doubt for these values.
        var random = new Random(53);
        (string Unit, decimal Numerator, decimal Denominator)[] units = [("min", 60, 1), ("h", 3600, 1), ("in", 0.0254m, 1), ("%", 0.01m, 1), ("ppm", 0.000001m, 1), ("km/h", 1000, 3600), ("KiB", 8192, 1), ("Mipts", 1048576, 1), ("mV/min", 0.001m, 60)];
        foreach ((string unit, decimal numerator, decimal denominator) in units)
        {
            for (int i = 0; i < 500; i++)
            {
                decimal number = Math.Round((decimal)(random.NextDouble() * 1000), random.Next(0, 9));
                if (number == 0) continue;
                decimal exact = number * numerator / denominator;
                double expected = double.Parse(exact.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
                Assert.Equal(expected, Quantity.Parse(number.ToString(CultureInfo.InvariantCulture) + " " + unit).SiValue);
            }
        }
    }

    [Fact]
    public void EveryPrefix_MergesIntoTheExponentBeforeRounding()
    {
        foreach (UnitPrefix prefix in UnitPrefix.All.Where(prefix => !prefix.IsBinary))
        {
            for (int tenths = 1; tenths < 2000; tenths++)
            {
                string number = (tenths / 10).ToString(CultureInfo.InvariantCulture) + "." + (tenths % 10).ToString(CultureInfo.InvariantCulture);
                double expected = double.Parse(number + "e" + prefix.PowerOfTen.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
                Assert.Equal(expected, Quantity.Parse(number + " " + prefix.Symbol + "s").SiValue);
            }
        }
    }
#endif

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-EG")]
    [InlineData("sv-SE")]
    [InlineData("tr-TR")]
    [InlineData("fa-IR")]
    public void Culture_OfTheThread_NeverMatters(string name)
    {
        string[] texts = ["-2.5 µs", "100 MHz", "2 GSa/s", "1 in", "-3 dB", "12 bit", "1E+40 Hz", "25 °C", "0.5", "4.5 nV/√Hz", "36 km/h", "1 MIN", "5 mhz"];
        string[] outcome = texts.Select(Outcome).ToArray();
        CultureInfo before = CultureInfo.CurrentCulture, beforeUi = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(name);
            Assert.Equal(outcome, texts.Select(Outcome));
            var culture = CultureInfo.CurrentCulture;
            string written = Frequency.FromHertz(-1234.5e3).ToString("F3 kHz", culture);
            Assert.Equal(-1234.5e3, Frequency.Parse(written, culture).Hertz);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = beforeUi;
        }

        static string Outcome(string text) => Quantity.TryParse(text, out Quantity quantity)
            ? $"{quantity} {quantity.ToString("F2")} {quantity.ToString("4")} {quantity.ToString("E3")}"
            : Assert.Throws<QuantityFormatException>(() => Quantity.Parse(text)).Message;
    }

    [Fact]
    public void ManyThreads_ReadAndWriteTheSame()
    {
        string[] texts = ["2.8 ns", "1 in", "36 km/h", "4.5 nV/√Hz", "25 °C", "1.7e308 Hz", "3 V·s/m", "0 dBu"];
        string[] expected = texts.Select(text => Quantity.Parse(text).ToString()).ToArray();
        System.Threading.Tasks.Parallel.For(0, 2000, i => Assert.Equal(expected[i % texts.Length], Quantity.Parse(texts[i % texts.Length]).ToString()));
    }
}
