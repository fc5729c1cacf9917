using System;
using System.Collections.Generic;
using Acquisition.Core.Planning;
using Acquisition.Core.Signals;

namespace Acquisition.Core;

/// <summary>
/// What will be seen: a signal through a chain and a digitizer over a window, before anyone has gone to the bench. Every value is computed from the model when it is
/// first asked for, with the rule of thumb beside it; the findings say what is wrong and what would cure it.
/// </summary>
/// <remarks>Immutable and thread-safe. Made by <c>signal.Through(chain).SampledBy(digitizer).Over(window)</c>.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed partial class Outlook
{
    private readonly Lazy<Explained<Frequency>?> _chainBandwidth;
    private readonly Lazy<Explained<Duration>?> _chainRiseTime;
    private readonly Lazy<Explained<Duration>?> _displayedEdge;
    private readonly Lazy<double> _alone;
    private readonly Lazy<Excursions> _beyond;
    private readonly Lazy<Explained<PeakToPeakVoltage>> _displayedAmplitude;
    private readonly Lazy<(double Needed, double Shortest, DisplayedWaveform? Waveform)> _levels;
    private readonly Lazy<DisplayedLines> _lines;
    private readonly Lazy<IReadOnlyList<Contribution>> _contributions;
    private readonly Lazy<IReadOnlyList<Finding>> _findings;

    internal Outlook(SampledSignal setup, Timebase timebase, Requirement? wanted = null)
    {
        Wanted = wanted;
        Setup = setup;
        Timebase = timebase;
        _chainBandwidth = new Lazy<Explained<Frequency>?>(ComputeChainBandwidth);
        _chainRiseTime = new Lazy<Explained<Duration>?>(ComputeChainRiseTime);
        _displayedEdge = new Lazy<Explained<Duration>?>(ComputeDisplayedEdge);
        _alone = new Lazy<double>(() => Signal.SteepestEdge is { } edge ? EdgeThrough.RiseTime(edge, Response) : double.NaN);
        _beyond = new Lazy<Excursions>(() => new Excursions(Response));
        _displayedAmplitude = new Lazy<Explained<PeakToPeakVoltage>>(ComputeDisplayedAmplitude);
        _levels = new Lazy<(double, double, DisplayedWaveform?)>(ComputeLevels);
        _lines = new Lazy<DisplayedLines>(() => new DisplayedLines(Signal, Response, StoredRate, Boxcar));
        _contributions = new Lazy<IReadOnlyList<Contribution>>(() => ComputeContributions().Frozen());
        _findings = new Lazy<IReadOnlyList<Finding>>(() => new OutlookFindings(this).All().Frozen());
    }

    /// <summary>The signal, the chain and the digitizer as it is set.</summary>
    public SampledSignal Setup { get; }

    /// <summary>What the findings judge against; null where the usual limits hold.</summary>
    internal Requirement? Wanted { get; }

    /// <summary>How long a level must last to settle, and how long the shortest does, s.</summary>
    internal (double Needed, double Shortest) Settling => (_levels.Value.Needed, _levels.Value.Shortest);

    /// <summary>The window as the digitizer records it.</summary>
    public Timebase Timebase { get; }

    /// <summary>The signal.</summary>
    public Signal Signal => Setup.Applied.Signal;

    /// <summary>The response of the chain, from the source's open-circuit voltage to the display.</summary>
    public Response Response => Setup.Applied.Response;

    /// <summary>The window.</summary>
    public Duration Window => Timebase.Window;

    /// <summary>The half-power bandwidth of the chain, computed from its response; null where it never falls that far.</summary>
    public Explained<Frequency>? ChainBandwidth => _chainBandwidth.Value;

    /// <summary>The 10 % to 90 % rise time of the chain, computed from its response; null where its step does not rise through the levels.</summary>
    public Explained<Duration>? ChainRiseTime => _chainRiseTime.Value;

    /// <summary>The amplitude on the display, peak to peak, re the source.</summary>
    public Explained<PeakToPeakVoltage> DisplayedAmplitude => _displayedAmplitude.Value;

    /// <summary>How far <see cref="DisplayedAmplitude"/> lies from the signal's own: negative where it is short.</summary>
    public Ratio AmplitudeError => Ratio.FromSi((DisplayedAmplitude.Value.SiValue / Signal.PeakToPeak.SiValue) - 1, "amplitude");

    /// <summary>
    /// The 10 % to 90 % duration of the signal's steepest edge on the display. Where every level settles to 0.1 % before the next edge, the levels are those; where not, they are the
    /// lowest and the highest value of the waveform, overshoot included, and the finding <c>levels-unsettled</c> says so. Null  for a signal without edges, or where none passes through both levels.</summary>
    public Explained<Duration>? DisplayedEdge => _displayedEdge.Value;

    /// <summary>What the steepest edge would take on the display if it were alone, at levels that settle, 10 % to 90 %; null for a signal without edges, or where it does not rise through the levels.</summary>
    public Duration? SingleEdge => double.IsNaN(EdgeAlone) ? null : Duration.FromSi(EdgeAlone, "edge");

    /// <summary>How much slower the edge looks than it is; null for a signal without edges, or with ideal ones.</summary>
    public Ratio? EdgeError => DisplayedEdge is { } shown && Signal.SteepestEdge!.RiseTime.SiValue > 0
        ? Ratio.FromSi((shown.Value.SiValue / Signal.SteepestEdge.RiseTime.SiValue) - 1, "edge")
        : null;

    /// <summary>What each element costs, the most costly first.</summary>
    public IReadOnlyList<Contribution> Contributions => _contributions.Value;

    /// <summary>The element that costs most; null where none costs anything.</summary>
    public Contribution? WeakestLink => Contributions.Count > 0 && Contributions[0].Share.SiValue > 0 ? Contributions[0] : null;

    /// <summary>What to know, the gravest first.</summary>
    public IReadOnlyList<Finding> Findings => _findings.Value;

    /// <summary>The outlook as plain text: it prints what is there and leaves out what is not.</summary>
    public override string ToString() => OutlookText.Write(this);

    private Explained<Frequency>? ComputeChainBandwidth()
    {
        if (!Response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth))
            return null;
        var rules = new List<RuleOfThumb<Frequency>>();
        if (ChainRiseTime is { } rise && rise.Value.SiValue > 0)
            rules.Add(Rule("0.35 / rise time", 0.35 / rise.Value.SiValue, bandwidth.SiValue, value => Frequency.FromSi(value, "rule")));
        return new Explained<Frequency>("bandwidth of the chain", bandwidth, "half power of the whole chain", "handbook 3.1", null, rules);
    }

    private Explained<Duration>? ComputeChainRiseTime()
    {
        double rise;
        try
        {
            rise = Response.RiseTime.SiValue;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
        var rules = new List<RuleOfThumb<Duration>>();
        if (Response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth))
            rules.Add(Rule("0.35 / bandwidth", 0.35 / bandwidth.SiValue, rise, value => Duration.FromSi(value, "rule")));
        return new Explained<Duration>("rise time of the chain", Duration.FromSi(rise, "rise"), "10 % to 90 % of the step response", "handbook 2.6", null, rules);
    }

    private Explained<Duration>? ComputeDisplayedEdge()
    {
        if (Signal.SteepestEdge is not { } edge)
            return null;
        double alone = _alone.Value, shown = alone;
        string method = "the edge averaged over the step response of the chain";
        if (!LevelsSettle && _levels.Value.Waveform is { } waveform)
        {
            shown = waveform.RiseTime(edge);
            method = "10 % to 90 % between lowest and highest value of the computed waveform: its levels do not settle";
        }
        else if (!LevelsSettle && Signal is RandomBitsSignal)
        {
            return null;
        }
        if (double.IsNaN(shown))
            return null;
        if (Setup.Mode == AcquisitionMode.HighResolution)
        {
            shown = EdgeThrough.RootSumSquare(shown, 0.8 * StoredRate.SampleInterval.SiValue);
            method += ", and over the samples of one stored point (root-sum-square)";
        }
        var rules = new List<RuleOfThumb<Duration>>();
        // Of an ideal edge through a wire there is nothing that a rule could be off by.
        if (ChainRiseTime is { } chain && shown > 0)
            rules.Add(Rule("√(edge² + chain²)", EdgeThrough.RootSumSquare(edge.RiseTime.SiValue, chain.Value.SiValue), shown, value => Duration.FromSi(value, "rule")));
        return new Explained<Duration>("edge on the display", Duration.FromSi(shown, "edge"), method, "handbook 2.6, 2.5", [new("edge of the signal", edge.RiseTime.ToString())], rules);
    }

    private Explained<PeakToPeakVoltage> ComputeDisplayedAmplitude()
    {
        double applied = Signal.PeakToPeak.SiValue, shown;
        string method, source;
        if (Signal is TwoToneSignal or RectifiedSineSignal)
        {
            Signal behind = Response.Apply(Signal);
            shown = (behind.Highest - behind.Lowest) * Boxcar(Signal.Tone);
            method = "lowest to highest value of the waveform behind the chain, each line with its own gain";
            source = "handbook 4.6";
        }
        else if (Signal.SteepestEdge is null && Tone is { } tone)
        {
            shown = applied * Response.AmplitudeRatio(tone).SiValue * Boxcar(tone.SiValue);
            method = "gain of the chain at " + tone.InWords();
            source = "handbook 4.6";
        }
        else
        {
            (shown, method) = DisplayedSwing();
            source = "handbook 2.6, 8.5";
        }
        return new Explained<PeakToPeakVoltage>("amplitude on the display", PeakToPeakVoltage.FromSi(shown, "amplitude"), method, source, [new("amplitude of the signal", Signal.PeakToPeak.ToString())]);
    }

    /// <summary>What the steepest edge would take if it were alone, s; NaN where it does not rise through the levels.</summary>
    internal double EdgeAlone => _alone.Value;

    /// <summary>Whether every level comes to rest before the next edge disturbs it; true for a signal without levels.</summary>
    internal bool LevelsSettle => _levels.Value.Shortest >= _levels.Value.Needed;

    private (double Needed, double Shortest, DisplayedWaveform? Waveform) ComputeLevels()
    {
        double shortest = Plateau.Shortest(Signal);
        if (double.IsPositiveInfinity(shortest))
            return (0, shortest, null);
        double needed = Plateau.Needed(Response);
        return (needed, shortest, shortest >= needed ? null : DisplayedWaveform.Of(Signal, Response, _alone.Value));
    }

    private (double Volts, string Method) DisplayedSwing()
    {
        (double needed, double shortest, DisplayedWaveform? waveform) = _levels.Value;
        double swing = Signal.PeakToPeak.SiValue;
        if (waveform is not null)
            return (waveform.High - waveform.Low, "lowest to highest value of the computed waveform: its levels do not settle");
        if (shortest < needed && Signal is RandomBitsSignal random && ExtremesOfBits.Of(random, Response, needed) is { } extremes)
            return (extremes, "lowest to highest value over all patterns of bits: their levels do not settle");
        if (Response.PassesDc && shortest >= needed && !double.IsPositiveInfinity(shortest))
            return (swing * Math.Abs(Response.DcGain), "levels settle to 0.1 % within " + FewDigits.Of(needed, Duration.Kind) + ", their plateaus last " + FewDigits.Of(shortest, Duration.Kind));
        return (swing * Math.Abs(Response.StepReference), "gain of the chain for a long pulse");
    }

    private IReadOnlyList<Contribution> ComputeContributions() => new OutlookContributions(this).All();

    internal static RuleOfThumb<T> Rule<T>(string rule, double value, double computed, Func<double, T> make)
        where T : struct, IQuantity => new(rule, make(value), Ratio.FromSi((value / computed) - 1, "rule"));
}
