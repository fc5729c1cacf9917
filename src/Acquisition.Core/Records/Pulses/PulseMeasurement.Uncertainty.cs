using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

// Standard uncertainties of the means. What repetitions average out is divided by the root of their number; what they do not is kept, as the root mean square of some transitions.
// Quantisation is averaged out where noise or the phases of the samples carry the edges over the steps, and only there.
public sealed partial class PulseMeasurement
{
    /// <summary>So many transitions at most are asked, evenly from the list: what they have in common does not need all of them.</summary>
    private const int MostAsked = 64;

    /// <summary>The standard uncertainty of the mean of <see cref="RisingDuration"/>.</summary>
    public Measured<TimingUncertainty> RisingDurationUncertainty => OfMean(RisingDuration, (k, t) => t.IsRising ? t.TransitionDurationUncertainty : null);

    /// <summary>The standard uncertainty of the mean of <see cref="FallingDuration"/>.</summary>
    public Measured<TimingUncertainty> FallingDurationUncertainty => OfMean(FallingDuration, (k, t) => t.IsRising ? null : t.TransitionDurationUncertainty);

    /// <summary>The standard uncertainty of the mean of <see cref="PositivePulseDuration"/>.</summary>
    public Measured<TimingUncertainty> PositivePulseDurationUncertainty => OfMean(PositivePulseDuration, (k, t) => t.IsRising ? Interval(k, t, 1) : null);

    /// <summary>The standard uncertainty of the mean of <see cref="NegativePulseDuration"/>.</summary>
    public Measured<TimingUncertainty> NegativePulseDurationUncertainty => OfMean(NegativePulseDuration, (k, t) => t.IsRising ? null : Interval(k, t, 1));

    /// <summary>
    /// The standard uncertainty of the mean of <see cref="Period"/>. The periods follow each other, so that their mean is the time from the first to the last edge over their number, n,
    /// and the errors of the edges between cancel: what noise makes of two instants, and of either state and the interpolation what differs between them, is divided by n. Jitter of
    /// single edges is divided by n too. Jitter that adds up from period to period is divided by the root of n; how much of the spread is of that kind is told by the time-interval
    /// error, which it makes grow. Where that is absent, and for fewer than 8 edges, all of the spread is taken to be of that kind.
    /// </summary>
    public Measured<TimingUncertainty> PeriodUncertainty
    {
        get
        {
            if (!Period.HasValue)
                return new(Period.Reason!);
            // The ends of the list; where the signal is too flat there for its noise, the next edges stand for them.
            bool rising = Period.Value.Count > 1 || IsFirstPeriodRising;
            int from = NextClear(rising, 0, 1), to = NextClear(rising, Transitions.Count - 1, -1);
            if (from < 0 || to <= from)
                return new(Transitions.Count < 3 ? PulseFindings.NotEnough("an uncertainty", "three listed transitions") : PulseFindings.SlopeInNoise());
            TimingUncertainty ends = Transitions[from].IntervalUncertainty(Transitions[to]).Value;
            double n = Period.Value.Count, listed = (to - from) / 2;
            double spread = Period.Value.StandardDeviation.HasValue ? Period.Value.StandardDeviation.Value.SiValue : 0, walk = Walk(spread * spread);
            // A list that is cut ends before the last edge, and the limit of the time base grows with the interval.
            return new(ends.OfOne(n, Math.Max(ends.RandomSquareSi, spread * spread - walk) + n * walk, ends.TimebaseSi / listed));
        }
    }

    /// <summary>The standard uncertainty of the mean of <see cref="DutyFactor"/>. What both edges and all cycles have in common is taken together, with its sign.</summary>
    public Measured<DutyFactorUncertainty> DutyFactorUncertainty
    {
        get
        {
            if (!DutyFactor.HasValue)
                return new(DutyFactor.Reason!);
            double random = 0, curvature = 0, low = 0, high = 0;
            int asked = 0;
            for (int k = 0, stride = Math.Max(1, Transitions.Count / (2 * MostAsked)) | 1; k + 2 < Transitions.Count; k += stride)
            {
                if (!Transitions[k].IsRising || Transitions[k].DutyTo(Transitions[k + 1], Transitions[k + 2]) is not { } one)
                    continue;
                double jitter = one.PerSample * Settings.ClockJitter.SiValue / Record.Span(1);
                random += one.Noise * one.Noise + jitter * jitter;
                curvature += one.Curvature;
                low += one.Low;
                high += one.High;
                asked++;
            }
            if (asked == 0)
                return new(Transitions.Count < 3 ? PulseFindings.NotEnough("an uncertainty", "three listed transitions") : PulseFindings.SlopeInNoise());
            double duty = DutyFactor.Value.Mean.SiValue, spread = DutyFactor.Value.StandardDeviation.HasValue ? DutyFactor.Value.StandardDeviation.Value.SiValue : 0;
            double square = Math.Max(random / asked, spread * spread);
            // Without noise, and with a period of whole samples, every cycle has the same errors of quantisation: they do not show in the spread, nor do they average out.
            double n = States.Value.IsQuiet && spread * spread < 0.25 * square ? 1 : DutyFactor.Value.Count;
            // An edge between two cycles counts 1 - d in one and d in the other, with one sign: together 1, where independent cycles would have the root of the squares.
            double shared = 2 / (1 + duty * duty + (1 - duty) * (1 - duty));
            double noise = Math.Sqrt(square * (1 + (shared - 1) * (n - 1) / n) / n);
            return new(new DutyFactorUncertainty(noise, Math.Abs(curvature / asked), Math.Sqrt(low * low + high * high) / asked));
        }
    }

    /// <summary>The standard uncertainty of <see cref="Frequency"/>: that of the mean period, as the same part of it.</summary>
    public Measured<Frequency> FrequencyUncertainty => PeriodUncertainty is { HasValue: true } period
        ? new(Core.Frequency.FromSi(period.Value.StandardSi * Frequency.Value.SiValue * Frequency.Value.SiValue, "uncertainty"))
        : new(PeriodUncertainty.Reason!);

    /// <summary>Whether the single period is that of rising edges.</summary>
    private bool IsFirstPeriodRising => Transitions.Count < 3 || Transitions[0].IsRising || Transitions.Count > 3;

    /// <summary>
    /// The variance, from a period to the next, of jitter that adds up. Of n edges with such jitter alone, deviations from the fitted clock have the mean square (n^2 - 4) / (15 n) times that
    /// variance; with independent jitter of the edges alone, (n - 2) / (2 n) times the variance of the periods.
    /// </summary>
    private double Walk(double variance)
    {
        if (!Jitter.HasValue || Jitter.Value.Edges < 8)
            return variance;
        double n = Jitter.Value.Edges, error = Jitter.Value.TimeIntervalErrorRms.SiValue;
        return Math.Min(variance, Math.Max(0, (error * error * n / (n - 2) - variance / 2) / ((n + 2) / 15 - 0.5)));
    }

    /// <summary>The first transition of a direction whose instant has an uncertainty; -1 where there is none among the next ones.</summary>
    private int NextClear(bool rising, int from, int step)
    {
        for (int k = from, asked = 0; k >= 0 && k < Transitions.Count && asked < 2 * MostAsked; k += step, asked++)
        {
            if (Transitions[k] is { } t && t.IsRising == rising && t.InstantUncertainty.HasValue)
                return k;
        }
        return -1;
    }

    private Measured<TimingUncertainty>? Interval(int k, PulseTransition t, int further) => k + further < Transitions.Count ? t.IntervalUncertainty(Transitions[k + further]) : null;

    private Measured<TimingUncertainty> OfMean(Measured<Statistics<Duration>> values, Func<int, PulseTransition, Measured<TimingUncertainty>?> uncertainty)
    {
        if (!values.HasValue)
            return new(values.Reason!);
        Finding? reason = null;
        double random = 0, noise = 0, interpolation = 0, levels = 0, timebase = 0;
        int asked = 0;
        // An odd stride meets transitions of both directions.
        for (int k = 0, stride = Math.Max(1, Transitions.Count / (2 * MostAsked)) | 1; k < Transitions.Count; k += stride)
        {
            if (uncertainty(k, Transitions[k]) is not { } one)
                continue;
            if (!one.HasValue)
            {
                reason = one.Reason;
                continue;
            }
            random += one.Value.RandomSquareSi;
            noise += one.Value.NoiseSquareSi;
            interpolation += one.Value.InterpolationSi * one.Value.InterpolationSi;
            levels += one.Value.LevelsSi * one.Value.LevelsSi;
            timebase += one.Value.TimebaseSi * one.Value.TimebaseSi;
            asked++;
        }
        if (asked == 0)
            return new(reason ?? PulseFindings.NotEnough("an uncertainty", "a listed transition that is complete"));
        long n = values.Value.Count;
        double spread = values.Value.StandardDeviation.HasValue ? values.Value.StandardDeviation.Value.SiValue : 0;
        double ways = n > 1 ? WaysOfRounding() : 1, common = ways < n ? CommonQuantization.Part(States.Value, Record.ResolutionSi ?? 0) * noise / asked : 0;
        double repeatability = Math.Sqrt(Math.Max(random / asked - common, spread * spread) / n + common / ways);
        return new(new TimingUncertainty(repeatability, Math.Sqrt(interpolation / asked), Math.Sqrt(levels / asked), Math.Sqrt(timebase / asked), 0, Settings.StatesTimebase));
    }

    /// <summary>In how many ways the edges of the record are rounded, from the phases of the rising ones and the slope between the reference levels.</summary>
    private double WaysOfRounding()
    {
        if (Record.ResolutionSi is not { } step)
            return double.PositiveInfinity;
        double interval = Record.Span(1), edge = RisingDuration.HasValue ? RisingDuration.Value.Mean.SiValue : FallingDuration.HasValue ? FallingDuration.Value.Mean.SiValue : interval;
        double[] instants = _transitions.RisingInstants();
        for (int k = 0; k < instants.Length; k++)
            instants[k] /= interval;
        return CommonQuantization.Ways(instants, SwingSi / step / Math.Max(1, edge / interval));
    }
}
