using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Walks once through a record and finds its transitions, with hysteresis (handbook 8.3, 8.7 steps 4 and 5). Between transitions it asks the samples for the next one
/// beyond the middle level, which skips what does not cross it a block at a time.
/// </summary>
internal sealed class TransitionScan
{
    private readonly SampleStore _samples;
    private readonly double _middle, _armLow, _armHigh, _tolerance;
    private readonly double _risingProximal, _risingDistal, _fallingProximal, _fallingDistal;
    private readonly LongCall? _call;
    private int _position, _lastCrossing, _nextLook;
    private bool _isHigh, _started;

    internal TransitionScan(SampleStore samples, StateLevels states, PulseSettings settings, double step, LongCall? call = null)
    {
        _samples = samples;
        _call = call;
        _middle = states.AtFraction(settings.Middle.SiValue);
        double arm = Math.Max(settings.Hysteresis.SiValue * states.AmplitudeSi, 3 * states.NoiseSi);
        _armLow = _middle - arm;
        _armHigh = _middle + arm;
        _risingProximal = states.AtFraction(settings.Proximal.SiValue);
        _risingDistal = states.AtFraction(settings.Distal.SiValue);
        _fallingProximal = states.AtFraction(1 - settings.Proximal.SiValue);
        _fallingDistal = states.AtFraction(1 - settings.Distal.SiValue);
        _tolerance = Math.Max(Math.Max(4.5 * states.NoiseSi, 1.01 * step), 1e-9 * states.AmplitudeSi);
    }

    /// <summary>Crossings of the middle level that did not count.</summary>
    internal long Rejected { get; private set; }

    /// <summary>Called with first and last place and the extreme of each pulse that does not reach the other state.</summary>
    internal Action<double, double, double, bool>? OnRunt { get; set; }

    /// <summary>The next transition.</summary>
    internal bool Next(out TransitionPlaces transition)
    {
        transition = default;
        int end = _samples.Length;
        if (!_started && !Start())
            return false;
        while (true)
        {
            int crossing = _call is null ? Next(_isHigh, _middle, _position, end) : NextWatched(_isHigh, _middle, _position, end);
            if (crossing >= end)
                return false;
            bool rising = !_isHigh, beyond = true;
            double extreme = _samples[crossing];
            int i = crossing, again = 0, backAt = -1;
            for (; i < end; i++)
            {
                double x = _samples[i];
                if (rising ? x >= _armHigh : x < _armLow)
                    break;
                if (rising ? x < _armLow : x >= _armHigh)
                {
                    backAt = i;
                    break;
                }
                if (rising ? x > extreme : x < extreme)
                    extreme = x;
                bool now = rising ? x >= _middle : x < _middle;
                if (now != beyond)
                    again++;
                beyond = now;
            }
            if (i >= end)
                return false;
            double middle = Crossing(crossing, _middle);
            if (backAt >= 0)
            {
                // The last crossing back is the end of the runt; what lies between are crossings that do not count.
                int back = backAt;
                while (rising ? _samples[back - 1] < _middle : _samples[back - 1] >= _middle)
                    back--;
                Rejected += Math.Max(0, again);
                OnRunt?.Invoke(middle, Crossing(back, _middle), extreme, rising);
                _position = backAt;
                continue;
            }
            Rejected += again;
            transition = Measure(crossing, middle, rising, again > 0);
            _lastCrossing = crossing;
            _isHigh = rising;
            _position = i;
            return true;
        }
    }

    private int Next(bool below, double level, int from, int to) => below ? _samples.NextBelow(level, from, to) : _samples.NextAtOrAbove(level, from, to);

    private int NextWatched(bool below, double level, int from, int to)
    {
        while (true)
        {
            if (from >= _nextLook)
            {
                _call!.Reached(from, to);
                _nextLook = from > to - SampleStore.SamplesPerLook ? to : from + SampleStore.SamplesPerLook;
            }
            int end = Math.Min(to, _nextLook), found = Next(below, level, from, end);
            if (found < end || end == to)
                return found;
            from = end;
        }
    }

    private bool Start()
    {
        _started = true;
        int low = _samples.NextBelow(_armLow, 0, _samples.Length), high = _samples.NextAtOrAbove(_armHigh, 0, _samples.Length);
        _position = Math.Min(low, high);
        _isHigh = high < low;
        return _position < _samples.Length;
    }

    /// <summary>Proximal and distal crossings and what lies between them.</summary>
    private TransitionPlaces Measure(int crossing, double middle, bool rising, bool turnedBack)
    {
        double proximal = rising ? _risingProximal : _fallingProximal, distal = rising ? _risingDistal : _fallingDistal;
        int before = crossing - 1;
        while (before >= _lastCrossing && Has(before, proximal, rising))
            before--;
        int after = crossing, end = _samples.Length;
        while (after < end && !Has(after, distal, rising))
        {
            after++;
            // Arming levels inside the reference levels: the signal may turn back before it reaches the distal one.
            if (after < end && (rising ? _samples[after] < _armLow : _samples[after] >= _armHigh))
                after = end;
        }
        bool complete = before >= _lastCrossing && after < end;
        if (!complete)
            return new TransitionPlaces(rising, double.NaN, middle, double.NaN, Math.Max(0, Math.Min(after, end) - before - 1), 0, !turnedBack, crossing);
        bool monotone = !turnedBack;
        double furthest = _samples[before];
        for (int i = before + 1; i <= after && monotone; i++)
        {
            double x = _samples[i];
            if (rising ? x > furthest : x < furthest)
                furthest = x;
            else if (Math.Abs(furthest - x) > _tolerance)
                monotone = false;
        }
        return new TransitionPlaces(rising, Crossing(before + 1, proximal), middle, Crossing(after, distal), after - before - 1, after - before, monotone, crossing);
    }

    private bool Has(int index, double level, bool rising) => rising ? _samples[index] >= level : _samples[index] < level;

    /// <summary>Where the straight line to a sample from the one before passes a level.</summary>
    private double Crossing(int index, double level)
    {
        double from = _samples[index - 1], to = _samples[index];
        return index - 1 + (level - from) / (to - from);
    }
}
