using System;

namespace Acquisition.Core;

/// <summary>
/// A DC accuracy as data sheets state it: so much of the reading, so much of full scale, and a fixed part (handbook 6.11). Check in the data sheet what each
/// percentage is of.
/// </summary>
/// <remarks>Immutable. Each part is a limit; as a standard uncertainty it is taken as the half-width of a rectangular distribution.</remarks>
public sealed class DcAccuracy
{
    /// <summary>A statement of accuracy.</summary>
    /// <param name="ofReading">The part in proportion to the reading.</param>
    /// <param name="ofFullScale">The part in proportion to full scale.</param>
    /// <param name="fixedPart">The part that is always there.</param>
    /// <exception cref="ArgumentOutOfRangeException">A part is negative.</exception>
    public DcAccuracy(Ratio ofReading, Ratio ofFullScale, Voltage fixedPart)
    {
        OfReading = NotNegative(ofReading, nameof(ofReading));
        OfFullScale = NotNegative(ofFullScale, nameof(ofFullScale));
        FixedPart = fixedPart.SiValue >= 0 ? fixedPart : throw Refuse.OutOfRange(fixedPart.SiValue, Voltage.Kind, nameof(fixedPart), "at least 0 V");
    }

    /// <summary>The part in proportion to the reading.</summary>
    public Ratio OfReading { get; }

    /// <summary>The part in proportion to full scale.</summary>
    public Ratio OfFullScale { get; }

    /// <summary>The part that is always there.</summary>
    public Voltage FixedPart { get; }

    /// <summary>How far a reading may be off: g |reading| + o FS + c.</summary>
    public Voltage Limit(Voltage reading, PeakToPeakVoltage fullScale) =>
        Voltage.FromSi(OfReading.SiValue * Math.Abs(reading.SiValue) + OfFullScale.SiValue * fullScale.SiValue + FixedPart.SiValue, nameof(reading));

    /// <summary>The standard uncertainty of a reading: √((g R)² + (o FS)² + c²)/√3.</summary>
    public Voltage StandardUncertainty(Voltage reading, PeakToPeakVoltage fullScale)
    {
        double gain = OfReading.SiValue * reading.SiValue, offset = OfFullScale.SiValue * fullScale.SiValue, constant = FixedPart.SiValue;
        return Voltage.FromSi(Math.Sqrt((gain * gain + offset * offset + constant * constant) / 3), nameof(reading));
    }

    /// <summary>How far the difference of two readings on one unchanged range may be off: g |V1 - V2|. What does not depend on the reading cancels; the linearity adds.</summary>
    public Voltage DifferenceLimit(Voltage first, Voltage second) => Voltage.FromSi(OfReading.SiValue * Math.Abs(first.SiValue - second.SiValue), nameof(first));

    private static Ratio NotNegative(Ratio part, string argument) =>
        part.SiValue >= 0 ? part : throw Refuse.OutOfRange(part.SiValue, Ratio.Kind, argument, "at least 0");
}
