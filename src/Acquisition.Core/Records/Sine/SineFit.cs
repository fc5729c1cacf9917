using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// Least-squares fit of a sine to a record, by the three- and four-parameter methods of IEEE 1057 and IEEE 1241 (from memory; handbook 9.1 to 9.4).
/// </summary>
/// <remarks>
/// The fit is either there, with the findings that qualify it, or refused with the finding that says why: a record without a sine in it, with less than one period,
/// with samples that are not numbers. Clipped samples are left out of the fit, so that amplitude, frequency and phase stay right, and SINAD is then absent.
/// Immutable.
/// </remarks>
public sealed class SineFit
{
    private SineFit(FittedSine? sine, int iterations, IReadOnlyList<Finding> findings)
    {
        Sine = sine;
        Iterations = iterations;
        Findings = findings.Frozen();
    }

    /// <summary>The sine; null where the fit was refused, with the reason among the <see cref="Findings"/>.</summary>
    public FittedSine? Sine { get; }

    /// <summary>How many times the parameters were corrected.</summary>
    public int Iterations { get; }

    /// <summary>What to know about the fit, or why there is none (that comes first); then what the record says of itself.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Amplitude, phase and offset of a sine of known frequency (three parameters). A frequency above half the sample rate is fitted as its alias.</summary>
    /// <param name="volts">Uniform samples in volts, at least 4; not modified.</param>
    /// <param name="rate">Their sample rate, above 0.</param>
    /// <param name="frequency">The frequency, above 0.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="volts"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate or the frequency is not above 0.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static SineFit ThreeParameter(double[] volts, SampleRate rate, Frequency frequency, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(volts, rate, Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency)), free: false, progress, cancellation);

    /// <summary>Amplitude, frequency, phase and offset of the largest sine in a record (four parameters); the start is found in its spectrum.</summary>
    /// <param name="volts">Uniform samples in volts, at least 5; not modified.</param>
    /// <param name="rate">Their sample rate, above 0.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="volts"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above 0.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static SineFit FourParameter(double[] volts, SampleRate rate, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(volts, rate, null, free: true, progress, cancellation);

    /// <summary>Amplitude, frequency, phase and offset of the sine near a frequency (four parameters), be it the largest or not.</summary>
    /// <param name="volts">Uniform samples in volts, at least 5; not modified.</param>
    /// <param name="rate">Their sample rate, above 0.</param>
    /// <param name="start">Where to start: within half a bin (half the sample rate over the number of samples) of the frequency, better a quarter; above 0.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="volts"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate or the start is not above 0.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static SineFit FourParameter(double[] volts, SampleRate rate, Frequency start, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(volts, rate, Refuse.UnlessAboveZero(start.SiValue, Frequency.Kind, nameof(start)), free: true, progress, cancellation);

    /// <summary>Amplitude, phase and offset of a sine of known frequency (three parameters) in a record.</summary>
    /// <param name="record">A record in volts, of at least 4 samples. Samples at its limits count as clipped; its range gives ENOB.</param>
    /// <param name="frequency">The frequency, above 0.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="ArgumentException">The record is not in volts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not above 0.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static SineFit ThreeParameter(Record record, Frequency frequency, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(record, Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency)), free: false, progress, cancellation);

    /// <summary>Amplitude, frequency, phase and offset of the largest sine in a record (four parameters).</summary>
    /// <param name="record">A record in volts, of at least 5 samples. Samples at its limits count as clipped; its range gives ENOB.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="ArgumentException">The record is not in volts.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static SineFit FourParameter(Record record, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(record, null, free: true, progress, cancellation);

    /// <summary>Amplitude, frequency, phase and offset of the sine near a frequency (four parameters), be it the largest or not.</summary>
    /// <param name="record">A record in volts, of at least 5 samples. Samples at its limits count as clipped; its range gives ENOB.</param>
    /// <param name="start">Where to start: within half a bin of the frequency, better a quarter; above 0.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="ArgumentException">The record is not in volts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The start is not above 0.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static SineFit FourParameter(Record record, Frequency start, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Of(record, Refuse.UnlessAboveZero(start.SiValue, Frequency.Kind, nameof(start)), free: true, progress, cancellation);

    private static SineFit Of(double[] volts, SampleRate rate, double? frequency, bool free, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        if (volts is null)
            throw new ArgumentNullException(nameof(volts));
        LongCall? call = LongCall.Of(progress, cancellation);
        SineFit fit = Of(NumberSamples.Of(volts), rate, frequency, free, null, call);
        call?.Completed();
        return fit;
    }

    private static SineFit Of(Record record, double? frequency, bool free, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        SampleStore samples = record.Volts(nameof(record));
        LongCall? call = LongCall.Of(progress, cancellation);
        SineFit fit = Of(samples, record.SampleRate, frequency, free, record, call);
        call?.Completed();
        return fit;
    }

    /// <param name="volts">The samples.</param>
    /// <param name="rate">Their sample rate.</param>
    /// <param name="frequency">The frequency, or where to start; null to find it.</param>
    /// <param name="free">Whether the frequency is fitted.</param>
    /// <param name="record">Whose samples they are, for limits, range and findings; null for a plain array.</param>
    /// <param name="call">Who watches.</param>
    internal static SineFit Of(SampleStore volts, SampleRate rate, double? frequency, bool free, Record? record, LongCall? call)
    {
        double fs = Refuse.UnlessAboveZero(rate.SiValue, SampleRate.Kind, nameof(rate));
        var findings = new List<Finding>();
        if (SineChecks.Samples(volts, free ? 5 : 4, call?.Part(0, 0.1), out double low, out double high) is { } unusable)
            return Refused(unusable);

        var passes = new SamplePasses(volts, call?.Part(0.1, 1));
        double? cycles = frequency / fs;
        SineSolution? fit = cycles is { } c ? SineSolver.Solve(passes, 0, volts.Length, c, free) : SineSearch.Solve(passes);
        if (fit is null)
            return Refused(SineChecks.Inseparable(cycles, volts.Length, fs));
        if (!fit.Converged)
            return Refused(SineChecks.NotConverged(fit, frequency, volts.Length, fs));

        ClippedSamples? clipped = ClippedSamples.Find(passes, fit, low, high, record?.LowLimitSi, record?.HighLimitSi);
        if (clipped is not null)
        {
            findings.Add(SineChecks.Clipped(clipped, volts.Length));
            if (clipped.Count > 0.8 * volts.Length)
                return Refused(new Finding("sine-fit-clipped-away", Severity.Failure, $"{clipped.Count} of {volts.Length} samples sit at a limit: too little of the sine is left to fit", "choose a larger vertical range, or a pulse measurement if the signal is a square wave"));
            fit = SineSolver.Solve(passes, 0, volts.Length, fit.Model.Cycles, free, clipped);
            if (fit is not { Converged: true })
                return Refused(new Finding("sine-fit-not-converged", Severity.Failure, "the fit to the samples between the limits does not converge", "choose a larger vertical range"));
        }
        if (free && SineChecks.Unresolved(fit, volts.Length, fs, searched: frequency is null) is { } unresolved)
            return Refused(unresolved);

        SineChecks.Qualify(findings, passes, fit, frequency, fs, free, record, low, high);
        findings.AddRange(record?.Findings ?? []);
        return new SineFit(new FittedSine(fit, fs, record?.FullScale(), clipped is not null, findings), fit.Iterations, findings);

        // The reason comes first.
        SineFit Refused(Finding reason) => new(null, 0, [reason, .. record?.Findings ?? []]);
    }

    /// <summary>The sine, or why there is none.</summary>
    public override string ToString() => Sine?.ToString() ?? Findings[0].ToString();
}
