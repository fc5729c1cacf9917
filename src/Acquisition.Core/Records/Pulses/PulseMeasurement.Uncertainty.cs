using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

// Standard uncertainties of the means. What repetitions average out is divided by the root of their number; what they do not is kept, as the root mean square of some transitions.
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
    /// The standard uncertainty of the mean of <see cref="Period"/>, the spread of the periods taken as that of independent ones: jitter of single edges, which the next period
    /// takes back, averages out faster, and this is then too large.
    /// </summary>
    public Measured<TimingUncertainty> PeriodUncertainty => OfMean(Period, (k, t) => Interval(k, t, 2));

    /// <summary>The standard uncertainty of <see cref="Frequency"/>: that of the mean period, as the same part of it.</summary>
    public Measured<Frequency> FrequencyUncertainty => PeriodUncertainty is { HasValue: true } period
        ? new(Core.Frequency.FromSi(period.Value.StandardSi * Frequency.Value.SiValue * Frequency.Value.SiValue, "uncertainty"))
        : new(PeriodUncertainty.Reason!);

    private Measured<TimingUncertainty>? Interval(int k, PulseTransition t, int further) => k + further < Transitions.Count ? t.IntervalUncertainty(Transitions[k + further]) : null;

    private Measured<TimingUncertainty> OfMean(Measured<Statistics<Duration>> values, Func<int, PulseTransition, Measured<TimingUncertainty>?> uncertainty)
    {
        if (!values.HasValue)
            return new(values.Reason!);
        Finding? reason = null;
        double random = 0, interpolation = 0, levels = 0, timebase = 0;
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
            interpolation += one.Value.InterpolationSi * one.Value.InterpolationSi;
            levels += one.Value.LevelsSi * one.Value.LevelsSi;
            timebase += one.Value.TimebaseSi * one.Value.TimebaseSi;
            asked++;
        }
        if (asked == 0)
            return new(reason ?? PulseFindings.NotEnough("an uncertainty", "a listed transition that is complete"));
        long n = values.Value.Count;
        double spread = values.Value.StandardDeviation.HasValue ? values.Value.StandardDeviation.Value.SiValue : 0;
        double repeatability = Math.Sqrt(Math.Max(random / asked, spread * spread) / n);
        return new(new TimingUncertainty(repeatability, Math.Sqrt(interpolation / asked), Math.Sqrt(levels / asked), Math.Sqrt(timebase / asked), 0));
    }
}
