using System;

namespace Acquisition.Core;

/// <summary>The noise of resistors (handbook 6.5): k = 1.380649e-23 J/K exactly (SI Brochure, 9th edition). Bandwidths are noise bandwidths (handbook 6.6).</summary>
public static class ThermalNoise
{
    internal const double Boltzmann = 1.380649e-23;

    /// <summary>The open-circuit noise of a resistance: √(4 k T R B).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="noiseBandwidth"/> is negative.</exception>
    public static RmsVoltage OpenCircuit(Resistance resistance, Temperature temperature, Frequency noiseBandwidth) =>
        RmsVoltage.FromSi(Math.Sqrt(4 * Boltzmann * temperature.SiValue * resistance.SiValue * Band(noiseBandwidth)), nameof(resistance));

    /// <summary>The noise of a resistance across an equal load: half of the open-circuit voltage.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="noiseBandwidth"/> is negative.</exception>
    public static RmsVoltage Matched(Resistance resistance, Temperature temperature, Frequency noiseBandwidth) => OpenCircuit(resistance, temperature, noiseBandwidth) / 2;

    /// <summary>The spectral density of the open-circuit noise: √(4 k T R).</summary>
    public static NoiseDensity Density(Resistance resistance, Temperature temperature) =>
        NoiseDensity.FromSi(Math.Sqrt(4 * Boltzmann * temperature.SiValue * resistance.SiValue), nameof(resistance));

    /// <summary>The available noise power k T B; at 290 K -173.975 dBm in 1 Hz. A noise figure adds to it in dB.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="noiseBandwidth"/> is not above 0 Hz.</exception>
    public static PowerLevel AvailablePower(Temperature temperature, Frequency noiseBandwidth)
    {
        double band = Refuse.UnlessAboveZero(noiseBandwidth.SiValue, Frequency.Kind, nameof(noiseBandwidth));
        return Power.FromSi(Boltzmann * Refuse.UnlessAboveZero(temperature.SiValue, Temperature.Kind, nameof(temperature)) * band, nameof(temperature)).ToLevel();
    }

    /// <summary>All of the noise across a capacitance, √(kT/C), whatever the resistance that makes it.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="capacitance"/> is 0 F.</exception>
    public static RmsVoltage OfCapacitance(Capacitance capacitance, Temperature temperature) =>
        RmsVoltage.FromSi(Math.Sqrt(Boltzmann * temperature.SiValue / Refuse.UnlessAboveZero(capacitance.SiValue, Capacitance.Kind, nameof(capacitance))), nameof(capacitance));

    private static double Band(Frequency noiseBandwidth) =>
        noiseBandwidth.SiValue >= 0 ? noiseBandwidth.SiValue : throw Refuse.OutOfRange(noiseBandwidth.SiValue, Frequency.Kind, nameof(noiseBandwidth), "at least 0 Hz");
}
