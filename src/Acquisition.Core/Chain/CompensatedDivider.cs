using System;

namespace Acquisition.Core;

/// <summary>R1 beside C1 in the path, R2 beside C2 across it: a passive probe on its input (handbook 7.3). Flat where R1 C1 = R2 C2.</summary>
/// <remarks>Immutable and thread-safe. C2 includes cable and instrument input.</remarks>
public sealed class CompensatedDivider
{
    private readonly double _r1, _c1, _r2, _c2;

    /// <summary>A divider.</summary>
    /// <param name="tipResistance">R1.</param>
    /// <param name="tipCapacitance">C1.</param>
    /// <param name="resistance">R2.</param>
    /// <param name="capacitance">C2.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is zero.</exception>
    public CompensatedDivider(Resistance tipResistance, Capacitance tipCapacitance, Resistance resistance, Capacitance capacitance)
    {
        _r1 = Refuse.UnlessAboveZero(tipResistance.SiValue, Resistance.Kind, nameof(tipResistance));
        _c1 = Refuse.UnlessAboveZero(tipCapacitance.SiValue, Capacitance.Kind, nameof(tipCapacitance));
        _r2 = Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance));
        _c2 = Refuse.UnlessAboveZero(capacitance.SiValue, Capacitance.Kind, nameof(capacitance));
    }

    /// <summary>The C1 that makes the divider flat: R2 C2/R1.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="tipResistance"/> is 0 Ω.</exception>
    public static Capacitance TipCapacitanceFor(Resistance tipResistance, Resistance resistance, Capacitance capacitance) =>
        Capacitance.FromSi(resistance.SiValue * capacitance.SiValue / Refuse.UnlessAboveZero(tipResistance.SiValue, Resistance.Kind, nameof(tipResistance)), nameof(capacitance));

    /// <summary>The ratio at DC, where a step ends: R2/(R1 + R2).</summary>
    public Ratio RatioAtDc => Ratio.FromSi(_r2 / (_r1 + _r2), "ratio");

    /// <summary>The ratio at high frequency, where a step begins: C1/(C1 + C2).</summary>
    public Ratio RatioAtHighFrequency => Ratio.FromSi(_c1 / (_c1 + _c2), "ratio");

    /// <summary>The capacitance at the tip: C1 in series with C2.</summary>
    public Capacitance InputCapacitance => Capacitance.FromSi(_c1 * _c2 / (_c1 + _c2), "capacitance");

    /// <summary>By how much a step starts too high, relative to where it ends; negative where it starts too low. The same error sits on the amplitude of every frequency well above 1/(2πτ).</summary>
    public Ratio InitialOvershoot => Ratio.FromSi(_c1 / (_c1 + _c2) / (_r2 / (_r1 + _r2)) - 1, "overshoot");

    /// <summary>How slowly that goes: τ = (R1 ∥ R2)(C1 + C2).</summary>
    public Duration TimeConstant => Duration.FromSi(_r1 * _r2 / (_r1 + _r2) * (_c1 + _c2), "time constant");

    /// <summary>The output after a step of 1 at t = 0: ai + (a0 - ai) e^(-t/τ).</summary>
    public Ratio StepAt(Duration time)
    {
        if (time.SiValue < 0)
            return Ratio.FromFraction(0);
        double end = RatioAtDc.SiValue, begin = RatioAtHighFrequency.SiValue;
        return Ratio.FromSi(end + (begin - end) * Math.Exp(-time.SiValue / TimeConstant.SiValue), nameof(time));
    }

    /// <summary>The same as a response.</summary>
    public Response ToResponse() => Response.Rational("compensated divider", new[] { _r2, _r1 * _r2 * _c1 }, new[] { _r1 + _r2, _r1 * _r2 * (_c1 + _c2) });
}
