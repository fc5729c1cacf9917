using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Planning;
using Acquisition.Core.Signals;

namespace Acquisition.Core;

// What the sampler makes of it (handbook 5).
public sealed partial class Outlook
{
    /// <summary>The rate of the stored points: the memory may cap it, and high resolution divides it.</summary>
    public Explained<SampleRate> SampleRate
    {
        get
        {
            SampleRate rate = StoredRate;
            string method = Setup.Mode == AcquisitionMode.HighResolution && rate < Timebase.Rate ? FormattableString.Invariant($"highest rate / {Setup.Combined} samples per stored point")
                : Timebase.IsLimitedByMemory ? "memory / window" : "highest rate of the digitizer";
            var rules = new List<RuleOfThumb<SampleRate>>();
            if (ChainBandwidth is { } bandwidth)
                rules.Add(Rule("5 x bandwidth of the chain", 5 * bandwidth.Value.SiValue, rate.SiValue, value => Core.SampleRate.FromSi(value, "rule")));
            return new Explained<SampleRate>("sample rate", rate, method, "handbook 5.4", [new("memory", Setup.Digitizer.Memory(Setup.ChannelsInUse).ToString()), new("window", Window.ToString())], rules);
        }
    }

    /// <summary>Whether the memory keeps the rate below the highest one.</summary>
    public bool IsLimitedByMemory => Timebase.IsLimitedByMemory;

    /// <summary>The points of the record.</summary>
    public PointCount RecordLength => StoredRate == Timebase.Rate ? Timebase.RecordLength : StoredRate * Window;

    /// <summary>Half the sample rate.</summary>
    public Frequency NyquistFrequency => StoredRate.NyquistFrequency;

    /// <summary>Half the sample rate over the highest frequency that the chain still shows: that of the highest harmonic kept, or the fundamental, of two tones the higher, of a burst its carrier; above 1 or the signal is aliased. Null for a signal without lines.</summary>
    public Ratio? NyquistMargin => Tone is { } tone
        ? Ratio.FromSi(NyquistFrequency.SiValue / (Signal is BurstSignal ? 1 : Math.Max(1, HarmonicsKept)) / tone.SiValue, "rate")
        : null;

    /// <summary>The sample intervals in one period, of two tones of the faster, of a burst of its carrier; null for a signal without lines.</summary>
    public Ratio? PointsPerPeriod => Tone is { } tone ? Sampling.SamplesPerPeriod(StoredRate, tone) : null;

    /// <summary>The sample intervals on the edge as it is displayed; null for a signal without edges.</summary>
    public Ratio? IntervalsPerEdge => DisplayedEdge is { } edge ? Ratio.FromSi(StoredRate.SiValue * edge.Value.SiValue, "edge") : null;

    /// <summary>The lines of the signal on the display: those above a ten-thousandth of the fundamental, at most 200. Empty for a signal that does not repeat.</summary>
    public IReadOnlyList<HarmonicOutlook> Harmonics => _lines.Value.Listed;

    /// <summary>The highest harmonic up to which all are shown at half power or better and below half the sample rate; 0 where not even the fundamental is.</summary>
    public int HarmonicsKept => _lines.Value.HighestKept;

    /// <summary>The lines at or above half the sample rate, the strongest first; empty with peak detection or an envelope, whose extremes hold them as a band and not as an alias.</summary>
    public IReadOnlyList<HarmonicOutlook> Aliases => KeepsExtremes ? [] : Harmonics.Where(line => line.IsAliased).OrderByDescending(line => line.Displayed).ToList();

    /// <summary>All that folds, rms, as a share of the rms of the displayed waveform about its mean; null for a signal without lines, and with peak detection or an envelope, whose extremes hold it as a band.</summary>
    public Ratio? AliasShare => KeepsExtremes ? null : FoldedShare;

    /// <summary>The same for the samples that the extremes are taken of.</summary>
    internal Ratio? FoldedShare => !(_lines.Value.Power > 0) ? null : Ratio.FromSi(Math.Sqrt(_lines.Value.AliasPower / _lines.Value.Power), "alias");

    /// <summary>
    /// The largest error of drawing between the samples, for a sine of the fundamental frequency (of two tones the higher, of a burst its carrier), as a fraction of its amplitude; null where it is aliased, the signal has no
    /// lines, or extremes are kept, through which nothing is drawn.
    /// </summary>
    public Ratio? InterpolationError => Tone is { } tone && !KeepsExtremes && tone < NyquistFrequency ? Setup.Interpolation.WorstError(tone, StoredRate) : null;

    /// <summary>
    /// The largest error of drawing between the samples for all lines below half the sample rate together, as a fraction of the displayed amplitude, half of peak to peak: the worst error of each (handbook 5.8, 5.9) times its
    /// own amplitude, added as if all were at their worst in one place. What folds is no part of it. Null where <see cref="InterpolationError"/> is.
    /// </summary>
    public Ratio? InterpolationErrorOfSignal => InterpolationError is null || DisplayedAmplitude.Value.SiValue <= 0 ? null
        : Ratio.FromSi(_lines.Value.DrawnWrong(new ErrorOfDrawing(Setup.Interpolation, StoredRate)) / (DisplayedAmplitude.Value.SiValue / 2), "error");

    /// <summary>With peak detection by how much of its amplitude a crest of the fundamental may be kept too low: the converter looks at its own highest rate (handbook 5.10). Null in other modes, without lines, and where half that rate is no more than the fundamental.</summary>
    public Ratio? CrestShortfall => Setup.Mode == AcquisitionMode.PeakDetect && Tone is { } tone && tone < Timebase.MaximumRate.NyquistFrequency ? PeakReading.WorstShortfall(tone, Timebase.MaximumRate) : null;

    /// <summary>What must be shown for the signal to be seen at all: its fundamental, the higher of two tones, the carrier of a burst; null for a signal without lines.</summary>
    internal Frequency? Tone => Signal.Tone > 0 ? Frequency.FromSi(Signal.Tone, "tone") : null;

    /// <summary>Whether the watched pulse is caught; null where none is watched for, or where averaging loses what happens once.</summary>
    public EventOutlook? Events
    {
        get
        {
            if (Setup.WatchedPulse is not { } width || Setup.Mode == AcquisitionMode.Average)
                return null;
            bool isMean = Setup.Mode == AcquisitionMode.HighResolution;
            double height = isMean ? MeanOfAPulse.Largest(width, Setup.WatchedRiseTime, Response, RawRate.SampleInterval, Setup.Combined) : EdgeThrough.PulsePeak(width, Setup.WatchedRiseTime, Response);
            // Peak detection looks at every sample of the converter, a mean at every one that it is made of.
            SampleRate looking = Setup.Mode == AcquisitionMode.PeakDetect ? Timebase.MaximumRate : isMean ? RawRate : StoredRate;
            Ratio chance = PulseCapture.ChanceOfASample(width, looking);
            long fewest = PulseCapture.FewestSamples(Duration.Min(width, Window), isMean ? StoredRate : looking).Points;
            Ratio? observed = LookedAt is { } looked && looked <= 1 + 1e-9 ? Ratio.FromSi(Math.Min(1, looked), "window") : null;
            return new EventOutlook(width, Setup.WatchedRate, Ratio.FromSi(double.IsNaN(height) ? 0 : height, "height"), chance, isMean && chance.SiValue >= 1 ? Math.Max(1, fewest) : fewest, observed);
        }
    }

    // Records per second times their length; above 1 they would overlap.
    internal double? LookedAt => Setup.RecordRate is { } records ? records.SiValue * Window.SiValue : null;

    internal SampleRate StoredRate => Setup.Mode == AcquisitionMode.HighResolution
        ? Core.SampleRate.Min(Timebase.Rate, Core.SampleRate.FromSi(Timebase.MaximumRate.SiValue / Setup.Combined, "rate"))
        : Timebase.Rate;

    /// <summary>The rate of the samples that a stored point of high resolution is the mean of.</summary>
    private SampleRate RawRate => Core.SampleRate.FromSi(StoredRate.SiValue * Setup.Combined, "rate");

    /// <summary>What the mean over the samples of one stored point leaves of a frequency; 1 in other modes.</summary>
    internal double Boxcar(double hertz) => Setup.Mode == AcquisitionMode.HighResolution
        ? HighResolution.AmplitudeRatio(Setup.Combined, RawRate, Frequency.FromSi(hertz, "frequency")).SiValue
        : 1;
}
