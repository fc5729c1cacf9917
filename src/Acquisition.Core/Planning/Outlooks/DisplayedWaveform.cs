using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Planning;

/// <summary>The steady waveform of a periodic signal behind a response, summed from its lines.</summary>
internal sealed class DisplayedWaveform
{
    private const int MostLines = 4000;
    private readonly double _mean;
    private readonly Complex[] _coefficients;
    private readonly double _fundamental;

    internal DisplayedWaveform(Signal signal, Response response)
    {
        _fundamental = signal.Fundamental!.Value.SiValue;
        _mean = signal.Mean * response.DcGain;
        double reach = response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) ? 20 * bandwidth.SiValue : double.PositiveInfinity;
        int count = (int)Math.Max(1, Math.Min(MostLines, Math.Ceiling(reach / _fundamental)));
        _coefficients = new Complex[count + 1];
        for (int number = 1; number <= count; number++)
        {
            Complex line = signal.Coefficient(number);
            if (line != Complex.Zero)
                _coefficients[number] = line * response.ComplexGain(number * _fundamental);
        }
    }

    /// <summary>The value at a time, V, s.</summary>
    internal double At(double seconds)
    {
        double cycles = seconds * _fundamental;
        cycles -= Math.Floor(cycles);
        // Horner's scheme in exp(j 2π f0 t).
        Complex turn = Complex.FromPolarCoordinates(1, 2 * Math.PI * cycles), sum = Complex.Zero;
        for (int number = _coefficients.Length - 1; number >= 1; number--)
            sum = (sum + _coefficients[number]) * turn;
        return _mean + (2 * sum.Real);
    }

    /// <summary>Its lowest and highest value over one period.</summary>
    internal (double Low, double High) Extremes()
    {
        int points = Math.Max(256, Math.Min(4096, 8 * _coefficients.Length));
        double period = 1 / _fundamental, low = double.PositiveInfinity, high = double.NegativeInfinity;
        for (int i = 0; i < points; i++)
        {
            double value = At(i * period / points);
            low = Math.Min(low, value);
            high = Math.Max(high, value);
        }
        return (low, high);
    }
}
