using System;
#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
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
    private readonly CrossingsAhead<TView> _crossings;
    private int _position, _lastCrossing;
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
        _rising = new EdgeLevels(samples.Codes, true, low.Value, _armLow, samples.LevelOf(states.AtFraction(proximal)), _middle, samples.LevelOf(states.AtFraction(distal)), _armHigh, high);
        _falling = new EdgeLevels(samples.Codes, false, high.Value, _armHigh, samples.LevelOf(states.AtFraction(1 - proximal)), _middle, samples.LevelOf(states.AtFraction(1 - distal)), _armLow, low);
        _tolerance = Math.Max(Math.Max(4.5 * states.NoiseSi, 1.01 * step), 1e-9 * states.AmplitudeSi);
        _regionFactor = settings.RegionFactor;
#if NET8_0_OR_GREATER
        _bits = samples.HasBits && _rising.AreCodes && _falling.AreCodes;
        _crossings = _bits ? new CrossingsAhead<TView>(samples, _middle, _rising, _falling) : new CrossingsAhead<TView>(samples, _middle);
#else
        _crossings = new CrossingsAhead<TView>(samples, _middle);
#endif
    }

    internal override EdgeLevels Levels(bool rising) => rising ? _rising : _falling;

    internal override bool Fill(EdgeBatch batch)
    {
        int first = batch.Count;
        if (!_started)
        {
            Start();
            batch.EvenRises = !_isHigh;
        }
        bool some = true;
        while (!batch.IsFull && some)
        {
#if NET8_0_OR_GREATER
            some = _crossings.Look(Call) && (_bits && FindAtOnce(batch) || FindByWalking(batch));
#else
            some = _crossings.Look(Call) && FindByWalking(batch);
#endif
        }
        Place(batch, first, _samples.Length);
        return some;
    }

    internal override void Again(EdgeBatch batch, int crossing, int lastCrossing, bool rising) =>
        Measure(batch, crossing, lastCrossing, rising, Turns(crossing, Armed(crossing, _samples.Length), rising) > 0);

    internal override void Place(EdgeBatch batch, int first, int end)
    {
        _samples.Read(batch, first);
        batch.Place(first, Levels(batch.EvenRises), Levels(!batch.EvenRises));
        batch.FirstOf[batch.Count] = end;
    }

    internal override double MiddleOf(int crossing) => Place(crossing, _middle);

    internal override void Surround(EdgeBatch batch, int first, int to)
    {
        batch.Surround(first, to, _regionFactor);
        for (int k = first; k < to; k++)
        {
#if NET8_0_OR_GREATER
            if (_bits)
                k = _samples.Extremes(batch, Levels(batch.EvenRises), Levels(!batch.EvenRises), k, to);
            if (k == to)
                break;
#endif
            batch.Extremes[k] = batch.IsComplete[k] ? Extremes(batch, k) : None;
        }
    }

    private static FourNumbers None => new(double.NaN, double.NaN, double.NaN, double.NaN);

    private void Start()
    {
        _started = true;
        int low = _samples.NextBelow(_armLow, 0, _samples.Length), high = _samples.NextAtOrAbove(_armHigh, 0, _samples.Length);
        _position = Math.Min(low, high);
        _isHigh = high < low;
    }

#if NET8_0_OR_GREATER
    /// <summary>Finds transitions from the samples around their crossings, which are looked at all at once; false where those of the next crossing do not tell.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private bool FindAtOnce(EdgeBatch batch)
    {
        // In variables of their own, which stay in registers. A batch has room for its capacity: to check each of three columns for each transition takes time.
        ref int lasts = ref MemoryMarshal.GetArrayDataReference(batch.Last), places = ref MemoryMarshal.GetArrayDataReference(batch.Crossing), firsts = ref MemoryMarshal.GetArrayDataReference(batch.First);
        int begin = batch.Count, count = begin, next = _crossings.Next, position = _position, lastCrossing = _lastCrossing;
        ReadOnlySpan<int> crossings = _crossings.Places.AsSpan(0, _crossings.Count);
        ref EdgeBits bits = ref MemoryMarshal.GetArrayDataReference(_crossings.Bits);
        for (; count < batch.Capacity && next < crossings.Length; next++)
        {
            int crossing = crossings[next];
            // The first one beyond the hysteresis to one side leads to the other.
            if (crossing <= position)
                continue;
            if (!Unsafe.Add(ref bits, next).TryMeasure(out int last, out int first, out int outside) || crossing + last < lastCrossing)
                break;
            Unsafe.Add(ref lasts, count) = crossing + last;
            Unsafe.Add(ref places, count) = crossing;
            Unsafe.Add(ref firsts, count) = crossing + first;
            count++;
            position = crossing + outside;
            lastCrossing = crossing;
        }
        int found = count - begin;
        batch.Count = count;
        batch.IsComplete.AsSpan(begin, found).Fill(true);
        batch.IsMonotone.AsSpan(begin, found).Fill(true);
        bool some = next > _crossings.Next;
        _crossings.Next = next;
        _position = position;
        _lastCrossing = lastCrossing;
        _isHigh ^= found % 2 != 0;
        return some;
    }
#endif

    /// <summary>Finds a transition, or a runt, by walking from the next crossing; false at the end of the record.</summary>
    private bool FindByWalking(EdgeBatch batch)
    {
        int crossing = _crossings.Places[_crossings.Next++];
        if (crossing <= _position)
            return true;
        bool rising = !_isHigh;
        int end = _samples.Length, armed = Armed(crossing, end);
        if (armed >= end)
            return false;
        int again = Turns(crossing, armed, rising);
        Rejected += again;
        _position = armed;
        if (_samples.IsAtOrAbove(armed, rising ? _armHigh : _armLow) == rising)
        {
            Measure(batch, crossing, _lastCrossing, rising, again > 0);
            _lastCrossing = crossing;
            _isHigh = rising;
        }
        else
            AddRunt(crossing, armed, rising);
        return true;
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

    /// <summary>Finds proximal and distal crossings by walking, and looks at what lies between them.</summary>
    private void Measure(EdgeBatch batch, int crossing, int lastCrossing, bool rising, bool turnedBack)
    {
        TView samples = _samples;
        EdgeLevels levels = Levels(rising);
        Level proximal = levels.Proximal, distal = levels.Distal, back = levels.Near;
        int before = crossing - 1;
        while (before >= lastCrossing && samples.IsAtOrAbove(before, proximal) == rising)
            before--;
        int after = crossing, end = samples.Length;
        bool goesBack = false;
        while (after < end && !goesBack && samples.IsAtOrAbove(after, distal) != rising)
        {
            after++;
            // Arming levels inside the reference levels: the signal may turn back before it reaches the distal one.
            goesBack = after < end && samples.IsAtOrAbove(after, back) != rising;
        }
        bool complete = before >= lastCrossing && after < end && !goesBack;
        batch.Add(crossing, before, after, complete, !turnedBack && (!complete || GoesItsWay(before, after, rising)));
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

    /// <summary>The extremes of the regions around a transition, one after the other.</summary>
    private FourNumbers Extremes(EdgeBatch batch, int k)
    {
        TView samples = _samples;
        EdgeLevels levels = Levels(batch.IsRising(k));
        bool rising = levels.IsRising;
        int from = batch.Regions.From[k], before = batch.Regions.Before[k], after = batch.Regions.After[k], to = batch.Regions.To[k];
        double over = double.NaN, under = double.NaN, pre = before >= from ? samples.Extreme(!rising, from, before + 1) : double.NaN;
        if (after < to)
        {
            over = samples.Extreme(rising, after, to);
            // What is short of the state before it has been reached belongs to the transition.
            int arrival = rising ? samples.NextAtOrAbove(levels.Reached, after, to) : samples.NextBelow(levels.Reached, after, to);
            under = arrival < to ? samples.Extreme(!rising, arrival, to) : levels.Reached.Value;
        }
        return new FourNumbers(0, over, under, pre);
    }

    /// <summary>Where the straight line to a sample from the one before passes a level.</summary>
    private double Place(int index, in Level level)
    {
        double from = _samples[index - 1], to = _samples[index];
        return index - 1 + (level.Value - from) / (to - from);
    }
}
