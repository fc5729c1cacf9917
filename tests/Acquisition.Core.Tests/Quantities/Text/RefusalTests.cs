using System;
using System.Globalization;
using Xunit;

namespace Acquisition.Core.Tests.Quantities.Text;

/// <summary>The specification of refusals: each text with the whole message, word for word.</summary>
public class RefusalTests
{
    [Theory]
    [InlineData("", "column 1: found nothing, expected a quantity such as 100 MHz")]
    [InlineData("   ", "column 1: found nothing, expected a quantity such as 100 MHz")]
    [InlineData("abc", "column 1: found 'abc', expected a number")]
    [InlineData("NaN V", "column 1: found 'NaN', expected a number")]
    [InlineData("inf Hz", "column 1: found 'inf', expected a number")]
    [InlineData("--5 V", "column 1: found '-', expected a number")]
    [InlineData("√V", "column 1: found '√', expected a number")]
    [InlineData("0x10", "column 2: found 'x10', expected a unit")]
    [InlineData("1E", "column 2: found 'E', expected a unit")]
    [InlineData("5e V", "column 2: found 'e', expected a unit")]
    [InlineData("5.", "column 3: found the end of the text, expected a digit after the decimal separator")]
    [InlineData("5. V", "column 3: found ' ', expected a digit after the decimal separator")]
    [InlineData("1,000 Hz", "column 2: found ',', expected a decimal point (a comma is read only with a culture that has one)")]
    [InlineData("2,5 GHz", "column 2: found ',', expected a decimal point (a comma is read only with a culture that has one)")]
    [InlineData("10 00 V", "column 4: found '00', expected a unit, or a group of exactly three digits")]
    [InlineData("1 0000 V", "column 3: found '0000', expected a unit, or a group of exactly three digits")]
    [InlineData("1_00 V", "column 3: found '00', expected a unit, or a group of exactly three digits")]
    [InlineData("1234 567 V", "column 6: found '567', expected a unit, or a group of exactly three digits")]
    [InlineData("1 234_567 V", "column 7: found '567', expected a unit, or a group of exactly three digits")]
    [InlineData("٣ V", "column 1: found '٣', expected a digit from 0 to 9")]
    [InlineData("1٣ V", "column 2: found '٣', expected a digit from 0 to 9")]
    [InlineData("1e400 Hz", "column 1: found '1e400 Hz', expected a value that a double holds, up to 1.7976931348623157E+308")]
    [InlineData("1e300 QHz", "column 1: found '1e300 QHz', expected a value that a double holds, up to 1.7976931348623157E+308")]
    [InlineData("1e-400 Hz", "column 1: found '1e-400 Hz', expected 0 or a value that a double holds, from 5E-324")]
    [InlineData("5 mhz", "column 3: found 'mhz', expected a unit; did you mean mHz or MHz?")]
    [InlineData("5 MHZ", "column 3: found 'MHZ', expected a unit; did you mean MHz or mHz?")]
    [InlineData("5 gsa/s", "column 3: found 'gsa', expected a unit; did you mean GSa?")]
    [InlineData("100 MSps", "column 5: found 'MSps', expected a unit; did you mean MSa/s?")]
    [InlineData("5 dbm", "column 3: found 'dbm', expected a unit; did you mean dBm?")]
    [InlineData("5 dBuv", "column 3: found 'dBuv', expected a unit; did you mean dBµV?")]
    [InlineData("5 Volt", "column 3: found 'Volt', expected a unit; did you mean V?")]
    [InlineData("5 foo", "column 3: found 'foo', expected a unit")]
    [InlineData("5 M", "column 3: found 'M', expected a unit")]
    [InlineData("100 M Hz", "column 5: found 'M', expected a unit")]
    [InlineData("1 m2", "column 3: found 'm2', expected a unit; did you mean m^2?")]
    [InlineData("5 mmin", "column 3: found 'mmin', expected a prefix that goes with the unit, or none; did you mean min?")]
    [InlineData("5 kdB", "column 3: found 'kdB', expected a prefix that goes with the unit, or none; did you mean dB?")]
    [InlineData("5 MiHz", "column 3: found 'MiHz', expected a prefix that goes with the unit, or none; did you mean Hz?")]
    [InlineData("5 V/", "column 5: found the end of the text, expected a unit")]
    [InlineData("5 V/m/s", "column 6: found '/', expected the end of the unit after one '/'; parentheses say what is below it: V/(m·s) or V·s/m")]
    [InlineData("5 V/m*s", "column 6: found '*', expected the end of the unit after one '/'; parentheses say what is below it: V/(m·s) or V·s/m")]
    [InlineData("5 V/(m", "column 7: found the end of the text, expected ')'")]
    [InlineData("5 V^", "column 5: found the end of the text, expected an exponent")]
    [InlineData("5 V^0.3", "column 5: found '0.3', expected an exponent from 0.5 to 63 in steps of one half")]
    [InlineData("5 V^64", "column 5: found '64', expected an exponent from 0.5 to 63 in steps of one half")]
    [InlineData("5 V/√kHz", "column 5: found '√kHz', expected a unit whose scale can be held exactly")]
    [InlineData("5 dBm*V", "column 3: found 'dBm*V', expected a logarithmic unit alone, or dB/m, dB/octave, dB/decade, dBm/Hz, dBc/Hz, dBFS/Hz")]
    [InlineData("5 Vpp/div", "column 3: found 'Vpp', expected V or A in a product (only a single amplitude is stated as peak, peak to peak or rms)")]
    [InlineData("5 °C/W", "column 3: found '°C', expected K in a product (°C is a point on a scale)")]
    [InlineData("5 V x", "column 5: found 'x', expected the end of the text")]
    [InlineData("1:10", "column 2: found ':', expected a unit")]
    public void Text_ThatIsNoQuantity_IsRefusedWithPlaceFindingAndRemedy(string text, string message)
    {
        Assert.False(Quantity.TryParse(text, out Quantity left));
        Assert.Equal(default, left);
        var problem = Assert.Throws<QuantityFormatException>(() => Quantity.Parse(text));
        Assert.Equal(message, problem.Message);
        Assert.Equal(message, $"column {problem.Position + 1}: found {problem.Found}, expected {problem.Expected}" + (problem.Suggestion is null ? "" : $"; did you mean {problem.Suggestion}?"));
    }

    [Theory]
    [InlineData("1 MHz", "column 1: found a frequency (1 MHz), expected a sample rate; did you mean 1 MSa/s?")]
    [InlineData("5", "column 1: found a plain number (5), expected a sample rate with its unit; did you mean 5 Sa/s?")]
    [InlineData("5 gs/s", "column 3: found 'gs', expected the unit of a sample rate; did you mean GS?")]
    [InlineData("5 GSps", "column 3: found 'GSps', expected the unit of a sample rate; did you mean GSa/s?")]
    [InlineData("5 S/s", "column 1: found a quantity in S/s (5 S/s), expected a sample rate; did you mean 5 Sa/s?")]
    [InlineData("-5 Sa/s", "column 1: value must be a finite sample rate of at least 0 Sa/s; was -5 Sa/s")]
    [InlineData("", "column 1: found nothing, expected a sample rate")]
    public void Text_ThatIsNoSampleRate_IsRefusedWithPlaceFindingAndRemedy(string text, string message)
    {
        Assert.False(SampleRate.TryParse(text, out _));
        Assert.Equal(message, Assert.Throws<QuantityFormatException>(() => SampleRate.Parse(text)).Message);
#if NET
        Assert.Equal(message, Assert.Throws<QuantityFormatException>(() => SampleRate.Parse(text.AsSpan())).Message);
        Assert.Equal(message, Assert.Throws<QuantityFormatException>(() => SampleRate.Parse(System.Text.Encoding.UTF8.GetBytes(text))).Message);
#endif
    }

    [Fact]
    public void OtherKinds_AreRefusedByName()
    {
        Assert.Equal("column 1: found a voltage (5 V), expected an rms voltage; did you mean 5 Vrms?", Assert.Throws<QuantityFormatException>(() => RmsVoltage.Parse("5 V")).Message);
        Assert.Equal("column 1: found a peak-to-peak voltage (1.6 mVpp), expected an rms voltage (in a formula, for a sine, sine_rms converts it)", Assert.Throws<QuantityFormatException>(() => RmsVoltage.Parse("1.6 mVpp")).Message);
        Assert.Equal("column 4: found '.', expected the end of the number, which has a decimal point already", Assert.Throws<QuantityFormatException>(() => Voltage.Parse("1.5.2 V")).Message);
        Assert.Equal("column 1: found a decibel ratio (5 dB), expected a power level", Assert.Throws<QuantityFormatException>(() => PowerLevel.Parse("5 dB")).Message);
        Assert.Equal("column 1: found a ratio to the carrier (-60 dBc), expected a decibel ratio", Assert.Throws<QuantityFormatException>(() => DecibelRatio.Parse("-60 dBc")).Message);
        Assert.Equal("column 1: value must be a whole number of points; was 1.5 pts", Assert.Throws<QuantityFormatException>(() => PointCount.Parse("1.5 pts")).Message);
    }

    [Fact]
    public void Culture_WithACommaReadsTheCommaAndRefusesThePoint()
    {
        var german = CultureInfo.GetCultureInfo("de-DE");
        Assert.Equal(2.5e9, Frequency.Parse("2,5 GHz", german).Hertz);
        Assert.Equal("2,5 GHz", Frequency.FromGigahertz(2.5).ToString(null, german));
        Assert.Equal("column 2: found '.', expected the decimal separator ',' of the culture that was asked for", Assert.Throws<QuantityFormatException>(() => Frequency.Parse("2.5 GHz", german)).Message);
        Assert.Equal("column 2: found '.', expected the decimal separator ',' of the culture that was asked for", Assert.Throws<QuantityFormatException>(() => Frequency.Parse("1.000 Hz", german)).Message);
    }

    [Fact]
    public void Null_IsAnArgumentException_AndFalseForTryParse()
    {
        Assert.Throws<ArgumentNullException>(() => Frequency.Parse(null!));
        Assert.Throws<ArgumentNullException>(() => Quantity.Parse(null!));
        Assert.False(Frequency.TryParse((string?)null, out _));
        Assert.False(Quantity.TryParse((string?)null, out _));
    }

    [Theory]
    [InlineData('9')]
    [InlineData(' ')]
    [InlineData('(')]
    [InlineData('√')]
    [InlineData('-')]
    [InlineData('m')]
    [InlineData('/')]
    public void AMegabyteOfAnything_IsRefusedAtOnce(char filler)
    {
        string text = "1 V" + new string(filler, 1_000_000);
        Assert.False(Quantity.TryParse(text, out _));
        Assert.Equal("column 2049: found more text, expected at most 2048 characters", Assert.Throws<QuantityFormatException>(() => Quantity.Parse(text)).Message);
#if NET
        Assert.False(Frequency.TryParse(System.Text.Encoding.UTF8.GetBytes(text), null, out _));
#endif
    }

    [Theory]
    [InlineData("V", "*V", 600)]
    [InlineData("V/(", "s*", 600)]
    [InlineData("V^", "9", 1000)]
    [InlineData("", "√", 1000)]
    [InlineData("", "sqrt(", 300)]
    [InlineData("dBm", "/Hz", 300)]
    public void LongUnits_WithinTheLimit_AreRefusedAndNothingOverflows(string start, string repeated, int times)
    {
        string text = "1 " + start + string.Concat(System.Linq.Enumerable.Repeat(repeated, times));
        Assert.False(Quantity.TryParse(text, out _));
        Assert.Throws<QuantityFormatException>(() => Quantity.Parse(text));
    }

    [Fact]
    public void AHundredThousandGarbledTexts_NeverThrowFromTryParse_AndParseAgreesWithIt()
    {
        const string Alphabet = "0123456789.,-+eE×^_ /*·√()%°µΩHzVAmsSakMGdBrtpniu²⁻\u00A0\u2212\uD800\0";
        var random = new Random(31);
        var text = new char[24];
        for (int i = 0; i < 100_000; i++)
        {
            int length = random.Next(0, text.Length);
            for (int j = 0; j < length; j++) text[j] = Alphabet[random.Next(Alphabet.Length)];
            string candidate = (i % 2 == 0 ? "1 " : "") + new string(text, 0, length);
            if (Quantity.TryParse(candidate, out Quantity quantity)) Assert.Equal(quantity, Quantity.Parse(quantity.ToString()));
            else Assert.Single(Assert.Throws<QuantityFormatException>(() => Quantity.Parse(candidate)).Message.Split('\n'));
        }
    }
}
