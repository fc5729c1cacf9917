using System;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>A shortlist as plain text.</summary>
internal static class ShortlistText
{
    internal static string Write(Shortlist shortlist, int most)
    {
        var text = new PlainText();
        int suitable = shortlist.Suitable.Count;
        text.Line(FormattableString.Invariant($"{shortlist.Candidates.Count} candidates, {suitable} suitable"));
        if (shortlist.WhyEmpty is { } reason)
            text.Line(reason);
        int rank = 0;
        foreach (Candidate candidate in shortlist.Candidates.Take(most))
        {
            rank++;
            string price = candidate.PriceInUnits is { } units ? ", " + FewDigits.Number(units) + " units" : "";
            text.Line(FormattableString.Invariant($"{rank,3}. {candidate} [{candidate.Suitability}{price}, {Stated.Word(candidate.Assurance)}{(candidate.IsDominated ? ", dominated" : "")}]"));
            if (candidate.Limiting is { } limiting)
                text.Note("tightest: " + limiting + (limiting.Margin is { } margin ? ", margin " + FewDigits.Margin(margin) : ""));
            if (candidate.NotStated.Count > 0)
                text.Note("not stated: " + string.Join(", ", candidate.NotStated));
            foreach (SmallestChange change in candidate.SmallestChanges)
                text.Note("what would help: " + change);
        }
        if (shortlist.Candidates.Count > rank)
            text.Line(FormattableString.Invariant($"     the first {rank} of {shortlist.Candidates.Count} are shown"));
        text.Findings(shortlist.SafetyFindings);
        return text.ToString();
    }
}
