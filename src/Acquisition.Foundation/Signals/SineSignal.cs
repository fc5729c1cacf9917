using System;
using System.Numerics;

namespace Acquisition.Core.Signals;

/// <summary>offset + A sin(2π f t).</summary>
internal sealed class SineSignal : Signal
{
    private readonly double _hertz, _amplitude, _offset;

    internal SineSignal(double hertz, double amplitude, double offset)
        : base($"sine, {Acquisition.Core.Frequency.FromSi(hertz, "frequency")}")
    {
        _hertz = hertz;
        _amplitude = amplitude;
        _offset = offset;
    }

    public override Frequency? Fundamental => Frequency.FromSi(_hertz, "frequency");

    public override Duration RiseTime => Duration.FromSi(Math.Asin(0.8) / Math.PI / _hertz, "frequency");

    internal override double Mean => _offset;

    internal override double AcPower => _amplitude * _amplitude / 2;

    internal override double Highest => _offset + _amplitude;

    internal override double Lowest => _offset - _amplitude;

    internal override double MeanMagnitude
    {
        get
        {
            double offset = Math.Abs(_offset);
            if (offset >= _amplitude)
                return offset;
            // Integrated between the crossings of zero.
            double angle = Math.Asin(offset / _amplitude);
            return 2 / Math.PI * (_amplitude * Math.Cos(angle) + offset * angle);
        }
    }

    internal override double Value(double seconds) => _offset + _amplitude * Math.Sin(2 * Math.PI * Cycles(seconds));

    internal override Complex Coefficient(int number) => number == 0 ? _offset : number == 1 ? new Complex(0, -_amplitude / 2) : Complex.Zero;

    private protected override Signal Offset(double volts) => new SineSignal(_hertz, _amplitude, _offset + volts);

    private double Cycles(double seconds)
    {
        double cycles = seconds * _hertz;
        return cycles - Math.Floor(cycles);
    }
}
