using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>What each element costs: the reading with everything, against the reading with that element made ideal.</summary>
internal sealed class OutlookContributions(Outlook outlook)
{
    /// <summary>A change of an edge or an amplitude by less than this fraction is none: it is below what a model of a stage says about it.</summary>
    private const double Unseen = 1e-5;

    internal IReadOnlyList<Contribution> All()
    {
        var all = new List<Contribution>();
        foreach (KeyValuePair<string, Response> without in outlook.Setup.Applied.WithoutEach())
            all.Add(outlook.Signal.SteepestEdge is { } edge ? OfEdge(without.Key, edge, without.Value) : OfAmplitude(without.Key, without.Value));
        AddSampling(all);
        return all.OrderByDescending(contribution => contribution.Share).ThenBy(contribution => contribution.Element, StringComparer.Ordinal).ToList();
    }

    private Contribution OfEdge(string element, Edge edge, Response without)
    {
        // Of the edge alone: its neighbours are the signal's, not an element's.
        double with = outlook.EdgeAlone, ideal = EdgeThrough.RiseTime(edge, without), reference = edge.RiseTime.SiValue > 0 ? edge.RiseTime.SiValue : with;
        double change = (with - ideal) / reference;
        if (double.IsNaN(change))
            return new Contribution(element, Ratio.FromSi(0, "share"), "the edge does not rise from 10 % to 90 %: what it takes is not computed");
        string effect = Math.Abs(change) < Unseen ? "leaves the edge as it is"
            : $"{(change > 0 ? "slows the edge" : "makes the edge faster")} by {FewDigits.Of(Math.Abs(with - ideal), Duration.Kind)}, {FewDigits.Of(Math.Abs(change), Ratio.Kind)} of it";
        return new Contribution(element, Ratio.FromSi(Math.Max(0, change), "share"), effect);
    }

    private Contribution OfAmplitude(string element, Response without)
    {
        double hertz = outlook.Signal.Tone;
        double with = outlook.Response.Magnitude(hertz), ideal = without.Magnitude(hertz), loss = (ideal - with) / ideal;
        string effect = Math.Abs(loss) < Unseen ? "leaves the amplitude as it is"
            : loss > 0 ? $"takes {FewDigits.Of(loss, Ratio.Kind)} of the amplitude" : $"raises the amplitude by {FewDigits.Of(-loss, Ratio.Kind)}";
        return new Contribution(element, Ratio.FromSi(Math.Max(0, loss), "share"), effect);
    }

    private void AddSampling(List<Contribution> all)
    {
        if (outlook.Signal.SteepestEdge is not null && outlook.IntervalsPerEdge?.SiValue is { } intervals)
        {
            // A point may be off by up to one interval on each side of the edge; two intervals and more are what reconstruction can work with.
            double share = intervals < 2 ? (1 / intervals) - 0.5 : 0;
            all.Add(new Contribution("sampling", Ratio.FromSi(Math.Min(share, 1e6), "share"), FormattableString.Invariant($"puts {FewDigits.Number(intervals)} intervals on the edge")));
        }
        else if (outlook.InterpolationError is { } error)
        {
            all.Add(new Contribution("sampling", error, $"drawing between samples is off by up to {error.InWords()} of the amplitude"));
        }
        else if (outlook.CrestShortfall is { } crest)
        {
            all.Add(new Contribution("sampling", crest, $"may keep a crest too low by up to {crest.InWords()} of the amplitude"));
        }
        else if (outlook.Tone is not null && !outlook.KeepsExtremes)
        {
            all.Add(new Contribution("sampling", Ratio.FromFraction(1), "shows the signal at a frequency it does not have"));
        }
    }
}
