using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>The waveform behind a response whose levels do not settle: its neighbours decide how high it gets and how long an edge takes.</summary>
internal sealed class DisplayedWaveform
{
    private const int MostLines = 16_000;
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

    /// <summary>The waveform; null where it cannot be computed: random bits, a lasting step, or a slow signal behind a fast chain that blocks DC.</summary>
    internal static DisplayedWaveform? Of(Signal signal, Response response, double needed)
    {
        if (Plateau.TransitionsOf(signal) is not { Count: > 1 } transitions)
            return null;
        double period = signal.Period?.SiValue ?? double.PositiveInfinity, edges = transitions.Max(transition => transition.Edge.Before + transition.Edge.After);
        // An edge reaches no further than one period: a few of them add up exactly. Else the lines do, of which there are few then.
        if (needed + edges <= period && response.PassesDc)
            return OfEdges(signal, response, transitions, period, 2 * (needed + edges));
        double highest = response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) ? 20 * bandwidth.SiValue : double.PositiveInfinity;
        if (double.IsPositiveInfinity(period) || highest * period > MostLines)
            return null;
        Signal shown = response.Apply(signal);
        return new DisplayedWaveform(transitions, period, period, DelayOf(response), Math.Sign(response.StepReference), shown.Value, shown.Lowest, shown.Highest);
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

    private static DisplayedWaveform OfEdges(Signal signal, Response response, IReadOnlyList<Transition> transitions, double period, double reach)
    {
        Func<double, double>[] outputs = transitions.Select(transition => response.EdgeOutput(transition.Edge)).ToArray();
        double gain = response.DcGain, start = gain * (signal is LevelSignal levels ? levels.Start : signal.Mean), delay = DelayOf(response);
        bool repeats = !double.IsPositiveInfinity(period);
        double Value(double seconds)
        {
            // What happened more than two periods ago has added up to nothing.
            double value = start, turn = repeats ? Math.Round((seconds - delay) / period) : 0;
            for (double n = repeats ? turn - 2 : 0; n <= (repeats ? turn + 2 : 0); n++)
            {
                for (int i = 0; i < outputs.Length; i++)
                {
                    double since = seconds - transitions[i].Time - (repeats ? n * period : 0), late = since - delay;
                    value += transitions[i].Change * (late < -reach ? 0 : late > reach ? gain : outputs[i](since));
                }
            }
            return value;
        }
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (Transition transition in transitions)
        {
            foreach (double time in response.EdgeTimes(transition.Edge).Where(time => Math.Abs(time - delay) <= reach))
            {
                double value = Value(transition.Time + time);
                low = Math.Min(low, value);
                high = Math.Max(high, value);
            }
        }
        return new DisplayedWaveform(transitions, period, reach, delay, Math.Sign(gain), Value, low, high);
    }

    // From the steepest point of the edge outwards, as far as the neighbouring edges.
    private double RiseTime(int index)
    {
        Transition edge = _transitions[index];
        int last = _transitions.Count - 1;
        double before = index > 0 ? _transitions[index - 1].Time : _transitions[last].Time - _period, after = index < last ? _transitions[index + 1].Time : _transitions[0].Time + _period;
        double from = Math.Max(before, edge.Time - _reach) + _delay, to = Math.Min(after, edge.Time + _reach) + _delay, spacing = (to - from) / Points, direction = _sign * Math.Sign(edge.Change);
        var values = new double[Points + 1];
        for (int i = 0; i <= Points; i++)
            values[i] = Rise(from + (i * spacing));
        int steepest = 0;
        for (int i = 1; i < Points; i++)
        {
            if (values[i + 1] - values[i] > values[steepest + 1] - values[steepest])
                steepest = i;
        }
        int ten = steepest, ninety = steepest + 1;
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
                double middle = 0.5 * (left + right);
                if (Rise(middle) < level)
                    left = middle;
                else
                    right = middle;
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
