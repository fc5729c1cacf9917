using System;

namespace Acquisition.Core.Planning;

/// <summary>One input impedance that an instrument offers, with what it bears.</summary>
public sealed class InputTermination
{
    /// <summary>States an input impedance.</summary>
    /// <param name="resistance">The resistance to ground.</param>
    /// <param name="capacitance">The capacitance beside it.</param>
    /// <param name="maximumVoltage">The largest voltage it bears, DC and AC peak together; null where it is not stated.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is not above 0 Ω, or the capacitance is negative.</exception>
    public InputTermination(Resistance resistance, Capacitance capacitance, Voltage? maximumVoltage = null)
    {
        Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance));
        if (capacitance.SiValue < 0)
            throw Refuse.OutOfRange(capacitance.SiValue, Capacitance.Kind, nameof(capacitance), "at least 0 F");
        Resistance = resistance;
        Capacitance = capacitance;
        MaximumVoltage = maximumVoltage;
    }

    /// <summary>The resistance to ground.</summary>
    public Resistance Resistance { get; }

    /// <summary>The capacitance beside it.</summary>
    public Capacitance Capacitance { get; }

    /// <summary>The largest voltage it bears, DC and AC peak together; null where it is not stated.</summary>
    public Voltage? MaximumVoltage { get; }

    /// <summary>The impedance in one line.</summary>
    public override string ToString() => $"{Resistance} || {Capacitance}";
}
