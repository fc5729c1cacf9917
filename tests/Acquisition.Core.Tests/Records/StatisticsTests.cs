using System;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records;

public sealed class StatisticsTests
{
    [Fact]
    public void StatisticsOfARecord_AreSaidInALine() =>
        Assert.Equal("mean 1 V, rms 1.291 V (816.5 mV about the mean), from 0 V to 2 V (2 V peak to peak), 3 pts", RecordStatistics.Of(Record.FromVolts([0, 1, 2], 1.MSaPerS())).Value.ToString());

    [Property]
    public void Statistics_OfCodes_AreThoseOfTheirNumbers(byte[] codes)
    {
        if (codes.Length < 2)
            return;
        Record record = Record.FromCodes(codes, 1.MSaPerS(), 0.5.V(), -3.V());
        RecordStatistics ofCodes = RecordStatistics.Of(record).Value, ofNumbers = RecordStatistics.Of(Record.FromVolts(record.ToSiValues(), 1.MSaPerS())).Value;

        Assert.Equal(ofNumbers.Mean.SiValue, ofCodes.Mean.SiValue, 1e-12);
        Assert.Equal(ofNumbers.Rms.SiValue, ofCodes.Rms.SiValue, 1e-10);
        Assert.Equal(ofNumbers.StandardDeviation.Value.SiValue, ofCodes.StandardDeviation.Value.SiValue, 1e-10);
        Assert.Equal(ofNumbers.PeakToPeak, ofCodes.PeakToPeak);
    }

    [Fact]
    public void Statistics_OfRecordWithNaN_AreAbsent()
    {
        Assert.Equal("not-a-number", RecordStatistics.Of(Record.FromVolts([1, double.NaN], 1.MSaPerS())).Reason!.Code);
        Assert.Equal("single-value", RecordStatistics.Of(Record.FromVolts([1.0], 1.MSaPerS())).Value.StandardDeviation.Reason!.Code);
    }

    /// <summary>NIST Statistical Reference Datasets, univariate: NumAcc3 and NumAcc4 defeat one-pass formulas.</summary>
    [OpenDataFact("reference/nist-strd/NumAcc4.dat")]
    public void Statistics_AgreeWithNistCertifiedValues()
    {
        foreach ((string file, double mean, double deviation, int digits) in new[] { ("NumAcc3", 1000000.2, 0.1, 9), ("NumAcc4", 10000000.2, 0.1, 7) })
        {
            double[] values = File.ReadAllLines(OpenData.Path($"reference/nist-strd/{file}.dat"))
                .Select(x => x.Trim()).Where(x => double.TryParse(x, NumberStyles.Float, CultureInfo.InvariantCulture, out _)).Select(x => double.Parse(x, CultureInfo.InvariantCulture)).ToArray();
            RecordStatistics statistics = RecordStatistics.Of(Record.FromVolts(values, 1.MSaPerS())).Value;
            Assert.Equal(1001, values.Length);
            Assert.Equal(mean, statistics.Mean.SiValue, 1e-8);
            Assert.Equal(deviation, statistics.StandardDeviation.Value.SiValue, Math.Pow(10, -digits));
        }
    }

    [Property]
    public void Preview_LosesNoSpike(byte[] codes, PositiveInt columns)
    {
        if (codes.Length == 0)
            return;
        Record record = Record.FromCodes(codes, 1.MSaPerS(), 1.V(), 0.V());
        RecordPreview preview = RecordPreview.Of(record, columns.Get);

        Assert.Equal(codes.Min(), preview.LowSiValues.Min());
        Assert.Equal(codes.Max(), preview.HighSiValues.Max());
        Assert.Equal(Math.Min(columns.Get, codes.Length), preview.Columns);
        for (int i = 0; i < preview.Columns; i++)
        {
            byte[] column = codes[(int)preview.FirstSample(i)..(int)preview.FirstSample(i + 1)];
            Assert.Equal((column.Min(), column.Max()), ((int)preview.LowSiValues[i], (int)preview.HighSiValues[i]));
        }
    }

    [Fact]
    public void Histogram_CountsEverySampleOnce_AndClosesTheLastBin()
    {
        AmplitudeHistogram histogram = AmplitudeHistogram.Of(Record.FromVolts([0, 1, 2, 3, 4], 1.MSaPerS()), 4);

        Assert.Equal([1L, 1, 1, 2], histogram.Counts);
        Assert.Equal(1, histogram.BinWidth.SiValue);
    }
}
