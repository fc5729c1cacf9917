using System;

namespace Acquisition.Core.Planning;

/// <summary>Effective bits at one frequency, as data sheets tabulate them.</summary>
public sealed class EffectiveBitsPoint
{
    /// <summary>States the effective bits at a frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not above 0 Hz, or the bits are not above 0.</exception>
    public EffectiveBitsPoint(Frequency frequency, BitDepth effectiveBits)
    {
        Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency));
        Refuse.UnlessAboveZero(effectiveBits.SiValue, BitDepth.Kind, nameof(effectiveBits));
        Frequency = frequency;
        EffectiveBits = effectiveBits;
    }

    /// <summary>The frequency of the sine they were measured with.</summary>
    public Frequency Frequency { get; }

    /// <summary>The effective bits there.</summary>
    public BitDepth EffectiveBits { get; }

    /// <summary>The point in one line.</summary>
    public override string ToString() => $"{EffectiveBits} at {Frequency}";
}
