using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

// How far times can be trusted.
public sealed partial class PulseTransition
{
    /// <summary>The standard uncertainty of <see cref="Instant"/>; absent where the signal is too flat for its noise.</summary>
    public Measured<TimingUncertainty> InstantUncertainty => AtMiddle is { IsClear: true } crossing
        ? new(crossing.Uncertainty(_measurement.Record, _measurement.Settings, _measurement.States.Value, _measurement.Record.TimeSi(_place)))
        : new(PulseFindings.SlopeInNoise());

    /// <summary>The standard uncertainty of <see cref="TransitionDuration"/>; absent where that is, and where the signal is too flat for its noise at a reference level.</summary>
    public Measured<TimingUncertainty> TransitionDurationUncertainty
    {
        get
        {
            if (!TransitionDuration.HasValue)
                return new(TransitionDuration.Reason!);
            PulseSettings settings = _measurement.Settings;
            double proximal = settings.Proximal.SiValue, distal = settings.Distal.SiValue;
            return Between(Crossing(_proximal, IsRising ? proximal : 1 - proximal), Crossing(_distal, IsRising ? distal : 1 - distal));
        }
    }

    /// <summary>The time from this transition to another one of the same measurement: a pulse duration, a separation, a period or many of them.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="other"/> is of another measurement.</exception>
    public Duration IntervalTo(PulseTransition other) => Duration.FromSi(_measurement.Record.Span(OfSame(other)._place - _place), "interval");

    /// <summary>The standard uncertainty of <see cref="IntervalTo"/>; absent where the signal is too flat for its noise at either end.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="other"/> is of another measurement.</exception>
    public Measured<TimingUncertainty> IntervalUncertainty(PulseTransition other) => Between(AtMiddle, OfSame(other).AtMiddle);

    /// <summary>What moves the duty factor of a cycle that begins here; null where the signal is too flat for its noise.</summary>
    internal DutyParts? DutyTo(PulseTransition fall, PulseTransition next) => AtMiddle is { IsClear: true } from && fall.AtMiddle is { IsClear: true } middle && next.AtMiddle is { IsClear: true } to
        ? LevelCrossing.Duty(_measurement.States.Value, from, middle, to)
        : null;

    private LevelCrossing AtMiddle => Crossing(_place, _measurement.Settings.Middle.SiValue);

    private LevelCrossing Crossing(double place, double fraction) => LevelCrossing.Of(_measurement.Record.Samples, _measurement.States.Value, place, fraction, SamplesOnEdge);

    private Measured<TimingUncertainty> Between(in LevelCrossing from, in LevelCrossing to) => from.IsClear && to.IsClear
        ? new(LevelCrossing.Between(_measurement.Record, _measurement.Settings, _measurement.States.Value, from, to))
        : new(PulseFindings.SlopeInNoise());

    private PulseTransition OfSame(PulseTransition other) => ReferenceEquals((other ?? throw new ArgumentNullException(nameof(other)))._measurement, _measurement)
        ? other
        : throw new ArgumentException("other must be a transition of the same measurement", nameof(other));
}
