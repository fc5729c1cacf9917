using System;
using System.Numerics;

namespace Acquisition.Core.Chain;

/// <summary>
/// A transmission line: delay, skin-effect loss a √f with the phase that goes with it, √(s τ), and dielectric loss b f with its own, -(2/π) β s ln(s/ω₀).
/// Both are causal pairs of loss and phase, so that the magnitude is a √f + b f to the letter and the step does not start early. The velocity factor holds at ω₀.
/// </summary>
internal sealed class Line : Branch
{
    private readonly double _impedance, _delay, _skin, _dielectric, _reference;

    /// <param name="ohms">The characteristic impedance, taken as real.</param>
    /// <param name="seconds">The delay.</param>
    /// <param name="skin">Nepers per √Hz.</param>
    /// <param name="dielectric">Nepers per Hz.</param>
    /// <param name="referenceHertz">Where the delay holds.</param>
    internal Line(double ohms, double seconds, double skin, double dielectric, double referenceHertz)
    {
        _impedance = ohms;
        _delay = seconds;
        // |exp(-k √(jω))| = exp(-k √(ω/2)) = exp(-k √(π f)).
        _skin = skin / Math.Sqrt(Math.PI);
        _dielectric = dielectric / Math.PI;
        _reference = 2 * Math.PI * referenceHertz;
    }

    internal override double Delay => _delay;

    /// <summary>The characteristic impedance, ohms.</summary>
    internal double Impedance => _impedance;

    internal bool IsLossless => _skin == 0 && _dielectric == 0;

    /// <summary>The exponent of one passage but for the delay: nepers, and the phase that belongs to them.</summary>
    internal Complex Loss(Complex s)
    {
        Complex exponent = _skin != 0 ? _skin * Complex.Sqrt(s) : Complex.Zero;
        if (_dielectric != 0 && s != Complex.Zero)
            exponent -= _dielectric / Math.PI * s * Complex.Log(s / _reference);
        return exponent;
    }

    internal override void TowardsSource(Complex s, ref Complex voltage, ref Complex current)
    {
        Complex exponent = s * _delay + Loss(s);
        // Beyond 300 Np nothing comes through; without the limit the growing wave would overflow.
        if (exponent.Real > 300)
            exponent = new Complex(300, exponent.Imaginary);
        Complex grow = Complex.Exp(exponent), decay = 1 / grow;
        Complex cosh = 0.5 * (grow + decay), sinh = 0.5 * (grow - decay);
        Complex v = cosh * voltage + _impedance * sinh * current;
        current = sinh / _impedance * voltage + cosh * current;
        voltage = v;
    }
}
