using System;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>What an impedance step reflects, and what two of them do to an amplitude (handbook 7.7).</summary>
public static class Mismatch
{
    /// <summary>The reflection coefficient of a resistance on a line: (ZL - Z0)/(ZL + Z0).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="line"/> is 0 Ω.</exception>
    public static Ratio Reflection(Resistance line, Resistance load)
    {
        double z = Refuse.UnlessAboveZero(line.SiValue, Resistance.Kind, nameof(line));
        return Ratio.FromSi((load.SiValue - z) / (load.SiValue + z), nameof(load));
    }

    /// <summary>The magnitude of the reflection coefficient of a resistance beside a capacitance at a frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="line"/> is 0 Ω, or <paramref name="frequency"/> is negative.</exception>
    public static Ratio Reflection(Resistance line, Resistance load, Capacitance capacitance, Frequency frequency)
    {
        double z = Refuse.UnlessAboveZero(line.SiValue, Resistance.Kind, nameof(line));
        Complex end = Impedance.OfParallel(load.SiValue, capacitance.SiValue, frequency);
        return Ratio.FromSi(Complex.Abs((end - z) / (end + z)), nameof(load));
    }

    /// <summary>The return loss of a resistance on a line: -20 lg|Γ|, positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="line"/> is 0 Ω, or the load matches it, which returns nothing.</exception>
    public static DecibelRatio ReturnLoss(Resistance line, Resistance load) => ReturnLoss(Reflection(line, load));

    /// <summary>The return loss of a reflection coefficient: -20 lg|Γ|, positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Nothing is reflected, or more than everything.</exception>
    public static DecibelRatio ReturnLoss(Ratio reflection)
    {
        double gamma = Magnitude(reflection, nameof(reflection));
        return gamma > 0
            ? DecibelRatio.FromSi(-20 * Math.Log10(gamma), nameof(reflection))
            : throw Refuse.OutOfRange(gamma, Ratio.Kind, nameof(reflection), "other than 0: a perfect match returns nothing, and the logarithm of 0 does not exist");
    }

    /// <summary>The voltage standing-wave ratio of a reflection coefficient: (1 + |Γ|)/(1 - |Γ|).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="reflection"/> is not below 1 in magnitude.</exception>
    public static Ratio StandingWaveRatio(Ratio reflection)
    {
        double gamma = Magnitude(reflection, nameof(reflection));
        return gamma < 1
            ? Ratio.FromSi((1 + gamma) / (1 - gamma), nameof(reflection))
            : throw Refuse.OutOfRange(gamma, Ratio.Kind, nameof(reflection), "below 1: a full reflection has no standing-wave ratio");
    }

    /// <summary>The standing-wave ratio of a return loss: (1 + 10^(-RL/20))/(1 - 10^(-RL/20)).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="returnLoss"/> is not above 0 dB.</exception>
    public static Ratio StandingWaveRatioOf(DecibelRatio returnLoss) =>
        StandingWaveRatio(Ratio.FromSi(Math.Pow(10, -Refuse.UnlessAboveZero(returnLoss.SiValue, DecibelRatio.Kind, nameof(returnLoss)) / 20), nameof(returnLoss)));

    /// <summary>The magnitude of the reflection coefficient of a standing-wave ratio: (s - 1)/(s + 1).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="standingWaveRatio"/> is below 1.</exception>
    public static Ratio ReflectionOf(Ratio standingWaveRatio)
    {
        double s = standingWaveRatio.SiValue;
        return s >= 1 ? Ratio.FromSi((s - 1) / (s + 1), nameof(standingWaveRatio)) : throw Refuse.OutOfRange(s, Ratio.Kind, nameof(standingWaveRatio), "at least 1");
    }

    /// <summary>The power that does not get across: -10 lg(1 - |Γ|²), positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="reflection"/> is not below 1 in magnitude.</exception>
    public static DecibelRatio Loss(Ratio reflection)
    {
        double gamma = Magnitude(reflection, nameof(reflection));
        return gamma < 1
            ? DecibelRatio.FromSi(-10 * Math.Log10((1 - gamma) * (1 + gamma)) + 0.0, nameof(reflection))
            : throw Refuse.OutOfRange(gamma, Ratio.Kind, nameof(reflection), "below 1: a full reflection lets nothing across");
    }

    /// <summary>How high two mismatches with a line between them can raise an amplitude: 20 lg(1 + |Γ1 Γ2|).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reflection is above 1 in magnitude.</exception>
    public static DecibelRatio UpperLimit(Ratio first, Ratio second) => DecibelRatio.FromSi(20 * Math.Log10(1 + Product(first, second)), nameof(first));

    /// <summary>How low they can bring it: 20 lg(1 - |Γ1 Γ2|), negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reflection is above 1 in magnitude, or both reflect everything.</exception>
    public static DecibelRatio LowerLimit(Ratio first, Ratio second)
    {
        double product = Product(first, second);
        return product < 1 ? DecibelRatio.FromSi(20 * Math.Log10(1 - product), nameof(first)) : throw Refuse.OutOfRange(product, Ratio.Kind, nameof(second), "so small that the product of both is below 1");
    }

    /// <summary>The standard uncertainty of an amplitude between two mismatches of unknown phase, U-shaped: 8.6859 |Γ1 Γ2|/√2 dB (Harris and Warner 1981, from memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reflection is above 1 in magnitude.</exception>
    public static DecibelRatio StandardUncertainty(Ratio first, Ratio second) => DecibelRatio.FromSi(20 / Math.Log(10) * Product(first, second) / Math.Sqrt(2), nameof(first));

    private static double Product(Ratio first, Ratio second) => Magnitude(first, nameof(first)) * Magnitude(second, nameof(second));

    private static double Magnitude(Ratio reflection, string argument)
    {
        double gamma = Math.Abs(reflection.SiValue);
        return gamma <= 1 ? gamma : throw Refuse.OutOfRange(reflection.SiValue, Ratio.Kind, argument, "from -1 to 1");
    }
}
