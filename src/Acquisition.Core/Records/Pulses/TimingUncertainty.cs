using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// How far an instant or a time between instants of a record can be trusted, by what makes it uncertain (handbook 8.7 step 9, 5.12, 11.12): standard uncertainties, to the first
/// order, of independent causes. The rise time of probe and instrument is no part of it: that is a correction.
/// </summary>
/// <remarks>Immutable.</remarks>
public sealed class TimingUncertainty
{
    private readonly double _noise, _interpolation, _levels, _timebase, _jitter;

    internal TimingUncertainty(double noise, double interpolation, double levels, double timebase, double jitter, bool statesTimebase)
    {
        StatesTimebase = statesTimebase;
        _noise = noise;
        _interpolation = interpolation;
        _levels = levels;
        _timebase = timebase;
        _jitter = jitter;
    }

    internal double StandardSi => Math.Sqrt(RandomSquareSi + _interpolation * _interpolation + _levels * _levels + _timebase * _timebase);

    /// <summary>Of what repetitions average out.</summary>
    internal double RandomSquareSi => _noise * _noise + _jitter * _jitter;

    internal double NoiseSquareSi => _noise * _noise;

    internal double InterpolationSi => _interpolation;

    internal double LevelsSi => _levels;

    internal double TimebaseSi => _timebase;

    /// <summary>The uncertainty of one of so many equal intervals, from that of all together: errors of the instants between them cancel.</summary>
    /// <param name="intervals">How many.</param>
    /// <param name="random">The variance of what is not common to both ends.</param>
    /// <param name="timebase">Of the time base, of one of them.</param>
    internal TimingUncertainty OfOne(double intervals, double random, double timebase) => new(Math.Sqrt(random) / intervals, _interpolation / intervals, _levels / intervals, timebase, 0, StatesTimebase);

    /// <summary>The combined standard uncertainty: the root of the sum of the squares (JCGM 100 5.1.2).</summary>
    public Duration Standard => Of(StandardSi);

    /// <summary>Of the noise and the quantisation of the samples, over the slope (handbook 6.12); for a mean, of the spread of the values where that is more, clock jitter included.</summary>
    public Duration Noise => Of(_noise);

    /// <summary>Of the straight line between two samples: its error as the curvature around them tells it, which is not corrected for (handbook 8.4). Of an interval, that of both ends with their signs.</summary>
    public Duration Interpolation => Of(_interpolation);

    /// <summary>Of the state levels, with which the reference levels move (handbook 8.8). What both ends of an interval have in common is not counted twice.</summary>
    public Duration StateLevels => Of(_levels);

    /// <summary>Whether the settings state anything of the time base (<see cref="PulseSettings.WithTimebase"/>); where they do not, its error and the jitter of its clock are not in the uncertainty.</summary>
    public bool StatesTimebase { get; }

    /// <summary>Of the limit of the time base: the half-width of a rectangle that grows with the interval; none where the settings give none.</summary>
    public Duration Timebase => Of(_timebase);

    /// <summary>Of the jitter of the sample clock; none where the settings give none.</summary>
    public Duration ClockJitter => Of(_jitter);

    /// <summary>The combined uncertainty and its parts in one line.</summary>
    public override string ToString() =>
        $"u = {Standard.InWords(3)} (noise {Noise.InWords(3)}, interpolation {Interpolation.InWords(3)}, state levels {StateLevels.InWords(3)}, " + (StatesTimebase ? $"time base {Timebase.InWords(3)}, clock jitter {ClockJitter.InWords(3)})" : "time base not stated)");

    private static Duration Of(double seconds) => Duration.FromSi(seconds, "uncertainty");
}
