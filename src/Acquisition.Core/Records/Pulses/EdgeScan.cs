using System;

namespace Acquisition.Core.Records;

/// <summary>
/// Walks once through a record and finds its transitions, with hysteresis (handbook 8.3, 8.7 steps 4 and 5). Between transitions it asks the samples for the next one
/// beyond the middle level, which skips what does not cross it a block at a time.
/// </summary>
internal abstract class EdgeScan
{
    /// <summary>Crossings of the middle level that did not count.</summary>
    internal long Rejected { get; private protected set; }

    /// <summary>Called with first and last place and the extreme of each pulse that does not reach the other state.</summary>
    internal Action<double, double, double, bool>? OnRunt { get; set; }

    /// <summary>Who watches; null where nobody does.</summary>
    internal LongCall? Call { get; set; }

    /// <summary>The next transition.</summary>
    internal abstract bool Next(out TransitionPlaces transition);

    /// <summary>A transition once more, from its crossing and that of the one before (0 where there is none).</summary>
    internal abstract TransitionPlaces Again(int crossing, int lastCrossing, bool rising);

    /// <summary>What surrounds a transition.</summary>
    /// <param name="t">The transition.</param>
    /// <param name="previous">The first sample of the state before it.</param>
    /// <param name="next">The first sample beyond the state after it.</param>
    internal abstract Aberrations Around(in TransitionPlaces t, int previous, int next);
}

/// <summary>The scan of one kind of samples.</summary>
internal sealed class EdgeScan<TView> : EdgeScan
    where TView : struct, ISampleView
{
    private readonly TView _samples;
    private readonly Level _low, _high, _middle, _armLow, _armHigh;
    private readonly Level _risingProximal, _risingDistal, _fallingProximal, _fallingDistal;
    private readonly double _tolerance, _amplitude, _regionFactor;
    private int _position, _lastCrossing, _nextLook;
    private bool _isHigh, _started;

    internal EdgeScan(TView samples, StateLevels states, PulseSettings settings, double step)
    {
        _samples = samples;
        double middle = states.AtFraction(settings.Middle.SiValue), arm = Math.Max(settings.Hysteresis.SiValue * states.AmplitudeSi, 3 * states.NoiseSi);
        _low = samples.LevelOf(states.LowSi);
        _high = samples.LevelOf(states.HighSi);
        _middle = samples.LevelOf(middle);
        _armLow = samples.LevelOf(middle - arm);
        _armHigh = samples.LevelOf(middle + arm);
        _risingProximal = samples.LevelOf(states.AtFraction(settings.Proximal.SiValue));
        _risingDistal = samples.LevelOf(states.AtFraction(settings.Distal.SiValue));
        _fallingProximal = samples.LevelOf(states.AtFraction(1 - settings.Proximal.SiValue));
        _fallingDistal = samples.LevelOf(states.AtFraction(1 - settings.Distal.SiValue));
        _tolerance = Math.Max(Math.Max(4.5 * states.NoiseSi, 1.01 * step), 1e-9 * states.AmplitudeSi);
        _amplitude = states.AmplitudeSi;
        _regionFactor = settings.RegionFactor;
    }

    internal override bool Next(out TransitionPlaces transition)
    {
        TView samples = _samples;
        int end = samples.Length;
        if (!_started)
            Start();
        while (true)
        {
            bool rising = !_isHigh;
            int crossing = Call is null ? Crossing(rising, _position, end) : CrossingWatched(rising, _position, end);
            int armed = Armed(crossing, end);
            if (armed >= end)
            {
                transition = default;
                return false;
            }
            int again = Turns(crossing, armed, rising);
            Rejected += again;
            _position = armed;
            if (samples.IsAtOrAbove(armed, rising ? _armHigh : _armLow) == rising)
            {
                transition = Measure(crossing, _lastCrossing, rising, again > 0);
                _lastCrossing = crossing;
                _isHigh = rising;
                return true;
            }
            AddRunt(crossing, armed, rising);
        }
    }

    internal override TransitionPlaces Again(int crossing, int lastCrossing, bool rising) =>
        Measure(crossing, lastCrossing, rising, Turns(crossing, Armed(crossing, _samples.Length), rising) > 0);

    internal override Aberrations Around(in TransitionPlaces t, int previous, int next)
    {
        if (double.IsNaN(t.Duration))
            return Aberrations.None;
        TView samples = _samples;
        double length = Math.Max(3, _regionFactor * Math.Max(t.Duration, 1));
        int before = (int)Math.Floor(t.Proximal), from = (int)Math.Max(previous, Math.Ceiling(t.Proximal - length));
        int after = (int)Math.Ceiling(t.Distal), to = (int)Math.Min(next, Math.Floor(t.Distal + length) + 1);
        int cut = (t.Proximal - length < previous ? 1 : 0) + (t.Distal + length > next ? 1 : 0);
        double left = t.IsRising ? _low.Value : _high.Value, reached = t.IsRising ? _high.Value : _low.Value;
        double over = double.NaN, under = double.NaN, pre = double.NaN;
        bool rising = t.IsRising;
        if (before >= from)
            pre = Math.Max(0, Excess(left, samples.Extreme(!rising, from, before + 1), rising));
        if (after < to)
        {
            over = Math.Max(0, Excess(samples.Extreme(rising, after, to), reached, rising));
            // What is short of the state before it has been reached belongs to the transition.
            int arrival = rising ? samples.NextAtOrAbove(_high, after, to) : samples.NextBelow(_low, after, to);
            under = arrival < to ? Math.Max(0, Excess(reached, samples.Extreme(!rising, arrival, to), rising)) : 0;
        }
        return new Aberrations(over, under, pre, cut);
    }

    /// <summary>How far a value lies beyond another one, in parts of the amplitude.</summary>
    private double Excess(double value, double than, bool rising) => (rising ? value - than : than - value) / _amplitude;

    private void Start()
    {
        _started = true;
        int low = _samples.NextBelow(_armLow, 0, _samples.Length), high = _samples.NextAtOrAbove(_armHigh, 0, _samples.Length);
        _position = Math.Min(low, high);
        _isHigh = high < low;
    }

    private int Crossing(bool rising, int from, int to) => rising ? _samples.NextAtOrAbove(_middle, from, to) : _samples.NextBelow(_middle, from, to);

    private int CrossingWatched(bool rising, int from, int to)
    {
        while (true)
        {
            if (from >= _nextLook)
            {
                Call!.Reached(from, to);
                _nextLook = from > to - SampleStore.SamplesPerLook ? to : from + SampleStore.SamplesPerLook;
            }
            int end = Math.Min(to, _nextLook), found = Crossing(rising, from, end);
            if (found < end || end == to)
                return found;
            from = end;
        }
    }

    /// <summary>The first sample outside the hysteresis, to either side.</summary>
    private int Armed(int from, int end)
    {
        TView samples = _samples;
        Level low = _armLow, high = _armHigh;
        int i = from;
        while (i < end && !samples.IsAtOrAbove(i, high) && samples.IsAtOrAbove(i, low))
            i++;
        return i;
    }

    /// <summary>How often the middle level is crossed after a crossing.</summary>
    private int Turns(int crossing, int to, bool rising)
    {
        TView samples = _samples;
        int turns = 0;
        bool beyond = true;
        for (int i = crossing + 1; i < to; i++)
        {
            bool now = samples.IsAtOrAbove(i, _middle) == rising;
            if (now != beyond)
                turns++;
            beyond = now;
        }
        return turns;
    }

    private void AddRunt(int crossing, int armed, bool rising)
    {
        // The last crossing back is the end of the runt; what lies between are crossings that do not count.
        int back = armed;
        while (_samples.IsAtOrAbove(back - 1, _middle) != rising)
            back--;
        OnRunt?.Invoke(Place(crossing, _middle), Place(back, _middle), _samples.Extreme(rising, crossing, armed), rising);
    }

    /// <summary>Proximal and distal crossings and what lies between them.</summary>
    private TransitionPlaces Measure(int crossing, int lastCrossing, bool rising, bool turnedBack)
    {
        TView samples = _samples;
        Level proximal = rising ? _risingProximal : _fallingProximal, distal = rising ? _risingDistal : _fallingDistal, back = rising ? _armLow : _armHigh;
        double middle = Place(crossing, _middle);
        int before = crossing - 1;
        while (before >= lastCrossing && samples.IsAtOrAbove(before, proximal) == rising)
            before--;
        int after = crossing, end = samples.Length;
        while (after < end && samples.IsAtOrAbove(after, distal) != rising)
        {
            after++;
            // Arming levels inside the reference levels: the signal may turn back before it reaches the distal one.
            if (after < end && samples.IsAtOrAbove(after, back) != rising)
                after = end;
        }
        if (before < lastCrossing || after >= end)
            return new TransitionPlaces(rising, double.NaN, middle, double.NaN, after - before - 1, 0, !turnedBack, crossing);
        return new TransitionPlaces(rising, Place(before + 1, proximal), middle, Place(after, distal), after - before - 1, after - before, !turnedBack && GoesItsWay(before, after, rising), crossing);
    }

    /// <summary>Whether samples go one way, but for the noise.</summary>
    private bool GoesItsWay(int from, int to, bool rising)
    {
        TView samples = _samples;
        double furthest = samples[from];
        for (int i = from + 1; i <= to; i++)
        {
            double x = samples[i], further = rising ? x - furthest : furthest - x;
            if (-further > _tolerance)
                return false;
            if (further > 0)
                furthest = x;
        }
        return true;
    }

    /// <summary>Where the straight line to a sample from the one before passes a level.</summary>
    private double Place(int index, in Level level)
    {
        double from = _samples[index - 1], to = _samples[index];
        return index - 1 + (level.Value - from) / (to - from);
    }
}
