using System;
using System.Collections.Generic;

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

    /// <summary>The effective bits at a frequency: straight between two points over the logarithm of the frequency, those of the nearest point outside.</summary>
    internal static double At(IReadOnlyList<EffectiveBitsPoint> points, double hertz)
    {
        if (hertz <= points[0].Frequency.SiValue)
            return points[0].EffectiveBits.SiValue;
        for (int i = 1; i < points.Count; i++)
        {
            double below = points[i - 1].Frequency.SiValue, above = points[i].Frequency.SiValue;
            if (hertz > above)
                continue;
            double share = Math.Log(hertz / below) / Math.Log(above / below);
            return points[i - 1].EffectiveBits.SiValue + (share * (points[i].EffectiveBits.SiValue - points[i - 1].EffectiveBits.SiValue));
        }
        return points[points.Count - 1].EffectiveBits.SiValue;
    }

    /// <summary>The noise and distortion that effective bits mean in a range: FS / (2^N √12), V rms (handbook 6.3).</summary>
    internal static double NoiseAndDistortion(double bits, double range) => range / (Math.Pow(2, bits) * Math.Sqrt(12));

    /// <summary>What is left of bits that hold over a range for a signal that fills a part of it: 20 lg(range / swing) less, 6.02 dB for each bit (handbook 12.3, 6.3); none below 0.</summary>
    internal static double Left(double bits, double range, double swing) => Math.Max(0, bits - Math.Max(0, Math.Log(range / swing) / Math.Log(2)));

    /// <summary>The point in one line.</summary>
    public override string ToString() => $"{EffectiveBits} at {Frequency}";
}
