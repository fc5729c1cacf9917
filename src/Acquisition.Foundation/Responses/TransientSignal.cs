using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Responses;

/// <summary>A single step or pulse after a response.</summary>
internal sealed class TransientSignal : Signal
{
    private readonly Signal _source;
    private readonly Response _response;
    private readonly double _base, _offset;
    private readonly (double Time, double Change, Func<double, double> Output)[] _edges;
    private readonly double _highest, _lowest;

    internal TransientSignal(Signal source, Response response, double offset = 0)
        : base(source.Name + " > " + response.Name)
    {
        _source = source;
        _response = response;
        _offset = offset;
        IReadOnlyList<Transition> transitions = source is PulseSignal pulse ? pulse.Transitions : ((StepSignal)source).Transitions;
        _base = source.Lowest * response.DcGain + offset;
        _edges = new (double, double, Func<double, double>)[transitions.Count];
        var times = new SortedSet<double>();
        for (int i = 0; i < transitions.Count; i++)
        {
            Transition transition = transitions[i];
            _edges[i] = (transition.Time, transition.Change, response.EdgeOutput(transition.Edge));
            foreach (double time in response.EdgeTimes(transition.Edge))
                times.Add(transition.Time + time);
        }
        double[] marks = new double[times.Count];
        times.CopyTo(marks);
        _highest = Math.Max(_base, Largest(marks, 1));
        _lowest = Math.Min(_base, -Largest(marks, -1));
    }

    public override Frequency? Fundamental => null;

    public override Duration RiseTime => _response.RiseTimeOf(_source).Value;

    internal override double Mean => _source.Mean * _response.DcGain + _offset;

    internal override double AcPower => _source.AcPower * _response.DcGain * _response.DcGain;

    internal override double Highest => _highest;

    internal override double Lowest => _lowest;

    internal override double MeanMagnitude => _source is PulseSignal ? Math.Abs(_base) : 0.5 * (Math.Abs(_base) + Math.Abs(_base + (_source.Highest - _source.Lowest) * _response.DcGain));

    internal override double Value(double seconds)
    {
        double value = _base;
        foreach (var (time, change, output) in _edges)
            value += change * output(seconds - time);
        return value;
    }

    internal override Complex Coefficient(int number) => number == 0 ? Mean : Complex.Zero;

    private protected override Complex VoltSeconds(double hertz) => _source.SpectrumAt(Acquisition.Core.Frequency.FromSi(hertz, "frequency")) * _response.ComplexGain(hertz);

    /// <summary>The largest value: the best of the times, and golden section about it.</summary>
    private double Largest(double[] times, double sign)
    {
        int best = 0;
        double most = double.NegativeInfinity;
        for (int i = 0; i < times.Length; i++)
        {
            double value = sign * Value(times[i]);
            if (value > most)
                (best, most) = (i, value);
        }
        double low = times[Math.Max(0, best - 1)], high = times[Math.Min(times.Length - 1, best + 1)], golden = 0.5 * (Math.Sqrt(5) - 1);
        for (int i = 0; i < 40; i++)
        {
            double left = high - golden * (high - low), right = low + golden * (high - low);
            if (sign * Value(left) > sign * Value(right))
                high = right;
            else
                low = left;
        }
        return Math.Max(most, sign * Value(0.5 * (low + high)));
    }

    private protected override Signal Offset(double volts) => new TransientSignal(_source, _response, _offset + volts);
}
