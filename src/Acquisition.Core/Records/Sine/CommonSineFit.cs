using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>Sines of one frequency in several channels that were sampled together: the frequency from all of them, then amplitude and phase of each at it (handbook 9.10).</summary>
/// <remarks>
/// The frequency is the mean of the channels' own four-parameter fits, weighted by their uncertainties; a channel too weak for a fit of its own takes it from the others. Noise of
/// different channels is taken as independent. Immutable.
/// </remarks>
public sealed class CommonSineFit
{
    private readonly double _cycles;
    private readonly double _cyclesDeviation;
    private readonly double _rate;

    private CommonSineFit(double cycles, double deviation, double rate, IReadOnlyList<SineFit> channels, IReadOnlyList<Finding> findings)
    {
        _cycles = cycles;
        _cyclesDeviation = deviation;
        _rate = rate;
        Channels = channels.Frozen();
        Findings = findings.Frozen();
    }

    /// <summary>The common frequency; null where no channel holds a sine.</summary>
    public Frequency? Frequency => _cycles > 0 ? Core.Frequency.FromSi(_cycles * _rate, "frequency") : null;

    /// <summary>Its standard uncertainty; null with it.</summary>
    public Frequency? FrequencyUncertainty => _cycles > 0 ? Core.Frequency.FromSi(_cyclesDeviation * _rate, "uncertainty") : null;

    /// <summary>The three-parameter fit of each channel at the common frequency, in the order given.</summary>
    public IReadOnlyList<SineFit> Channels { get; }

    /// <summary>What to know about the frequency, or why there is none; then what the records say of themselves.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Fits channels given as arrays.</summary>
    /// <param name="rate">Sample rate of all channels, above 0.</param>
    /// <param name="channelsInVolts">One array of samples in volts for each channel, all of one length; at least one.</param>
    /// <exception cref="ArgumentNullException">The channels, or one of them, are null.</exception>
    /// <exception cref="ArgumentException">There is no channel, or their lengths differ.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above 0.</exception>
    public static CommonSineFit Of(SampleRate rate, params double[][] channelsInVolts) => Of(rate, (IReadOnlyList<double[]>)channelsInVolts);

    /// <summary>Fits channels given as arrays.</summary>
    /// <param name="rate">Sample rate of all channels, above 0.</param>
    /// <param name="channelsInVolts">One array of samples in volts for each channel, all of one length; at least one.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">The channels, or one of them, are null.</exception>
    /// <exception cref="ArgumentException">There is no channel, or their lengths differ.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above 0.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static CommonSineFit Of(SampleRate rate, IReadOnlyList<double[]> channelsInVolts, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        if (channelsInVolts is null || channelsInVolts.Contains(null!))
            throw new ArgumentNullException(nameof(channelsInVolts));
        return Of(rate, channelsInVolts.Select(NumberSamples.Of).ToArray(), new Record?[channelsInVolts.Count], LongCall.Of(progress, cancellation));
    }

    /// <summary>Fits channels given as records.</summary>
    /// <param name="channels">Records in volts, all of one rate and length; at least one.</param>
    /// <exception cref="ArgumentNullException">The channels, or one of them, are null.</exception>
    /// <exception cref="ArgumentException">There is no channel, their rates or lengths differ, or one is not in volts.</exception>
    public static CommonSineFit Of(params Record[] channels) => Of((IReadOnlyList<Record>)channels);

    /// <summary>Fits channels given as records.</summary>
    /// <param name="channels">Records in volts, all of one rate and length; at least one.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">The channels, or one of them, are null.</exception>
    /// <exception cref="ArgumentException">There is no channel, their rates or lengths differ, or one is not in volts.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static CommonSineFit Of(IReadOnlyList<Record> channels, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        if (channels is null || channels.Contains(null!))
            throw new ArgumentNullException(nameof(channels));
        if (channels.Any(c => c.RateSi != channels[0].RateSi))
            throw new ArgumentException("the channels must have one sample rate", nameof(channels));
        return Of(channels.Count > 0 ? channels[0].SampleRate : default, channels.Select(c => c.Volts(nameof(channels))).ToArray(), channels, LongCall.Of(progress, cancellation));
    }

    private static CommonSineFit Of(SampleRate rate, SampleStore[] channels, IReadOnlyList<Record?> records, LongCall? call)
    {
        if (channels.Length == 0)
            throw new ArgumentException("there must be at least one channel", nameof(channels));
        if (channels.Any(c => c.Length != channels[0].Length))
            throw new ArgumentException("the channels must have one length", nameof(channels));
        double fs = Refuse.UnlessAboveZero(rate.SiValue, SampleRate.Kind, nameof(rate));
        SineFit[] own = FitAll(null, call?.Part(0, 0.6));
        SineSolution[] fits = own.Where(f => f.Sine is not null).Select(f => f.Sine!.Fit).ToArray();
        if (fits.Length == 0)
        {
            call?.Completed();
            return new CommonSineFit(0, 0, fs, own, own[0].Findings);
        }

        // The strongest line leads; a channel that found another frequency found another line, and does not vote.
        SineSolution leader = fits.OrderByDescending(f => f.Model.Amplitude / Math.Max(f.ResidualDeviation, double.Epsilon)).First();
        double floor = 1e-15;
        double sum = 0, weights = 0;
        foreach (SineSolution f in fits.Where(f => Math.Abs(f.Model.Cycles - leader.Model.Cycles) < Math.Max(0.25 / channels[0].Length, 5 * (f.CyclesUncertainty + leader.CyclesUncertainty))))
        {
            double weight = 1 / (f.CyclesUncertainty * f.CyclesUncertainty + floor * floor);
            sum += weight * (f.Model.Cycles - leader.Model.Cycles);
            weights += weight;
        }
        double cycles = leader.Model.Cycles + sum / weights;
        var findings = new List<Finding>();
        for (int i = 0; i < own.Length; i++)
        {
            if (own[i].Sine is not { } sine)
                findings.Add(new Finding("channel-without-own-fit", Severity.Note, $"channel {i + 1} takes the frequency from the others: {own[i].Findings[0].Message}"));
            else if (Math.Abs(sine.Fit.Model.Cycles - cycles) > Math.Max(0.25 / channels[0].Length, 5 * (sine.Fit.CyclesUncertainty + leader.CyclesUncertainty)))
                findings.Add(new Finding("channels-differ-in-frequency", Severity.Warning, $"the largest line of channel {i + 1} is at {sine.Frequency}, not at the common {FewDigits.Hertz(cycles * fs, 8)}", "are the channels of one capture, and of one signal?"));
        }
        foreach (Record? record in records)
            findings.AddNew(record?.Findings ?? []);
        SineFit[] together = FitAll(cycles * fs, call?.Part(0.6, 1));
        call?.Completed();
        return new CommonSineFit(cycles, Math.Sqrt(1 / weights), fs, together, findings);

        SineFit[] FitAll(double? hertz, LongCall? part) => Enumerable.Range(0, channels.Length)
            .Select(i => SineFit.Of(channels[i], rate, hertz, free: hertz is null, records[i], part?.Part((double)i / channels.Length, (i + 1.0) / channels.Length)))
            .ToArray();
    }

    /// <summary>Compares two channels: amplitude ratio, phase difference and delay of the second against the first.</summary>
    /// <param name="first">Index of the first channel.</param>
    /// <param name="second">Index of the second.</param>
    /// <returns>The comparison; null where one of the fits was refused.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such channel.</exception>
    public ChannelComparison? Compare(int first, int second) =>
        Channel(first, nameof(first)).Sine is { } one && Channel(second, nameof(second)).Sine is { } two ? new ChannelComparison(one, two, _cycles * _rate) : null;

    private SineFit Channel(int index, string argument) =>
        index >= 0 && index < Channels.Count ? Channels[index] : throw new ArgumentOutOfRangeException(argument, $"{argument} must be from 0 to {Channels.Count - 1}; was {index}");

    /// <summary>Frequency and channels in one line.</summary>
    public override string ToString() => $"{Channels.Count} channels at {Frequency?.InWords(7) ?? "no common frequency"}";
}
