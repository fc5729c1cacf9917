using System;
using System.Collections.Generic;
using System.Linq;
using System.Numerics;
using System.Threading;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>
/// Every instrument of a catalogue with every probe and setting, held against a requirement and put in order: suitable ones first, then those that lack a figure, then those that fail,
/// each by score. The order depends on the entries only, never on their order in the catalogue.
/// </summary>
/// <remarks>Immutable. What is not stated in the catalogue is not guessed: such a candidate is unproven.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed class Shortlist
{
    private Shortlist(Requirement requirement, Specification needed, IReadOnlyList<Candidate> candidates, string? whyEmpty)
    {
        Requirement = requirement;
        Needed = needed;
        Candidates = candidates.Frozen();
        WhyEmpty = whyEmpty;
    }

    /// <summary>What was demanded.</summary>
    public Requirement Requirement { get; }

    /// <summary>What that needs, for a chain that falls off like a Gaussian.</summary>
    public Specification Needed { get; }

    /// <summary>All candidates whose probe fits the input, best first.</summary>
    public IReadOnlyList<Candidate> Candidates { get; }

    /// <summary>Why there is no candidate at all; null where there is one.</summary>
    public string? WhyEmpty { get; }

    /// <summary>The suitable candidates, best first.</summary>
    public IReadOnlyList<Candidate> Suitable => Candidates.TakeWhile(candidate => candidate.Suitability == Suitability.Suitable).ToList();

    /// <summary>The best suitable candidate; null where none is.</summary>
    public Candidate? Best => Candidates.Count > 0 && Candidates[0].Suitability == Suitability.Suitable ? Candidates[0] : null;

    /// <summary>What is to be known for safety: of what is demanded, and of the first three candidates. Reminders, no advice.</summary>
    public IReadOnlyList<Finding> SafetyFindings =>
        Planning.SafetyFindings.Of(Needed.Findings.Concat(Candidates.Take(3).SelectMany(candidate => candidate.SafetyFindings))).Frozen();

    /// <summary>Judges a catalogue with the usual weights.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Shortlist Of(Requirement requirement, Catalogue catalogue) => Of(requirement, catalogue, ShortlistWeights.Default);

    /// <summary>Judges a catalogue.</summary>
    /// <param name="requirement">What must be seen.</param>
    /// <param name="catalogue">What the bench or the market offers.</param>
    /// <param name="weights">What counts when candidates are put in order.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1, on whichever thread does the work; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">An argument other than the progress is null.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static Shortlist Of(
        Requirement requirement, Catalogue catalogue, ShortlistWeights weights, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        _ = requirement ?? throw new ArgumentNullException(nameof(requirement));
        _ = catalogue ?? throw new ArgumentNullException(nameof(catalogue));
        _ = weights ?? throw new ArgumentNullException(nameof(weights));
        LongCall? call = LongCall.Of(progress, cancellation), judging = call?.Part(0, 0.9);
        var screen = new Screen(requirement);
        List<ScreenedInput> inputs = ScreenedInput.All(screen, catalogue);
        var workspace = new Complex[EdgeSpectrum.LineCount];
        var candidates = new List<Candidate>();
        long judged = 0;
        foreach (CatalogueProbe entry in catalogue.Probes)
        {
            var probe = new ScreenedProbe(screen, entry);
            foreach (ScreenedInput input in inputs)
            {
                judging?.Reached(judged++, (double)catalogue.Probes.Count * inputs.Count);
                // A probe on an input that it is not made for is no candidate.
                if (Math.Abs((input.Termination.Resistance.SiValue / entry.Into.SiValue) - 1) <= 0.05)
                    candidates.Add(new Candidate(screen, probe, input, Judgement.Of(screen, probe, input, workspace)));
            }
        }
        double dearest = candidates.Count > 0 ? candidates.Max(candidate => candidate.PriceInUnits ?? 0) : 0;
        foreach (Candidate candidate in candidates)
            candidate.ScoreFraction = weights.Score(candidate.TightestMargin, candidate.PriceInUnits, dearest, candidate.Assurance);
        candidates.Sort(Order);
        Domination.Mark(candidates, call?.Part(0.9, 1));
        call?.Completed();
        return new Shortlist(requirement, screen.Specification, candidates, candidates.Count > 0 ? null : Missing(catalogue));
    }

    /// <summary>The first ten as plain text, and for the failing ones what would make them pass.</summary>
    public override string ToString() => ShortlistText.Write(this, 10);

    private static string Missing(Catalogue catalogue) => (catalogue.Instruments.Count, catalogue.Probes.Count) switch
    {
        (0, 0) => "the catalogue is empty: it lists neither instruments nor probes",
        (0, _) => "the catalogue lists no instruments",
        (_, 0) => "the catalogue lists no probes; a direct connection is a probe of attenuation 1",
        _ => "no probe of the catalogue is made for any of its inputs: into " + string.Join(", ", catalogue.Probes.Select(probe => probe.Into.ToString()).Distinct()) + " there is none",
    };

    private static int Order(Candidate left, Candidate right)
    {
        int order = right.Suitability.CompareTo(left.Suitability);
        // Among failing ones the one that fails least comes first, among the others the score decides.
        if (order == 0 && left.Suitability == Suitability.Unsuitable)
            order = right.TightestMargin.CompareTo(left.TightestMargin);
        if (order == 0)
            order = right.ScoreFraction.CompareTo(left.ScoreFraction);
        if (order == 0)
            order = string.CompareOrdinal(left.Instrument.Name, right.Instrument.Name);
        if (order == 0)
            order = string.CompareOrdinal(left.Probe.Name, right.Probe.Name);
        if (order == 0)
            order = (left.BandwidthLimit?.SiValue ?? double.PositiveInfinity).CompareTo(right.BandwidthLimit?.SiValue ?? double.PositiveInfinity);
        return order != 0 ? order : left.Termination.Capacitance.CompareTo(right.Termination.Capacitance);
    }
}
