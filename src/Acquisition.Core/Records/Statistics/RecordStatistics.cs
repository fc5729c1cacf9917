using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>Extremes, mean, rms and standard deviation of all samples of a record.</summary>
/// <remarks>One pass: over codes by counting them, over numbers by running sums that do not cancel (Welford 1962; Chan, Golub and LeVeque 1979). Immutable.</remarks>
public sealed class RecordStatistics
{
    private readonly RunningMoments _moments;
    private readonly QuantityKind _kind;

    private RecordStatistics(RunningMoments moments, QuantityKind kind, IReadOnlyList<Finding> findings)
    {
        _moments = moments;
        _kind = kind;
        Findings = findings.Frozen();
    }

    /// <summary>How many samples.</summary>
    public PointCount Count => PointCount.FromPoints(_moments.Count);

    /// <summary>What to know about the samples: what the record says of itself, and whether some lie at the ends of the converter.</summary>
    public IReadOnlyList<Finding> Findings { get; }

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
    /// <param name="record">The record.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static Measured<RecordStatistics> Of(Record record, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        _ = record ?? throw new ArgumentNullException(nameof(record));
        LongCall? call = LongCall.Of(progress, cancellation);
        RunningMoments moments = Moments(record.Samples, call, out int notFinite);
        if (notFinite >= 0)
        {
            call?.Completed();
            return new(PulseFindings.NotFinite(notFinite));
        }
        List<Finding> findings = ConverterLimits.Findings(record, moments.Minimum, moments.Maximum, "extremes, mean and rms may be those of the converter", call);
        call?.Completed();
        return new(new RecordStatistics(moments, record.Kind, findings));
    }

    private static RunningMoments Moments(SampleStore samples, LongCall? call, out int notFinite)
    {
        var moments = default(RunningMoments);
        notFinite = -1;
        if (CodeCounts.Of(samples, call) is { } codes)
        {
            for (int i = codes.First; i <= codes.Last; i++)
                moments.Add(codes.ValueOf(i), codes.Counts[i]);
            return moments;
        }
        var block = new double[4096];
        for (int from = 0, count; from < samples.Length; from += count)
        {
            if (from % SampleStore.SamplesPerLook == 0)
                call?.Reached(from, samples.Length);
            count = Math.Min(block.Length, samples.Length - from);
            samples.Copy(from, block, 0, count);
            moments.Add(OfBlock(block, count, out int at));
            if (at < 0)
                continue;
            notFinite = from + at;
            break;
        }
        return moments;
    }

    /// <summary>Mean, rms, rms about the mean, extremes with their distance and count in one line.</summary>
    public override string ToString() => $"mean {Mean.InWords()}, rms {Rms.InWords()} ({AcRms.InWords()} about the mean), from {Minimum.InWords()} to {Maximum.InWords()} ({PeakToPeak.InWords()} peak to peak), {Count}";

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
