using System;
using System.Globalization;
using System.Linq;
using Xunit;

namespace Acquisition.Core.Tests.Quantities.Text;

public class QuantityWritingTests
{
    [Theory]
    [InlineData("999.96 MHz", "4", "1.000 GHz")]
    [InlineData("999.96 MHz", "G4", "1 GHz")]
    [InlineData("999.96 MHz", "3", "1.00 GHz")]
    [InlineData("999.96 MHz", "5", "999.96 MHz")]
    [InlineData("999.96 MHz", "F1", "1.0 GHz")]
    [InlineData("999.96 MHz", "F2", "999.96 MHz")]
    [InlineData("999.96 MHz", "G4 MHz", "1000 MHz")]
    [InlineData("999.96 MHz", "kHz", "999960 kHz")]
    [InlineData("999.96 MHz", "E3", "1.000E+009 Hz")]
    [InlineData("999.96 MHz", null, "999.96 MHz")]
    [InlineData("999.96 MHz", "", "999.96 MHz")]
    [InlineData("999.96 MHz", "R", "999.96 MHz")]
    [InlineData("0 Hz", null, "0 Hz")]
    [InlineData("0 Hz", "3", "0.00 Hz")]
    [InlineData("-0 Hz", null, "-0 Hz")]
    [InlineData("200000000 pts", null, "200 Mpts")]
    [InlineData("14000 pts", null, "14 kpts")]
    [InlineData("2 GS/s", null, "2 GSa/s")]
    [InlineData("0.5 Sa/s", null, "500 mSa/s")]
    [InlineData("1234567 bit", null, "1234567 bit")]
    [InlineData("12.5 dB", null, "12.5 dB")]
    [InlineData("12345 dB", null, "12345 dB")]
    [InlineData("5 %", null, "0.05")]
    [InlineData("5 %", "G3 %", "5 %")]
    [InlineData("25 °C", null, "298.15 K")]
    [InlineData("25 °C", "°C", "25 °C")]
    [InlineData("0 °C", "°C", "0 °C")]
    [InlineData("25.4 °C", "F1 degC", "25.4 degC")]
    [InlineData("36 km/h", "km/h", "36 km/h")]
    [InlineData("36 km/h", null, "10 m/s")]
    [InlineData("45 °", "°", "45 °")]
    [InlineData("45 °", "4 deg", "45.00 deg")]
    [InlineData("60 dBmV", "dBµV", "120 dBµV")]
    [InlineData("0 dBm", "dBW", "-30 dBW")]
    [InlineData("0 dBu", "dBu", "0 dBu")]
    [InlineData("1 Np", "Np", "1 Np")]
    [InlineData("1 in", "in", "1 in")]
    [InlineData("90 s", "min", "1.5 min")]
    [InlineData("1e40 Hz", null, "1E+40 Hz")]
    [InlineData("1e-40 s", null, "1E-40 s")]
    [InlineData("5e-9", null, "5E-09")]
    [InlineData("4.5 nV/√Hz", null, "4.5 nV/√Hz")]
    [InlineData("50 mV/div", null, "50 mV/div")]
    [InlineData("1e-33 QHz", null, "1 mHz")]
    public void Quantity_IsWrittenAsTheFormatSays(string text, string? format, string expected) => Assert.Equal(expected, Quantity.Parse(text).ToString(format));

    [Theory]
    [InlineData("1 µs", "1 us")]
    [InlineData("5 kΩ", "5 kOhm")]
    [InlineData("4.5 nV/√Hz", "4.5 nV/sqrt(Hz)")]
    [InlineData("9.81 m/s²", "9.81 m/s^2")]
    [InlineData("3 m⁻¹", "3 m^-1")]
    [InlineData("3 V·s/m", "3 V*s/m")]
    public void Ascii_SpellsSymbolsSoThatTheyReadBack(string text, string ascii)
    {
        Quantity quantity = Quantity.Parse(text);
        string written = quantity.ToString(QuantityFormat.RoundTrip.WithAsciiSymbols());
        Assert.Equal(ascii, written);
        Assert.True(written.All(char.IsAscii));
        Assert.Equal(quantity, Quantity.Parse(written));
    }

    [Fact]
    public void FormatObject_CombinesDigitsUnitSpaceAndCulture()
    {
        QuantityFormat format = QuantityFormat.SignificantDigits(4).WithUnit("MHz").WithNoBreakSpace().WithCulture(CultureInfo.GetCultureInfo("de-DE"));
        Assert.Equal("24,00\u00A0MHz", Frequency.FromMegahertz(24).ToString(format));
        Assert.Equal("25 degC", new QuantityFormat("°C").WithAsciiSymbols().Format(Temperature.FromDegreesCelsius(25)));
        Assert.Equal("24 MHz", Frequency.FromMegahertz(24).ToString((QuantityFormat)null!));
    }

    [Theory]
    [InlineData("G4 V", "the unit of format 'G4 V' is one of a voltage, the quantity is a frequency")]
    [InlineData("F2 mhz", "format 'F2 mhz' is neither digits (R, G4, F2, E3, 4) nor a unit, nor both with a space between; did you mean mHz or MHz?")]
    [InlineData("xyz", "format 'xyz' is neither digits (R, G4, F2, E3, 4) nor a unit, nor both with a space between")]
    [InlineData("G99", "format 'G99' asks for more than 30 digits")]
    public void UnknownFormat_IsRefused(string format, string message) =>
        Assert.Equal(message, Assert.Throws<FormatException>(() => Frequency.FromMegahertz(24).ToString(format)).Message);

#if NET
    [Fact]
    public void SpanAndUtf8_WriteWhatToStringWrites_AndReportWhatDoesNotFit()
    {
        Duration value = Duration.FromMicroseconds(2.5);
        Span<char> text = stackalloc char[16];
        Assert.True(value.TryFormat(text, out int length));
        Assert.Equal("2.5 µs", text[..length].ToString());
        Span<byte> utf8 = stackalloc byte[16];
        Assert.True(value.TryFormat(utf8, out int bytes, "F2 ns"));
        Assert.Equal("2500.00 ns", System.Text.Encoding.UTF8.GetString(utf8[..bytes]));
        Assert.False(value.TryFormat(text[..3], out length));
        Assert.Equal(0, length);
        Assert.False(value.TryFormat(utf8[..3], out bytes));
        Assert.Equal(0, bytes);
        Assert.Equal("front edge 2.5 µs", FormattableString.Invariant($"front edge {value}"));
    }

    [Fact]
    public void ReadingAndWriting_AllocateNothing()
    {
        Span<char> buffer = stackalloc char[64];
        Assert.True(Frequency.TryParse("100 MHz", out _) && SampleRate.TryParse("2.5 GSa/s".AsSpan(), out _) && Duration.TryParse("2.8 ns"u8, null, out _));
        Frequency.FromMegahertz(2.5).TryFormat(buffer, out _);
        long before = GC.GetAllocatedBytesForCurrentThread();
        bool isRead = true;
        for (int i = 0; i < 100; i++)
        {
            isRead &= Frequency.TryParse("100 MHz", out Frequency frequency);
            isRead &= SampleRate.TryParse("2.5 GSa/s".AsSpan(), out _);
            isRead &= Duration.TryParse("2.8 ns"u8, null, out _);
            isRead &= frequency.TryFormat(buffer, out _);
        }
        Assert.True(isRead);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
#endif
}
