using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Signals;

/// <summary>One step from a base line to a level, once and for ever. Its mean is that of all time: half way.</summary>
internal sealed class StepSignal : Signal
{
    private readonly double _base, _height;
    private readonly Edge _edge;

    internal StepSignal(double baseLine, double height, Edge edge)
        : base(edge.Scale == 0 ? "step" : $"step, {edge}")
    {
        (_base, _height, _edge) = (baseLine, height, edge);
    }

    public override Frequency? Fundamental => null;

    public override Edge? SteepestEdge => _edge;

    public override Duration RiseTime => _edge.RiseTime;

    internal IReadOnlyList<Transition> Transitions => new[] { new Transition(0, _height, _edge) };

    internal override double Mean => _base + _height / 2;

    internal override double AcPower => _height * _height / 4;

    internal override double Highest => _base + _height;

    internal override double Lowest => _base;

    internal override double MeanMagnitude => (Math.Abs(_base) + Math.Abs(_base + _height)) / 2;

    internal override double Value(double seconds) => _base + _height * _edge.Fraction(seconds);

    internal override Complex Coefficient(int number) => number == 0 ? Mean : Complex.Zero;

    private protected override double PowerShare(double from, double to) =>
        throw new InvalidOperationException($"{Name} happens once and stays: it has no power in a band");

    private protected override Complex VoltSeconds(double hertz)
    {
        if (hertz == 0 || _base != 0)
            throw new InvalidOperationException($"{Name} stays for ever: it has no spectrum at 0 Hz, nor on a base line other than 0 V");
        double omega = 2 * Math.PI * hertz;
        return _height * _edge.Spectrum(omega) / new Complex(0, omega);
    }

    private protected override Signal Offset(double volts) => new StepSignal(_base + volts, _height, _edge);
}
