using System;

namespace Acquisition.Core.Records;

/// <summary>A crossing of a reference level, and how it moves when samples or states do. Times are counted in samples.</summary>
internal readonly struct LevelCrossing
{
    private readonly double _place, _noise, _curvature, _perLow, _perHigh;

    private LevelCrossing(double place, double noise, double curvature, double perLow, double perHigh)
    {
        _place = place;
        _noise = noise;
        _curvature = curvature;
        _perLow = perLow;
        _perHigh = perHigh;
    }

    /// <summary>Whether the signal changes by more around the crossing than by noise: only there is noise over slope an uncertainty (handbook 6.12).</summary>
    internal bool IsClear => !double.IsNaN(_noise);

    /// <param name="samples">The samples.</param>
    /// <param name="states">The states.</param>
    /// <param name="place">Where the straight line between two samples passes the level.</param>
    /// <param name="fraction">The level, from the low to the high state.</param>
    /// <param name="samplesOnEdge">How many samples lie on the edge: the slope of a long one is taken over a quarter of them, so that it is not that of the noise.</param>
    internal static LevelCrossing Of(SampleStore samples, StateLevels states, double place, double fraction, int samplesOnEdge)
    {
        int after = Math.Min(Math.Max((int)Math.Ceiling(place), 1), samples.Length - 1), reach = samplesOnEdge / 8;
        int first = Math.Max(0, after - 1 - reach), last = Math.Min(samples.Length - 1, after + reach);
        double change = samples[last] - samples[first], noise = states.SampleUncertaintySi;
        double slope = change / (last - first), part = place - (after - 1);
        if (!(Math.Abs(change) > 3 * Math.Sqrt(2) * noise))
            return new LevelCrossing(place, double.NaN, 0, 0, 0);
        // The error of a straight line is t (1 - t) / 2 times the second difference; its mean from either side of the interval.
        double bend = 0;
        int bends = 0;
        for (int i = after - 1; i <= after; i++)
        {
            if (i < 1 || i + 1 >= samples.Length)
                continue;
            bend += samples[i - 1] - 2 * samples[i] + samples[i + 1];
            bends++;
        }
        bend = bends > 0 ? bend / bends : 0;
        return new LevelCrossing(
            place,
            noise * Math.Sqrt((1 - part) * (1 - part) + part * part) / slope,
            0.5 * part * (1 - part) * bend / slope,
            (1 - fraction) / slope,
            fraction / slope);
    }

    /// <summary>The uncertainty of the instant itself, of which <paramref name="seconds"/> have passed since the trigger.</summary>
    internal TimingUncertainty Uncertainty(Record record, PulseSettings settings, StateLevels states, double seconds) => new(
        record.Span(Math.Abs(_noise)),
        record.Span(Math.Abs(_curvature)),
        record.Span(OfStates(states, _perLow, _perHigh)),
        settings.TimebaseLimit.SiValue * Math.Abs(seconds) / Math.Sqrt(3),
        settings.ClockJitter.SiValue,
        settings.StatesTimebase);

    /// <summary>The uncertainty of the time from one crossing to another: what a state does to both of them is taken together, with its sign.</summary>
    internal static TimingUncertainty Between(Record record, PulseSettings settings, StateLevels states, in LevelCrossing from, in LevelCrossing to) => new(
        record.Span(Root(from._noise, to._noise)),
        record.Span(Math.Abs(to._curvature - from._curvature)),
        record.Span(OfStates(states, to._perLow - from._perLow, to._perHigh - from._perHigh)),
        settings.TimebaseLimit.SiValue * Math.Abs(record.Span(to._place - from._place)) / Math.Sqrt(3),
        Math.Sqrt(2) * settings.ClockJitter.SiValue,
        settings.StatesTimebase);

    /// <summary>
    /// What a duty factor (from a rising crossing to a falling one, over the period to the next rising one) makes of its three crossings, in parts: the falling one moves it by one over
    /// the period, the rising ones, of which the next cycle has one too, by the rest to either side. The time base cancels.
    /// </summary>
    internal static DutyParts Duty(StateLevels states, in LevelCrossing rise, in LevelCrossing fall, in LevelCrossing next)
    {
        double period = next._place - rise._place, duty = (fall._place - rise._place) / period, first = (1 - duty) / period, second = 1 / period, third = duty / period;
        return new DutyParts(
            Root(fall._noise * second, Root(rise._noise * first, next._noise * third)),
            fall._curvature * second - rise._curvature * first - next._curvature * third,
            (fall._perLow * second - rise._perLow * first - next._perLow * third) * states.LowUncertaintySi,
            (fall._perHigh * second - rise._perHigh * first - next._perHigh * third) * states.HighUncertaintySi,
            Root(second, Root(first, third)));
    }

    private static double OfStates(StateLevels states, double perLow, double perHigh) => Root(perLow * states.LowUncertaintySi, perHigh * states.HighUncertaintySi);

    private static double Root(double a, double b) => Math.Sqrt(a * a + b * b);
}

/// <summary>How far a duty factor moves: by the noise of its crossings, with its sign by the curvature and by either state, and by each sample that the clock is late.</summary>
internal readonly struct DutyParts
{
    internal DutyParts(double noise, double curvature, double low, double high, double perSample)
    {
        Noise = noise;
        Curvature = curvature;
        Low = low;
        High = high;
        PerSample = perSample;
    }

    internal double Noise { get; }

    internal double Curvature { get; }

    internal double Low { get; }

    internal double High { get; }

    internal double PerSample { get; }
}
