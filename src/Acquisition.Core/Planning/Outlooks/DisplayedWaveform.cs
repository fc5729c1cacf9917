using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>The waveform behind a response whose levels do not settle: its neighbours decide how high it gets and how long an edge takes.</summary>
internal sealed class DisplayedWaveform
{
    /// <summary>An edge is looked for so many of its own durations about its place.</summary>
    private const double Reach = 10;
    private const int Points = 512;
    private readonly IReadOnlyList<Transition> _transitions;
    private readonly double _period, _reach, _delay, _sign;
    private readonly Func<double, double> _value;

    private DisplayedWaveform(IReadOnlyList<Transition> transitions, double period, double reach, double delay, double sign, Func<double, double> value, double low, double high) =>
        (_transitions, _period, _reach, _delay, _sign, _value, Low, High) = (transitions, period, reach, delay, sign, value, low, high);

    /// <summary>Its lowest value, V.</summary>
    internal double Low { get; }

    /// <summary>Its highest value, V.</summary>
    internal double High { get; }

    /// <summary>The waveform; null where it cannot be computed: random bits, a lasting step, or what <see cref="Response.Apply"/> refuses.</summary>
    /// <param name="signal">The signal.</param>
    /// <param name="response">The response.</param>
    /// <param name="alone">What one edge alone would take, s; NaN where it never rises through the levels.</param>
    internal static DisplayedWaveform? Of(Signal signal, Response response, double alone)
    {
        if (Plateau.TransitionsOf(signal) is not { Count: > 1 } transitions)
            return null;
        double period = signal.Period?.SiValue ?? double.PositiveInfinity;
        try
        {
            Signal shown = response.Apply(signal);
            return new DisplayedWaveform(transitions, period, double.IsNaN(alone) ? period : Math.Min(period, Reach * alone), DelayOf(response), Math.Sign(response.StepReference), shown.Value, shown.Lowest, shown.Highest);
        }
        catch (NotSupportedException)
        {
            return null;
        }
    }

    /// <summary>The shortest 10 % to 90 % duration of the edges of a kind, of the waveform's own swing, s; NaN where none passes through both levels.</summary>
    internal double RiseTime(Edge edge)
    {
        double shortest = double.NaN;
        for (int i = 0; i < _transitions.Count; i++)
        {
            if (_transitions[i].Edge.RiseTime != edge.RiseTime)
                continue;
            double found = RiseTime(i);
            if (!(found >= shortest))
                shortest = found;
        }
        return shortest;
    }

    // From where the edge passes 50 % outwards, as far as the neighbouring edges.
    private double RiseTime(int index)
    {
        Transition edge = _transitions[index];
        int last = _transitions.Count - 1;
        double before = index > 0 ? _transitions[index - 1].Time : _transitions[last].Time - _period, after = index < last ? _transitions[index + 1].Time : _transitions[0].Time + _period;
        double from = Math.Max(before, edge.Time - _reach) + _delay, to = Math.Min(after, edge.Time + _reach) + _delay, spacing = (to - from) / Points, direction = _sign * Math.Sign(edge.Change);
        var values = new double[Points + 1];
        for (int i = 0; i <= Points; i++)
            values[i] = Rise(from + (i * spacing));
        // The steepest way through 50 %: on a straight edge rounding alone decides where it is steepest, perhaps outside the levels.
        int middle = -1;
        for (int i = 0; i < Points; i++)
        {
            if (values[i] < 0.5 && values[i + 1] >= 0.5 && (middle < 0 || values[i + 1] - values[i] > values[middle + 1] - values[middle]))
                middle = i;
        }
        if (middle < 0)
            return double.NaN;
        int ten = middle, ninety = middle + 1;
        while (ten >= 0 && values[ten] > 0.1)
            ten--;
        while (ninety <= Points && values[ninety] < 0.9)
            ninety++;
        return ten < 0 || ninety > Points ? double.NaN : Crossing(0.9, from + ((ninety - 1) * spacing)) - Crossing(0.1, from + (ten * spacing));

        // The part of the swing that has passed, in the direction of the edge.
        double Rise(double seconds) => direction > 0 ? (_value(seconds) - Low) / (High - Low) : (High - _value(seconds)) / (High - Low);

        double Crossing(double level, double begin)
        {
            double left = begin, right = begin + spacing;
            for (int i = 0; i < 50; i++)
            {
                double between = 0.5 * (left + right);
                if (Rise(between) < level)
                    left = between;
                else
                    right = between;
            }
            return 0.5 * (left + right);
        }
    }

    private static double DelayOf(Response response)
    {
        try
        {
            return response.StepCrossing(Ratio.FromFraction(0.5)).SiValue;
        }
        catch (InvalidOperationException)
        {
            return 0;
        }
    }
}
