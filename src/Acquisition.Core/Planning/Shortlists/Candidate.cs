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
            // Channels, fit and reference are a plain yes or no: they limit only where they fail.
            bool counts = judgement.Margin[i] < 0 || i is not ((int)Demand.Fit or (int)Demand.Reference or (int)Demand.Channels);
            if (counts && !double.IsNaN(judgement.Margin[i]) && (Tightest < 0 || judgement.Margin[i] < judgement.Margin[Tightest]))
                Tightest = i;
        }
        double tightest = Tightest < 0 ? 0 : judgement.Margin[Tightest];
        Suitability = tightest < 0 ? Suitability.Unsuitable : judgement.NotStated != Planning.NotStated.Nothing ? Suitability.Unproven : Suitability.Suitable;
        PriceInUnits = Instrument.PriceInUnits is { } one && Probe.PriceInUnits is { } other ? one + (WantedChannels * other) : null;
        Assurance = Instrument.Bandwidth.Assurance < Probe.Bandwidth.Assurance ? Instrument.Bandwidth.Assurance : Probe.Bandwidth.Assurance;
    }

    private static readonly KeyValuePair<NotStated, string>[] NotStatedWords =
    [
        new(Planning.NotStated.Rating, "rated voltage"), new(Planning.NotStated.RatingToEarth, "rated voltage against earth"), new(Planning.NotStated.Offset, "offset of the range"),
        new(Planning.NotStated.Noise, "noise of the range"), new(Planning.NotStated.Jitter, "jitter of the clock"), new(Planning.NotStated.TimebaseAccuracy, "accuracy of the time base"),
    ];

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

    /// <summary>What the catalogue does not state of it and a demand would be judged by; empty where all is stated.</summary>
    public IReadOnlyList<string> NotStated => NotStatedWords.Where(word => (_judgement.NotStated & word.Key) != 0).Select(word => word.Value).Frozen();

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
    public IReadOnlyList<SmallestChange> SmallestChanges
    {
        get
        {
            var search = new ChangeSearch(_screen, _probe, _input, _judgement);
            return Enumerable.Range(0, (int)Demand.Count).Where(i => _judgement.Margin[i] < 0).Select(i => new SmallestChange(CriterionOf(i), search.For((Demand)i))).Frozen();
        }
    }

    /// <summary>The candidate set up for the first signal of the requirement: what may follow is the window.</summary>
    public SampledSignal Setup() => SetupOf(_screen.Requirement.Signals[0]);

    /// <summary>What is to be known for safety before it is connected to any signal of the requirement: reminders, no advice.</summary>
    public IReadOnlyList<Finding> SafetyFindings => Planning.SafetyFindings.Of(_screen.Requirement.Signals.Select(signal => SetupOf(signal).Applied)).Frozen();

    /// <summary>What will be seen with it over the window of the requirement; null where the requirement has none.</summary>
    public Outlook? Outlook => _screen.Requirement.Window is { } window ? Setup().Over(window) : null;

    internal int Tightest { get; }

    internal double TightestMargin => Tightest < 0 ? 0 : _judgement.Margin[Tightest];

    internal double[] Margins => _judgement.Margin;

    /// <summary>Instrument, probe and setting.</summary>
    public override string ToString() => Instrument.Name + " + " + Probe.Name + (BandwidthLimit is { } limit ? ", limited to " + limit : "");

    private SampledSignal SetupOf(Signal signal) => CatalogueChain.Setup(_screen, signal, Instrument, Probe, Termination, BandwidthLimit, Range);

    private Criterion CriterionOf(int index)
    {
        return (Demand)index switch
        {
            Demand.Fit => Make("fit", "input for the probe", Resistance.Kind),
            Demand.Reference => new Criterion("reference", "input that need not be earthed", "a differential probe or isolated inputs", _judgement.Margin[index] < 0 ? "an earthed input" : Probe.IsDifferential ? "a differential probe" : "isolated inputs",
                Ratio.FromSi(_judgement.Margin[index] < 0 ? -1 : 0, "margin"), null, null),
            Demand.Rating => Make("rating", "rated voltage", Voltage.Kind),
            Demand.RatingToEarth => Make("rating-to-earth", "rated voltage against earth", Voltage.Kind),
            Demand.Channels => Make("channels", "channels at once", null),
            Demand.Range => Make("range", "range", PeakToPeakVoltage.Kind),
            Demand.Offset => Make("offset", "offset of the range", Voltage.Kind),
            Demand.Amplitude => Make("amplitude", "amplitude error", Ratio.Kind, "at most "),
            Demand.Edge => Make("edge", "edge error", Ratio.Kind, "at most "),
            Demand.Pulse => Make("pulse", "height lost of the narrowest pulse", Ratio.Kind, "at most "),
            Demand.SampleRate => Make("sample-rate", "sample rate over the window", SampleRate.Kind),
            Demand.FoldedContent => Make("folded-content", "content folded down", Ratio.Kind, "at most "),
            Demand.Detail => Make("detail", "smallest detail", Voltage.Kind, "at most "),
            _ => Make("timing", "timing of two edges", Duration.Kind, "within "),
        };

        Criterion Make(string code, string name, QuantityKind? kind, string bound = "")
        {
            double needed = _judgement.Needed[index], offered = _judgement.Offered[index], margin = _judgement.Margin[index];
            return new Criterion(
                code, name, bound + Text(needed, kind), Text(offered, kind), Ratio.FromSi(double.IsNegativeInfinity(margin) ? -1 : margin, "margin"), Finite(needed, kind), Finite(offered, kind));
        }

        static string Text(double value, QuantityKind? kind) => kind is null ? FewDigits.Number(value) : FewDigits.Of(value, kind);

        static Quantity? Finite(double value, QuantityKind? kind) => Math.Abs(value) <= double.MaxValue ? new Quantity(value, kind ?? Ratio.Kind) : null;
    }
}
