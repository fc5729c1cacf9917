using System;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Records;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>Tables at the edges of what is read: many digits, rows of another length, headings of another length, units of uncertainties.</summary>
public sealed class CsvEdgesTests
{
    // Whole numbers just above 2^53 are not all doubles: what is read is the nearest, as double.Parse has it.
    [Theory]
    [InlineData("9007199254740991")]
    [InlineData("9007199254740993")]
    [InlineData("900719925474099.35")]
    [InlineData("123456789012345678")]
    [InlineData("1234567890123456789012")]
    [InlineData("0.000000123456789012345678")]
    [InlineData("1.7976931348623157E308")]
    public void ManyDigits_AreReadAsTheNearestDouble(string digits) =>
        Assert.Equal(double.Parse(digits, CultureInfo.InvariantCulture), CsvRecords.Read(new StringReader($"t/s,u/V\n0,0\n1,{digits}\n2,0\n"))[0].ToSiValues()[1]);

    [Theory]
    [InlineData(" ", "100")]
    [InlineData(",", "\"100\"")]
    [InlineData(",", "100")]
    [InlineData(";", "100")]
    public void ARowWithTooFewFields_IsRefusedAtItsLine(string delimiter, string row)
    {
        string rows = string.Concat(Enumerable.Range(0, 100).Select(i => FormattableString.Invariant($"{i}{delimiter}{i % 7}\n")));
        RecordFormatException refusal = Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new StringReader("t/s" + delimiter + "u/V\n" + rows + row + "\n")));
        Assert.Equal(102, refusal.Line);
        Assert.Contains("1 fields; the rows before have 2", refusal.Message, StringComparison.Ordinal);
    }

    // Who states delimiter and decimal separator has said how to read it: a line above of another length is then no heading.
    [Fact]
    public void AHeadingOfAnotherLength_IsRefused_UnlessTheWholeDialectIsStated()
    {
        const string text = "my table;of;three\n0;1\n1;2\n2;3\n";
        CsvFormat half = CsvFormat.Sniffed.WithDelimiter(';');
        Assert.Contains("a heading row of 3", Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new StringReader(text), half)).Message, StringComparison.Ordinal);
        Assert.Equal(3, CsvRecords.Read(new StringReader(text), half.WithDecimalSeparator('.').WithSampleRate(SampleRate.FromSamplesPerSecond(1)))[0].Length);
    }

    [Theory]
    [InlineData("t/s,u/V\n0,\"1,234.5\"\n", "marks between thousands")]
    [InlineData("t/s;u/V\n0;1'234'567\n", "marks between thousands")]
    [InlineData("t/s;u/V\n0;1.5x\n", "give the delimiter")]
    [InlineData("t/s;u/V\n0;1'2345x\n", "give the delimiter")]
    [InlineData("t/s,u/V\n12:30:01,1\n", "dates and times of day")]
    public void ARowThatIsNoNumbers_SaysWhatMayBeWrong(string text, string what) =>
        Assert.Contains(what, Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new StringReader(text))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("f/Hz,level/dB,u/V\n1,0,0.1\n2,0,0.1\n", 3, "must state its unit")]
    [InlineData("f/Hz,level/dB,u\n1,0,0.1\n2,0,0.1\n", 3, "must state its unit")]
    [InlineData("f/Hz,u/dB,level/dB\n1,0.1,0\n2,0.1,0\n", 2, "does not stand right behind")]
    [InlineData("f/Hz,level/dB,u/dB,u/dB\n1,0,0.1,0.1\n2,0,0.1,0.1\n", 4, "does not stand right behind")]
    [InlineData("f/Hz,a/s,b/Hz\n1,0,1\n2,0,1\n", 3, "holds frequencies, as column 1 does")]
    public void AnUncertaintyOutOfPlaceOrUnit_IsRefusedAtItsColumn(string text, int column, string what)
    {
        RecordFormatException refusal = Assert.Throws<RecordFormatException>(() => CsvSweeps.Read(new StringReader(text)));
        Assert.Equal(column, refusal.Column);
        Assert.Contains(what, refusal.Message, StringComparison.Ordinal);
    }
}
