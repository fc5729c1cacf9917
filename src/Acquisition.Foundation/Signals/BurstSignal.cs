using System;
using System.Numerics;

namespace Acquisition.Core.Signals;

/// <summary>Whole cycles of a sine, then nothing until the next burst.</summary>
internal sealed class BurstSignal : Signal
{
    private readonly double _hertz, _amplitude, _period, _length, _offset;
    private readonly int _cycles;

    internal BurstSignal(double hertz, double amplitude, int cycles, double period, double offset)
        : base($"burst of {cycles} cycles, {Acquisition.Core.Frequency.FromSi(hertz, "frequency")}")
    {
        (_hertz, _amplitude, _cycles, _period, _offset) = (hertz, amplitude, cycles, period, offset);
        _length = cycles / hertz;
    }

    public override Frequency? Fundamental => Frequency.FromSi(1 / _period, "frequency");

    public override Duration? Period => Duration.FromSi(_period, "period");

    internal override double Tone => _hertz;

    /// <summary>That of the carrier.</summary>
    public override Duration RiseTime => Duration.FromSi(Math.Asin(0.8) / Math.PI / _hertz, "rise time");

    internal override double Mean => _offset;

    internal override double AcPower => _amplitude * _amplitude / 2 * Math.Min(1, _length / _period);

    internal override double Highest => _offset + _amplitude;

    internal override double Lowest => _offset - _amplitude;

    internal override double MeanMagnitude
    {
        get
        {
            double share = Math.Min(1, _length / _period);
            return share * new SineSignal(_hertz, _amplitude, _offset).MeanMagnitude + (1 - share) * Math.Abs(_offset);
        }
    }

    internal override double Value(double seconds)
    {
        double time = seconds - _period * Math.Floor(seconds / _period), cycles = time * _hertz;
        return cycles >= _cycles ? _offset : _offset + _amplitude * Math.Sin(2 * Math.PI * (cycles - Math.Floor(cycles)));
    }

    internal override Complex Coefficient(int number)
    {
        if (number == 0)
            return _offset;
        // Both exponentials of the sine, each over the length of the burst: the window's sinc about plus and minus the carrier.
        double hertz = number / _period;
        return _amplitude * _length / _period / new Complex(0, 2) * (Window(_hertz - hertz) - Window(-_hertz - hertz));
    }

    private protected override Signal Offset(double volts) => new BurstSignal(_hertz, _amplitude, _cycles, _period, _offset + volts);

    /// <summary>1/length · the integral of exp(j 2π f t) over the burst.</summary>
    private Complex Window(double hertz)
    {
        double angle = Math.PI * hertz * _length;
        double size = Math.Abs(angle) < 1e-8 ? 1 : Math.Sin(angle) / angle;
        return new Complex(size * Math.Cos(angle), size * Math.Sin(angle));
    }
}
