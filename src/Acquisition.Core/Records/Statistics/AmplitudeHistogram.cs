using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>How often the samples of a record fall into equal bins from its smallest to its largest sample; the last bin includes the largest (handbook 8.2).</summary>
/// <remarks>Immutable. One pass over codes, two over numbers.</remarks>
public sealed class AmplitudeHistogram
{
    private readonly long[] _counts;
    private readonly double[] _sums;

    private AmplitudeHistogram(double low, double width, QuantityKind kind, long[] counts, double[] sums, IReadOnlyList<Finding> findings)
    {
        LowSi = low;
        WidthSi = width;
        Kind = kind;
        _counts = counts;
        _sums = sums;
        Findings = findings.Frozen();
    }

    internal double LowSi { get; }

    internal double WidthSi { get; }

    /// <summary>What the samples are.</summary>
    public QuantityKind Kind { get; }

    /// <summary>What the record says of itself.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Samples in each bin, from the lowest up.</summary>
    public IReadOnlyList<long> Counts => Array.AsReadOnly(_counts);

    /// <summary>The smallest sample: the lower edge of the first bin.</summary>
    public Quantity Low => new(LowSi, Kind);

    /// <summary>The width of a bin.</summary>
    public Quantity BinWidth => new(WidthSi, Kind);

    /// <summary>The histogram of a record.</summary>
    /// <param name="record">The record.</param>
    /// <param name="bins">How many bins: 2 to 65536.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="ArgumentException">A sample is not a finite number.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bins"/> is not 2 to 65536.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static AmplitudeHistogram Of(Record record, int bins, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        _ = record ?? throw new ArgumentNullException(nameof(record));
        if (bins is < 2 or > 65536)
            throw new ArgumentOutOfRangeException(nameof(bins), FormattableString.Invariant($"bins must be 2 to 65536; was {bins}"));
        LongCall? call = LongCall.Of(progress, cancellation);
        if (record.Samples.FirstNotFinite(call?.Part(0, 0.2)) is >= 0 and var index)
            throw new ArgumentException(FormattableString.Invariant($"record must hold finite samples; sample {index} is not"), nameof(record));
        AmplitudeDistribution distribution = AmplitudeDistribution.Of(record.Samples, bins, call?.Part(0.2, 1));
        call?.Completed();
        return Of(distribution, bins, record.Kind, record.Findings);
    }

    internal static AmplitudeHistogram Of(AmplitudeDistribution distribution, int bins, QuantityKind kind, IReadOnlyList<Finding> findings)
    {
        var counts = new long[bins];
        var sums = new double[bins];
        double range = distribution.Maximum - distribution.Minimum;
        for (int i = 0; i < distribution.Counts.Length; i++)
        {
            if (distribution.Counts[i] == 0)
                continue;
            int bin = range > 0 ? Math.Min(bins - 1, (int)((distribution.MeanOf(i) - distribution.Minimum) / range * bins)) : 0;
            counts[bin] += distribution.Counts[i];
            sums[bin] += distribution.Sums[i];
        }
        return new AmplitudeHistogram(distribution.Minimum, range / bins, kind, counts, sums, findings);
    }

    internal double CenterOf(int bin) => LowSi + (bin + 0.5) * WidthSi;

    internal double MeanOf(int bin) => _sums[bin] / _counts[bin];

    /// <summary>The fullest bin, the first of equal ones, from one bin to before another.</summary>
    internal int Mode(int from, int to)
    {
        int mode = from;
        for (int i = from; i < to; i++)
        {
            if (_counts[i] > _counts[mode])
                mode = i;
        }
        return mode;
    }
}
