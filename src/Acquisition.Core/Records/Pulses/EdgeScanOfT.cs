using System;
#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
#endif

namespace Acquisition.Core.Records;

/// <summary>The scan of one kind of samples.</summary>
internal sealed class EdgeScan<TView> : EdgeScan
    where TView : struct, ISampleView
{
    private readonly TView _samples;
    private readonly EdgeLevels _rising, _falling;
    private readonly Level _middle, _armLow, _armHigh;
    private readonly double _tolerance, _regionFactor;
#if NET8_0_OR_GREATER
    private readonly bool _bits;
#endif
    private int _position, _lastCrossing, _nextLook;
    private bool _isHigh, _started;

    internal EdgeScan(TView samples, StateLevels states, PulseSettings settings, double step)
    {
        _samples = samples;
        double middle = states.AtFraction(settings.Middle.SiValue), arm = Math.Max(settings.Hysteresis.SiValue * states.AmplitudeSi, 3 * states.NoiseSi);
        Level low = samples.LevelOf(states.LowSi), high = samples.LevelOf(states.HighSi);
        _middle = samples.LevelOf(middle);
        _armLow = samples.LevelOf(middle - arm);
        _armHigh = samples.LevelOf(middle + arm);
        double proximal = settings.Proximal.SiValue, distal = settings.Distal.SiValue;
        _rising = new EdgeLevels(true, low.Value, _armLow, samples.LevelOf(states.AtFraction(proximal)), _middle, samples.LevelOf(states.AtFraction(distal)), _armHigh, high);
        _falling = new EdgeLevels(false, high.Value, _armHigh, samples.LevelOf(states.AtFraction(1 - proximal)), _middle, samples.LevelOf(states.AtFraction(1 - distal)), _armLow, low);
        _tolerance = Math.Max(Math.Max(4.5 * states.NoiseSi, 1.01 * step), 1e-9 * states.AmplitudeSi);
        _regionFactor = settings.RegionFactor;
#if NET8_0_OR_GREATER
        _bits = samples.HasBits(_rising) && samples.HasBits(_falling);
#endif
    }

    internal override bool Next(TransitionPlaces transition)
    {
        TView samples = _samples;
        int end = samples.Length;
        if (!_started)
            Start();
        while (true)
        {
            bool rising = !_isHigh;
            int crossing = Call is null ? Crossing(rising, _position, end) : CrossingWatched(rising, _position, end);
#if NET8_0_OR_GREATER
            if (_bits && samples.HasBitsAround(crossing) && samples.BitsAround(crossing, rising ? _rising : _falling).TryMeasure(out int last, out int first, out int outside, out int turns)
                && crossing + last >= _lastCrossing)
            {
                Rejected += turns;
                _position = crossing + outside;
                Place(transition, crossing, crossing + last, crossing + first, rising ? _rising : _falling);
                transition.IsMonotone = turns == 0;
                _lastCrossing = crossing;
                _isHigh = rising;
                return true;
            }
#endif
            int armed = Armed(crossing, end);
            if (armed >= end)
                return false;
            int again = Turns(crossing, armed, rising);
            Rejected += again;
            _position = armed;
            if (samples.IsAtOrAbove(armed, rising ? _armHigh : _armLow) == rising)
            {
                Measure(transition, crossing, _lastCrossing, rising, again > 0);
                _lastCrossing = crossing;
                _isHigh = rising;
                return true;
            }
            AddRunt(crossing, armed, rising);
        }
    }

    internal override TransitionPlaces Again(int crossing, int lastCrossing, bool rising)
    {
        var transition = new TransitionPlaces();
        Measure(transition, crossing, lastCrossing, rising, Turns(crossing, Armed(crossing, _samples.Length), rising) > 0);
        return transition;
    }

    internal override double MiddleOf(int crossing) => Place(crossing, _middle);

    internal override Aberrations Around(TransitionPlaces t, int previous, int next, out int cut)
    {
        cut = 0;
        double duration = t.Duration;
        if (double.IsNaN(duration))
            return Aberrations.None;
        TView samples = _samples;
        double length = _regionFactor * (duration > 1 ? duration : 1);
        length = length > 3 ? length : 3;
        double begin = t.Proximal - length, end = t.Distal + length;
        int before = Whole(t.Proximal), from = previous, after = t.FirstBeyond, to = next;
        if (begin >= previous)
            from = Whole(Math.Ceiling(begin));
        else
            cut++;
        if (end <= next)
            to = Math.Min(next, Whole(end) + 1);
        else
            cut++;
        bool rising = t.IsRising;
        EdgeLevels levels = rising ? _rising : _falling;
        double over = double.NaN, under = double.NaN, pre = double.NaN;
#if NET8_0_OR_GREATER
        if (samples.TryRegions(levels, from, before, after, to, out pre, out over, out under))
            return Parts(levels, pre, over, under);
#endif
        if (before >= from)
            pre = samples.Extreme(!rising, from, before + 1);
        if (after < to)
        {
            over = samples.Extreme(rising, after, to);
            // What is short of the state before it has been reached belongs to the transition.
            int arrival = rising ? samples.NextAtOrAbove(levels.Reached, after, to) : samples.NextBelow(levels.Reached, after, to);
            under = arrival < to ? samples.Extreme(!rising, arrival, to) : levels.Reached.Value;
        }
        return Parts(levels, pre, over, under);
    }

    /// <summary>How far extremes lie beyond the states, in parts of the amplitude.</summary>
    private static Aberrations Parts(EdgeLevels levels, double pre, double over, double under) =>
        new(((new FourNumbers(0, over, under, pre) - levels.States) / levels.Amplitudes).AtLeastZero());

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
    private void Measure(TransitionPlaces transition, int crossing, int lastCrossing, bool rising, bool turnedBack)
    {
        TView samples = _samples;
        EdgeLevels levels = rising ? _rising : _falling;
        Level proximal = levels.Proximal, distal = levels.Distal, back = levels.Near;
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
        {
            transition.IsRising = rising;
            transition.Crossing = crossing;
            transition.Middle = Place(crossing, _middle);
            transition.Proximal = transition.Distal = double.NaN;
            transition.FirstOf = transition.FirstBeyond = crossing;
            transition.SamplesOnEdge = after - before - 1;
            transition.Widest = 0;
            transition.IsMonotone = !turnedBack;
            return;
        }
        Place(transition, crossing, before, after, levels);
        transition.IsMonotone = !turnedBack && GoesItsWay(before, after, rising);
    }

    /// <summary>Where the straight lines to the samples beyond the levels pass them.</summary>
#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
#endif
    private void Place(TransitionPlaces transition, int crossing, int before, int after, EdgeLevels levels)
    {
        TView samples = _samples;
        var from = new FourNumbers(samples[before], samples[crossing - 1], samples[after - 1], 0);
        var to = new FourNumbers(samples[before + 1], samples[crossing], samples[after], 1);
        FourNumbers places = new FourNumbers(before, crossing - 1, after - 1, 0) + (levels.References - from) / (to - from);
        transition.IsRising = levels.IsRising;
        transition.Crossing = crossing;
        transition.Proximal = places.First;
        transition.Middle = places.Second;
        transition.Distal = places.Third;
        transition.FirstOf = Whole(Math.Ceiling(places.First));
        transition.FirstBeyond = Whole(Math.Ceiling(places.Third));
        transition.SamplesOnEdge = after - before - 1;
        transition.Widest = after - before;
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

    /// <summary>The whole part of a place in the record: never too large for an integer, so that nothing has to be looked at but the number.</summary>
    private static int Whole(double place) =>
#if NET8_0_OR_GREATER
        Sse2.IsSupported ? Sse2.ConvertToInt32WithTruncation(Vector128.CreateScalarUnsafe(place)) : (int)place;
#else
        (int)place;
#endif

    /// <summary>Where the straight line to a sample from the one before passes a level.</summary>
    private double Place(int index, in Level level)
    {
        double from = _samples[index - 1], to = _samples[index];
        return index - 1 + (level.Value - from) / (to - from);
    }
}
