using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>The step response of several ways through, each known by its gain at each frequency and late by a delay of its own: their sum, held as polynomials.</summary>
internal sealed class EchoStep : StepResponse
{
    /// <summary>Where a piece may begin about an arrival, in units.</summary>
    private static readonly double[] Marks = { -8, -1, 0, 1, 8, 64 };

    private readonly StepResponse[] _ways;
    private readonly double[] _delays;
    private readonly Lazy<PiecewisePolynomial> _table;
    private readonly Lazy<double[]> _begins;

    /// <param name="ways">The step of each way.</param>
    /// <param name="delays">Its delay, s.</param>
    /// <param name="unit">About how long the step takes, s.</param>
    /// <param name="tolerance">How far the polynomials may be from the sum.</param>
    internal EchoStep(StepResponse[] ways, double[] delays, double unit, double tolerance)
    {
        _ways = ways;
        _delays = delays;
        foreach (StepResponse way in ways)
            Final += way.Final;
        _begins = new Lazy<double[]>(() => Array.ConvertAll(ways, way => BeginOf(way, unit, 0.1 * tolerance / ways.Length)));
        _table = new Lazy<PiecewisePolynomial>(() => new PiecewisePolynomial(seconds => Sum(seconds, out _), FindMarks(unit), tolerance));
    }

    internal override double Final { get; }

    internal override double Value(double seconds, out double slope)
    {
        PiecewisePolynomial table = _table.Value;
        return seconds > table.First && seconds < table.Last ? table.Value(seconds, out slope) : Sum(seconds, out slope);
    }

    internal override double Value(double seconds)
    {
        PiecewisePolynomial table = _table.Value;
        return seconds > table.First && seconds < table.Last ? table.Value(seconds) : Sum(seconds, out _);
    }

    private protected override bool TryIntegrate(double low, double high, out double integral)
    {
        PiecewisePolynomial table = _table.Value;
        bool isHeld = low >= table.First && high <= table.Last;
        integral = isHeld ? table.Between(low, high) : 0;
        return isHeld;
    }

    private protected override StepScan Scan()
    {
        var scan = new StepScan();
        foreach (double time in _table.Value.Times())
        {
            double value = Value(time, out double slope);
            scan.Add(time, value, slope);
        }
        for (int i = 0; i < _ways.Length; i++)
        {
            foreach (double time in _ways[i].Times)
            {
                if (time >= _ways[i].FarFrom && time + _delays[i] > scan.Times[scan.Count - 1])
                    scan.AddFar(time + _delays[i], Sum(time + _delays[i], out _));
            }
        }
        return scan;
    }

    private double Sum(double seconds, out double slope)
    {
        double value = 0;
        slope = 0;
        double[] begins = _begins.Value;
        for (int i = 0; i < _ways.Length; i++)
        {
            double since = seconds - _delays[i];
            if (since < begins[i])
                continue;
            value += _ways[i].Value(since, out double rate);
            slope += rate;
        }
        return value;
    }

    /// <summary>Before when a way is nothing: most echoes of a step have not yet come at most times. Minus infinity where it rings before its step.</summary>
    private static double BeginOf(StepResponse way, double unit, double nothing)
    {
        double first = way.Times[0];
        return Math.Abs(way.Value(first, out double slope)) <= nothing && Math.Abs(slope) * unit <= nothing ? first : double.NegativeInfinity;
    }

    /// <summary>From where the first way begins to where the last has settled, and about each arrival.</summary>
    private List<double> FindMarks(double unit)
    {
        double first = double.PositiveInfinity, last = double.NegativeInfinity;
        var wanted = new List<double>();
        for (int i = 0; i < _ways.Length; i++)
        {
            List<double> times = _ways[i].Times;
            first = Math.Min(first, times[0] + _delays[i]);
            last = Math.Max(last, Math.Min(times[times.Count - 1], _ways[i].FarFrom) + _delays[i]);
            foreach (double mark in Marks)
                wanted.Add(_delays[i] + mark * unit);
        }
        wanted.Sort();
        var marks = new List<double> { first };
        foreach (double mark in wanted)
        {
            if (mark - marks[marks.Count - 1] > 1e-3 * unit && last - mark > 1e-3 * unit)
                marks.Add(mark);
        }
        marks.Add(last);
        return marks;
    }
}
