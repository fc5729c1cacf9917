using System;

namespace Acquisition.Core.Planning;

/// <summary>One input impedance that an instrument offers, with what it bears.</summary>
public sealed class InputTermination
{
    /// <summary>States an input impedance.</summary>
    /// <param name="resistance">The resistance to ground.</param>
    /// <param name="capacitance">The capacitance beside it.</param>
    /// <param name="maximumVoltage">The largest voltage it bears, DC and AC peak together; null where it is not stated.</param>
    /// <param name="maximumToEarth">The largest voltage that it stands against earth where it is isolated, DC and AC peak together; null where it is not stated.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resistance or a voltage is not above 0, or the capacitance is negative.</exception>
    public InputTermination(Resistance resistance, Capacitance capacitance, Voltage? maximumVoltage = null, Voltage? maximumToEarth = null)
    {
        Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance));
        if (capacitance.SiValue < 0)
            throw Refuse.OutOfRange(capacitance.SiValue, Capacitance.Kind, nameof(capacitance), "at least 0 F");
        Resistance = resistance;
        Capacitance = capacitance;
        if (maximumVoltage is { } stands)
            Refuse.UnlessAboveZero(stands.SiValue, Voltage.Kind, nameof(maximumVoltage));
        MaximumVoltage = maximumVoltage;
        if (maximumToEarth is { } volts)
            Refuse.UnlessAboveZero(volts.SiValue, Voltage.Kind, nameof(maximumToEarth));
        MaximumToEarth = maximumToEarth;
    }

    /// <summary>The resistance to ground.</summary>
    public Resistance Resistance { get; }

    /// <summary>The capacitance beside it.</summary>
    public Capacitance Capacitance { get; }

    /// <summary>The largest voltage it bears, DC and AC peak together; null where it is not stated.</summary>
    public Voltage? MaximumVoltage { get; }

    /// <summary>The largest voltage that it stands against earth where it is isolated, DC and AC peak together; null where it is not stated.</summary>
    public Voltage? MaximumToEarth { get; }

    /// <summary>The impedance in one line.</summary>
    public override string ToString() => $"{Resistance} || {Capacitance}";
}
