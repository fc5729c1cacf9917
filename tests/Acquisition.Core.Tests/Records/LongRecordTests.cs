using System;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records;

public sealed class LongRecordTests
{
    /// <summary>200 million 8-bit samples, an edge every 1000 of them: pulses, statistics, histogram and preview in less than 64 MB beside the data, however they are allocated.</summary>
    [Fact]
    public void TwoHundredMillionSamples_AreMeasuredInLessThanSixtyFourMegabytes()
    {
        const int points = 200_000_000;
        byte[] pattern = new byte[2000 * 100];
        for (int i = 0; i < pattern.Length; i++)
        {
            int place = i % 2000;
            pattern[i] = (byte)(40 + 30 * (Math.Min(5, place) - Math.Clamp(place - 1000, 0, 5)) + (i * 7919 >> 4) % 3);
        }
        RecordBuilder builder = RecordBuilder.OfByteCodes(1.GSaPerS(), 1.mV(), 0.V(), expected: PointCount.FromPoints(points));
        for (int filled = 0; filled < points; filled += pattern.Length)
            builder.Append(pattern, 0, pattern.Length);
        Record record = builder.Build();
        long before = GC.GetAllocatedBytesForCurrentThread();

        PulseMeasurement pulses = PulseMeasurement.Of(record);
        RecordStatistics statistics = RecordStatistics.Of(record).Value;
        RecordPreview preview = RecordPreview.Of(record, 4000);
        AmplitudeHistogram histogram = AmplitudeHistogram.Of(record, 256);

        // All that was allocated, garbage included: the working memory at any time is less.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 64_000_000);
        Assert.InRange(pulses.TransitionCount, 199_999, 200_001);
        Assert.Equal(2e-6, pulses.Period.Value.Mean.Seconds, 1e-12);
        Assert.Equal(points, statistics.Count.Points);
        Assert.Equal(4000, preview.Columns);
        Assert.Equal(256, histogram.Counts.Count);
        Assert.Contains(pulses.Findings, x => x.Code == "list-cut");
    }
}
