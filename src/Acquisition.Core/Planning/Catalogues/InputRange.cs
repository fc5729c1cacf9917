using System;

namespace Acquisition.Core.Planning;

/// <summary>One vertical range of an instrument: what the converter spans, and the noise it shows there.</summary>
public sealed class InputRange
{
    /// <summary>States a range.</summary>
    /// <param name="fullScale">The voltage between the two ends of the converter.</param>
    /// <param name="noise">The noise re the input, over the full bandwidth; null where it is not stated.</param>
    /// <exception cref="ArgumentOutOfRangeException">The full scale is not above 0 V.</exception>
    public InputRange(PeakToPeakVoltage fullScale, Stated<RmsVoltage>? noise = null)
    {
        Refuse.UnlessAboveZero(fullScale.SiValue, PeakToPeakVoltage.Kind, nameof(fullScale));
        FullScale = fullScale;
        Noise = noise;
    }

    /// <summary>The voltage between the two ends of the converter.</summary>
    public PeakToPeakVoltage FullScale { get; }

    /// <summary>The noise re the input, over the full bandwidth; null where it is not stated.</summary>
    public Stated<RmsVoltage>? Noise { get; }

    /// <summary>The range in one line.</summary>
    public override string ToString() => Noise is null ? FullScale.ToString() : $"{FullScale}, noise {Noise}";
}
