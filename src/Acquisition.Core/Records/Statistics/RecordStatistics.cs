using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>Extremes, mean, rms and standard deviation of all samples of a record.</summary>
/// <remarks>One pass: over codes by counting them, over numbers by running sums that do not cancel (Welford 1962; Chan, Golub and LeVeque 1979). Immutable.</remarks>
public sealed class RecordStatistics
{
    private readonly RunningMoments _moments;
    private readonly QuantityKind _kind;

    private RecordStatistics(RunningMoments moments, QuantityKind kind)
    {
        _moments = moments;
        _kind = kind;
    }

    /// <summary>How many samples.</summary>
    public PointCount Count => PointCount.FromPoints(_moments.Count);

    /// <summary>The smallest sample.</summary>
    public Quantity Minimum => new(_moments.Minimum, _kind);

    /// <summary>The largest sample.</summary>
    public Quantity Maximum => new(_moments.Maximum, _kind);

    /// <summary>From the smallest to the largest sample.</summary>
    public Quantity PeakToPeak => new(_moments.Maximum - _moments.Minimum, _kind);

    /// <summary>The mean.</summary>
    public Quantity Mean => new(_moments.Mean, _kind);

    /// <summary>The root mean square, mean included.</summary>
    public Quantity Rms
    {
        get
        {
            double mean = _moments.Mean, ac = _moments.PopulationDeviation;
            return new(Math.Sqrt(mean * mean + ac * ac), _kind);
        }
    }

    /// <summary>The root mean square about the mean, divisor n: what an AC-coupled meter reads of a whole number of periods.</summary>
    public Quantity AcRms => new(_moments.PopulationDeviation, _kind);

    /// <summary>The standard deviation, divisor n - 1; absent for a single sample.</summary>
    public Measured<Quantity> StandardDeviation => _moments.Count > 1
        ? new(new Quantity(_moments.StandardDeviation, _kind))
        : new(new Finding("single-value", Severity.Note, "one sample has no spread"));

    /// <summary>The statistics of a record; absent where a sample is not a finite number.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    public static Measured<RecordStatistics> Of(Record record)
    {
        SampleStore samples = (record ?? throw new ArgumentNullException(nameof(record))).Samples;
        var moments = default(RunningMoments);
        if (samples.CountCodes() is { } codes)
        {
            for (int i = codes.First; i <= codes.Last; i++)
                moments.Add(codes.ValueOf(i), codes.Counts[i]);
            return new(new RecordStatistics(moments, record.Kind));
        }
        var block = new double[4096];
        for (int from = 0; from < samples.Length; from += block.Length)
        {
            int count = Math.Min(block.Length, samples.Length - from);
            samples.Copy(from, block, 0, count);
            RunningMoments some = OfBlock(block, count, out int notFinite);
            if (notFinite >= 0)
                return new(PulseFindings.NotFinite(from + notFinite));
            moments.Add(some);
        }
        return new(new RecordStatistics(moments, record.Kind));
    }

    /// <summary>Mean, rms, extremes and count in one line.</summary>
    public override string ToString() => $"mean {Mean.InWords()}, rms {Rms.InWords()}, from {Minimum.InWords()} to {Maximum.InWords()} ({Count})";

    /// <summary>Two sums about the first sample of the block lose nothing that matters within one; blocks are then joined without cancellation.</summary>
    private static RunningMoments OfBlock(double[] block, int count, out int notFinite)
    {
        var moments = default(RunningMoments);
        notFinite = -1;
        for (int i = 0; i < count; i++)
        {
            if (!(Math.Abs(block[i]) <= double.MaxValue))
            {
                notFinite = i;
                break;
            }
            moments.Add(block[i]);
        }
        return moments;
    }
}
