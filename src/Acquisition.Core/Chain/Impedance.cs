using System;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>The impedance of an input, R beside C: "10 MΩ" is a statement about DC only (handbook 7.2).</summary>
public static class Impedance
{
    /// <summary>The complex impedance of R beside C, in ohms.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public static Complex OhmsOfParallel(Resistance resistance, Capacitance capacitance, Frequency frequency) => OfParallel(resistance.SiValue, capacitance.SiValue, frequency);

    /// <summary>The magnitude of the impedance of R beside C: R / √(1 + (2πfRC)²).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public static Resistance MagnitudeOfParallel(Resistance resistance, Capacitance capacitance, Frequency frequency) =>
        Resistance.FromSi(Complex.Abs(OfParallel(resistance.SiValue, capacitance.SiValue, frequency)), nameof(resistance));

    /// <summary>The frequency above which the capacitance rules: 1/(2πRC).</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is zero.</exception>
    public static Frequency Corner(Resistance resistance, Capacitance capacitance)
    {
        double r = Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance)), c = Refuse.UnlessAboveZero(capacitance.SiValue, Capacitance.Kind, nameof(capacitance));
        return Frequency.FromSi(1 / (2 * Math.PI * r * c), nameof(resistance));
    }

    internal static Complex OfParallel(double ohms, double farads, Frequency frequency) => frequency.SiValue >= 0
        ? ohms / new Complex(1, 2 * Math.PI * frequency.SiValue * ohms * farads)
        : throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), "at least 0 Hz");
}
