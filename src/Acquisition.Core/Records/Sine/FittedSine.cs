using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// A sine found in a record: <c>offset + amplitude cos(2 pi f t + phase)</c>, t counted from the first sample. (As a sine: <c>sin(2 pi f t + phase + 90 deg)</c>.)
/// </summary>
/// <remarks>
/// Standard uncertainties come from the covariance of the fit, with the residual taken as white noise; harmonics in the residual do not average like noise
/// (see the finding <c>residual-not-white</c>). Immutable.
/// </remarks>
public sealed class FittedSine
{
    private readonly double _rate;
    private readonly double? _fullScale;
    private readonly bool _clipped;

    internal FittedSine(SineSolution fit, double rate, double? fullScale, bool clipped, IReadOnlyList<Finding> findings)
    {
        _rate = rate;
        _fullScale = fullScale;
        _clipped = clipped;
        Fit = fit;
        Findings = findings;
    }

    internal SineSolution Fit { get; }

    /// <summary>Those of the fit, for what is made of many sines.</summary>
    internal IReadOnlyList<Finding> Findings { get; }

    /// <summary>Peak amplitude.</summary>
    public PeakVoltage Amplitude => PeakVoltage.FromSi(Fit.Model.Amplitude, "amplitude");

    /// <summary>Frequency.</summary>
    public Frequency Frequency => Frequency.FromSi(Fit.Model.Cycles * _rate, "frequency");

    /// <summary>Phase of the cosine at the first sample, from -180 to 180 degrees.</summary>
    public Angle Phase => Angle.FromSi(Fit.PhaseAtStart, "phase");

    /// <summary>Phase of the cosine at the centre of the record, where frequency and phase are not correlated and the phase is best known.</summary>
    public Angle PhaseAtCenter => Angle.FromSi(Fit.PhaseAtCenter, "phase");

    /// <summary>The mean of the sine.</summary>
    public Voltage Offset => Voltage.FromSi(Fit.Model.Offset, "offset");

    /// <summary>Noise and distortion (NAD): rms of what the sine and the offset do not explain, divisor M, the number of samples, as for SINAD and ENOB.</summary>
    public RmsVoltage NoiseAndDistortion => RmsVoltage.FromSi(Fit.NoiseAndDistortion, "residual");

    /// <summary>The residual as an estimate of the noise: divisor M less the number of fitted parameters.</summary>
    public RmsVoltage ResidualDeviation => RmsVoltage.FromSi(Fit.ResidualDeviation, "residual");

    /// <summary>Standard uncertainty of the amplitude.</summary>
    public PeakVoltage AmplitudeUncertainty => PeakVoltage.FromSi(Fit.AmplitudeUncertainty, "uncertainty");

    /// <summary>Standard uncertainty of the frequency; 0 Hz where the frequency was given.</summary>
    public Frequency FrequencyUncertainty => Frequency.FromSi(Fit.CyclesUncertainty * _rate, "uncertainty");

    /// <summary>Standard uncertainty of <see cref="Phase"/>.</summary>
    public Angle PhaseUncertainty => Angle.FromSi(Fit.PhaseAtStartUncertainty, "uncertainty");

    /// <summary>Standard uncertainty of <see cref="PhaseAtCenter"/>.</summary>
    public Angle PhaseAtCenterUncertainty => Angle.FromSi(Fit.PhaseAtCenterUncertainty, "uncertainty");

    /// <summary>Standard uncertainty of the offset.</summary>
    public Voltage OffsetUncertainty => Voltage.FromSi(Fit.OffsetUncertainty, "uncertainty");

    /// <summary>The least uncertainties that the record allows: Cramer-Rao bounds at the fitted amplitude and residual. Null where the residual is zero.</summary>
    public CramerRaoBound? Bound => Fit.ResidualDeviation > 0 ? CramerRaoBound.OfSine(Amplitude, ResidualDeviation, PointCount.FromPoints(Fit.Count), SampleRate.FromSi(_rate, "rate")) : null;

    /// <summary>Samples that took part in the fit.</summary>
    public PointCount Points => PointCount.FromPoints(Fit.Count);

    /// <summary>How many periods of the sine the record holds.</summary>
    public Ratio Periods => Ratio.FromSi(Fit.Model.Cycles * (2 * Fit.Half + 1), "periods");

    /// <summary>Whether the frequency was given (three parameters) and not fitted (four).</summary>
    public bool FrequencyWasGiven => Fit.Parameters == 3;

    /// <summary>
    /// Signal to noise and distortion: 20 lg of the sine's rms over <see cref="NoiseAndDistortion"/>. Null where samples are clipped (their distortion was left
    /// out of the fit) and where the residual is zero.
    /// </summary>
    public DecibelRatio? Sinad => _clipped || !(Fit.NoiseAndDistortion > 0) ? null : DecibelRatio.FromDecibels(SinadDecibels);

    /// <summary>Effective number of bits from SINAD alone, <em>without</em> correction for a sine smaller than full scale: (SINAD - 1.76 dB)/6.02 dB. Null where SINAD is, and below 0 bit.</summary>
    public BitDepth? EffectiveBitsUncorrected => Sinad is null ? null : Records.EffectiveBits.OfSinad(SinadDecibels);

    /// <summary>Effective number of bits of the full scale that the record states: see <see cref="EffectiveBitsOf"/>. Null where the record states none.</summary>
    public BitDepth? EffectiveBits => _fullScale is { } fullScale ? EffectiveBitsOf(PeakToPeakVoltage.FromSi(fullScale, nameof(fullScale))) : null;

    /// <summary>Effective number of bits <em>with</em> full-scale correction: ld(FS / (NAD sqrt 12)). Null where SINAD is, and below 0 bit.</summary>
    /// <param name="fullScale">The converter's range, from its lowest to its highest code, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fullScale"/> is 0.</exception>
    public BitDepth? EffectiveBitsOf(PeakToPeakVoltage fullScale)
    {
        double range = Refuse.UnlessAboveZero(fullScale.SiValue, PeakToPeakVoltage.Kind, nameof(fullScale));
        return Sinad is null ? null : Records.EffectiveBits.OfFullScale(Fit.NoiseAndDistortion, range);
    }

    /// <summary>The sine at a time after the first sample.</summary>
    public Voltage ValueAt(Duration time) => Voltage.FromSi(
        Fit.Model.Offset + Fit.Model.Amplitude * Math.Cos(2 * Math.PI * Fit.Model.Cycles * _rate * time.SiValue + Fit.PhaseAtStart), nameof(time));

    /// <summary>Phase of the cosine at a time after the first sample, from -180 to 180 degrees: at the trigger, when the record starts before it.</summary>
    public Angle PhaseAt(Duration time) =>
        Angle.FromSi(Math.IEEERemainder(Fit.PhaseAtStart + 2 * Math.PI * Math.IEEERemainder(Fit.Model.Cycles * _rate * time.SiValue, 1), 2 * Math.PI), nameof(time));

    private double SinadDecibels => 20 * Math.Log10(Fit.Model.Amplitude / (Math.Sqrt(2) * Fit.NoiseAndDistortion));

    /// <summary>Amplitude, frequency, phase, offset and residual in one line.</summary>
    public override string ToString() => $"{Amplitude.InWords()} at {Frequency.InWords(7)}, {Phase.InWords()}, offset {Offset.InWords()}, residual {NoiseAndDistortion.InWords()}";
}
