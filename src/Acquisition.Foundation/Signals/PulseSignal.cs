using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Signals;

/// <summary>One pulse on a base line, once.</summary>
internal sealed class PulseSignal : Signal
{
    private readonly double _base, _height, _width;
    private readonly Edge _rise, _fall;

    internal PulseSignal(string name, double baseLine, double height, double width, Edge rise, Edge fall)
        : base(name)
    {
        (_base, _height, _width) = (baseLine, height, width);
        (_rise, _fall) = (rise, fall);
    }

    public override Frequency? Fundamental => null;

    public override Edge? SteepestEdge => _rise.RiseTime <= _fall.RiseTime ? _rise : _fall;

    public override Duration RiseTime => SteepestEdge!.RiseTime;

    internal IReadOnlyList<Transition> Transitions => new[] { new Transition(0, _height, _rise), new Transition(_width, -_height, _fall) };

    internal override double Mean => _base;

    internal override double AcPower => 0;

    internal override double Highest => _base + _height;

    internal override double Lowest => _base;

    internal override double MeanMagnitude => Math.Abs(_base);

    internal override double Value(double seconds) => _base + _height * (_rise.Fraction(seconds) - _fall.Fraction(seconds - _width));

    internal override Complex Coefficient(int number) => number == 0 ? _base : Complex.Zero;

    private protected override Complex VoltSeconds(double hertz)
    {
        if (_base != 0)
            throw new InvalidOperationException($"{Name} rests on {Voltage.FromSi(_base, "base")}, which goes on for ever: take the spectrum without the offset");
        double omega = 2 * Math.PI * hertz;
        if (hertz == 0)
            return _height * (_width + _fall.CentroidLag - _rise.CentroidLag);
        return _height * (_rise.Spectrum(omega) - _fall.Spectrum(omega) * Complex.FromPolarCoordinates(1, -omega * _width)) / new Complex(0, omega);
    }

    private protected override Signal Offset(double volts) => new PulseSignal(Name, _base + volts, _height, _width, _rise, _fall);
}
