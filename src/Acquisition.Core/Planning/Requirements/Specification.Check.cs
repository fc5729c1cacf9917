using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

// A set-up beside what is needed. Values derived for a chain of an assumed shape serve to choose equipment; what was demanded itself, as the set-up shows it, decides.
public sealed partial class Specification
{
    /// <summary>Each needed value beside the one that a set-up has, where both are known; and what was demanded itself (an error, the smallest detail, the timing) beside what the set-up shows. Where the two differ, the demand decides (<see cref="NeedCheck.DecidedBy"/>).</summary>
    /// <param name="outlook">The outlook of the set-up.</param>
    /// <exception cref="ArgumentNullException"><paramref name="outlook"/> is null.</exception>
    public IReadOnlyList<NeedCheck> Check(Outlook outlook)
    {
        _ = outlook ?? throw new ArgumentNullException(nameof(outlook));
        var checks = new List<NeedCheck>();
        Probe? probe = outlook.Setup.Applied.Chain?.Elements.OfType<Probe>().FirstOrDefault();
        NeedCheck? top = ErrorOfTheHighestHarmonic(outlook), edge = ErrorOfTheEdge(outlook), detail = Detail(outlook), timing = Timing(outlook);
        Add(AtLeast("bandwidth", Bandwidth, outlook.ChainBandwidth?.Value), DecidesChain());
        Add(AtMost("rise time", RiseTime, outlook.ChainRiseTime?.Value), DecidesChain());
        Add(AtLeast("sample rate", SampleRate, outlook.StoredRate), null);
        Add(AtLeast("record length", RecordLength, outlook.RecordLength), null);
        Add(Bits(outlook), [detail]);
        Add(AtMost("noise", Noise, outlook.Noise), Those(Requirement.SmallestDetail is null ? null : [detail], Requirement.TimingTolerance is null ? null : [timing]), isPart: true);
        Add(AtMost("clock jitter", Jitter, outlook.Setup.Jitter), [timing], isPart: true);
        Add(AtMost("time base", TimebaseAccuracy, outlook.Setup.TimebaseAccuracy, "within"), [timing], isPart: true);
        Add(AtMost("probe capacitance", ProbeCapacitance, probe?.InputCapacitance), DecidesChain(), isPart: true);
        Add(AtLeast("probe resistance", ProbeResistance, probe?.InputResistance), [top], isPart: true);
        foreach (NeedCheck? demand in new[] { top, edge, detail, timing })
            Add(demand, null);
        return checks;

        // A pulse is demanded of the chain as well, and no row tells what is left of it.
        NeedCheck?[]? DecidesChain() => Requirement.NarrowestPulse is not null ? null : Those(Requirement.LargestAmplitudeError is null ? null : [top], Requirement.EdgeTolerance is null ? null : [edge]);

        void Add(NeedCheck? check, NeedCheck?[]? deciding, bool isPart = false)
        {
            if (check is null)
                return;
            checks.Add(check);
            // Of several signals this outlook shows one, and of a demand that could not be judged nothing is known.
            if (deciding is not { Length: > 0 } || Requirement.Signals.Count > 1 || deciding.Any(demand => demand is null))
                return;
            check.DecidedBy = string.Join(" and ", deciding.Select(demand => demand!.Need));
            // What is a part only, as the noise is of the timing, is none the worse for a demand that fails by another part.
            check.IsDecided = (isPart && check.IsMet) || deciding.All(demand => demand!.IsMet);
        }

        static NeedCheck?[] Those(NeedCheck?[]? one, NeedCheck?[]? other) => [.. one ?? [], .. other ?? []];
    }

    /// <summary>Whether a set-up meets what was demanded: every row of <see cref="Check"/> is met, or what decides in its place is. What is not known is not judged.</summary>
    /// <param name="outlook">The outlook of the set-up.</param>
    /// <exception cref="ArgumentNullException"><paramref name="outlook"/> is null.</exception>
    public bool IsMetBy(Outlook outlook) => Check(outlook).All(check => check.IsDecided ?? check.IsMet);

    // The need counts the bits of a swing that fills the range: what the range leaves of them is held against it.
    private NeedCheck? Bits(Outlook outlook)
    {
        if (EffectiveBits is not { } needed || outlook.EffectiveBits is not { } bits || outlook.FullScale is not { } range)
            return null;
        double swing = Requirement.Signals.Max(signal => signal.PeakToPeak.SiValue);
        BitDepth left = outlook.EffectiveBitsOf(swing)!.Value;
        string of = left < bits.Value ? $" of {bits.Value.InWords()}, the range is filled to {FewDigits.Of(swing / range.SiValue, Ratio.Kind)}" : "";
        return new NeedCheck("effective bits", "at least " + needed.Value.InWords(), left.InWords() + of, (left.SiValue / needed.Value.SiValue) - 1);
    }

    // A chain of enough bandwidth can still ring, load or peak: the demands in the measures of a shortlist.
    private NeedCheck? ErrorOfTheHighestHarmonic(Outlook outlook)
    {
        double top = Specifier.HighestHarmonic(Requirement, outlook.Signal) * outlook.Signal.Tone;
        return Requirement.LargestAmplitudeError is { } most && top > 0
            ? Demand("error at " + FewDigits.Of(top, Frequency.Kind), most, Math.Abs(1 - outlook.Response.AmplitudeRatio(Frequency.FromSi(top, "frequency")).Fraction), Ratio.Kind)
            : null;
    }

    private NeedCheck? ErrorOfTheEdge(Outlook outlook) => Requirement.EdgeTolerance is { } tolerance && outlook.EdgeError is { } error
        ? Demand("edge error", tolerance.SiValue, Math.Max(0, error.SiValue), Ratio.Kind)
        : null;

    private NeedCheck? Detail(Outlook outlook) => Requirement.SmallestDetail is { } detail && outlook.SmallestDetail is { } seen ? Demand("smallest detail", detail.SiValue, seen.SiValue, Voltage.Kind) : null;

    // Two edges, and the time base over the window, whose limit is rectangular (handbook 5.12).
    private NeedCheck? Timing(Outlook outlook)
    {
        if (Requirement.TimingTolerance is not { } timing || outlook.EdgeTimingUncertainty is not { } edge || outlook.Setup.Jitter is null || (Requirement.Window is not null && outlook.Setup.TimebaseAccuracy is null))
            return null;
        double span = Requirement.Window is { } window ? outlook.Setup.TimebaseAccuracy!.Value.SiValue * window.SiValue / Math.Sqrt(3) : 0;
        return Demand("timing of two edges", timing.SiValue, Math.Sqrt((2 * edge.SiValue * edge.SiValue) + (span * span)), Duration.Kind);
    }

    private static NeedCheck Demand(string need, double atMost, double here, QuantityKind kind) => new(need, "at most " + FewDigits.Of(atMost, kind), FewDigits.Of(here, kind), (atMost / here) - 1) { IsDemand = true };

    private static NeedCheck? AtLeast<T>(string need, Explained<T>? needed, T? present)
        where T : struct, IQuantity => needed is not null && present is { } have
        ? new NeedCheck(need, "at least " + needed.Value.InWords(), have.InWords(), (have.ToQuantity().SiValue / needed.Value.ToQuantity().SiValue) - 1)
        : null;

    private static NeedCheck? AtMost<T>(string need, Explained<T>? needed, T? present, string bound = "at most")
        where T : struct, IQuantity => needed is not null && present is { } have
        ? new NeedCheck(need, bound + " " + needed.Value.InWords(), have.InWords(), (needed.Value.ToQuantity().SiValue / have.ToQuantity().SiValue) - 1)
        : null;
}
