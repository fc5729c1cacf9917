using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Responses;

/// <summary>
/// The steady state of repeated edges behind a response, by superposition: each edge adds what it would do alone. However slow the clock and fast its edges, only the
/// edges count that have not settled yet.
/// </summary>
/// <remarks>
/// Where the edges of many periods are still settling (behind an AC coupling), those of the last periods are added one by one and the rest, which only drifts, is held as
/// one smooth function over the period (<see cref="SlowTail"/>).
/// </remarks>
internal sealed class EdgeSum
{
    /// <summary>So many unsettled edges are added at each time; more are split into recent ones and a tail.</summary>
    private const int FewEdges = 64;

    private readonly double _period, _gain;
    private readonly Transition[] _transitions;
    private readonly double[] _levels;
    private readonly EdgeAnswer[] _answers;
    private readonly double _first, _settled;
    private readonly SlowTail? _tail;

    private EdgeSum(LevelSignal source, Response response, EdgeAnswer[] answers)
    {
        _period = source.Seconds;
        _gain = response.DcGain;
        _transitions = source.TransitionArray;
        _answers = answers;
        _levels = new double[_transitions.Length + 1];
        _levels[0] = source.Start;
        for (int i = 0; i < _transitions.Length; i++)
            _levels[i + 1] = _levels[i] + _transitions[i].Change;
        _first = double.PositiveInfinity;
        foreach (EdgeAnswer answer in answers)
        {
            _first = Math.Min(_first, answer.First);
            _settled = Math.Max(_settled, answer.Settled);
        }
        if (Unsettled <= FewEdges)
            return;
        _tail = SlowTail.Of(_transitions, answers, _period, _settled);
    }

    /// <summary>The sum, or null where the response cannot be followed until it has settled, or too many edges would have to be added.</summary>
    internal static EdgeSum? Of(LevelSignal source, Response response)
    {
        var known = new Dictionary<Edge, EdgeAnswer?>();
        var answers = new EdgeAnswer[source.TransitionArray.Length];
        for (int i = 0; i < answers.Length; i++)
        {
            Edge edge = source.TransitionArray[i].Edge;
            if (!known.TryGetValue(edge, out EdgeAnswer? answer))
                known.Add(edge, answer = EdgeAnswer.Of(response, edge));
            if (answer is null)
                return null;
            answers[i] = answer;
        }
        var sum = new EdgeSum(source, response, answers);
        return sum._tail is null && sum.Unsettled > FewEdges ? null : sum;
    }

    /// <summary>About how many edges are still moving at a time.</summary>
    private double Unsettled => (_settled - _first) / _period * _transitions.Length;

    /// <summary>The value at a time, 0 s to below the period.</summary>
    internal double Value(double time)
    {
        int count = _transitions.Length;
        // The number of the first edge to add, counted on through all periods; those before it have settled, or are in the tail.
        long first = _tail is null ? FirstAfter(time - _settled) : -(long)_tail.Periods * count;
        int within = (int)(((first % count) + count) % count);
        double start = (first - within) / count * _period, value = _gain * _levels[within] + (_tail?.Value(time) ?? 0);
        for (; ; within++)
        {
            if (within == count)
            {
                within = 0;
                start += _period;
            }
            double since = time - start - _transitions[within].Time;
            if (since < _first)
                return value;
            value += _transitions[within].Change * _answers[within].Value(since);
        }
    }

    /// <summary>Where the sum may have corners or jumps or becomes lively, within a period, rising, with its ends.</summary>
    internal List<double> Marks()
    {
        var marks = new SortedSet<double> { 0, _period };
        for (int i = 0; i < _transitions.Length; i++)
        {
            // What an edge does once the next has come is looked at often enough for the sake of that.
            double next = i + 1 < _transitions.Length ? _transitions[i + 1].Time : _period + _transitions[0].Time, last = next - _transitions[i].Time + _first;
            foreach (double mark in _answers[i].Marks)
            {
                double time = (_transitions[i].Time + mark) / _period;
                if (mark <= Math.Max(last, 0) || _transitions.Length <= FewEdges)
                    marks.Add((time - Math.Floor(time)) * _period);
            }
        }
        return new List<double>(marks);
    }

    /// <summary>The number of the first edge after a time.</summary>
    private long FirstAfter(double time)
    {
        double turn = Math.Floor(time / _period), within = time - turn * _period;
        int low = 0, high = _transitions.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_transitions[middle].Time > within)
                high = middle;
            else
                low = middle + 1;
        }
        return (long)turn * _transitions.Length + low;
    }
}
