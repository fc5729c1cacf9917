using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// What a record of one sine says of the channel that took it, by its spectrum: harmonics, THD, SFDR, SNR, SINAD and noise floor (IEEE 1241, from memory; handbook 9.5, 9.9).
/// </summary>
/// <remarks>
/// The fundamental comes from a four-parameter fit. A line is the sum of the bins of the window's main lobe on both sides of it; DC is left out with as many bins; the noise of the
/// bins that remain stands for the bins that lines cover. Harmonics that fall onto another line are named, not guessed. Immutable.
/// </remarks>
public sealed class SingleToneTest
{
    private readonly double? _fullScale;
    private readonly double _fundamental;
    private readonly double _distortion;
    private readonly double _noise;
    private readonly double _noiseAndDistortion;
    private readonly double _spur;

    private SingleToneTest(ToneLines lines, FittedSine sine, Spectrum spectrum, double? fullScale, IReadOnlyList<Finding> findings)
    {
        _fullScale = fullScale;
        _fundamental = Math.Sqrt(lines.Fundamental);
        _distortion = Math.Sqrt(lines.Distortion);
        _noise = Math.Sqrt(lines.Noise);
        _noiseAndDistortion = Math.Sqrt(lines.NoiseAndDistortion);
        _spur = Math.Sqrt(lines.Spur);
        Sine = sine;
        Spectrum = spectrum;
        HighestHarmonic = lines.HighestHarmonic;
        Harmonics = lines.Harmonics.Frozen();
        SpurFrequency = Frequency.FromSi(lines.SpurFrequency, "frequency");
        Findings = findings.Frozen();
    }

    /// <summary>The fundamental, by a four-parameter fit.</summary>
    public FittedSine Sine { get; }

    /// <summary>The spectrum that the lines were read from.</summary>
    public Spectrum Spectrum { get; }

    /// <summary>The last harmonic that counts as distortion; higher ones count as noise.</summary>
    public int HighestHarmonic { get; }

    /// <summary>Harmonics from the second on.</summary>
    public IReadOnlyList<HarmonicLine> Harmonics { get; }

    /// <summary>Rms of the fundamental, by the spectrum.</summary>
    public RmsVoltage Fundamental => RmsVoltage.FromSi(_fundamental, "rms");

    /// <summary>Rms of everything but DC, fundamental and the counted harmonics, over the whole band to half the sample rate.</summary>
    public RmsVoltage Noise => RmsVoltage.FromSi(_noise, "rms");

    /// <summary>Total harmonic distortion relative to the fundamental: 20 lg of the root sum of squares of harmonics 2 to <see cref="HighestHarmonic"/> over it; negative. Null where there is none.</summary>
    public DecibelRatio? TotalHarmonicDistortion => Level(_distortion, _fundamental);

    /// <summary>Whether a tenth or more of the distortion's power comes from harmonics that do not stand out of the noise: the distortion is then at most what is stated.</summary>
    public bool DistortionIsUpperBound =>
        Harmonics.Where(line => line.IsInNoise && line.Rms is not null).Sum(line => line.Rms!.Value.SiValue * line.Rms.Value.SiValue) is > 0 and var inNoise && inNoise >= 0.1 * _distortion * _distortion;

    /// <summary>Total harmonic distortion relative to the fundamental, as a plain ratio (percent).</summary>
    public Ratio TotalHarmonicDistortionRatio => Ratio.FromSi(_distortion / _fundamental, "distortion");

    /// <summary>Signal to noise, harmonics and DC left out. Null where there is no noise.</summary>
    public DecibelRatio? SignalToNoise => Level(_fundamental, _noise);

    /// <summary>Signal to noise and distortion: everything but DC and the fundamental. Null where there is none.</summary>
    public DecibelRatio? Sinad => Level(_fundamental, _noiseAndDistortion);

    /// <summary>Effective number of bits from <see cref="Sinad"/> alone, without correction for a sine smaller than full scale. Null where SINAD is, and below 0 bit.</summary>
    public BitDepth? EffectiveBitsUncorrected => Sinad is { } sinad ? Records.EffectiveBits.OfSinad(sinad.Decibels) : null;

    /// <summary>Effective number of bits with full-scale correction, ld(FS/(NAD sqrt 12)), of the full scale that the record states. Null where it states none.</summary>
    public BitDepth? EffectiveBits => _fullScale is { } range ? EffectiveBitsOf(PeakToPeakVoltage.FromSi(range, "range")) : null;

    /// <summary>Effective number of bits with full-scale correction: ld(FS/(NAD sqrt 12)). Null where SINAD is, and below 0 bit.</summary>
    /// <param name="fullScale">The converter's range, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fullScale"/> is 0.</exception>
    public BitDepth? EffectiveBitsOf(PeakToPeakVoltage fullScale)
    {
        double range = Refuse.UnlessAboveZero(fullScale.SiValue, PeakToPeakVoltage.Kind, nameof(fullScale));
        return Sinad is null ? null : Records.EffectiveBits.OfFullScale(_noiseAndDistortion, range);
    }

    /// <summary>Spurious-free dynamic range: fundamental over the largest other line, harmonics included; positive, in dBc. Null where there is no other line.</summary>
    public DecibelRatio? SpuriousFreeDynamicRange => Level(_fundamental, _spur);

    /// <summary>Where the largest other line is.</summary>
    public Frequency SpurFrequency { get; }

    /// <summary>The noise as a one-sided density, if it is white.</summary>
    public NoiseDensity NoiseFloor => NoiseDensity.FromSi(_noise / Math.Sqrt(Spectrum.Rate.SiValue / 2), "density");

    /// <summary>What to know about the figures.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Tests a record that holds one sine and what the channel made of it.</summary>
    /// <param name="volts">Uniform samples in volts; not modified.</param>
    /// <param name="rate">Their sample rate, above 0.</param>
    /// <param name="window">The window; null for the one that suits: none for a coherent record, HFT144D for any other with enough samples, else Blackman-Harris.</param>
    /// <param name="highestHarmonic">The last harmonic that counts as distortion, from 2 to 100.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="volts"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate or the number of harmonics is not in its range.</exception>
    /// <exception cref="InvalidOperationException">There is no sine to test, the message being that of the finding which refuses the fit; or too few periods of it for the window.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static SingleToneTest Of(double[] volts, SampleRate rate, SpectralWindow? window = null, int highestHarmonic = 10, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(NumberSamples.Of(volts ?? throw new ArgumentNullException(nameof(volts))), rate, window, highestHarmonic, null, progress, cancellation);

    /// <summary>Tests a record that holds one sine and what the channel made of it.</summary>
    /// <param name="record">A record in volts. Samples at its limits count as clipped; its range gives ENOB.</param>
    /// <param name="window">The window; null for the one that suits: none for a coherent record, HFT144D for any other with enough samples, else Blackman-Harris.</param>
    /// <param name="highestHarmonic">The last harmonic that counts as distortion, from 2 to 100.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="ArgumentException">The record is not in volts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of harmonics is not in its range.</exception>
    /// <exception cref="InvalidOperationException">There is no sine to test, the message being that of the finding which refuses the fit; or too few periods of it for the window.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static SingleToneTest Of(Record record, SpectralWindow? window = null, int highestHarmonic = 10, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(record.Volts(nameof(record)), record.SampleRate, window, highestHarmonic, record, progress, cancellation);

    private static SingleToneTest Of(SampleStore volts, SampleRate rate, SpectralWindow? window, int highestHarmonic, Record? record, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        LongCall? call = LongCall.Of(progress, cancellation);
        if (highestHarmonic is < 2 or > 100)
            throw new ArgumentOutOfRangeException(nameof(highestHarmonic), $"{nameof(highestHarmonic)} must be from 2 to 100; was {highestHarmonic}");
        SineFit fit = SineFit.Of(volts, rate, null, free: true, record, call?.Part(0, 0.3));
        if (fit.Sine is not { } sine)
            throw new InvalidOperationException($"there is no tone to test: {fit.Findings[0]}");

        double cycles = HarmonicLine.Fold(sine.Fit.Model.Cycles, 1), bin = cycles * volts.Length;
        double off = Math.Abs(bin - Math.Round(bin));
        bool coherent = off < 1e-4 || off < 4 * sine.Fit.CyclesUncertainty * volts.Length && off < 1e-2;
        window ??= coherent ? SpectralWindow.Rectangular : volts.Length >= 1024 && bin > 14 ? SpectralWindow.Hft144D : SpectralWindow.BlackmanHarris;
        Spectrum spectrum = Spectrum.Of(volts, rate, window, null, record, call?.Part(0.3, 1));
        var lines = new ToneLines(spectrum, cycles, highestHarmonic);
        List<Finding> findings = fit.Findings.Where(f => f.Code != "residual-not-white").ToList();
        Qualify(findings, lines, sine, window, off);
        call?.Completed();
        return new SingleToneTest(lines, sine, spectrum, record?.FullScale(), findings);
    }

    private static void Qualify(List<Finding> findings, ToneLines lines, FittedSine sine, SpectralWindow window, double off)
    {
        if (lines.BinsOfNoise == 0)
        {
            findings.Add(new Finding("no-bins-for-noise", Severity.Failure, $"the main lobes of the lines cover the whole spectrum: noise, SNR and SINAD are not measured", "capture a longer record, count fewer harmonics, or choose a narrower window"));
        }
        foreach (HarmonicLine line in lines.Harmonics.Where(l => l.Collision is not null))
        {
            findings.Add(new Finding("harmonic-collides", Severity.Warning,
                $"harmonic {line.Order} folds to {FewDigits.Hertz(line.Frequency.SiValue)}, onto {line.Collision}: it is not counted on its own", "move the frequency or the sample rate a little", "handbook 9.5"));
        }
        if (window.Name == SpectralWindow.Rectangular.Name && off > 1e-4)
        {
            findings.Add(new Finding("leakage", Severity.Warning,
                $"the sine lies {FewDigits.Number(off, 3)} bins from a bin and no window is applied: it leaks about {FewDigits.Decibels(20 * Math.Log10(off / 10), 0)} into bins 10 away", "make the record coherent (J periods in M samples), or choose a window", "handbook 9.6"));
        }
        if (sine.Sinad is { } byFit && lines.NoiseAndDistortion > 0 && lines.BinsOfNoise > 0)
        {
            double bySpectrum = 10 * Math.Log10(lines.Fundamental / lines.NoiseAndDistortion);
            // Above 200 dB both are rounding.
            if (Math.Abs(bySpectrum - byFit.Decibels) > 0.5 && Math.Min(bySpectrum, byFit.Decibels) < 200)
            {
                findings.Add(new Finding("sinad-by-fit-and-spectrum-differ", Severity.Warning,
                    $"SINAD is {FewDigits.Decibels(byFit.Decibels)} by the fit and {FewDigits.Decibels(bySpectrum)} by the spectrum: leakage, drift, or noise that is not spread evenly", "prefer the fit; make the record coherent, or choose a window with lower side lobes", "handbook 9.9, step 7"));
            }
        }
    }

    private static DecibelRatio? Level(double of, double relativeTo) =>
        of > 0 && relativeTo > 0 ? DecibelRatio.FromDecibels(20 * Math.Log10(of / relativeTo)) : null;

    /// <summary>The figures in one line.</summary>
    public override string ToString() =>
        $"SINAD {Text(Sinad)}, SNR {Text(SignalToNoise)}, THD {(DistortionIsUpperBound ? "at most " : "")}{Text(TotalHarmonicDistortion)} (harmonics 2 to {HighestHarmonic}), SFDR {Text(SpuriousFreeDynamicRange)}";

    private static string Text(DecibelRatio? level) => level?.InWords() ?? "without limit";
}
