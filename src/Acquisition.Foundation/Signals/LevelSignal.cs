using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Signals;

/// <summary>
/// A periodic signal that goes from level to level: square, trapezoid, triangle, sawtooth, pulse train, bit pattern. Everything follows from its transitions:
/// c(n) = 1/(j 2π n) Σ change · edge spectrum · exp(-j 2π n t/T), from the derivative of the signal (handbook 4.1).
/// </summary>
internal sealed class LevelSignal : Signal
{
    /// <summary>So many transitions are summed for each harmonic; more are summed once for all, where they lie on a grid.</summary>
    private const int FewTransitions = 16;

    private readonly double _period, _start;
    private readonly Transition[] _transitions;
    private readonly double[] _levels;
    private readonly double _longestBefore, _longestAfter;
    private readonly int _slots;
    private readonly Lazy<Complex[]> _slotSpectrum;

    /// <param name="name">What the signal is.</param>
    /// <param name="period">The period, s.</param>
    /// <param name="start">The level before the first transition, V.</param>
    /// <param name="transitions">The transitions of one period in order of time, from 0 to below the period; their changes add up to zero.</param>
    /// <param name="slots">Into how many slots the period is divided where all transitions are alike and each lies at the beginning of one; else 0.</param>
    internal LevelSignal(string name, double period, double start, Transition[] transitions, int slots = 0)
        : base(name)
    {
        _slots = slots;
        _slotSpectrum = new Lazy<Complex[]>(() => SlotSpectrum.Of(transitions, period, slots));
        _period = period;
        _start = start;
        _transitions = transitions;
        double level = start, power = 0, mean = 0;
        Highest = Lowest = start;
        _levels = new double[transitions.Length];
        for (int i = 0; i < transitions.Length; i++)
        {
            Transition transition = transitions[i];
            double until = i + 1 < transitions.Length ? transitions[i + 1].Time : period + transitions[0].Time;
            double before = level;
            level += transition.Change;
            double lag = transition.Edge.CentroidLag, change = transition.Change;
            mean += level * (until - transition.Time) - change * lag;
            power += level * level * (until - transition.Time) - 2 * before * change * lag - change * change * (lag + transition.Edge.PowerDeficit);
            _levels[i] = level;
            _longestBefore = Math.Max(_longestBefore, transition.Edge.FirstFelt);
            _longestAfter = Math.Max(_longestAfter, transition.Edge.LastFelt);
            Highest = Math.Max(Highest, level);
            Lowest = Math.Min(Lowest, level);
        }
        Mean = mean / period;
        AcPower = Math.Max(0, power / period - Mean * Mean);
    }

    public override Frequency? Fundamental => Frequency.FromSi(1 / _period, "frequency");

    public override Duration? Period => Duration.FromSi(_period, "period");

    public override Edge? SteepestEdge
    {
        get
        {
            Edge? steepest = null;
            double slope = -1;
            foreach (Transition transition in _transitions)
            {
                double candidate = transition.Edge.Scale == 0 ? double.PositiveInfinity : Math.Abs(transition.Change) / transition.Edge.RiseTime.SiValue;
                if (candidate > slope)
                    (slope, steepest) = (candidate, transition.Edge);
            }
            return steepest;
        }
    }

    public override Duration RiseTime => SteepestEdge!.RiseTime;

    internal IReadOnlyList<Transition> Transitions => _transitions;

    internal Transition[] TransitionArray => _transitions;

    /// <summary>The period, s.</summary>
    internal double Seconds => _period;

    /// <summary>The level before the first transition, V.</summary>
    internal double Start => _start;

    internal override int Alternation => Math.Max(1, (_slots + 1) / 2);

    internal override double Mean { get; }

    internal override double AcPower { get; }

    internal override double Highest { get; }

    internal override double Lowest { get; }

    internal override double MeanMagnitude
    {
        get
        {
            double sum = 0, level = _start;
            for (int i = 0; i < _transitions.Length; i++)
            {
                Transition transition = _transitions[i];
                Transition next = _transitions[(i + 1) % _transitions.Length];
                double until = next.Time + (i + 1 < _transitions.Length ? 0 : _period);
                double before = level;
                level += transition.Change;
                sum += Math.Abs(level) * (until - next.Edge.Before - transition.Time - transition.Edge.After);
                sum += MagnitudeOf(transition, before);
            }
            return sum / _period;
        }
    }

    internal override double Value(double seconds)
    {
        // Only edges that have begun and not ended count one by one; those before them are in the level.
        double time = seconds - _period * Math.Floor(seconds / _period), from = time - _longestAfter, start = _period * Math.Floor(from / _period);
        int index = FirstFrom(from - start);
        double value = index > 0 ? _levels[index - 1] : _start;
        for (; ; index++)
        {
            if (index == _transitions.Length)
            {
                index = 0;
                start += _period;
            }
            double since = time - start - _transitions[index].Time;
            if (since < -_longestBefore)
                return value;
            value += _transitions[index].Change * _transitions[index].Edge.Fraction(since);
        }
    }

    /// <summary>The number of the first transition at a time within the period or after it.</summary>
    private int FirstFrom(double time)
    {
        int low = 0, high = _transitions.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_transitions[middle].Time >= time)
                high = middle;
            else
                low = middle + 1;
        }
        return low;
    }

    internal override Complex Coefficient(int number)
    {
        if (number == 0)
            return Mean;
        double omega = 2 * Math.PI * number / _period;
        if (_transitions.Length > FewTransitions && _slots > 0)
            return _slotSpectrum.Value[number % _slots] * _transitions[0].Edge.Spectrum(omega) / new Complex(0, 2 * Math.PI * number);
        Complex sum = Complex.Zero;
        foreach (Transition transition in _transitions)
        {
            double turns = number * (transition.Time / _period);
            turns -= Math.Floor(turns);
            sum += transition.Change * transition.Edge.Spectrum(omega) * Complex.FromPolarCoordinates(1, -2 * Math.PI * turns);
        }
        return sum / new Complex(0, 2 * Math.PI * number);
    }

    private protected override Signal Offset(double volts) => new LevelSignal(Name, _period, _start + volts, _transitions, _slots);

    /// <summary>The integral of the magnitude over one edge: exact for a ramp; the others in 400 panels, to about 1e-6 of the edge.</summary>
    private static double MagnitudeOf(Transition transition, double before)
    {
        double from = -transition.Edge.Before, to = transition.Edge.After, after = before + transition.Change;
        if (to == from)
            return 0;
        if (transition.Edge.Shape == EdgeShape.Linear)
            return before * after >= 0 ? 0.5 * (to - from) * Math.Abs(before + after) : 0.5 * (to - from) * (before * before + after * after) / Math.Abs(transition.Change);
        const int panels = 400;
        double sum = 0, width = (to - from) / panels;
        for (int i = 0; i < panels; i++)
            sum += Math.Abs(before + transition.Change * transition.Edge.Fraction(from + (i + 0.5) * width));
        return sum * width;
    }
}
