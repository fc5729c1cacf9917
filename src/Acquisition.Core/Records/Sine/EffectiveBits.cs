using System;

namespace Acquisition.Core.Records;

/// <summary>Effective number of bits (IEEE 1057/1241, from memory; handbook 6.3).</summary>
internal static class EffectiveBits
{
    private static readonly double DecibelsPerBit = 20 * Math.Log10(2);
    private static readonly double IdealSine = 10 * Math.Log10(1.5);

    /// <summary>From noise and distortion against the full scale: ld(FS / (NAD sqrt 12)). Null below 0 bit.</summary>
    internal static BitDepth? OfFullScale(double noiseAndDistortion, double fullScalePeakToPeak) =>
        Depth(Math.Log(fullScalePeakToPeak / (noiseAndDistortion * Math.Sqrt(12)), 2));

    /// <summary>From SINAD alone, without correcting for a sine smaller than full scale: (SINAD - 1.76 dB) / 6.02 dB. Null below 0 bit.</summary>
    internal static BitDepth? OfSinad(double sinadDecibels) => Depth((sinadDecibels - IdealSine) / DecibelsPerBit);

    private static BitDepth? Depth(double bits) => bits >= 0 && bits <= double.MaxValue ? BitDepth.FromBits(bits) : null;
}
