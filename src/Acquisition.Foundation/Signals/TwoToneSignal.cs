using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Signals;

/// <summary>The sum of two sines.</summary>
internal sealed class TwoToneSignal : Signal
{
    private readonly double _first, _firstAmplitude, _second, _secondAmplitude, _offset;

    internal TwoToneSignal(double first, double firstAmplitude, double second, double secondAmplitude, double offset)
        : base($"two-tone, {Acquisition.Core.Frequency.FromSi(first, "first")} and {Acquisition.Core.Frequency.FromSi(second, "second")}")
    {
        (_first, _firstAmplitude, _second, _secondAmplitude, _offset) = (first, firstAmplitude, second, secondAmplitude, offset);
    }

    public override Frequency? Fundamental => null;

    internal override double Tone => Math.Max(_first, _second);

    /// <summary>That of a sine of the same swing whose slope is the largest the two can reach together.</summary>
    public override Duration RiseTime =>
        Duration.FromSi(Math.Asin(0.8) / Math.PI * (_firstAmplitude + _secondAmplitude) / (_first * _firstAmplitude + _second * _secondAmplitude), "rise time");

    internal override double Mean => _offset;

    internal override double AcPower => (_firstAmplitude * _firstAmplitude + _secondAmplitude * _secondAmplitude) / 2;

    /// <summary>The sum of the amplitudes: what is reached sooner or later.</summary>
    internal override double Highest => _offset + _firstAmplitude + _secondAmplitude;

    internal override double Lowest => _offset - _firstAmplitude - _secondAmplitude;

    /// <summary>Averaged over all phases of the two against each other, as they drift through them.</summary>
    internal override double MeanMagnitude
    {
        get
        {
            const int phases = 512;
            double sum = 0;
            for (int i = 0; i < phases; i++)
            {
                double level = _offset + _secondAmplitude * Math.Sin(2 * Math.PI * (i + 0.5) / phases);
                sum += new SineSignal(1, _firstAmplitude, level).MeanMagnitude;
            }
            return sum / phases;
        }
    }

    internal override double Value(double seconds) => _offset + Sine(_first, _firstAmplitude, seconds) + Sine(_second, _secondAmplitude, seconds);

    internal override Complex Coefficient(int number) => number == 0 ? _offset : Complex.Zero;

    internal override IEnumerable<SpectralLine> Lines(double hertz)
    {
        double carrier = Math.Max(_firstAmplitude, _secondAmplitude), limit = hertz * (1 + 1e-12);
        bool inOrder = _first < _second;
        var (low, lowAmplitude) = inOrder ? (_first, _firstAmplitude) : (_second, _secondAmplitude);
        var (high, highAmplitude) = inOrder ? (_second, _secondAmplitude) : (_first, _firstAmplitude);
        if (low <= limit)
            yield return new SpectralLine(-1, low, new Complex(0, -lowAmplitude / 2), carrier);
        if (high <= limit)
            yield return new SpectralLine(-1, high, new Complex(0, -highAmplitude / 2), carrier);
    }

    private protected override Signal Offset(double volts) => new TwoToneSignal(_first, _firstAmplitude, _second, _secondAmplitude, _offset + volts);

    private static double Sine(double hertz, double amplitude, double seconds)
    {
        double cycles = seconds * hertz;
        return amplitude * Math.Sin(2 * Math.PI * (cycles - Math.Floor(cycles)));
    }
}
