#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
#endif

namespace Acquisition.Core.Records;

/// <summary>
/// Statistics over the transitions of a record. Each value waits for the division by which the one before was added, so that four are added in the time of one, and others are made meanwhile.
/// </summary>
internal sealed class EdgeStatistics
{
    private readonly Record _record;
    private readonly EdgeScan _scan;
    private readonly double _swing;
    private FourMoments _rises = new(), _falls = new(), _ratios = new();

    /// <param name="record">What the transitions are of.</param>
    /// <param name="scan">What found them.</param>
    /// <param name="swing">From the proximal to the distal level of a rising one.</param>
    internal EdgeStatistics(Record record, EdgeScan scan, double swing)
    {
        _record = record;
        _scan = scan;
        _swing = swing;
    }

    /// <summary>Of rising transitions: duration, slew rate, negative pulse and period that they end.</summary>
    internal FourMoments Rises => _rises;

    /// <summary>Of falling transitions: the same, with the positive pulse.</summary>
    internal FourMoments Falls => _falls;

    /// <summary>Duty factor, overshoot, undershoot, preshoot.</summary>
    internal FourMoments Ratios => _ratios;

    /// <summary>Adds transitions of a batch, from one to before another; where they are not a multiple of four, there are none after them.</summary>
    internal void Add(EdgeBatch batch, int first, int to)
    {
        if (batch.IsRising(first))
            AddTimes(batch, first, to, EdgeBatch.Alternating(_swing, -_swing), EdgeBatch.Alternating(0, double.NaN), ref _rises, ref _falls);
        else
            AddTimes(batch, first, to, EdgeBatch.Alternating(-_swing, _swing), EdgeBatch.Alternating(double.NaN, 0), ref _falls, ref _rises);
        AddRatios(batch, first, to);
    }

    /// <param name="batch">The batch.</param>
    /// <param name="first">The first transition.</param>
    /// <param name="to">The one after the last.</param>
    /// <param name="swing">From the proximal to the distal level of the first and the next.</param>
    /// <param name="cycle">0 where a cycle ends with the first, NaN where it does with the next.</param>
    /// <param name="some">Statistics of the direction of the first.</param>
    /// <param name="others">Statistics of the direction of the next.</param>
#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
#endif
    private void AddTimes(EdgeBatch batch, int first, int to, FourNumbers swing, FourNumbers cycle, ref FourMoments some, ref FourMoments others)
    {
#if NET8_0_OR_GREATER
        // In variables of their own, which the compiler keeps in registers: it does not do so with fields.
        Vector256<double> c = some.Counts, m = some.Means, s = some.Squares, l = some.Minima, h = some.Maxima;
        Vector256<double> otherC = others.Counts, otherM = others.Means, otherS = others.Squares, otherL = others.Minima, otherH = others.Maxima;
#endif
        for (int k = first; k < to; k += 4)
        {
            FourNumbers now = FourNumbers.Load(batch.Middle, k), before = FourNumbers.Load(batch.Middle, k - 1), earlier = FourNumbers.Load(batch.Middle, k - 2);
            FourNumbers seconds = _record.Span(FourNumbers.Load(batch.Duration, k));
            FourNumbers slew = swing / seconds, pulse = _record.Span(now - before), period = _record.Span(now - earlier);
            ((before - earlier) / (now - earlier) + cycle).Store(batch.DutyFactor, k);
            FourNumbers.Transpose(ref seconds, ref slew, ref pulse, ref period);
#if NET8_0_OR_GREATER
            FourMoments.Add(seconds, ref c, ref m, ref s, ref l, ref h);
            FourMoments.Add(slew, ref otherC, ref otherM, ref otherS, ref otherL, ref otherH);
            FourMoments.Add(pulse, ref c, ref m, ref s, ref l, ref h);
            FourMoments.Add(period, ref otherC, ref otherM, ref otherS, ref otherL, ref otherH);
#else
            some.Add(seconds);
            others.Add(slew);
            some.Add(pulse);
            others.Add(period);
#endif
        }
#if NET8_0_OR_GREATER
        (some.Counts, some.Means, some.Squares, some.Minima, some.Maxima) = (c, m, s, l, h);
        (others.Counts, others.Means, others.Squares, others.Minima, others.Maxima) = (otherC, otherM, otherS, otherL, otherH);
#endif
    }

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
#endif
    private void AddRatios(EdgeBatch batch, int first, int to)
    {
        EdgeLevels levels = _scan.Levels(batch.IsRising(first)), others = _scan.Levels(!batch.IsRising(first));
#if NET8_0_OR_GREATER
        Vector256<double> c = _ratios.Counts, m = _ratios.Means, s = _ratios.Squares, l = _ratios.Minima, h = _ratios.Maxima;
#endif
        for (int k = first; k < to; k++)
        {
            FourNumbers ratios = levels.Aberrations(batch.Extremes[k]).WithFirst(batch.DutyFactor[k]);
            (levels, others) = (others, levels);
#if NET8_0_OR_GREATER
            FourMoments.Add(ratios, ref c, ref m, ref s, ref l, ref h);
#else
            _ratios.Add(ratios);
#endif
        }
#if NET8_0_OR_GREATER
        (_ratios.Counts, _ratios.Means, _ratios.Squares, _ratios.Minima, _ratios.Maxima) = (c, m, s, l, h);
#endif
    }
}
