using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>A signal behind a chain and a digitizer, with how the digitizer is set. What may follow is the window.</summary>
/// <remarks>Immutable; each <c>With...</c> method gives a changed copy. What is not set is taken as the digitizer has it, and what is not known is not judged.</remarks>
public sealed class SampledSignal
{
    internal SampledSignal(AppliedSignal applied, Digitizer digitizer)
    {
        Applied = applied;
        Digitizer = digitizer;
    }

    /// <summary>The signal and its chain.</summary>
    public AppliedSignal Applied { get; private set; }

    /// <summary>The digitizer.</summary>
    public Digitizer Digitizer { get; }

    /// <summary>How many channels are in use.</summary>
    public int ChannelsInUse { get; private set; } = 1;

    /// <summary>The full-scale range that is set; null where the smallest that holds the signal is.</summary>
    public PeakToPeakVoltage? FullScale { get; private set; }

    /// <summary>By how much the middle of the range can be moved from 0 V, either way, as seen at the source; null where it is not known.</summary>
    public Voltage? MaximumOffset { get; private set; }

    /// <summary>What is kept of the samples.</summary>
    public AcquisitionMode Mode { get; private set; }

    /// <summary>How many records (averaging, envelope) or raw samples (high resolution) one stored point comes from.</summary>
    public int Combined { get; private set; } = 1;

    /// <summary>How the display draws between samples.</summary>
    public Reconstruction Interpolation { get; private set; } = Reconstruction.Sinc;

    /// <summary>The jitter of the sample clock, rms; null where it is not known.</summary>
    public Duration? Jitter { get; private set; }

    /// <summary>The noise at the display, re the source, rms; null where it is not known.</summary>
    public RmsVoltage? Noise { get; private set; }

    /// <summary>Effective bits against frequency; empty where they are not known.</summary>
    public IReadOnlyList<EffectiveBitsPoint> EffectiveBits { get; private set; } = [];

    /// <summary>The records taken per second; null where it is not known.</summary>
    public Frequency? RecordRate { get; private set; }

    /// <summary>Whether the records per second are the best an instrument does, not those of this setting.</summary>
    internal bool RecordRateIsBest { get; private set; }

    /// <summary>How far the time base may be off, relative; null where it is not known.</summary>
    public Ratio? TimebaseAccuracy { get; private set; }

    /// <summary>How far the gain may be off at DC, relative; null where it is not known.</summary>
    public Ratio? GainAccuracy { get; private set; }

    /// <summary>The pulse to be caught; null where none is.</summary>
    public Duration? WatchedPulse { get; private set; }

    /// <summary>How often the pulse happens; null where it is not known.</summary>
    public Frequency? WatchedRate { get; private set; }

    /// <summary>10 % to 90 % of the edges of the pulse to be caught; 0 s for ideal ones.</summary>
    public Duration WatchedRiseTime { get; private set; }

    /// <summary>With a number of channels in use.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="channels"/> is below 1.</exception>
    public SampledSignal WithChannelsInUse(int channels) => channels >= 1
        ? Copy(copy => copy.ChannelsInUse = channels)
        : throw new ArgumentOutOfRangeException(nameof(channels), FormattableString.Invariant($"channels must be at least 1; was {channels}"));

    /// <summary>With a full-scale range, as seen at the source: with a 10:1 probe ten times the converter's.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fullScale"/> is not above 0 V.</exception>
    public SampledSignal WithFullScale(PeakToPeakVoltage fullScale)
    {
        Refuse.UnlessAboveZero(fullScale.SiValue, PeakToPeakVoltage.Kind, nameof(fullScale));
        return Copy(copy => copy.FullScale = fullScale);
    }

    /// <summary>With the offset that the range can be moved by, as seen at the source: with a 10:1 probe ten times the input's.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="maximumOffset"/> is negative.</exception>
    public SampledSignal WithMaximumOffset(Voltage maximumOffset) => maximumOffset.SiValue >= 0
        ? Copy(copy => copy.MaximumOffset = maximumOffset)
        : throw Refuse.OutOfRange(maximumOffset.SiValue, Voltage.Kind, nameof(maximumOffset), "at least 0 V");

    /// <summary>With peak detection.</summary>
    public SampledSignal WithPeakDetect() => Copy(copy => (copy.Mode, copy.Combined) = (AcquisitionMode.PeakDetect, 1));

    /// <summary>With the mean of so many raw samples as each stored point.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is below 2.</exception>
    public SampledSignal WithHighResolution(int rawPerStored) => Combining(AcquisitionMode.HighResolution, rawPerStored, nameof(rawPerStored));

    /// <summary>With the mean over so many records.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="records"/> is below 2.</exception>
    public SampledSignal WithAveraging(int records) => Combining(AcquisitionMode.Average, records, nameof(records));

    /// <summary>With the extremes over so many records.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="records"/> is below 2.</exception>
    public SampledSignal WithEnvelope(int records) => Combining(AcquisitionMode.Envelope, records, nameof(records));

    /// <summary>With a way to draw between samples.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="interpolation"/> is null.</exception>
    public SampledSignal WithInterpolation(Reconstruction interpolation) => Copy(copy => copy.Interpolation = interpolation ?? throw new ArgumentNullException(nameof(interpolation)));

    /// <summary>With the jitter of the sample clock, rms.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="jitter"/> is negative.</exception>
    public SampledSignal WithJitter(Duration jitter) => jitter.SiValue >= 0
        ? Copy(copy => copy.Jitter = jitter)
        : throw Refuse.OutOfRange(jitter.SiValue, Duration.Kind, nameof(jitter), "at least 0 s");

    /// <summary>With the noise at the display, re the source, in the full bandwidth of the setting.</summary>
    public SampledSignal WithNoise(RmsVoltage noise) => Copy(copy => copy.Noise = noise);

    /// <summary>With effective bits against frequency.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="points"/> is null.</exception>
    public SampledSignal WithEffectiveBits(IEnumerable<EffectiveBitsPoint> points)
    {
        EffectiveBitsPoint[] sorted = (points ?? throw new ArgumentNullException(nameof(points))).OrderBy(point => point.Frequency).ToArray();
        return Copy(copy => copy.EffectiveBits = sorted.Frozen());
    }

    /// <summary>With the records taken per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="recordRate"/> is not above 0 Hz.</exception>
    public SampledSignal WithRecordRate(Frequency recordRate)
    {
        Refuse.UnlessAboveZero(recordRate.SiValue, Frequency.Kind, nameof(recordRate));
        return Copy(copy => (copy.RecordRate, copy.RecordRateIsBest) = (recordRate, false));
    }

    /// <summary>With the records taken per second at best: with long windows there are fewer, how many is not known.</summary>
    internal SampledSignal WithRecordRateAtBest(Frequency recordRate) => WithRecordRate(recordRate).Copy(copy => copy.RecordRateIsBest = true);

    /// <summary>With how far time base and gain may be off, relative; null where it is not known.</summary>
    public SampledSignal WithAccuracy(Ratio? timebase, Ratio? gain) => Copy(copy => (copy.TimebaseAccuracy, copy.GainAccuracy) = (timebase, gain));

    /// <summary>With a pulse with ideal edges that must be caught.</summary>
    /// <param name="width">Its width.</param>
    /// <param name="rate">How often it happens, independently of the trigger; null where that is not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">Width or rate is not above 0.</exception>
    public SampledSignal WatchingFor(Duration width, Frequency? rate = null) => WatchingFor(width, rate, default);

    /// <summary>With a pulse that must be caught.</summary>
    /// <param name="width">Its width between the 50 % points.</param>
    /// <param name="rate">How often it happens, independently of the trigger; null where that is not known.</param>
    /// <param name="riseTime">10 % to 90 % of its straight edges; 0 s for ideal ones.</param>
    /// <exception cref="ArgumentOutOfRangeException">Width or rate is not above 0, the rise time is negative, or the edges do not fit into the width.</exception>
    public SampledSignal WatchingFor(Duration width, Frequency? rate, Duration riseTime)
    {
        Refuse.UnlessAboveZero(width.SiValue, Duration.Kind, nameof(width));
        if (rate is { } given)
            Refuse.UnlessAboveZero(given.SiValue, Frequency.Kind, nameof(rate));
        if (!(riseTime.SiValue >= 0 && riseTime.SiValue <= 0.8 * width.SiValue * (1 + 1e-12)))
            throw Refuse.OutOfRange(riseTime.SiValue, Duration.Kind, nameof(riseTime), $"from 0 s to {width * 0.8}, so that both edges fit into the pulse");
        return Copy(copy => (copy.WatchedPulse, copy.WatchedRate, copy.WatchedRiseTime) = (width, rate, riseTime));
    }

    /// <summary>Over a window: everything is said, and the outlook can be asked.</summary>
    /// <param name="window">The whole window.</param>
    /// <exception cref="ArgumentOutOfRangeException">The window is not above 0 s, or longer than the digitizer can record at any of its rates.</exception>
    public Outlook Over(Duration window) => new(this, Digitizer.TimebaseFor(window, ChannelsInUse));

    /// <summary>With a time per division: the window is as many divisions as the screen has across.</summary>
    /// <param name="perDivision">The time per division.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is not above 0 s, or longer than the digitizer can record at any of its rates.</exception>
    public Outlook PerDivision(Duration perDivision) => new(this, Digitizer.TimebasePerDivision(perDivision, ChannelsInUse));

    /// <summary>The same set-up behind another chain.</summary>
    internal SampledSignal Behind(AppliedSignal applied) => Copy(copy => copy.Applied = applied);

    /// <summary>With every sample stored as it is.</summary>
    internal SampledSignal WithOrdinarySamples() => Copy(copy => (copy.Mode, copy.Combined) = (AcquisitionMode.Sample, 1));

    private SampledSignal Combining(AcquisitionMode mode, int count, string argument) => count >= 2
        ? Copy(copy => (copy.Mode, copy.Combined) = (mode, count))
        : throw new ArgumentOutOfRangeException(argument, FormattableString.Invariant($"{argument} must be at least 2; was {count}"));

    private SampledSignal Copy(Action<SampledSignal> change)
    {
        var copy = (SampledSignal)MemberwiseClone();
        change(copy);
        return copy;
    }
}
