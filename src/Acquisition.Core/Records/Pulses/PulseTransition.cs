using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>One change of state: when it passes the middle level, how long it takes from the proximal to the distal reference level, and what happens around it (IEEE Std 181-2011, from memory; handbook 8.3).</summary>
/// <remarks>Immutable.</remarks>
public sealed partial class PulseTransition
{
    private readonly PulseMeasurement _measurement;
    private readonly double _place, _proximal, _distal;
    private readonly int _widest, _endOfState;

    internal PulseTransition(PulseMeasurement measurement, EdgeBatch batch, int index, FourNumbers aberrations)
    {
        _measurement = measurement;
        _place = batch.Middle[index];
        _proximal = batch.Proximal[index];
        _distal = batch.Distal[index];
        _widest = batch.Widest(index);
        _endOfState = (int)batch.FirstOf[index + 1];
        IsRising = batch.IsRising(index);
        SamplesOnEdge = batch.SamplesOnEdge(index);
        IsMonotone = batch.IsMonotone[index];
        Overshoot = Part(aberrations.Second);
        Undershoot = Part(aberrations.Third);
        Preshoot = Part(aberrations.Fourth);
    }

    /// <summary>Whether it goes from the low to the high state.</summary>
    public bool IsRising { get; }

    /// <summary>When it passes the middle level, by linear interpolation between samples.</summary>
    public Duration Instant => Duration.FromSi(_measurement.Record.TimeSi(_place), "instant");

    /// <summary>From the last crossing of the proximal level before the instant to the first crossing of the distal level after it. Absent where it is not resolved (see <see cref="AtMost"/>) or not complete.</summary>
    public Measured<Duration> TransitionDuration => !IsComplete ? new(PulseFindings.Incomplete(IsRising))
        : IsResolved ? new(Duration.FromSi(DurationSeconds, "duration"))
        : new(PulseFindings.NotResolved(1, 1, IsRising, AtMost.Value.Seconds, _measurement.Settings.LeastSamplesOnEdge, _measurement.Record.IntervalSeconds));

    /// <summary>What the transition takes at most, whatever happens between samples: from the last sample before the proximal to the first beyond the distal level.</summary>
    public Measured<Duration> AtMost => IsComplete ? new(Duration.FromSi(_measurement.Record.Span(_widest), "duration")) : new(PulseFindings.Incomplete(IsRising));

    /// <summary>Samples between the reference levels; where the transition turns back before it passes the distal one, those up to there.</summary>
    public int SamplesOnEdge { get; }

    /// <summary>Whether enough samples lie on the edge for its duration to mean anything.</summary>
    public bool IsResolved => SamplesOnEdge >= _measurement.Settings.LeastSamplesOnEdge;

    /// <summary>Whether it goes its way without turning back by more than the noise.</summary>
    public bool IsMonotone { get; }

    /// <summary>The mean slope between the reference levels; falling transitions have a negative one. Absent where the duration is, and for other kinds than voltage.</summary>
    public Measured<SlewRate> SlewRate
    {
        get
        {
            if (!ReferenceEquals(_measurement.Record.Kind, QuantityKind.Voltage))
                return new(PulseFindings.NoSlew(_measurement.Record.Kind));
            return TransitionDuration is { HasValue: true } duration ? new(Core.SlewRate.FromSi((IsRising ? 1 : -1) * _measurement.SwingSi / duration.Value.SiValue, "slew rate")) : new(TransitionDuration.Reason!);
        }
    }

    /// <summary>How far the signal goes beyond the state it reaches, in the region after the transition, as a part of the amplitude: from the largest sample.</summary>
    public Measured<Ratio> Overshoot { get; }

    /// <summary>How far the signal comes back from the state once it has reached it, in the region after the transition, as a part of the amplitude.</summary>
    public Measured<Ratio> Undershoot { get; }

    /// <summary>How far the signal goes the other way in the region before the transition, as a part of the amplitude.</summary>
    public Measured<Ratio> Preshoot { get; }

    /// <summary>How long after its instant the signal stays within a band around the new state until the next transition (handbook 8.5).</summary>
    /// <param name="band">Half the width of the band as a part of the amplitude: above 0 and below 0.5.</param>
    /// <returns>The duration; absent where the signal is outside the band at the end, so that nobody knows when it settles.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="band"/> is not above 0 and below 0.5.</exception>
    public Measured<Duration> SettlingDuration(Ratio band)
    {
        if (!(band.SiValue > 0 && band.SiValue < 0.5))
            throw Refuse.OutOfRange(band.SiValue, Ratio.Kind, nameof(band), "above 0 and below 0.5");
        StateLevels states = _measurement.States.Value;
        double level = IsRising ? states.HighSi : states.LowSi, reach = band.SiValue * states.AmplitudeSi;
        SampleStore samples = _measurement.Record.Samples;
        int end = Math.Min(_endOfState, samples.Length), last = end - 1;
        if (reach < 3 * states.NoiseSi)
        {
            return new(new Finding("settling-below-noise", Severity.Failure,
                $"the band of {band} is {FewDigits.Of(reach, _measurement.Record.Kind)} to either side, less than 3 times the noise of {FewDigits.Of(states.NoiseSi, _measurement.Record.Kind)}", "choose a wider band, or average records", "handbook 8.5"));
        }
        while (last > _place && Math.Abs(samples[last] - level) <= reach)
            last--;
        if (last == end - 1)
            return new(new Finding("not-settled", Severity.Failure, $"the signal is outside the band of {band} when the state ends", "record longer, or choose a wider band", "handbook 8.5"));
        double outside = samples[last] - level, edge = outside > 0 ? reach : -reach;
        double place = last + (edge - outside) / (samples[last + 1] - samples[last]);
        return new(Duration.FromSi(_measurement.Record.Span(Math.Max(0, place - _place)), "settling"));
    }

    /// <summary>Direction, instant and duration in one line.</summary>
    public override string ToString() => $"{(IsRising ? "rising" : "falling")} at {Instant.InWords(6)}, {TransitionDuration}";

    private Measured<Ratio> Part(double fraction) => double.IsNaN(fraction) ? new(PulseFindings.Incomplete(IsRising)) : new(Ratio.FromFraction(fraction));

    /// <summary>Where it passes the reference levels, in samples; NaN where it does not pass both.</summary>
    internal double ProximalPlace => _proximal;

    internal double DistalPlace => _distal;

    internal int WidestSamples => _widest;

    private bool IsComplete => !double.IsNaN(_proximal) && !double.IsNaN(_distal);

    private double DurationSeconds => _measurement.Record.Span(_distal - _proximal);
}
