using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>The band in which a sweep stays within a drop of its reference level: its edges where the sweep shows them, and what to know about them (handbook 10.1).</summary>
public sealed class SweepBandwidth
{
    internal SweepBandwidth(Sweep sweep, DecibelRatio drop)
    {
        Drop = drop;
        Reference = sweep.ReferenceText;
        IReadOnlyList<SweepCrossing> crossings = sweep.Crossings(drop);
        Upper = crossings.FirstOrDefault(c => c.IsFalling && c.Frequency.SiValue >= sweep.ReferenceHertz);
        Lower = crossings.LastOrDefault(c => !c.IsFalling && c.Frequency.SiValue <= sweep.ReferenceHertz);
        Crossings = crossings.Frozen();

        var findings = new List<Finding>();
        string by = FewDigits.Decibels(drop.Decibels);
        bool startsInside = sweep.ReferenceHertz < sweep.Lowest.SiValue || sweep.ReferenceHertz > sweep.Highest.SiValue
            || sweep.Level(sweep.ReferenceHertz, "reference", out _) >= sweep.ReferenceDecibels - drop.Decibels;
        if (!startsInside)
        {
            findings.Add(new Finding("reference-outside-band", Severity.Failure, $"at {FewDigits.Hertz(sweep.ReferenceHertz)} the level is already {by} below the reference ({Reference})", "choose a reference in the flat part of the sweep"));
            Upper = Lower = null;
        }
        else if (Upper is null)
        {
            findings.Add(new Finding("bandwidth-beyond-sweep", Severity.Warning, $"the level does not fall by {by} up to {sweep.Highest}, the end of the sweep: the bandwidth is at least that, and not extrapolated", "sweep to a higher frequency", "handbook 10.1"));
        }
        else
        {
            SweepCrossing[] later = crossings.Where(c => c.IsFalling && c.Frequency.SiValue > Upper.Frequency.SiValue).ToArray();
            if (later.Length > 0)
            {
                findings.Add(new Finding("several-crossings", Severity.Warning,
                    $"the level falls by {by} {later.Length + 1} times, from {FewDigits.Hertz(Upper.Frequency.SiValue)} to {FewDigits.Hertz(later[later.Length - 1].Frequency.SiValue)}: the lowest is reported", "look for reflections or resonances; fit a response model for a smooth figure", "handbook 10.1"));
            }
            Judge(findings, Upper);
        }
        if (Lower is not null)
            Judge(findings, Lower);
        if (!sweep.HasUncertainties && (Upper ?? Lower) is not null)
            findings.Add(new Finding("levels-without-uncertainty", Severity.Note, "the levels carry no uncertainty: that of the frequencies counts the spacing of the points only", "give each level its standard uncertainty"));
        findings.AddRange(sweep.Findings);
        Findings = findings.Frozen();
    }

    /// <summary>The drop that ends the band.</summary>
    public DecibelRatio Drop { get; }

    /// <summary>What the drop counts from.</summary>
    public string Reference { get; }

    /// <summary>Where the level first falls below, above the reference; null where the sweep does not show it.</summary>
    public SweepCrossing? Upper { get; }

    /// <summary>Where the level rises into the band, below the reference; null where the sweep does not show it (a response down to DC has none).</summary>
    public SweepCrossing? Lower { get; }

    /// <summary>All crossings of that level, by rising frequency.</summary>
    public IReadOnlyList<SweepCrossing> Crossings { get; }

    /// <summary>What to know about the edges, or why one is absent.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    private static void Judge(List<Finding> findings, SweepCrossing edge)
    {
        double share = edge.SpacingUncertainty.SiValue / edge.Frequency.SiValue;
        if (share > 0.02)
        {
            findings.Add(new Finding("points-too-far-apart", Severity.Warning,
                $"the edge at {FewDigits.Hertz(edge.Frequency.SiValue)} lies between points at {edge.PointBelow} and {edge.PointAbove}: their spacing alone leaves {FewDigits.Number(100 * share, 2)} % uncertain", "measure more points between the two", "handbook 10.1"));
        }
    }

    /// <summary>The edges in one line.</summary>
    public override string ToString() => $"{Lower?.ToString() ?? "start"} to {Upper?.ToString() ?? "end of the sweep"} within {Drop.InWords()} of the {Reference}";
}
