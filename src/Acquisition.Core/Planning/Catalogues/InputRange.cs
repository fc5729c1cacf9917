using System;

namespace Acquisition.Core.Planning;

/// <summary>One vertical range of an instrument: what the converter spans, and the noise it shows there.</summary>
public sealed class InputRange
{
    /// <summary>States a range.</summary>
    /// <param name="fullScale">The voltage between the two ends of the converter.</param>
    /// <param name="noise">The noise re the input, over the full bandwidth; null where it is not stated.</param>
    /// <param name="maximumOffset">By how much the middle of the range can be moved from 0 V, either way, re the input; null where it is not stated.</param>
    /// <exception cref="ArgumentOutOfRangeException">The full scale is not above 0 V, or the offset is negative.</exception>
    public InputRange(PeakToPeakVoltage fullScale, Stated<RmsVoltage>? noise = null, Voltage? maximumOffset = null)
    {
        Refuse.UnlessAboveZero(fullScale.SiValue, PeakToPeakVoltage.Kind, nameof(fullScale));
        FullScale = fullScale;
        Noise = noise;
        if (maximumOffset is { SiValue: < 0 } negative)
            throw Refuse.OutOfRange(negative.SiValue, Voltage.Kind, nameof(maximumOffset), "at least 0 V");
        MaximumOffset = maximumOffset;
    }

    /// <summary>As a share of the full scale, what an input can shift as a matter of course (common practice); more is a question to its data sheet.</summary>
    internal const double UsualOffset = 0.5;

    /// <summary>The voltage between the two ends of the converter.</summary>
    public PeakToPeakVoltage FullScale { get; }

    /// <summary>The noise re the input, over the full bandwidth; null where it is not stated.</summary>
    public Stated<RmsVoltage>? Noise { get; }

    /// <summary>By how much the middle of the range can be moved from 0 V, either way, re the input; null where it is not stated.</summary>
    public Voltage? MaximumOffset { get; }

    /// <summary>Whether it holds a signal behind an attenuation, with the offset it takes; where none is stated, any.</summary>
    internal bool Holds(Signal signal, double attenuation) => FullScale.SiValue * attenuation >= signal.PeakToPeak.SiValue
        && (MaximumOffset is not { } most || OffsetFor(signal, FullScale.SiValue * attenuation) <= most.SiValue * attenuation * (1 + 1e-9));

    /// <summary>The least offset with which a full scale holds a signal of no larger swing, V.</summary>
    internal static double OffsetFor(Signal signal, double fullScale) => OffsetFor((signal.Highest + signal.Lowest) / 2, signal.PeakToPeak.SiValue, fullScale);

    /// <summary>The least offset with which a full scale holds a swing about a middle, V: half of what it does not fill is free on either side.</summary>
    internal static double OffsetFor(double middle, double swing, double fullScale) => Math.Max(0, Math.Abs(middle) - ((fullScale - swing) / 2));

    /// <summary>The range in one line.</summary>
    public override string ToString() => Noise is null ? FullScale.ToString() : $"{FullScale}, noise {Noise}";
}
