using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Responses;

namespace Acquisition.Core.Chain;

/// <summary>The response of a network with a line in it: known by its gain at each frequency, with ripple as fine as the echoes are late.</summary>
internal sealed class NetworkResponse : GeneralResponse
{
    private readonly Func<Complex, Complex> _transfer;
    private readonly Func<NetworkResponse, Func<double, double>, IReadOnlyList<Way>?>? _echoes;
    private readonly double _gain, _delay;

    /// <param name="name">What it is.</param>
    /// <param name="transfer">The gain at a complex frequency in rad/s.</param>
    /// <param name="gain">A factor on it.</param>
    /// <param name="delay">The delays of all lines, s.</param>
    /// <param name="echoes">Its echoes one by one for what the rest of the cascade passes, or null where they cannot be told apart.</param>
    internal NetworkResponse(string name, Func<Complex, Complex> transfer, double gain, double delay, Func<NetworkResponse, Func<double, double>, IReadOnlyList<Way>?>? echoes = null)
        : base(name)
    {
        _echoes = echoes;
        _transfer = transfer;
        _gain = gain;
        _delay = delay;
        FrequencyScale = Scale();
    }

    internal override double FrequencyScale { get; }

    internal override Complex ComplexGain(double hertz) => _gain * _transfer(new Complex(0, 2 * Math.PI * hertz));

    internal override IReadOnlyList<Way> Ways(Func<double, double> rest) => _echoes?.Invoke(this, rest) ?? base.Ways(rest);

    /// <summary>Echoes come back after twice the delay: eight points on each ripple, as far as there is anything to see.</summary>
    internal override IReadOnlyList<double> Ripples
    {
        get
        {
            double ripple = 1 / (2 * _delay), last = Math.Min(FrequencyScale * 20, ripple * 500);
            var points = new List<double>();
            for (double f = ripple / 8; f < last; f += ripple / 8)
                points.Add(f);
            return points;
        }
    }

    /// <summary>Where the gain has first fallen by half, looked for from the ripple up.</summary>
    private double Scale()
    {
        double dc = Complex.Abs(_transfer(Complex.Zero)), f = 1e-3 / _delay;
        while (f < 1e15 && Complex.Abs(_transfer(new Complex(0, 2 * Math.PI * f))) > 0.5 * dc)
            f *= 1.2;
        return f < 1e15 ? f : 1 / _delay;
    }
}
