using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>The spectrum of a record, one-sided: bins from DC to half the sample rate, each scaling by its own name (handbook 9.5, 9.7).</summary>
/// <remarks>
/// Amplitude scalings are right for lines: a sine on a bin reads its amplitude, one between bins up to the window's scalloping loss less. Density and mean-square scalings are
/// right for noise: the mean squares of all bins add up to the (window-weighted) mean square of the record, by Parseval's theorem. Immutable.
/// </remarks>
public sealed class Spectrum
{
    private readonly double[] _power;
    private readonly double _sum;
    private readonly double _sumOfSquares;
    private readonly double _rate;

    internal Spectrum(double[] power, int points, SpectralWindow window, double rate, double sum, double sumOfSquares, int averages, IReadOnlyList<Finding> findings)
    {
        _power = power;
        Points = PointCount.FromPoints(points);
        Window = window;
        _rate = rate;
        _sum = sum;
        _sumOfSquares = sumOfSquares;
        Averages = averages;
        Findings = findings.Frozen();
    }

    /// <summary>Samples that each transform took.</summary>
    public PointCount Points { get; }

    /// <summary>The window.</summary>
    public SpectralWindow Window { get; }

    /// <summary>Spectra averaged, as powers.</summary>
    public int Averages { get; }

    /// <summary>What to know about the samples: what the record says of itself, and whether some lie at the ends of the converter. Empty for a plain array.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Bins from DC to half the sample rate.</summary>
    public int Bins => _power.Length;

    /// <summary>Sample rate of the record.</summary>
    public SampleRate Rate => SampleRate.FromSi(_rate, "rate");

    /// <summary>From one bin to the next: sample rate over points.</summary>
    public Frequency BinWidth => Frequency.FromSi(_rate / Points.Points, "bin");

    /// <summary>The bandwidth that a bin has for noise: the window's equivalent noise bandwidth in hertz.</summary>
    public Frequency NoiseBandwidth => Frequency.FromSi(_rate * _sumOfSquares / (_sum * _sum), "bandwidth");

    /// <summary>The spectrum of all samples.</summary>
    /// <param name="volts">Uniform samples in volts, at least 2; not modified.</param>
    /// <param name="rate">Their sample rate, above 0.</param>
    /// <param name="window">The window; <see cref="SpectralWindow.Rectangular"/> for a record with a whole number of periods.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than 2 samples, or one is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above 0.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static Spectrum Of(double[] volts, SampleRate rate, SpectralWindow window, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(Samples(volts), rate, window, null, null, progress, cancellation);

    /// <summary>The spectrum of all samples of a record.</summary>
    /// <param name="record">A record in volts, of at least 2 samples.</param>
    /// <param name="window">The window; <see cref="SpectralWindow.Rectangular"/> for a record with a whole number of periods.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The record is not in volts, has fewer than 2 samples, or one is not finite.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static Spectrum Of(Record record, SpectralWindow window, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(record.Volts(nameof(record)), record.SampleRate, window, null, record, progress, cancellation);

    /// <summary>The mean of the power spectra of overlapping segments of a record (Welch 1967): less detail, less scatter.</summary>
    /// <param name="record">A record in volts.</param>
    /// <param name="window">The window.</param>
    /// <param name="segmentPoints">Samples in a segment, from 2 to the samples there are.</param>
    /// <param name="overlap">By how much segments overlap, from 0 to below 1; one half suits most windows.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The record is not in volts, or a sample is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The segment or the overlap is not in its range.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static Spectrum Averaged(Record record, SpectralWindow window, PointCount segmentPoints, Ratio overlap, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(record.Volts(nameof(record)), record.SampleRate, window, (segmentPoints, overlap), record, progress, cancellation);

    /// <summary>The mean of the power spectra of overlapping segments (Welch 1967): less detail, less scatter.</summary>
    /// <param name="volts">Uniform samples in volts; not modified.</param>
    /// <param name="rate">Their sample rate, above 0.</param>
    /// <param name="window">The window.</param>
    /// <param name="segmentPoints">Samples in a segment, from 2 to the samples there are. Samples after the last whole segment are not used.</param>
    /// <param name="overlap">By how much segments overlap, from 0 to below 1; one half suits most windows.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A sample is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate, the segment or the overlap is not in its range.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static Spectrum Averaged(double[] volts, SampleRate rate, SpectralWindow window, PointCount segmentPoints, Ratio overlap, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(Samples(volts), rate, window, (segmentPoints, overlap), null, progress, cancellation);

    private static SampleStore Samples(double[] volts) => NumberSamples.Of(volts ?? throw new ArgumentNullException(nameof(volts)));

    private static Spectrum Of(SampleStore volts, SampleRate rate, SpectralWindow window, (PointCount Points, Ratio Overlap)? segments, Record? record, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        LongCall? call = LongCall.Of(progress, cancellation);
        Spectrum spectrum = Of(volts, rate, window, segments, record, call);
        call?.Completed();
        return spectrum;
    }

    /// <param name="volts">The samples.</param>
    /// <param name="rate">Their sample rate.</param>
    /// <param name="window">The window.</param>
    /// <param name="segments">Length and overlap of segments; null for one spectrum of all samples.</param>
    /// <param name="record">Whose samples they are, for limits and findings; null for a plain array.</param>
    /// <param name="call">Who watches.</param>
    internal static Spectrum Of(SampleStore volts, SampleRate rate, SpectralWindow window, (PointCount Points, Ratio Overlap)? segments, Record? record, LongCall? call)
    {
        if (window is null)
            throw new ArgumentNullException(nameof(window));
        if (volts.Length < 2)
            throw new ArgumentException($"{nameof(volts)} must hold at least 2 samples; has {volts.Length}", nameof(volts));
        volts.Extremes(call?.Part(0, 0.05), out double lowest, out double highest);
        if (volts.FirstUnusable(lowest, highest) is { } index)
            throw new ArgumentException($"{nameof(volts)} must hold finite samples; sample {index} is {FewDigits.Number(volts[index], 17)}", nameof(volts));
        double fs = Refuse.UnlessAboveZero(rate.SiValue, SampleRate.Kind, nameof(rate));
        int segment = volts.Length, hop = volts.Length;
        if (segments is { } parts)
        {
            long points = parts.Points.Points;
            if (points < 2 || points > volts.Length)
                throw Refuse.OutOfRange(points, PointCount.Kind, "segmentPoints", $"from 2 pts to the {volts.Length} pts of the record");
            if (!(parts.Overlap.Fraction >= 0 && parts.Overlap.Fraction < 1))
                throw Refuse.OutOfRange(parts.Overlap.Fraction, Ratio.Kind, "overlap", "from 0 to below 1");
            segment = (int)points;
            hop = Math.Max(1, (int)Math.Round(points * (1 - parts.Overlap.Fraction)));
        }
        IReadOnlyList<Finding> findings = record is null ? [] : ConverterLimits.Findings(record, lowest, highest, "lines and noise that clipping makes are in the spectrum", call);
        return new PowerSpectra(volts, window, segment, hop).Mean(fs, findings, call?.Part(0.05, 1));
    }

    /// <summary>Frequency of a bin.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such bin.</exception>
    public Frequency FrequencyOf(int bin) => Frequency.FromSi(Valid(bin) * _rate / Points.Points, nameof(bin));

    /// <summary>The bin nearest to a frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is negative or above half the sample rate.</exception>
    public int BinOf(Frequency frequency)
    {
        if (!(frequency.SiValue >= 0 && frequency.SiValue <= _rate / 2))
            throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), $"from 0 Hz to {FewDigits.Hertz(_rate / 2)}, half the sample rate");
        return Math.Min(Bins - 1, (int)Math.Round(frequency.SiValue / _rate * Points.Points));
    }

    /// <summary>Peak amplitude of a sine on each bin, in volts: 2 |X| / sum w; at DC and at half the sample rate |X| / sum w.</summary>
    public double[] PeakAmplitudesInVolts() => Scaled(k => Math.Sqrt(_power[k]) * (IsEdge(k) ? 1 : 2) / _sum);

    /// <summary>Rms amplitude of a sine on each bin, in volts: the peak amplitude over sqrt 2; at DC and at half the sample rate |X| / sum w.</summary>
    public double[] RmsAmplitudesInVolts() => Scaled(k => Math.Sqrt(_power[k] * (IsEdge(k) ? 1 : 2)) / _sum);

    /// <summary>One-sided spectral density of each bin, in volts per root hertz: sqrt(2 |X|^2 / (fs sum w^2)); without the 2 at DC and at half the sample rate.</summary>
    public double[] DensitiesInVoltsPerRootHertz() => Scaled(k => Math.Sqrt(_power[k] * (IsEdge(k) ? 1 : 2) / (_rate * _sumOfSquares)));

    /// <summary>Each bin's share of the mean square of the record, in volts squared: 2 |X|^2 / (M sum w^2); without the 2 at DC and at half the sample rate. They add up to it.</summary>
    public double[] MeanSquaresInSquareVolts() => Scaled(MeanSquare);

    /// <summary>Rms of everything in a band of frequencies, its edges included to the nearest bin.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The band does not lie between 0 Hz and half the sample rate, or is empty.</exception>
    public RmsVoltage RmsBetween(Frequency low, Frequency high)
    {
        int first = BinOf(low), last = BinOf(high);
        if (last < first)
            throw Refuse.OutOfRange(high.SiValue, Frequency.Kind, nameof(high), $"at least the lower edge, {low}");
        return RmsVoltage.FromSi(Math.Sqrt(MeanSquareBetween(first, last)), "rms");
    }

    /// <summary>Peak amplitudes in decibels relative to a reference, with an explicit floor for bins that hold less or nothing.</summary>
    /// <param name="reference">What 0 dB means: the fundamental for dBc, half of the full scale for dBFS; above 0.</param>
    /// <param name="floor">The lowest level written, such as -200 dB.</param>
    /// <exception cref="ArgumentOutOfRangeException">The reference is not above 0.</exception>
    public SpectrumLevels LevelsRelativeTo(PeakVoltage reference, DecibelRatio floor)
    {
        double zero = Refuse.UnlessAboveZero(reference.SiValue, PeakVoltage.Kind, nameof(reference));
        double[] levels = PeakAmplitudesInVolts();
        int floored = 0;
        for (int k = 0; k < levels.Length; k++)
        {
            double level = 20 * Math.Log10(levels[k] / zero);
            bool below = !(level >= floor.Decibels);
            levels[k] = below ? floor.Decibels : level;
            floored += below ? 1 : 0;
        }
        return new SpectrumLevels(levels, reference, floor, floored);
    }

    internal double MeanSquare(int bin) => _power[bin] * (IsEdge(bin) ? 1 : 2) / (Points.Points * _sumOfSquares);

    internal double PeakAmplitude(int bin) => Math.Sqrt(_power[bin]) * (IsEdge(bin) ? 1 : 2) / _sum;

    internal double MeanSquareBetween(int first, int last)
    {
        double sum = 0;
        for (int k = first; k <= last; k++)
            sum += MeanSquare(k);
        return sum;
    }

    private bool IsEdge(int bin) => bin == 0 || 2L * bin == Points.Points;

    private int Valid(int bin) =>
        bin >= 0 && bin < Bins ? bin : throw new ArgumentOutOfRangeException(nameof(bin), $"bin must be from 0 to {Bins - 1}; was {bin}");

    private double[] Scaled(Func<int, double> scale)
    {
        var values = new double[Bins];
        for (int k = 0; k < values.Length; k++)
            values[k] = scale(k);
        return values;
    }

    /// <summary>Bins, width and window in one line.</summary>
    public override string ToString() => $"{Bins} bins of {BinWidth.InWords(5)}, {Window} window";
}
