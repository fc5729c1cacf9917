using System;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>What an input of R beside C does to a resistive source: the simplest chain, in closed form (handbook 7.1). For anything more, solve a <see cref="MeasurementChain"/>.</summary>
public static class SourceLoading
{
    /// <summary>The divider at DC: Rin/(Rs + Rin).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="input"/> is 0 Ω.</exception>
    public static Ratio AtDc(Resistance source, Resistance input) =>
        Ratio.FromSi(Refuse.UnlessAboveZero(input.SiValue, Resistance.Kind, nameof(input)) / (source.SiValue + input.SiValue), nameof(input));

    /// <summary>The half-power bandwidth of source and input: 1/(2π (Rs ∥ Rin) Cin).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A resistance or the capacitance is zero: nothing limits then.</exception>
    public static Frequency Bandwidth(Resistance source, Resistance input, Capacitance capacitance) => Impedance.Corner(source.Parallel(input), capacitance);

    /// <summary>The half-power bandwidth of a source and a capacitance alone: 1/(2π Rs C).</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is zero.</exception>
    public static Frequency Bandwidth(Resistance source, Capacitance capacitance) => Impedance.Corner(source, capacitance);

    /// <summary>The 10 % to 90 % rise time of source and capacitance: ln 9 Rs C.</summary>
    public static Duration RiseTime(Resistance source, Capacitance capacitance) => Duration.FromSi(Math.Log(9) * source.SiValue * capacitance.SiValue, nameof(capacitance));

    /// <summary>The complex gain at a frequency: 1/(1 + Rs (1/Rin + j2πf Cin)).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="input"/> is 0 Ω, or <paramref name="frequency"/> is negative.</exception>
    public static Complex ComplexGain(Resistance source, Resistance input, Capacitance capacitance, Frequency frequency)
    {
        if (!(frequency.SiValue >= 0))
            throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), "at least 0 Hz");
        double rin = Refuse.UnlessAboveZero(input.SiValue, Resistance.Kind, nameof(input));
        return 1 / new Complex(1 + source.SiValue / rin, 2 * Math.PI * frequency.SiValue * source.SiValue * capacitance.SiValue);
    }
}
