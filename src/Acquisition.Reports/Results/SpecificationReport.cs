using System;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A <see cref="Specification"/> as a report: what probe and instrument must offer, and why.</summary>
public static class SpecificationReport
{
    /// <summary>The report of a needed specification.</summary>
    /// <param name="needed">The specification.</param>
    /// <param name="title">The title of the report.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Report ToReport(this Specification needed, string title = "Needed specification")
    {
        if (needed is null) throw new ArgumentNullException(nameof(needed));
        return new Report(title)
            .WithParagraph($"What probe and input together ({needed.Shape}) and the instrument must offer for what is wanted.")
            .WithFindings(needed.Findings)
            .WithValues(Wanted(needed.Requirement))
            .WithTable(new ReportTable("signals", "Signals", "signal").WithRows(needed.Requirement.Signals.Select(signal => new ReportCell[] { signal.Name })))
            .WithValues(Needed(needed));
    }

    internal static ReportValues Wanted(Requirement wanted) => new ReportValues("wanted", "What is wanted")
        .With("amplitude within", ReportCell.OfAny(wanted.AmplitudeTolerance))
        .With("edge within", ReportCell.OfAny(wanted.EdgeTolerance))
        .With("timing within", ReportCell.OfAny(wanted.TimingTolerance))
        .With("highest harmonic", wanted.HighestHarmonic is { } harmonic ? ReportCell.Count(harmonic) : null)
        .With("share of the power", ReportCell.OfAny(wanted.PowerShare))
        .With("narrowest pulse", ReportCell.OfAny(wanted.NarrowestPulse))
        .With("smallest detail", ReportCell.OfAny(wanted.SmallestDetail))
        .With("window", ReportCell.OfAny(wanted.Window))
        .With("resistance of the source", ReportCell.OfAny(wanted.SourceResistance))
        .With("common-mode voltage", ReportCell.OfAny(wanted.CommonMode))
        .With("channels at once", ReportCell.Count(wanted.Channels));

    private static ReportValues Needed(Specification needed) => new ReportValues("needed", "What is needed")
        .With(needed.Bandwidth, "at least")
        .With(needed.RiseTime, "at most")
        .With(needed.SampleRate, "at least")
        .With(needed.RecordLength, "at least")
        .With(needed.EffectiveBits, "at least")
        .With(needed.Noise, "at most")
        .With(needed.Jitter, "at most")
        .With(needed.TimebaseAccuracy, "within")
        .With(needed.ProbeCapacitance, "at most")
        .With(needed.ProbeResistance, "at least")
        .With(needed.VoltageToEarth, "at least");
}
