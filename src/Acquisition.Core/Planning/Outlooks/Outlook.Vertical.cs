using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

// Resolution and noise (handbook 6). All voltages are re the source.
public sealed partial class Outlook
{
    /// <summary>The full-scale range: the one that is set, or the smallest that holds the signal on the display, pre- and overshoot included; null where none does.</summary>
    public PeakToPeakVoltage? FullScale
    {
        get
        {
            if (Setup.FullScale is { } set)
                return set;
            double attenuation = Setup.Applied.Attenuation;
            return Setup.Digitizer.RangeFor(PeakToPeakVoltage.FromSi(DisplayedExtremes.SiValue / attenuation, "extremes")) is { } range ? PeakToPeakVoltage.FromSi(range.SiValue * attenuation, "range") : null;
        }
    }

    /// <summary>The step from code to code; null where no range holds the signal.</summary>
    public Voltage? LeastSignificantBit => FullScale is { } range ? Quantization.LeastSignificantBit(range, Setup.Digitizer.Resolution) : null;

    /// <summary>The noise of quantisation, q/√12, rms: where the noise of one sample dithers it (half a code and more), averaging and high resolution reduce it too (handbook 5.5, 6.9); null where no range holds the signal.</summary>
    public RmsVoltage? QuantizationNoise => FullScale is { } range ? RmsVoltage.FromSi(Quantization.Noise(range, Setup.Digitizer.Resolution).SiValue / (Dithers ? Math.Sqrt(Setup.Combined) : 1), "noise") : null;

    /// <summary>The noise of chain and input as it is displayed, rms: averaging reduces it; null where it is not known.</summary>
    public RmsVoltage? Noise
    {
        get
        {
            if (NoiseOfOneSample is not { } noise)
                return null;
            return Averages ? RmsVoltage.FromSi(noise.SiValue / Math.Sqrt(Setup.Combined), "noise") : noise;
        }
    }

    /// <summary>What the jitter of the sample clock does to the displayed waveform, rms: its rms slope over a period, of all lines, times the jitter (handbook 6.7); null where the jitter is not known or the signal has no lines.</summary>
    public RmsVoltage? JitterNoise => Setup.Jitter is { } jitter && jitter.SiValue > 0 && Tone is not null
        ? RmsVoltage.FromSi(Math.Sqrt(_lines.Value.SlopePower) * jitter.SiValue, "jitter")
        : null;

    /// <summary>Quantisation, noise and jitter together, rms; null where no range holds the signal.</summary>
    public RmsVoltage? TotalNoise => QuantizationNoise is { } quantization
        ? NoiseCombination.Of(new[] { quantization }.Concat(new[] { Noise, JitterNoise }.Where(part => part is not null).Select(part => part!.Value)).ToArray())
        : null;

    /// <summary>The effective bits: the stated ones, interpolated at the fundamental, where there are any; else those of a sine that fills the range beside the quantisation, noise and jitter noise of this signal; null where no range holds the signal, and with peak detection or an envelope, which keep extremes and not samples.</summary>
    public Explained<BitDepth>? EffectiveBits
    {
        get
        {
            if (KeepsExtremes || FullScale is not { } range)
                return null;
            if (Setup.EffectiveBits.Count > 0 && Tone is { } fundamental)
                return new Explained<BitDepth>("effective bits", BitDepth.FromSi(EffectiveBitsPoint.At(Setup.EffectiveBits, fundamental.SiValue), "bits"), "stated ones, at " + fundamental.InWords(), "data sheet");
            string method = "quantisation" + (Noise is null ? "" : ", noise") + (JitterNoise is null ? "" : ", jitter") + ", of this signal, against a sine that fills the range";
            return new Explained<BitDepth>("effective bits", LeavesNoBits ? default : EffectiveResolution.FromNoise(range, TotalNoise!.Value), method, "handbook 6.3, 6.8",
                null, null, Noise is null ? ["the noise of chain and input is not known and left out"] : null);
        }
    }

    /// <summary>What is left of <see cref="EffectiveBits"/> for this signal: where it fills a quarter of the range, 12 dB and so two bits are lost (handbook 12.3); null where no range holds the signal.</summary>
    public BitDepth? EffectiveBitsOfSignal => EffectiveBitsOf(Signal.PeakToPeak.SiValue);

    /// <summary>
    /// The smallest voltage that one stored point tells apart: one code, or two standard deviations of the noise, whichever is more (handbook 12.8); where effective bits are stated and no means are taken, of the noise and
    /// distortion that they mean in this range, if that is more. The mean over dithered samples also lies between codes. Null where no range holds the signal, and where extremes are kept.
    /// </summary>
    public Voltage? SmallestDetail => !KeepsExtremes && TotalNoise is { } noise ? Voltage.FromSi(Math.Max(Dithers ? 0 : LeastSignificantBit!.Value.SiValue, 2 * Math.Max(noise.SiValue, StatedNoise)), "noise") : null;

    /// <summary>The standard uncertainty of the time of one edge by noise over slew, jitter and, where the samples are further apart than the edge takes, where in between it lies; null where nothing is known of either, the signal has no edge, or the mode keeps extremes, whose times are those of a whole interval.</summary>
    public Duration? EdgeTimingUncertainty
    {
        get
        {
            if (KeepsExtremes || DisplayedEdge is not { } edge || QuantizationNoise is not { } quantization || edge.Value.SiValue <= 0)
                return null;
            double slew = 0.8 * DisplayedAmplitude.Value.SiValue / edge.Value.SiValue, jitter = Setup.Jitter?.SiValue ?? 0, noise = Noise?.SiValue ?? 0;
            // Jitter moves the edge itself; what it does elsewhere on the waveform has no part in that.
            double byNoise = Math.Sqrt((quantization.SiValue * quantization.SiValue) + (noise * noise)) / slew;
            // With no sample on it an edge lies anywhere between two samples that are apart by more than it takes (JCGM 100 4.3.7, rectangular).
            double unseen = Math.Max(0, StoredRate.SampleInterval.SiValue - edge.Value.SiValue) / Math.Sqrt(12);
            return Duration.FromSi(Math.Sqrt((byNoise * byNoise) + (jitter * jitter) + (unseen * unseen)), "noise");
        }
    }

    // What a mean takes away of it is not known: distortion stays.
    private double StatedNoise => Setup.EffectiveBits.Count > 0 && !Averages && Tone is { } tone && FullScale is { } range
        ? EffectiveBitsPoint.NoiseAndDistortion(EffectiveBitsPoint.At(Setup.EffectiveBits, tone.SiValue), range.SiValue)
        : 0;

    /// <summary>What is left of the effective bits for a swing re the source, V.</summary>
    internal BitDepth? EffectiveBitsOf(double swing) => FullScale is { } range && EffectiveBits is { } bits
        ? BitDepth.FromSi(EffectiveBitsPoint.Left(bits.Value.SiValue, range.SiValue, swing), "bits")
        : null;

    private RmsVoltage? NoiseOfOneSample => Setup.Noise ?? Setup.Applied.Noise;

    /// <summary>Whether what is stored are the extremes of many samples: they are further apart than single ones and have no time of their own.</summary>
    internal bool KeepsExtremes => Setup.Mode is AcquisitionMode.PeakDetect or AcquisitionMode.Envelope;

    private bool Averages => Setup.Mode is AcquisitionMode.Average or AcquisitionMode.HighResolution;

    /// <summary>Whether a mean is taken over samples whose noise is half a code or more, so that the error of quantisation is averaged with it (handbook 5.5).</summary>
    private bool Dithers => Averages && NoiseOfOneSample is { } noise && LeastSignificantBit is { } code && noise.SiValue >= 0.5 * code.SiValue;

    /// <summary>More noise than a converter of no bits would have.</summary>
    internal bool LeavesNoBits => FullScale is { } range && TotalNoise is { } noise && noise.SiValue * Math.Sqrt(12) > range.SiValue;
}
