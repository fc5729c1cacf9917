using System;

namespace Acquisition.Core;

/// <summary>The loop through tip and ground lead, and how it rings with the input capacitance (handbook 7.4). Its response is the second-order one with ζ = 1/(2Q).</summary>
public static class GroundLead
{
    /// <summary>The smallest loop through a tip and a ground spring, about 3 mm at 1 nH for each (common practice).</summary>
    internal static Inductance Shortest { get; } = Inductance.FromNanohenries(3);

    private const double HenriesPerMeter = 1e-6;

    /// <summary>The inductance of a lead at 1 nH for each millimetre (common practice; a straight wire of 100 mm by 1 mm has 99.8 nH).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="length"/> is negative.</exception>
    public static Inductance InductanceOf(Length length) => length.SiValue >= 0
        ? Inductance.FromSi(length.SiValue * HenriesPerMeter, nameof(length))
        : throw Refuse.OutOfRange(length.SiValue, Length.Kind, nameof(length), "at least 0 m");

    /// <summary>The inductance of a straight round wire far from its return, at high frequency: 2e-7 l (ln(4l/d) - 1) (Grover, from memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The wire is not longer than it is thick, or a size is not above 0 m.</exception>
    public static Inductance OfStraightWire(Length length, Length diameter) => OfWire(length, diameter, 1);

    /// <summary>The same at low frequency, where the current fills the wire: 2e-7 l (ln(4l/d) - 3/4).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The wire is not longer than it is thick, or a size is not above 0 m.</exception>
    public static Inductance OfStraightWireAtLowFrequency(Length length, Length diameter) => OfWire(length, diameter, 0.75);

    /// <summary>Where it rings: 1/(2π√(LC)). Keep it above three times the highest content (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is zero.</exception>
    public static Frequency Resonance(Inductance inductance, Capacitance capacitance)
    {
        Require(inductance, capacitance);
        return Frequency.FromSi(1 / (2 * Math.PI * Math.Sqrt(inductance.SiValue * capacitance.SiValue)), nameof(inductance));
    }

    /// <summary>How sharply: Q = √(L/C)/R, R being source and damping together. Above 0.7071 the gain peaks.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is zero.</exception>
    public static Ratio Quality(Inductance inductance, Capacitance capacitance, Resistance resistance)
    {
        Require(inductance, capacitance);
        return Ratio.FromSi(Surge(inductance, capacitance) / Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance)), nameof(resistance));
    }

    /// <summary>The resistance, source and damping together, that brings Q down to a value: √(L/C)/Q. For 0.7071 nothing peaks.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero.</exception>
    public static Resistance ResistanceFor(Ratio quality, Inductance inductance, Capacitance capacitance)
    {
        Require(inductance, capacitance);
        return Resistance.FromSi(Surge(inductance, capacitance) / Refuse.UnlessAboveZero(quality.SiValue, Ratio.Kind, nameof(quality)), nameof(quality));
    }

    /// <summary>Where the gain is largest: f0 √(1 - 1/(2Q²)); null where it does not peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="quality"/> is not above 0.</exception>
    public static Frequency? PeakFrequency(Frequency resonance, Ratio quality)
    {
        double q = Refuse.UnlessAboveZero(quality.SiValue, Ratio.Kind, nameof(quality)), square = 1 - 1 / (2 * q * q);
        return square > 0 ? Frequency.FromSi(resonance.SiValue * Math.Sqrt(square), nameof(resonance)) : null;
    }

    /// <summary>The gain there: Q/√(1 - 1/(4Q²)); 0 dB where it does not peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="quality"/> is not above 0.</exception>
    public static DecibelRatio PeakGain(Ratio quality)
    {
        double q = Refuse.UnlessAboveZero(quality.SiValue, Ratio.Kind, nameof(quality));
        return DecibelRatio.FromSi(q * q > 0.5 ? 20 * Math.Log10(q / Math.Sqrt(1 - 1 / (4 * q * q))) : 0, nameof(quality));
    }

    private static double Surge(Inductance inductance, Capacitance capacitance) => Math.Sqrt(inductance.SiValue / capacitance.SiValue);

    private static Inductance OfWire(Length length, Length diameter, double term)
    {
        double l = Refuse.UnlessAboveZero(length.SiValue, Length.Kind, nameof(length)), d = Refuse.UnlessAboveZero(diameter.SiValue, Length.Kind, nameof(diameter));
        return l > d
            ? Inductance.FromSi(2e-7 * l * (Math.Log(4 * l / d) - term), nameof(length))
            : throw Refuse.OutOfRange(l, Length.Kind, nameof(length), $"longer than the diameter {diameter}");
    }

    private static void Require(Inductance inductance, Capacitance capacitance)
    {
        Refuse.UnlessAboveZero(inductance.SiValue, Inductance.Kind, nameof(inductance));
        Refuse.UnlessAboveZero(capacitance.SiValue, Capacitance.Kind, nameof(capacitance));
    }
}
