using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>Marks choices that nobody should make: another one costs no more and is nowhere worse, and better somewhere.</summary>
internal static class Domination
{
    internal static void Mark(List<Candidate> candidates, LongCall? call)
    {
        // Cheapest first, so that whoever dominates has been seen before; only those that nobody dominates need be compared with.
        var front = new List<Candidate>();
        int seen = 0;
        foreach (Candidate candidate in candidates.Where(candidate => candidate.Suitability == Suitability.Suitable && candidate.PriceInUnits is not null)
            .OrderBy(candidate => candidate.PriceInUnits).ThenByDescending(candidate => candidate.Margins.Where(margin => !double.IsNaN(margin)).Sum()).ThenByDescending(candidate => candidate.Assurance))
        {
            call?.Reached(seen++, candidates.Count);
            if (front.Any(other => Dominates(other, candidate)))
                candidate.IsDominated = true;
            else
                front.Add(candidate);
        }
    }

    private static bool Dominates(Candidate one, Candidate other)
    {
        if (one.PriceInUnits > other.PriceInUnits || one.Assurance < other.Assurance)
            return false;
        bool better = one.PriceInUnits < other.PriceInUnits || one.Assurance > other.Assurance;
        for (int i = 0; i < one.Margins.Length; i++)
        {
            double mine = one.Margins[i], others = other.Margins[i];
            if (mine < others)
                return false;
            better |= mine > others;
        }
        return better;
    }
}
