using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

// What is to be said about a chain, by itself and in front of a signal.
public sealed partial class MeasurementChain
{
    /// <summary>What a terminating input usually stands: 5 V rms at 50 Ω (common practice).</summary>
    private const double UsualWatts = 0.5;

    private IReadOnlyList<Finding>? _findings;

    /// <summary>What to know about the chain whatever the signal, the gravest first: parts that do not fit together, a node that gives way.</summary>
    public IReadOnlyList<Finding> Findings => _findings ??= OwnFindings().Frozen();

    /// <summary>What to know about the chain in front of a signal, the gravest first: its highest content, its steepest edge and its peak.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="signal"/> is null.</exception>
    public IReadOnlyList<Finding> Examine(Signal signal) => Examine(signal ?? throw new ArgumentNullException(nameof(signal)), null);

    /// <summary>What to know about the chain in front of a floating signal: one between two points neither of which is earth.</summary>
    /// <param name="signal">The signal between the two points.</param>
    /// <param name="commonMode">The largest voltage of its reference point against earth, DC plus peak AC; its sign does not count.</param>
    /// <exception cref="ArgumentNullException"><paramref name="signal"/> is null.</exception>
    public IReadOnlyList<Finding> Examine(Signal signal, Voltage commonMode) => Examine(signal ?? throw new ArgumentNullException(nameof(signal)), (Voltage?)commonMode);

    /// <summary>The same where the signal floats, with a voltage against earth, and where it does not, without.</summary>
    internal IReadOnlyList<Finding> Examine(Signal signal, Voltage? commonMode)
    {
        double edge = signal.SteepestEdge?.RiseTime.SiValue ?? 0, highest = signal.Tone;
        // The knee of an edge, 0.5/tr, where it lies above the fundamental (handbook 4.4).
        if (edge > 0)
            highest = Math.Max(highest, 0.5 / edge);
        return Examine(Frequency.FromSi(highest, nameof(signal)), signal.SteepestEdge, signal.Peak, RmsOf(signal), commonMode);
    }

    // What does not repeat has no rms over all time, but may stay at its peak for long.
    internal static double RmsOf(Signal signal) => signal.Period is null ? signal.Peak.SiValue : signal.Rms.SiValue;

    /// <summary>What to know about the chain in front of what a signal holds.</summary>
    /// <param name="highestContent">The highest frequency that matters; 0 Hz for DC.</param>
    /// <param name="riseTime">The steepest edge; 0 s where there is none.</param>
    /// <param name="peak">The peak voltage, DC included; 0 V where it is not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative.</exception>
    public IReadOnlyList<Finding> Examine(Frequency highestContent, Duration riseTime, PeakVoltage peak)
    {
        if (highestContent.SiValue < 0)
            throw Refuse.OutOfRange(highestContent.SiValue, Frequency.Kind, nameof(highestContent), "at least 0 Hz");
        if (riseTime.SiValue < 0)
            throw Refuse.OutOfRange(riseTime.SiValue, Duration.Kind, nameof(riseTime), "at least 0 s");
        return Examine(highestContent, riseTime.SiValue > 0 ? new Edge(riseTime) : null, peak, peak.SiValue, null);
    }

    private List<Finding> Examine(Frequency highestContent, Edge? edge, PeakVoltage peak, double rms, Voltage? commonMode)
    {
        var findings = new List<Finding>(Findings);
        if (highestContent.SiValue == 0)
            findings.Add(new Finding("dc-only", Severity.Note, "at DC only resistances count; bandwidth and rise time do not matter", null, "handbook 7.1"));
        AddBandwidth(findings, highestContent);
        AddEdge(findings, edge?.RiseTime ?? default);
        AddOpenCables(findings, edge, highestContent.SiValue, peak, rms);
        AddResonance(findings, highestContent);
        AddVoltage(findings, highestContent, peak, rms);
        AddAgainstEarth(findings, peak, commonMode);
        return GravestFirst(findings);
    }

    private List<Finding> OwnFindings()
    {
        var findings = new List<Finding>();
        for (int i = 0; i < _elements.Length; i++)
            findings.AddRange(_elements[i].Examine(FrontEnd, LoadBehind(i)));
        if (Source.IsIdeal)
        {
            findings.Add(new Finding(
                "source-impedance-zero", Severity.Note, "an ideal source is not loaded by anything: what the probe does to the node is not in the answer", "the impedance of the node", "handbook 7.1"));
        }
        AddOpenCables(findings);
        AddRinging(findings);
        double dc = Response.ReferenceGain.ToAmplitudeRatio().SiValue;
        if (Math.Abs(dc - 1) > 0.01)
        {
            findings.Add(new Finding(
                "dc-error",
                Severity.Warning,
                $"at DC the display shows {Ratio.FromFraction(dc).Percent.ToString("0.##", CultureInfo.InvariantCulture)} % of the unloaded voltage",
                dc < 1 && Source.StatedInto is null && !Source.IsIdeal ? "where the source's amplitude is stated into a load, say so (WithAmplitudeStatedInto); else a higher input resistance" : "check ratio and termination",
                "handbook 7.1"));
        }
        return GravestFirst(findings);
    }

    private static List<Finding> GravestFirst(List<Finding> findings) => findings.OrderByDescending(finding => finding.Severity).ToList();

    /// <summary>What an element ends in at DC: the front end with the feed-through terminators before it, or a pad made for its own impedance.</summary>
    private Resistance LoadBehind(int element)
    {
        double siemens = 1 / FrontEnd.InputResistance.SiValue;
        for (int i = element + 1; i < _elements.Length; i++)
        {
            if (_elements[i] is AttenuatorPad pad)
                return pad.SourceImpedance;
            if (_elements[i] is FeedThroughTerminator terminator)
                siemens += 1 / terminator.Resistance.SiValue;
        }
        return Resistance.FromOhms(1 / siemens);
    }

    private void AddBandwidth(List<Finding> findings, Frequency highest)
    {
        if (highest.SiValue > 0 && Response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) && bandwidth < highest)
        {
            findings.Add(new Finding(
                "content-beyond-bandwidth",
                Severity.Warning,
                $"the chain's bandwidth of {bandwidth.InWords()} lies below the highest content of {highest.InWords()}, of which it shows {(Response.AmplitudeRatio(highest) * 100).Fraction.ToString("0.#", CultureInfo.InvariantCulture)} %",
                "a chain of at least three times the highest content for amplitudes within 5 % (one of Gaussian shape)",
                "handbook 4.6, 12.1"));
        }
    }

    private void AddEdge(List<Finding> findings, Duration edge)
    {
        if (edge.SiValue == 0)
            return;
        double chain = RiseSeconds();
        if (chain > edge.SiValue)
        {
            ChainContribution<Duration>? weakest = RiseTimeByParts().WeakestLink;
            findings.Add(new Finding(
                "chain-slower-than-signal",
                Severity.Warning,
                $"the chain's own rise time of {Duration.FromSeconds(chain).InWords()} is longer than the edge of {edge.InWords()}: the display shows the chain",
                $"by root-sum-square, a chain of at most a third of that, {(edge / 3).InWords()}, shows it to about 5 %" + (weakest is null ? "" : $"; most of it comes from {weakest.Part}"),
                "handbook 2.5, 12.1"));
        }
        foreach (ChainElement element in _elements)
        {
            if (element is Probe probe && probe.OwnResponse.TryBandwidth(DecibelRatio.HalfPower, out _) && probe.OwnResponse.RiseTime > edge)
            {
                findings.Add(new Finding(
                    "probe-slower-than-signal",
                    Severity.Warning,
                    $"{probe.Name} takes {probe.OwnResponse.RiseTime.InWords()} for a step, the edge {edge.InWords()}",
                    $"a probe with a rise time of at most a third of that, {(edge / 3).InWords()} (rule of thumb)",
                    "handbook 2.5"));
            }
        }
    }

    /// <summary>A resonance that outlasts what a step is followed for has nothing to damp it: mostly an ideal source in front of a lead.</summary>
    private void AddRinging(List<Finding> findings)
    {
        if (Response.Branches is not { } branches)
            return;
        foreach (Factors branch in branches)
        {
            if (new TimeScales(branch).Ringing is not { } ringing)
                continue;
            findings.Add(new Finding(
                "rings-on",
                Severity.Warning,
                $"after a step the chain rings for more than 1000 periods ({ringing.Sharpness}): no real chain does",
                "the impedance of the node, or a damping resistor at the tip",
                "handbook 7.4"));
            return;
        }
    }

    private void AddResonance(List<Finding> findings, Frequency highest)
    {
        foreach (ChainElement element in _elements)
        {
            if (element is not Probe { LeadResonance: { } resonance } probe || resonance.SiValue >= 3 * highest.SiValue)
                continue;
            double elastance = Math.Pow(2 * Math.PI * 3 * highest.SiValue, 2), longest = 1 / (elastance * probe.InputCapacitance.SiValue);
            double ohms = Source.Resistance.SiValue + probe.Damping.SiValue, quality = ohms > 0 ? GroundLead.Quality(probe.LeadInductance, probe.InputCapacitance, Resistance.FromOhms(ohms)).Fraction : double.PositiveInfinity;
            // At a half and below both poles are real: nothing rings.
            if (quality <= 0.5 * (1 + 1e-9))
                continue;
            string sharpness = ohms > 0 ? $", Q = {quality.ToString("0.##", CultureInfo.InvariantCulture)}" : ", undamped";
            findings.Add(new Finding(
                "lead-resonance-low",
                Severity.Warning,
                $"the ground lead of {probe.Name} rings with its input at {resonance.InWords()}{sharpness}; the highest content is {highest.InWords()}",
                longest >= GroundLead.Shortest.SiValue
                    ? $"at most {Inductance.FromHenries(longest).InWords(3)}, about {Length.FromMillimeters(longest * 1e9).InWords(3)} of lead, keeps the resonance three times above it (common practice)"
                    : $"no lead is short enough, that takes {Inductance.FromHenries(longest).InWords(3)}: a probe of at most {Capacitance.FromFarads(1 / (elastance * GroundLead.Shortest.SiValue)).InWords(3)} at the tip, with a lead of {GroundLead.Shortest}, keeps the resonance three times above it (common practice)",
                "handbook 7.4"));
        }
    }

    private void AddVoltage(List<Finding> findings, Frequency highest, PeakVoltage peak, double rms)
    {
        if (peak.SiValue == 0)
            return;
        // A generator that shows what its load gets has more without it.
        double open = peak.SiValue * Source.Scale, factor = 1;
        foreach (ChainElement element in _elements)
        {
            if (element is Probe probe)
                AddRating(findings, probe.Name, probe.Rating, open / factor, highest);
            factor *= element.NominalFactor;
        }
        double atInput = Source.Scale / factor * Loading.ReferenceGain.ToAmplitudeRatio().SiValue;
        AddRating(findings, FrontEnd.Name, FrontEnd.Rating, peak.SiValue * atInput, highest);
        double watts = rms * atInput * rms * atInput / FrontEnd.InputResistance.SiValue;
        if (FrontEnd.IsTerminated && FrontEnd.Rating is null && watts > UsualWatts * (1 + 1e-9))
        {
            findings.Add(new Finding(
                "fifty-ohm-input",
                Severity.Safety,
                $"up to {RmsVoltage.FromVolts(rms * atInput).InWords(3)}, {Power.FromWatts(watts).InWords(3)}, go into the {FrontEnd.InputResistance} of {FrontEnd.Name}: 5 V rms at 50 Ω, 0.5 W, is typically all that it stands (common practice)",
                "read the limit in the instrument's manual first; a pad or the high-impedance input. The manual, local codes and licensed practice decide",
                "handbook 7.5, 7.10"));
        }
    }

    private static void AddRating(List<Finding> findings, string name, VoltageRating? rating, double volts, Frequency highest)
    {
        if (rating is null)
            return;
        Voltage? maximum = rating.At(highest);
        if (maximum is { } limit && volts <= limit.SiValue)
            return;
        findings.Add(new Finding(
            "above-rating",
            Severity.Safety,
            maximum is { } known
                ? $"{Voltage.FromVolts(volts).InWords(3)} at {name}, which stands {known.InWords(3)} at {highest.InWords()}"
                : $"{Voltage.FromVolts(volts).InWords(3)} at {name}, whose derating curve ends below {highest.InWords()}",
            "do not connect: equipment rated for it. The manual, local codes and licensed practice decide",
            "handbook 7.10, 12.6"));
    }
}
