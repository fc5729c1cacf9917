using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>An instrument with a probe and a setting, held against a requirement.</summary>
/// <remarks>Immutable.</remarks>
public sealed class Candidate
{
    private readonly Screen _screen;
    private readonly ScreenedProbe _probe;
    private readonly ScreenedInput _input;
    private readonly Judgement _judgement;

    internal Candidate(Screen screen, ScreenedProbe probe, ScreenedInput input, Judgement judgement)
    {
        _screen = screen;
        _probe = probe;
        _input = input;
        _judgement = judgement;
        Tightest = -1;
        for (int i = 0; i < judgement.Margin.Length; i++)
        {
            // Channels and fit are a plain yes or no: they limit only where they fail.
            bool counts = judgement.Margin[i] < 0 || i is not ((int)Demand.Fit or (int)Demand.Channels);
            if (counts && !double.IsNaN(judgement.Margin[i]) && (Tightest < 0 || judgement.Margin[i] < judgement.Margin[Tightest]))
                Tightest = i;
        }
        double tightest = Tightest < 0 ? 0 : judgement.Margin[Tightest];
        Suitability = tightest < 0 ? Suitability.Unsuitable : judgement.IsUnproven ? Suitability.Unproven : Suitability.Suitable;
        PriceInUnits = Instrument.PriceInUnits is { } one && Probe.PriceInUnits is { } other ? one + (WantedChannels * other) : null;
        Assurance = Instrument.Bandwidth.Assurance < Probe.Bandwidth.Assurance ? Instrument.Bandwidth.Assurance : Probe.Bandwidth.Assurance;
    }

    private int WantedChannels => _screen.Requirement.Channels;

    /// <summary>The instrument.</summary>
    public CatalogueInstrument Instrument => _input.Entry;

    /// <summary>The probe, one for each channel.</summary>
    public CatalogueProbe Probe => _probe.Entry;

    /// <summary>The input impedance that is set.</summary>
    public InputTermination Termination => _input.Termination;

    /// <summary>The bandwidth limit that is switched in; null where none is.</summary>
    public Frequency? BandwidthLimit => _input.Limit;

    /// <summary>The range that is set: the smallest that holds the signal, or the largest there is.</summary>
    public InputRange Range => _judgement.Range!;

    /// <summary>Whether it meets the requirement.</summary>
    public Suitability Suitability { get; }

    /// <summary>What instrument and probes cost together, in the catalogue's unit; null where a price is not known.</summary>
    public double? PriceInUnits { get; }

    /// <summary>How well the bandwidths it counts on are assured, the weaker of the two.</summary>
    public Assurance Assurance { get; }

    /// <summary>Its score by the weights of the shortlist, 0 to 1.</summary>
    public double ScoreFraction { get; internal set; }

    /// <summary>Whether another suitable candidate is no dearer and nowhere worse, and better somewhere.</summary>
    public bool IsDominated { get; internal set; }

    /// <summary>The demands, each with need, offer and margin, in a fixed order; those that were not made are left out.</summary>
    public IReadOnlyList<Criterion> Criteria => Enumerable.Range(0, (int)Demand.Count).Where(i => !double.IsNaN(_judgement.Margin[i])).Select(CriterionOf).ToList();

    /// <summary>The demand with the smallest margin; null where nothing was demanded.</summary>
    public Criterion? Limiting => Tightest < 0 ? null : CriterionOf(Tightest);

    /// <summary>For each demand that is not met, the smallest change that would meet it; empty where all are met.</summary>
    public IReadOnlyList<string> SmallestChanges => Suitability == Suitability.Unsuitable ? new SmallestChange(_screen, _probe, _input, _judgement).All() : [];

    /// <summary>The candidate set up for the first signal of the requirement: what may follow is the window.</summary>
    public SampledSignal Setup()
    {
        SampledSignal made = CatalogueChain.Setup(_screen.Requirement.Signals[0], _screen.Source, Instrument, Probe, Termination, BandwidthLimit, Range, WantedChannels);
        return _screen.Requirement.NarrowestPulse is { } pulse ? made.WatchingFor(pulse) : made;
    }

    /// <summary>What will be seen with it over the window of the requirement; null where the requirement has none.</summary>
    public Outlook? Outlook => _screen.Requirement.Window is { } window ? Setup().Over(window) : null;

    internal int Tightest { get; }

    internal double TightestMargin => Tightest < 0 ? 0 : _judgement.Margin[Tightest];

    internal double[] Margins => _judgement.Margin;

    /// <summary>Instrument, probe and setting.</summary>
    public override string ToString() => Instrument.Name + " + " + Probe.Name + (BandwidthLimit is { } limit ? ", limited to " + limit : "");

    private Criterion CriterionOf(int index)
    {
        double needed = _judgement.Needed[index], offered = _judgement.Offered[index], margin = _judgement.Margin[index];
        Ratio? shown = Ratio.FromSi(double.IsNegativeInfinity(margin) ? -1 : margin, "margin");
        return (Demand)index switch
        {
            Demand.Fit => new Criterion("fit", "input for the probe", PlainText.Short(needed, Resistance.Kind), PlainText.Short(offered, Resistance.Kind), shown),
            Demand.Rating => new Criterion("rating", "voltage it stands", PlainText.Short(needed, Voltage.Kind), PlainText.Short(offered, Voltage.Kind), shown),
            Demand.Channels => new Criterion("channels", "channels at once", PlainText.Number(needed), PlainText.Number(offered), shown),
            Demand.Range => new Criterion("range", "range", PlainText.Short(needed, PeakToPeakVoltage.Kind), PlainText.Short(offered, PeakToPeakVoltage.Kind), shown),
            Demand.Amplitude => new Criterion("amplitude", "amplitude error", "at most " + PlainText.Short(needed, Ratio.Kind), PlainText.Short(offered, Ratio.Kind), shown),
            Demand.Edge => new Criterion("edge", "edge error", "at most " + PlainText.Short(needed, Ratio.Kind), PlainText.Short(offered, Ratio.Kind), shown),
            Demand.Pulse => new Criterion("pulse", "height lost of the narrowest pulse", "at most " + PlainText.Short(needed, Ratio.Kind), PlainText.Short(offered, Ratio.Kind), shown),
            Demand.SampleRate => new Criterion("sample-rate", "sample rate over the window", PlainText.Short(needed, SampleRate.Kind), PlainText.Short(offered, SampleRate.Kind), shown),
            Demand.FoldedContent => new Criterion("folded-content", "content folded down", "at most " + PlainText.Short(needed, Ratio.Kind), PlainText.Short(offered, Ratio.Kind), shown),
            Demand.Detail => new Criterion("detail", "smallest detail", "at most " + PlainText.Short(needed, Voltage.Kind), PlainText.Short(offered, Voltage.Kind), shown),
            _ => new Criterion("timing", "timing of two edges", "within " + PlainText.Short(needed, Duration.Kind), PlainText.Short(offered, Duration.Kind), shown),
        };
    }
}
