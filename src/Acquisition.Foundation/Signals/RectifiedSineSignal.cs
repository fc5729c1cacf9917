using System;
using System.Numerics;

namespace Acquisition.Core.Signals;

/// <summary>A half-wave (0 ... A, every other half-wave missing) or full-wave rectified sine (handbook 1.5, 4.1).</summary>
internal sealed class RectifiedSineSignal : Signal
{
    private readonly double _hertz, _amplitude, _offset;
    private readonly bool _full;

    /// <param name="hertz">The frequency of the sine before rectification.</param>
    /// <param name="amplitude">Its peak.</param>
    /// <param name="full">Both half-waves.</param>
    /// <param name="offset">An added constant.</param>
    internal RectifiedSineSignal(double hertz, double amplitude, bool full, double offset)
        : base($"{(full ? "full" : "half")}-wave rectified sine, {Acquisition.Core.Frequency.FromSi(hertz, "frequency")}")
    {
        (_hertz, _amplitude, _full, _offset) = (hertz, amplitude, full, offset);
    }

    public override Frequency? Fundamental => Frequency.FromSi(_full ? 2 * _hertz : _hertz, "frequency");

    /// <summary>From 10 % to 90 % of the half-wave's height, on its way up.</summary>
    public override Duration RiseTime => Duration.FromSi((Math.Asin(0.9) - Math.Asin(0.1)) / (2 * Math.PI * _hertz), "rise time");

    internal override double Mean => _offset + (_full ? 2 : 1) * _amplitude / Math.PI;

    internal override double AcPower
    {
        get
        {
            double mean = (_full ? 2 : 1) * _amplitude / Math.PI;
            return (_full ? 0.5 : 0.25) * _amplitude * _amplitude - mean * mean;
        }
    }

    internal override double Highest => _offset + _amplitude;

    internal override double Lowest => _offset;

    internal override double MeanMagnitude
    {
        get
        {
            if (_offset >= 0)
                return Mean;
            if (-_offset >= _amplitude)
                return -Mean;
            // Above zero between the angles at which the sine passes the offset.
            double depth = -_offset, angle = Math.Asin(depth / _amplitude);
            double above = 2 * (_amplitude * Math.Cos(angle) - depth * (Math.PI / 2 - angle));
            double periodAngle = _full ? Math.PI : 2 * Math.PI;
            return 2 * above / periodAngle - Mean;
        }
    }

    internal override double Value(double seconds)
    {
        double cycles = seconds * _hertz, sine = _amplitude * Math.Sin(2 * Math.PI * (cycles - Math.Floor(cycles)));
        return _offset + (_full ? Math.Abs(sine) : Math.Max(0, sine));
    }

    internal override Complex Coefficient(int number)
    {
        if (number == 0)
            return Mean;
        double line = _full ? 2.0 * number : number;
        if (!_full && number == 1)
            return new Complex(0, -_amplitude / 4);
        if (!_full && number % 2 == 1)
            return Complex.Zero;
        return -(_full ? 2 : 1) * _amplitude / (Math.PI * (line * line - 1));
    }

    private protected override Signal Offset(double volts) => new RectifiedSineSignal(_hertz, _amplitude, _full, _offset + volts);
}
