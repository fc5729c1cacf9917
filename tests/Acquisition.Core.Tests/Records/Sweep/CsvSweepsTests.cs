using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>Sweeps read from tables: what the columns are taken for, and where a table is refused.</summary>
public class CsvSweepsTests
{
    private const string Bench = "f/MHz;direct (dB);u (dB);probe A [mV]\r\n100;-0,31;0,1;966\r\n10;0,00;0,1;1000\r\n1000;-2,62;0,15;623\r\n";

    private static IReadOnlyList<Sweep> Read(string text, CsvFormat? format = null) => CsvSweeps.Read(new StringReader(text), format);

    [Fact]
    public void TableOfABench_MakesASweepOfEachColumnOfLevels()
    {
        IReadOnlyList<Sweep> sweeps = Read(Bench);

        Assert.Equal(["direct", "probe A"], sweeps.Select(sweep => sweep.Name));
        Assert.Equal([1e7, 1e8, 1e9], sweeps[0].Points.Select(point => point.Frequency.SiValue));
        Assert.Equal([0.00, -0.31, -2.62], sweeps[0].Points.Select(point => point.Level.Decibels));
        Assert.Equal([0.1, 0.1, 0.15], sweeps[0].Points.Select(point => point.Uncertainty!.Value.Decibels));
        Assert.All(sweeps[1].Points, point => Assert.Null(point.Uncertainty));
    }

    /// <summary>0.966 V over 1 V: 20 lg 0.966 = -0.3005 dB, 20 lg 0.623 = -4.1102 dB (four-figure logarithms).</summary>
    [Fact]
    public void Voltages_AreTwentyTimesTheirLogarithm()
    {
        Sweep probe = Read(Bench)[1];
        Assert.Equal(-0.3005, probe.RelativeLevelAt(100.MHz()).Decibels, 4);
        Assert.Equal(-4.1102, probe.RelativeLevelAt(1.GHz()).Decibels, 4);
    }

    /// <summary>Half the power is 3.0103 dB less, by definition of the decibel (IEC 60027-3).</summary>
    [Fact]
    public void Powers_AreTenTimesTheirLogarithm() =>
        Assert.Equal(-3.0103, Read("f (Hz),P (mW)\n1000,2\n2000,1\n")[0].RelativeLevelAt(2.kHz()).Decibels, 4);

    /// <summary>10 mV of 1 V are 1 %: 20/ln 10 of it is 0.0869 dB.</summary>
    [Fact]
    public void UncertaintyOfAVoltage_BecomesOneOfItsLevel() =>
        Assert.Equal(0.0869, Read("f/Hz,out/V,u(out)/mV\n1000,1,10\n")[0].Points[0].Uncertainty!.Value.Decibels, 4);

    [Fact]
    public void FrequenciesWithoutUnit_AreHertzAndSaySo()
    {
        Sweep sweep = Read("frequency,level (dBm)\n1e6,-3\n2e6,-4\n")[0];
        Assert.Equal(1.MHz(), sweep.Lowest);
        Assert.Contains(sweep.Findings, finding => finding.Code == "unit-assumed" && finding.Message.Contains("hertz", StringComparison.Ordinal));
    }

    [Fact]
    public void Name_StaysWithTheSweep()
    {
        Sweep sweep = Read(Bench)[0];
        Assert.Equal("direct", sweep.WithReference(100.MHz()).WithReferenceBand(10.MHz(), 1.GHz()).WithReferenceLevel(0.dB()).Between(10.MHz(), 1.GHz()).Name);
    }

    [Theory]
    [InlineData("f/Hz,level\n1,0\n", 1, "line 1, column 2: 'level' says no unit", "state it in the head, as level/dB")]
    [InlineData("level/dB,u/dB\n1,0\n", 1, "no column of frequencies", "f/Hz")]
    [InlineData("f/Hz,g/kHz,level/dB\n1,1,0\n", 1, "holds frequencies, as column 1 does", "split the table")]
    [InlineData("f/Hz,t/K\n1,1\n", 1, "which is no level", "write dB")]
    [InlineData("f/Hz,out/%\n1,1\n", 1, "'%' is not a unit that is known here", "write levels in dB")]
    [InlineData("f/Hz\n1\n2\n", 1, "frequencies and no levels", "levels")]
    [InlineData("f/Hz,u/dB,level/dB\n1,0,0\n", 1, "does not stand right behind a column of levels", "uncertainty")]
    [InlineData("f/Hz,level/dB,u/V\n1,0,0\n", 1, "must state its unit", "dB")]
    [InlineData("f/Hz,level/dB\n1,0\n0,1\n", 3, "above 0 Hz", "leave the row out")]
    [InlineData("f/Hz,level/dB\n5,0\n7,1\n5,2\n", 4, "stands in line 2 already", "combine repeated readings")]
    [InlineData("f/Hz,out/V\n5,1\n7,0\n", 3, "no level in decibels", "above 0")]
    [InlineData("f/Hz,level/dB,u/dB\n5,1,-0.1\n", 2, "standard uncertainty", "at least 0")]
    [InlineData("f/Hz,level/dB\n5,1\n7,\n", 3, "a gap", "empty")]
    [InlineData("f/Hz,level/dB\n5,1\n7,9.9E37\n", 3, "overload", "larger range")]
    public void UnusableTable_IsRefusedWithItsLineAndCure(string text, long line, string what, string cure)
    {
        RecordFormatException refusal = Assert.Throws<RecordFormatException>(() => Read(text));
        Assert.Equal(line, refusal.Line);
        Assert.Contains(what, refusal.Message, StringComparison.Ordinal);
        Assert.Contains(cure, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void StatedKind_IsThatOfColumnsWithoutUnit() =>
        Assert.Equal(-6.0206, Read("f/Hz,gain\n1,1\n2,0.5\n", CsvFormat.Sniffed.WithDefaultKind(QuantityKind.Ratio))[0].RelativeLevelAt(Frequency.FromHertz(2)).Decibels, 4);

    [Fact]
    public void Stream_IsReadAsItsText() =>
        Assert.Equal(Read(Bench)[0].Points.Select(point => point.Level), CsvSweeps.Read(new MemoryStream(Encoding.UTF8.GetBytes(Bench)))[0].Points.Select(point => point.Level));

    /// <summary>A sweep is a set of points: in whichever order a table lists them, it reads the same.</summary>
    [Property(MaxTest = 100)]
    public Property OrderOfRows_ChangesNothing() => Prop.ForAll(
        Gen.Choose(1, 1_000_000).NonEmptyListOf().Select(list => list.Distinct().ToArray()).ToArbitrary(),
        Gen.Choose(0, int.MaxValue - 1).ToArbitrary(),
        (hertz, seed) =>
        {
            string Table(IEnumerable<int> frequencies) => "f/Hz,level/dB\n" + string.Concat(frequencies.Select(f => string.Format(CultureInfo.InvariantCulture, "{0},{1}\n", f, -(f % 977) / 8.0)));
            var random = new Random(seed);
            Sweep shuffled = Read(Table(hertz.OrderBy(_ => random.Next())))[0], sorted = Read(Table(hertz.OrderBy(f => f)))[0];
            return sorted.Points.Select(point => (point.Frequency, point.Level)).SequenceEqual(shuffled.Points.Select(point => (point.Frequency, point.Level)))
                && sorted.Points.Select(point => (int)point.Frequency.SiValue).SequenceEqual(hertz.OrderBy(f => f));
        });
}
