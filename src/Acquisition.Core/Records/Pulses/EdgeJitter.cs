using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// How regular a train of edges is: period jitter, cycle-to-cycle jitter and time-interval error (definitions of JEDEC JESD65B, from memory; handbook 8.6).
/// Instrument noise is in it: subtract it in quadrature only where it is independent.
/// </summary>
/// <remarks>Immutable. Peak-to-peak values grow with the number of edges: quote that number with them.</remarks>
public sealed class EdgeJitter
{
    private readonly double _period, _periodDeviation, _periodPeakToPeak, _cycleRms, _cycleMost, _errorRms, _errorPeakToPeak, _clockPeriod;

    private EdgeJitter(double[] t, int n, double? idealStart, double? idealPeriod)
    {
        Edges = n;
        var periods = default(RunningMoments);
        double cycleSquares = 0;
        for (int k = 1; k < n; k++)
        {
            periods.Add(t[k] - t[k - 1]);
            if (k < 2)
                continue;
            double change = t[k] - t[k - 1] - (t[k - 1] - t[k - 2]);
            cycleSquares += change * change;
            _cycleMost = Math.Max(_cycleMost, Math.Abs(change));
        }
        _period = periods.Mean;
        _periodDeviation = periods.StandardDeviation;
        _periodPeakToPeak = periods.Maximum - periods.Minimum;
        _cycleRms = Math.Sqrt(cycleSquares / (n - 2));

        double start = idealStart ?? 0, period = idealPeriod ?? 0;
        if (idealPeriod is null)
        {
            // Least squares about the middle edge, from the first edge on: no large numbers are subtracted.
            double middle = (n - 1) / 2.0, mean = 0, slope = 0, weight = 0;
            for (int k = 0; k < n; k++)
                mean += (t[k] - t[0]) / n;
            for (int k = 0; k < n; k++)
            {
                slope += (k - middle) * (t[k] - t[0] - mean);
                weight += (k - middle) * (k - middle);
            }
            period = slope / weight;
            start = t[0] + mean - period * middle;
        }
        _clockPeriod = period;
        double squares = 0, lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
        for (int k = 0; k < n; k++)
        {
            double error = t[k] - start - k * period;
            squares += error * error;
            lowest = Math.Min(lowest, error);
            highest = Math.Max(highest, error);
        }
        _errorRms = Math.Sqrt(squares / n);
        _errorPeakToPeak = highest - lowest;
    }

    /// <summary>How many edges.</summary>
    public int Edges { get; }

    /// <summary>The mean period: last edge less first, over the periods between.</summary>
    public Duration MeanPeriod => Duration.FromSi(_period, "period");

    /// <summary>The period of the clock that the time-interval error refers to: fitted to all edges by least squares, or the ideal one that was given.</summary>
    public Duration ClockPeriod => Duration.FromSi(_clockPeriod, "period");

    /// <summary>The standard deviation of the periods, divisor n - 1.</summary>
    public Duration PeriodJitter => Duration.FromSi(_periodDeviation, "jitter");

    /// <summary>The longest less the shortest period.</summary>
    public Duration PeriodJitterPeakToPeak => Duration.FromSi(_periodPeakToPeak, "jitter");

    /// <summary>The root mean square of the change from a period to the next.</summary>
    public Duration CycleToCycleRms => Duration.FromSi(_cycleRms, "jitter");

    /// <summary>The largest change from a period to the next, up or down.</summary>
    public Duration CycleToCycleMost => Duration.FromSi(_cycleMost, "jitter");

    /// <summary>The root mean square of the edges' deviations from the clock, divisor n.</summary>
    public Duration TimeIntervalErrorRms => Duration.FromSi(_errorRms, "jitter");

    /// <summary>The latest less the earliest deviation from the clock.</summary>
    public Duration TimeIntervalErrorPeakToPeak => Duration.FromSi(_errorPeakToPeak, "jitter");

    /// <summary>The jitter of edges against the clock that fits them best.</summary>
    /// <param name="instants">The instants of edges of one direction, in order, none missing; at least 4, since 3 leave the fit of a clock almost nothing.</param>
    /// <exception cref="ArgumentNullException"><paramref name="instants"/> is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than 4, or they are out of order.</exception>
    public static EdgeJitter Of(IReadOnlyList<Duration> instants) => new(Seconds(instants), instants.Count, null, null);

    /// <summary>The jitter of edges against an ideal clock.</summary>
    /// <param name="instants">The instants of edges of one direction, in order, none missing; at least 4.</param>
    /// <param name="start">When the clock's edge is due that belongs to the first instant.</param>
    /// <param name="period">The clock's period, above 0 s.</param>
    /// <exception cref="ArgumentNullException"><paramref name="instants"/> is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than 4, or they are out of order.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="period"/> is not above 0 s.</exception>
    public static EdgeJitter Of(IReadOnlyList<Duration> instants, Duration start, Duration period) =>
        new(Seconds(instants), instants.Count, start.SiValue, Refuse.UnlessAboveZero(period.SiValue, Duration.Kind, nameof(period)));

    /// <summary>The period jitter that white, independent jitter of the single edges makes: √2 of it (handbook 8.6).</summary>
    public static Duration WhitePeriodJitter(Duration edgeJitter) => Duration.FromSi(Math.Sqrt(2) * edgeJitter.SiValue, nameof(edgeJitter));

    /// <summary>The cycle-to-cycle jitter that white, independent jitter of the single edges makes: √6 of it (handbook 8.6).</summary>
    public static Duration WhiteCycleToCycleJitter(Duration edgeJitter) => Duration.FromSi(Math.Sqrt(6) * edgeJitter.SiValue, nameof(edgeJitter));

    internal static EdgeJitter OfSeconds(double[] instants) => new(instants, instants.Length, null, null);

    private static double[] Seconds(IReadOnlyList<Duration> instants)
    {
        _ = instants ?? throw new ArgumentNullException(nameof(instants));
        if (instants.Count < 4)
            throw new ArgumentException(FormattableString.Invariant($"instants must hold at least 4 edges; held {instants.Count}"), nameof(instants));
        var seconds = new double[instants.Count];
        for (int k = 0; k < seconds.Length; k++)
        {
            seconds[k] = instants[k].SiValue;
            if (k > 0 && !(seconds[k] > seconds[k - 1]))
                throw new ArgumentException(FormattableString.Invariant($"instants must be in order; entry {k} ({instants[k]}) is not after entry {k - 1} ({instants[k - 1]})"), nameof(instants));
        }
        return seconds;
    }

    /// <summary>Period and its jitter in one line.</summary>
    public override string ToString() => FormattableString.Invariant($"period {MeanPeriod.InWords()}, jitter {PeriodJitter.InWords()} rms over {Edges} edges");
}
