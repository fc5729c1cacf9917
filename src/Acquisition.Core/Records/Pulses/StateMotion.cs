using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>Whether the states stay where they are: tops that tilt within a pulse, levels that drift over the record, ringing after the edges. Up to some hundred plateaus and edges are looked at, evenly over the list.</summary>
internal sealed class StateMotion
{
    /// <summary>So many plateaus of either state are looked at.</summary>
    private const int MostPlateaus = 64;

    /// <summary>Change below this part of the amplitude is not worth a word.</summary>
    private const double LeastChange = 0.005, LeastDrift = 0.01;

    /// <summary>A state that is shorter than this many transition durations is still on its way.</summary>
    private const double LeastDurations = 4;

    private readonly PulseMeasurement _pulses;
    private readonly StateLevels _states;
    private readonly double _noise, _step, _correlated = 1;
    private readonly bool _isLevelled;
    private readonly List<Plateau> _low = new(), _high = new();

    internal StateMotion(PulseMeasurement pulses)
    {
        _pulses = pulses;
        _states = pulses.States.Value;
        _noise = _states.NoiseSi;
        _step = pulses.Record.ResolutionSi ?? 0;
        if (_states.OfNoise is { IsLevelled: true } known)
        {
            // White noise needs windows of 8 samples; noise that needs longer ones is correlated over as many more.
            _isLevelled = true;
            _correlated = Math.Max(1, known.Window / 8.0);
        }
        Read();
    }

    internal IEnumerable<Finding> Findings()
    {
        if (Tilt() is { } tilt)
            yield return tilt;
        if (Drift() is { } drift)
            yield return drift;
    }

    private void Read()
    {
        IReadOnlyList<PulseTransition> transitions = _pulses.Transitions;
        int last = transitions.Count == _pulses.TransitionCount ? transitions.Count : transitions.Count - 1;
        double[] buffer = Plateau.Buffer();
        // An odd stride meets both states.
        for (int k = 0, stride = Math.Max(1, (last + 1) / (2 * MostPlateaus)) | 1; transitions.Count > 0 && k <= last; k += stride)
        {
            PulseTransition? before = k > 0 ? transitions[k - 1] : null, after = k < transitions.Count ? transitions[k] : null;
            double from = before?.DistalPlace ?? 0, to = after?.ProximalPlace ?? _pulses.Record.Length;
            int edge = Math.Max(before?.WidestSamples ?? 0, after?.WidestSamples ?? 0);
            // NaN where an edge is not complete.
            if (!(to - from >= LeastDurations * edge))
                continue;
            bool isHigh = before?.IsRising ?? !after!.IsRising;
            if (Plateau.Of(_pulses.Record.Samples, (int)Math.Ceiling(from) + (before is null ? 0 : edge), (int)Math.Floor(to) - (after is null ? 0 : 1 + edge / 4), buffer) is not { } plateau)
                continue;
            (isHigh ? _high : _low).Add(plateau);
        }
    }

    private Finding? Tilt()
    {
        double low = Change(_low), high = Change(_high);
        if (low == 0 && high == 0)
            return null;
        double lowSeconds = Seconds(_low), highSeconds = Seconds(_high), rate = (low == 0 ? 0 : low / lowSeconds) - (high == 0 ? 0 : high / highSeconds);
        // Behind a first-order high-pass with the time constant T, a state that is v above the mean falls with v / T: the rates of both states add up to the amplitude over T, whatever the duty factor.
        double? corner = low >= 0 && high <= 0 ? rate / (2 * Math.PI * _states.AmplitudeSi) : null;
        return PulseFindings.StatesTilt(high, highSeconds, low, lowSeconds, _states.AmplitudeSi, corner, _pulses.Record.Kind);
    }

    /// <summary>The mean length.</summary>
    private double Seconds(List<Plateau> plateaus)
    {
        double samples = 0;
        foreach (Plateau plateau in plateaus)
            samples += plateau.Length;
        return _pulses.Record.Span(samples / Math.Max(1, plateaus.Count));
    }

    /// <summary>By how much the state moves within a plateau, on the mean; 0 where that is little, or could be noise.</summary>
    private double Change(List<Plateau> plateaus)
    {
        if (plateaus.Count == 0)
            return 0;
        var changes = default(RunningMoments);
        double squares = 0;
        foreach (Plateau plateau in plateaus)
        {
            changes.Add(plateau.Change);
            squares += OfPart(plateau) * OfPart(plateau);
        }
        double root = Math.Sqrt(plateaus.Count), uncertainty = Math.Max(Plateau.OfChange(Math.Sqrt(squares / plateaus.Count)), changes.Count > 2 ? changes.StandardDeviation : 0) / root;
        // Noise that may be slow moves a plateau as a tilt does.
        double least = _isLevelled ? 0 : 5 * _noise / root;
        bool clear = Math.Abs(changes.Mean) > Math.Max(Math.Max(6 * uncertainty, least), Math.Max(LeastChange * _states.AmplitudeSi, LeastSteps));
        return clear ? changes.Mean : 0;
    }

    private Finding? Drift()
    {
        double low = Range(_low), high = Range(_high);
        return low == 0 && high == 0 ? null : PulseFindings.StatesDrift(Math.Max(low, high), low >= high ? "low" : "high", _states.AmplitudeSi, _pulses.Record.Kind);
    }

    /// <summary>From the lowest to the highest mean of a state; 0 where that is little, could be noise, or changes from plateau to plateau and not slowly.</summary>
    private double Range(List<Plateau> plateaus)
    {
        if (plateaus.Count < 4)
            return 0;
        var means = default(RunningMoments);
        double squares = 0, steps = 0;
        for (int k = 0; k < plateaus.Count; k++)
        {
            means.Add(plateaus[k].Mean);
            squares += OfPart(plateaus[k]) * OfPart(plateaus[k]);
            steps += k > 0 ? Math.Pow(plateaus[k].Mean - plateaus[k - 1].Mean, 2) : 0;
        }
        double range = means.Maximum - means.Minimum, uncertainty = Plateau.OfMean(Math.Sqrt(squares / plateaus.Count));
        // Squared steps over squared deviations are 2 for values in no order (von Neumann 1941).
        double order = steps / (means.StandardDeviation * means.StandardDeviation * (means.Count - 1));
        // What may be slow noise must be in clear order over many plateaus; few plateaus may be in order by chance.
        bool inOrder = _isLevelled ? order < 1 : order < 0.3 && plateaus.Count >= 8;
        return inOrder && range > Math.Max(plateaus.Count < 8 ? 6 * _noise : 8 * uncertainty, Math.Max(LeastDrift * _states.AmplitudeSi, LeastSteps)) ? range : 0;
    }

    /// <summary>Of the mean of a part: its noise, or what the parts scatter by about a line, which knows slow noise too.</summary>
    private double OfPart(in Plateau plateau) => Math.Max(_noise / Math.Sqrt(Math.Max(1, plateau.Samples / _correlated)), plateau.Scatter);

    /// <summary>Without noise that carries it over the steps, a level may go over to the next code wherever it is.</summary>
    private double LeastSteps => _noise > 0.4 * _step ? 0 : 1.5 * _step;
}
