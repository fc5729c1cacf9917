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
        _highest = _lowest = _base;
        foreach (double time in times)
        {
            double value = Value(time);
            _highest = Math.Max(_highest, value);
            _lowest = Math.Min(_lowest, value);
        }
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

    private protected override Signal Offset(double volts) => new TransientSignal(_source, _response, _offset + volts);
}
