using System;

namespace Acquisition.Core.Planning;

/// <summary>A probe (or a plain cable) as its data sheet describes it. What is not stated is null and is never guessed.</summary>
/// <remarks>Immutable; each <c>With...</c> method gives a changed copy.</remarks>
public sealed class CatalogueProbe
{
    /// <summary>A probe with the figures that no choice can be made without.</summary>
    /// <param name="name">The name by which results refer to it.</param>
    /// <param name="attenuationFactor">How many times smaller the voltage arrives: 10 for 10:1.</param>
    /// <param name="bandwidth">The half-power bandwidth of the probe alone.</param>
    /// <param name="shape">How it falls off.</param>
    /// <param name="resistance">The resistance at the tip.</param>
    /// <param name="capacitance">The capacitance at the tip.</param>
    /// <param name="into">The input resistance it must be plugged into, such as 1 MΩ or 50 Ω.</param>
    /// <exception cref="ArgumentException"><paramref name="name"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not above 0.</exception>
    public CatalogueProbe(string name, double attenuationFactor, Stated<Frequency> bandwidth, ResponseShape shape, Resistance resistance, Capacitance capacitance, Resistance into)
    {
        Name = CatalogueInstrument.RequireName(name);
        AttenuationFactor = Refuse.UnlessAboveZero(attenuationFactor, Ratio.Kind, nameof(attenuationFactor));
        Bandwidth = bandwidth ?? throw new ArgumentNullException(nameof(bandwidth));
        Refuse.UnlessAboveZero(bandwidth.Value.SiValue, Frequency.Kind, nameof(bandwidth));
        Shape = shape ?? throw new ArgumentNullException(nameof(shape));
        Refuse.UnlessAboveZero(resistance.SiValue, Core.Resistance.Kind, nameof(resistance));
        Resistance = resistance;
        if (capacitance.SiValue < 0)
            throw Refuse.OutOfRange(capacitance.SiValue, Core.Capacitance.Kind, nameof(capacitance), "at least 0 F");
        Capacitance = capacitance;
        Refuse.UnlessAboveZero(into.SiValue, Core.Resistance.Kind, nameof(into));
        Into = into;
    }

    /// <summary>The name by which results refer to it.</summary>
    public string Name { get; }

    /// <summary>How many times smaller the voltage arrives.</summary>
    public double AttenuationFactor { get; }

    /// <summary>The half-power bandwidth of the probe alone.</summary>
    public Stated<Frequency> Bandwidth { get; }

    /// <summary>How it falls off.</summary>
    public ResponseShape Shape { get; }

    /// <summary>The resistance at the tip.</summary>
    public Resistance Resistance { get; }

    /// <summary>The capacitance at the tip.</summary>
    public Capacitance Capacitance { get; }

    /// <summary>The input resistance it must be plugged into.</summary>
    public Resistance Into { get; }

    /// <summary>The inductance of its tip and reference lead; null where it is not stated.</summary>
    public Inductance? LeadInductance { get; private set; }

    /// <summary>The largest voltage it bears, DC and AC peak together; null where it is not stated.</summary>
    public Voltage? MaximumVoltage { get; private set; }

    /// <summary>The largest voltage that either of its two points stands against earth, DC and AC peak together; null where it is not stated.</summary>
    public Voltage? MaximumToEarth { get; private set; }

    /// <summary>Whether it measures between two points, neither of which is earth.</summary>
    public bool IsDifferential { get; private set; }

    /// <summary>How much less a voltage that both of its points have in common shows than one between them, as positive decibels; null where it is not stated.</summary>
    public DecibelRatio? CommonModeRejection { get; private set; }

    /// <summary>The noise re the tip; null where it is not stated.</summary>
    public Stated<RmsVoltage>? Noise { get; private set; }

    /// <summary>How far its attenuation may be off at DC, relative.</summary>
    public Stated<Ratio>? GainAccuracy { get; private set; }

    /// <summary>The measurement category and voltage it is rated for, as printed on it; null where there is none.</summary>
    public string? Rating { get; private set; }

    /// <summary>The price in the catalogue's own neutral unit; null where it is not known.</summary>
    public double? PriceInUnits { get; private set; }

    /// <summary>A copy with a lead inductance.</summary>
    public CatalogueProbe WithLeadInductance(Inductance inductance) => Copy(copy => copy.LeadInductance = inductance);

    /// <summary>A copy with a largest voltage, DC and AC peak together.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="voltage"/> is not above 0 V.</exception>
    public CatalogueProbe WithMaximumVoltage(Voltage voltage)
    {
        Refuse.UnlessAboveZero(voltage.SiValue, Voltage.Kind, nameof(voltage));
        return Copy(copy => copy.MaximumVoltage = voltage);
    }

    /// <summary>A copy with the largest voltage that either of its two points (tip and reference lead, or the two inputs of a differential probe) stands against earth.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="maximumToEarth"/> is not above 0 V.</exception>
    public CatalogueProbe WithMaximumToEarth(Voltage maximumToEarth)
    {
        Refuse.UnlessAboveZero(maximumToEarth.SiValue, Voltage.Kind, nameof(maximumToEarth));
        return Copy(copy => copy.MaximumToEarth = maximumToEarth);
    }

    /// <summary>A copy with a common-mode rejection, at the frequencies at which the common mode moves.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rejection"/> is not above 0 dB.</exception>
    public CatalogueProbe WithCommonModeRejection(DecibelRatio rejection)
    {
        Refuse.UnlessAboveZero(rejection.Decibels, DecibelRatio.Kind, nameof(rejection));
        return Copy(copy => copy.CommonModeRejection = rejection);
    }

    /// <summary>A copy with a noise re the tip.</summary>
    public CatalogueProbe WithNoise(Stated<RmsVoltage> noise) => Copy(copy => copy.Noise = noise);

    /// <summary>A copy with a gain accuracy.</summary>
    public CatalogueProbe WithGainAccuracy(Stated<Ratio> accuracy) => Copy(copy => copy.GainAccuracy = accuracy);

    /// <summary>A copy with a rating, and whether it is differential.</summary>
    public CatalogueProbe WithRating(string? rating, bool differential) => Copy(copy =>
    {
        copy.Rating = rating;
        copy.IsDifferential = differential;
    });

    /// <summary>A copy with a price.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="priceInUnits"/> is negative.</exception>
    public CatalogueProbe WithPrice(double priceInUnits) => priceInUnits >= 0 && priceInUnits <= double.MaxValue
        ? Copy(copy => copy.PriceInUnits = priceInUnits)
        : throw new ArgumentOutOfRangeException(nameof(priceInUnits), FormattableString.Invariant($"priceInUnits must be at least 0; was {priceInUnits}"));

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private CatalogueProbe Copy(Action<CatalogueProbe> change)
    {
        var copy = (CatalogueProbe)MemberwiseClone();
        change(copy);
        return copy;
    }
}
