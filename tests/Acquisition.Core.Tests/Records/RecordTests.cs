using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records;

public sealed class RecordTests
{
    [Fact]
    public void Window_OfNSamples_IsNIntervals()
    {
        Record record = Record.FromVolts(new double[1001], 1.MSaPerS());

        Assert.Equal(1001e-6, record.Window.Seconds, 1e-18);
        Assert.Equal(1000e-6, record.TimeAt(1000).Seconds, 1e-18);
        Assert.Equal(1001, record.Count.Points);
    }

    [Fact]
    public void Codes_AreReadAsTwosComplementOrOffsetBinary_OnRequest()
    {
        byte[] codes = [0, 1, 127, 128, 255];
        Record offsetBinary = Record.FromCodes(codes, 1.GSaPerS(), 10.mV(), -1.28.V());
        Record twosComplement = Record.FromCodes(codes, 1.GSaPerS(), 10.mV(), 0.V(), signed: true);

        Assert.Equal([-1.28, -1.27, -0.01, 0, 1.27], offsetBinary.ToSiValues().Select(x => Math.Round(x, 12)));
        Assert.Equal([0, 0.01, 1.27, -1.28, -0.01], twosComplement.ToSiValues().Select(x => Math.Round(x, 12)));
        Assert.Equal(-1.28, twosComplement.LowLimit!.Value.SiValue, 12);
        Assert.Equal(1.27, twosComplement.HighLimit!.Value.SiValue, 12);
        Assert.Equal(0.01, twosComplement.Resolution!.Value.SiValue);

        short[] words = [0, 1, short.MaxValue, short.MinValue, -1];
        Assert.Equal([0, 1, 32767, -32768, -1], Record.FromCodes(words, 1.GSaPerS(), 1.V(), 0.V()).ToSiValues());
        Assert.Equal([0, 1, 32767, 32768, 65535], Record.FromCodes(words, 1.GSaPerS(), 1.V(), 0.V(), signed: false).ToSiValues());
    }

    [Fact]
    public void Slice_SharesSamplesAndKeepsTheirTimes()
    {
        Record record = Record.FromCodes(Enumerable.Range(0, 100).Select(x => (byte)x).ToArray(), 1.MSaPerS(), 1.A(), 0.A()).WithStart(-50.us());
        Record slice = record.Slice(60, 10);

        Assert.Equal(10e-6, slice.Start.Seconds, 15);
        Assert.Equal(60, slice.ReadingAt(0));
        Assert.Equal(69, slice.ValueAt(9).SiValue);
        Assert.Same(QuantityKind.Current, slice.ValueAt(0).Kind);
        Assert.Throws<ArgumentOutOfRangeException>(() => record.Slice(95, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => record.TimeAt(100));
    }

    [Fact]
    public void Array_IsCopiedUnlessHandedOver()
    {
        double[] volts = [1, 2, 3];
        Record copied = Record.FromVolts(volts, 1.MSaPerS()), kept = Record.FromVolts(volts, 1.MSaPerS(), copy: false);
        volts[0] = 7;

        Assert.Equal(1, copied.ReadingAt(0));
        Assert.Equal(7, kept.ReadingAt(0));
    }

    [Fact]
    public void EmptyOrUnclockedRecord_IsRefusedByName()
    {
        Assert.Contains("volts", Assert.Throws<ArgumentException>(() => Record.FromVolts(Array.Empty<double>(), 1.MSaPerS())).Message, StringComparison.Ordinal);
        Assert.Contains("rate", Assert.Throws<ArgumentOutOfRangeException>(() => Record.FromVolts([1.0], default)).Message, StringComparison.Ordinal);
        Assert.Contains("step", Assert.Throws<ArgumentOutOfRangeException>(() => Record.FromCodes([(byte)1], 1.MSaPerS(), 0.V(), 0.V())).Message, StringComparison.Ordinal);
    }

    [Property(MaxTest = 500)]
    public void Searches_AgreeWithAPlainLoop_WhateverTheStore(byte[] codes, byte level, bool signed, ushort start, ushort end)
    {
        byte[] data = codes.Length == 0 ? [level] : Enumerable.Range(0, 300).Select(i => codes[i * i % codes.Length]).ToArray();
        double[] volts = Record.FromCodes(data, 1.MSaPerS(), 0.1.V(), 0.3.V(), signed).ToSiValues();
        double threshold = 0.3 + 0.1 * (signed ? level - 128 : level);
        int from = start % data.Length, to = from + end % (data.Length - from) + 1;
        Check(((ByteCodes)Record.FromCodes(data, 1.MSaPerS(), 0.1.V(), 0.3.V(), signed).Samples).View, threshold, from, to);
        Check(((ShortCodes)Record.FromCodes(data.Select(x => signed ? (short)(sbyte)x : x).ToArray(), 1.MSaPerS(), 0.1.V(), 0.3.V()).Samples).View, threshold, from, to);
        Check(((NumberSamples<double, DoublePrecision>)Record.FromVolts(volts, 1.MSaPerS()).Samples).View, threshold, from, to);
        Check(((NumberSamples<float, SinglePrecision>)Record.FromVolts(volts.Select(x => (float)x).ToArray(), 1.MSaPerS()).Samples).View, threshold, from, to);
    }

    private static void Check<TView>(TView view, double threshold, int from, int to)
        where TView : struct, ISampleView
    {
        Level level = view.LevelOf(threshold);
        int above = from, below = from;
        while (above < to && view[above] < threshold) above++;
        while (below < to && view[below] >= threshold) below++;
        Assert.Equal(above, view.NextAtOrAbove(level, from, to));
        Assert.Equal(below, view.NextBelow(level, from, to));
        Assert.Equal(view[from] >= threshold, view.IsAtOrAbove(from, level));
        double[] values = Enumerable.Range(from, to - from).Select(i => view[i]).ToArray();
        Assert.Equal(values.Min(), view.Extreme(false, from, to));
        Assert.Equal(values.Max(), view.Extreme(true, from, to));
    }

    [Property]
    public void CodeCounts_CountEverySample(byte[] codes, bool signed)
    {
        if (codes.Length == 0)
            return;
        Record record = Record.FromCodes(codes, 1.MSaPerS(), 0.5.V(), 1.V(), signed);
        var counts = record.Samples.CountCodes()!;
        foreach (var group in record.ToSiValues().GroupBy(x => x))
            Assert.Equal(group.Count(), counts.Counts[(int)Math.Round((group.Key - counts.ValueOf(0)) / 0.5)]);
        Assert.Equal(codes.Length, counts.Counts.Sum());
    }
}
