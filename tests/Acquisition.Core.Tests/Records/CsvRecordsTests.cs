using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records;

public sealed class CsvRecordsTests
{
    [Theory]
    [InlineData("time/s,lamp (mV)\n0,1.5\n1e-6,2.5\n2e-6,-3\n")]
    [InlineData("time_us;lamp_mV\r\n0;1,5\r\n1;2,5\r\n2;-3\r\n")]
    [InlineData("\uFEFFtime [us]\tlamp [mV]\n0\t1.5\n1\t2.5\n2\t-3")]
    [InlineData("# captured on a bench\n\ntime,lamp\ns,mV\n0,1.5\n0.000001,2.5\n0.000002,-3\n")]
    [InlineData("channel settings,none\n\"time/s\",\"lamp/mV\"\n0,\"1.5\"\n1E-6,2.5\n2E-6,-3.0,\n")]
    [InlineData("time/ms  lamp/mV\n  0      1.5\n  0.001  2.5\n  0.002 -3\n")]
    [InlineData("time/s|lamp/mV\n0|1.5\n1e-6|2.5\n2e-6|-3\n")]
    [InlineData("time/s,lamp/mV,\n0,1.5,\n1e-6,2.5,\n2e-6,-3,\n")]
    [InlineData("time/s,lamp/mV\n0,1.5,\n1e-6,2.5,\n2e-6,-3,\n")]
    [InlineData("# a remark\n# time/s,lamp (mV)\n0,1.5\n1e-6,2.5\n2e-6,-3\n")]
    [InlineData("#time/s lamp/mV\n0 1.5\n1e-6 2.5\n2e-6 -3\n")]
    [InlineData("x-axis,lamp\nsecond,mV\n0,1.5\n1e-6,2.5\n2e-6,-3\n")]
    [InlineData("Time (Seconds),lamp [mV]\n0,1.5\n1e-6,2.5\n2e-6,-3\n")]
    [InlineData("time/s,lamp/mV\n+0,+1.5\n1e\u22126,2.5\n2e-6,\u22123\n")]
    public void Dialects_AreFoundOut(string text)
    {
        Record record = Assert.Single(CsvRecords.Read(new StringReader(text)));

        Assert.Equal("lamp", record.Name);
        Assert.Same(QuantityKind.Voltage, record.Kind);
        Assert.Equal([1.5e-3, 2.5e-3, -3e-3], record.ToSiValues());
        Assert.Equal(1e-6, record.SampleInterval.Seconds, 1e-20);
    }

    [Fact]
    public void EachColumnButTheTimes_IsARecord()
    {
        IReadOnlyList<Record> records = CsvRecords.Read(new StringReader("t,ch1 (V),i1 (mA),index\n-1e-3,1,2,0\n0,3,4,1\n1e-3,5,6,2\n"));

        Assert.Equal(["ch1", "i1"], records.Select(x => x.Name));
        Assert.Equal([QuantityKind.Voltage, QuantityKind.Current], records.Select(x => x.Kind));
        Assert.Equal([2e-3, 4e-3, 6e-3], records[1].ToSiValues());
        Assert.Equal(-1e-3, records[1].Start.Seconds);
    }

    [Fact]
    public void HeadsThatAreUnitsInFull_AreUnits()
    {
        Record record = Assert.Single(CsvRecords.Read(new StringReader("Second,Volt\n0,1.5\n1e-6,2.5\n2e-6,-3\n")));

        Assert.Same(QuantityKind.Voltage, record.Kind);
        Assert.Equal(1e-6, record.SampleInterval.Seconds, 1e-20);
        Assert.Empty(record.Findings);
    }

    [Fact]
    public void NumbersOfSamples_AreNoTimes()
    {
        const string text = "#,v (V)\n0,1\n1,2\n2,3\n";

        Assert.Contains("sample rate", Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new StringReader(text))).Message, StringComparison.Ordinal);
        Record record = Assert.Single(CsvRecords.Read(new StringReader(text), CsvFormat.Sniffed.WithSampleRate(1.kSaPerS())));
        Assert.Equal("v", record.Name);
        Assert.Empty(record.Findings);
    }

    [Theory]
    [InlineData("time/s,a/V\n0,1\n1,2\n2.01,3\n3,4\n", "the times are up to 1 % of an interval (10 ms) off a straight line; they are taken as uniform")]
    [InlineData("time/s,a/V\n0,1\n1,2\n2.0005,3\n3,4\n", null)]
    public void TimesALittleOff_AreTakenAsUniformAloud(string text, string? message) =>
        Assert.Equal(message, Assert.Single(CsvRecords.Read(new StringReader(text))).Findings.SingleOrDefault(x => x.Code == "times-not-exact")?.Message);

    [Fact]
    public void TableWithoutTimes_NeedsTheRate()
    {
        const string text = "index,code\n0,975\n1,981\n2,987\n";

        Assert.Contains("sample rate", Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new StringReader(text))).Message, StringComparison.Ordinal);
        Record record = Assert.Single(CsvRecords.Read(new StringReader(text), CsvFormat.Sniffed.WithSampleRate(360.SaPerS()).WithDefaultKind(QuantityKind.Ratio)));
        Assert.Equal([975, 981, 987], record.ToSiValues());
        Assert.Equal(360, record.SampleRate.SamplesPerSecond);
    }

    [Fact]
    public void Override_DecidesWhatSniffingCannot()
    {
        const string text = "1,5\n2,5\n3,5\n";

        Assert.Equal([5, 5, 5], Assert.Single(CsvRecords.Read(new StringReader(text))).ToSiValues());
        CsvFormat oneColumn = CsvFormat.Sniffed.WithDelimiter(';').WithDecimalSeparator(',').WithSampleRate(1.kSaPerS());
        Assert.Equal([1.5, 2.5, 3.5], Assert.Single(CsvRecords.Read(new StringReader(text), oneColumn)).ToSiValues());
    }

    [Theory]
    [InlineData("time/s,a\n0,1\n1,2\n2,\n3,4\n", 4, 2, "gap")]
    [InlineData("time/s,a\n0,1\n1,2\n2,NaN\n3,4\n", 4, 2, "gap")]
    [InlineData("time/s,a\n0,1\n1,2\n2,3\n5,4\n6,4\n7,4\n", 5, 1, "a gap")]
    [InlineData("time/s,a\n0,1\n1,2\n# comment\n\n2,3\n1.5,4\n3,4\n4,4\n", 7, 1, "do not increase")]
    [InlineData("time/s,a\n0,1\n1,2\n2.2,3\n3,3\n4,3\n", 4, 1, "not uniform")]
    [InlineData("time/s,a\n0,1\n0,2\n0,3\n", 3, 1, "sample rate")]
    [InlineData("time/s,a\n0,1\n1,2\n2,x\n3,4\n4,5\n", 4, 2, "'x'")]
    [InlineData("time/s,a\n0,1\n1,2\n2,3,4\n3,4\n", 4, 3, "more than the 2 fields")]
    [InlineData("time/s,a\n0,1\n1,2\n2\n3,4\n", 4, 2, "1 fields")]
    [InlineData("time/s,a\n0,1\n1,2\n2,1e999\n3,4\n", 4, 2, "finite")]
    [InlineData("time/s,a\n0,1\n1,\"2\n2,3\n", 3, null, "quotation")]
    [InlineData("time/s,a\n0,001,1,5\n0,002,2,5\n0,003,3,5\n", 2, null, "decimal separator")]
    [InlineData("time/s,a\n0,x\n1,2\n2,3\n", 2, null, "neither")]
    [InlineData("", 1, null, "empty")]
    [InlineData("just words\nand more\n", 2, null, "delimiter")]
    [InlineData("time/s,a/V\n", 1, null, "no row of numbers")]
    [InlineData("time,a\n2026-03-14T08:15:00.000,1\n2026-03-14T08:15:00.001,2\n2026-03-14T08:15:00.002,3\n", 2, null, "times of day")]
    [InlineData("time;a\n0;1.002,5\n1;1.003,5\n2;1.004,5\n", 2, null, "thousands")]
    [InlineData("time,a\n0,\"1,234\"\n1,\"1,235\"\n2,\"1,236\"\n", 2, null, "thousands")]
    [InlineData("time/s,a,\n0,1,\n1,2,3\n2,3,\n3,4,\n", 2, 3, "gap")]
    [InlineData("time/s,a\n0,1\n", 2, 1, "sample rate")]
    [InlineData("time/s,a/V\n0,1\n1,inf\n2,3\n3,4\n", 3, 2, "overload")]
    [InlineData("time/s,a/V\n0,1\n1,-Infinity\n2,3\n3,4\n", 3, 2, "overload")]
    public void DamagedTable_IsRefusedWithThePlace(string text, long line, int? column, string words)
    {
        var refusal = Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new StringReader(text)));

        Assert.Equal((line, column), (refusal.Line, refusal.Column));
        Assert.Contains(words, refusal.Message, StringComparison.Ordinal);
    }

    /// <summary>SCPI-99 volume 1, 7.2.1 (from memory): 9.9E37 and -9.9E37 are the infinities, 9.91E37 is not a number.</summary>
    [Theory]
    [InlineData("V", "9.9E37", "9.9E+37 stands for an overload")]
    [InlineData("V", "-9.90000E+37", "-9.9E+37 stands for an overload")]
    [InlineData("mV", "+9.9E+37", "9.9E+37 stands for an overload")]
    [InlineData("V", "9.91E37", "9.91E+37 stands for 'not a number'")]
    [InlineData("MHz", "9.91e+37", "9.91E+37 stands for 'not a number'")]
    public void MarkOfAnOverload_IsNoReading(string unit, string field, string words)
    {
        var refusal = Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new StringReader($"t (s),v ({unit})\n0,1\n1,{field}\n2,3\n3,4\n")));

        Assert.Equal((3, 2), (refusal.Line!.Value, refusal.Column!.Value));
        Assert.Contains(words, refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("t (s),T (°C)", 2, "°C")]
    [InlineData("t (s),rh (%)", 2, "%")]
    [InlineData("t (s),phi [°]", 2, "°")]
    [InlineData("t (s),p (kPa)", 2, "kPa")]
    [InlineData("t (s),p (mmHg)", 2, "mmHg")]
    [InlineData("t/s,L/mH", 2, "mH")]
    [InlineData("t_s,phi_deg", 2, "deg")]
    [InlineData("time (min),v (V)", 1, "min")]
    [InlineData("time,oven\ns,°C", 2, "°C")]
    public void UnitThatIsNotKnown_IsNotTakenForVolts(string heads, int column, string unit)
    {
        string text = heads + "\n0,20\n1,21\n2,22\n";
        var refusal = Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new StringReader(text)));

        Assert.Equal(column, refusal.Column);
        Assert.Contains($"'{unit}' is not a unit that is known here", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("WithDefaultKind", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void KindThatIsStated_StandsForAUnitThatIsNotKnown() =>
        Assert.Same(QuantityKind.Ratio, Assert.Single(CsvRecords.Read(new StringReader("t (s),rh (%)\n0,20\n1,21\n2,22\n"), CsvFormat.Sniffed.WithDefaultKind(QuantityKind.Ratio))).Kind);

    [Theory]
    [InlineData("lamp (left, behind the driver)")]
    [InlineData("in/out")]
    [InlineData("v_C")]
    [InlineData("u_bar")]
    public void NamesAreNoUnits(string head) =>
        Assert.Equal(head, Assert.Single(CsvRecords.Read(new StringReader($"t (s);{head}\n0;20\n1;21\n2;22\n"))).Name);

    [Fact]
    public void LineWithoutEnd_IsRefusedBeforeItFillsTheMemory()
    {
        var refusal = Assert.Throws<RecordFormatException>(() => CsvRecords.Read(new EndlessReader()));

        Assert.Contains("longer", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Prefix_IsMergedBeforeRounding_SoThatEachNumberIsTheNearest()
    {
        Record record = Assert.Single(CsvRecords.Read(new StringReader("time/ns,a/mV\n0,2.8\n1,0.1\n2,123456.789\n")));

        Assert.Equal([2.8e-3, 0.1e-3, 123.456789], record.ToSiValues());
    }

    [Property]
    public void WrittenTable_ReadsBackToTheSameBits(NormalFloat[] values, NormalFloat start, PositiveInt rate)
    {
        if (values.Length < 2)
            return;
        double interval = 1.0 / rate.Get;
        // Times far from zero leave no digits for the interval: such a table cannot carry it, and is not what is tested here.
        double from = Math.IEEERemainder(start.Get, 1000 * interval);
        Record record = Record.FromVolts(values.Select(x => x.Get).ToArray(), SampleRate.FromSamplesPerSecond(rate.Get)).WithStart(Duration.FromSeconds(from)).WithName("a,\"b\"");
        var text = new StringWriter();
        CsvRecords.Write(text, record, record.WithName("second"));

        IReadOnlyList<Record> read = CsvRecords.Read(new StringReader(text.ToString()));

        Assert.Equal(2, read.Count);
        Assert.Equal("a,\"b\"", read[0].Name);
        Assert.Equal(record.ToSiValues().Select(BitConverter.DoubleToInt64Bits), read[0].ToSiValues().Select(BitConverter.DoubleToInt64Bits));
        Assert.Equal(record.SampleInterval, read[0].SampleInterval);
        Assert.Equal(record.Start, read[0].Start);
    }

    [Property]
    public void Number_IsReadAsTheFrameworkReadsIt(NormalFloat number, byte digits)
    {
        string text = number.Get.ToString(digits % 3 == 0 ? "R" : digits % 3 == 1 ? "E8" : "G9", System.Globalization.CultureInfo.InvariantCulture);

        Assert.True(Acquisition.Core.Records.CsvNumber.TryRead(text, 0, text.Length, '.', 0, out double value));
        Assert.Equal(double.Parse(text, System.Globalization.CultureInfo.InvariantCulture), value);
    }

    [OpenDataFact("records/opamp-square-7khz.csv")]
    public void MeasuredTable_IsReadWithItsTimes()
    {
        using FileStream file = File.OpenRead(OpenData.Path("records/opamp-square-7khz.csv"));
        IReadOnlyList<Record> records = CsvRecords.Read(file);

        Assert.Equal(["input", "output"], records.Select(x => x.Name));
        Assert.Equal(3200, records[0].Count.Points);
        Assert.Equal(0.1e-6, records[0].SampleInterval.Seconds, 1e-15);
        Assert.Equal(-160e-6, records[0].Start.Seconds, 1e-15);
    }

    private sealed class EndlessReader : TextReader
    {
        public override int Read() => '1';

        public override int Peek() => '1';
    }

    [Fact]
    public void UnitsThatNoHeadSays_AreAssumedAloud_AndPassedOnByMeasurements()
    {
        const string Text = "t,u\n0,0\n1,0\n2,0\n3,1\n4,2\n5,2\n6,2\n";
        Record record = Assert.Single(CsvRecords.Read(new StringReader(Text)));

        Assert.Equal(["column 1 ('t') says no unit: seconds are assumed", "column 2 ('u') says no unit: volts are assumed"], record.Findings.Select(x => x.Message));
        Assert.All(record.Slice(1, 5).WithName("lamp").Findings, x => Assert.Equal(("unit-assumed", Severity.Warning), (x.Code, x.Severity)));
        Assert.Equal(2, PulseMeasurement.Of(record).Findings.Count(x => x.Code == "unit-assumed"));
        Assert.Equal(1, record.SampleInterval.Seconds);

        Record stated = Assert.Single(CsvRecords.Read(new StringReader(Text), CsvFormat.Sniffed.WithTimeUnit(1.us()).WithDefaultKind(QuantityKind.Current)));
        Assert.Empty(stated.Findings);
        Assert.Equal(1e-6, stated.SampleInterval.Seconds, 1e-18);
        Assert.Same(QuantityKind.Current, stated.Kind);
        Assert.Empty(Assert.Single(CsvRecords.Read(new StringReader("t/ms,u/mV\n0,0\n1,0\n2,0\n"))).Findings);
        Assert.Equal("column 1 says no unit: volts are assumed", Assert.Single(Assert.Single(CsvRecords.Read(new StringReader("1\n2\n3\n"), CsvFormat.Sniffed.WithSampleRate(1.kSaPerS()))).Findings).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => CsvFormat.Sniffed.WithTimeUnit(0.s()));
    }
}
