using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Planning;

namespace Acquisition.Reports;

/// <summary>A <see cref="Shortlist"/> as a report: the candidates in their order, each demand with its margin, and the smallest change that would help.</summary>
public static class ShortlistReport
{
    /// <summary>From ten times what is needed on a factor says more than percents, beyond a hundred its size says nothing.</summary>
    private const double Tenfold = 9, Ample = 100;
    private const int MostDrawn = 6;

    /// <summary>The report of a shortlist.</summary>
    /// <param name="shortlist">The shortlist.</param>
    /// <param name="title">The title of the report.</param>
    /// <param name="most">How many candidates to print, from the best on; the report says how many there are.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="most"/> is below 1.</exception>
    public static Report ToReport(this Shortlist shortlist, string title = "Shortlist", int most = 10)
    {
        if (shortlist is null) throw new ArgumentNullException(nameof(shortlist));
        if (most < 1) throw new ArgumentOutOfRangeException(nameof(most), most, "most must be 1 or more");
        Candidate[] shown = shortlist.Candidates.Take(most).ToArray();
        string cut = shown.Length < shortlist.Candidates.Count ? FormattableString.Invariant($"; the first {shown.Length} are shown") : "";
        return new Report(title)
            .WithParagraph(FormattableString.Invariant($"{shortlist.Candidates.Count} candidates, {shortlist.Suitable.Count} suitable{cut}."))
            .WithFindings(shortlist.Needed.Findings.Where(finding => finding.Severity != Severity.Safety).Concat(shortlist.SafetyFindings).ToList())
            .WithTable(Candidates(shown))
            .WithVerdicts("suitability", "Suitability, by the demand with the smallest margin", shown.Select(VerdictOf))
            .WithPlot(ShortlistPlot.Of(shortlist, PlotOptions.Default.WithMostCandidates(Math.Min(most, MostDrawn))))
            .WithTable(Margins(shown))
            .WithTable(Changes(shown))
            .WithReport(shortlist.Needed.ToReport());
    }

    private static ReportTable Candidates(Candidate[] shown) =>
        new ReportTable("candidates", "Candidates", "rank", "instrument", "probe", "range", "bandwidth limit", "price in units", "bandwidths are", "score", "note").WithRows(shown.Select((x, i) => new[]
        {
            ReportCell.Count(i + 1), x.Instrument.Name, x.Probe.Name, ReportCell.Of(x.Range.FullScale), ReportCell.OfAny(x.BandwidthLimit),
            x.PriceInUnits is { } price ? ReportCell.Number(price) : ReportCell.Empty, x.Assurance.ToString().ToLowerInvariant(), ReportCell.Number(x.ScoreFraction),
            x.IsDominated ? "another is no dearer and nowhere worse" : ReportCell.Empty,
        }));

    private static ReportVerdict VerdictOf(Candidate candidate)
    {
        Verdict? outcome = candidate.Suitability switch { Suitability.Suitable => Verdict.Pass, Suitability.Unsuitable => Verdict.Fail, _ => null };
        var verdict = new ReportVerdict(candidate.ToString(), outcome, candidate.Suitability.ToString().ToLowerInvariant());
        if (candidate.Limiting is not { } limiting) return verdict;
        return (limiting.Margin is { } margin ? verdict.WithValue(Margin(margin)).WithLimits(ReportCell.Of(Ratio.FromFraction(0)), null) : verdict)
            .WithRule($"{limiting.Name}: needed {limiting.Needed}, given {limiting.Offered}");
    }

    private static ReportTable Margins(Candidate[] shown) => new ReportTable("margins", "Demands", "candidate", "demand", "needed", "offered", "margin").WithRows(
        shown.SelectMany(candidate => candidate.Criteria.Select(x => new ReportCell[]
        {
            candidate.ToString(), x.Name, Cell(x.NeededQuantity, x.Needed), Cell(x.OfferedQuantity, x.Offered), Margin(x.Margin),
        })));

    private static ReportTable Changes(Candidate[] shown) => new ReportTable("changes", "The smallest changes that would help", "candidate", "demand", "change").WithRows(
        shown.SelectMany(candidate => candidate.SmallestChanges.Select(x => new ReportCell[] { candidate.ToString(), x.Demand.Name, x.Change })));

    /// <summary>A margin without end, as where nothing is folded down, is held as a large number.</summary>
    private static ReportCell Margin(Ratio? margin) => margin is not { } value ? ReportCell.Empty
        : value.Fraction >= Ample ? ReportCell.Of(value, "ample")
        : value.Fraction >= Tenfold ? ReportCell.Of(value, Engineering.Number(1 + value.Fraction, 3) + " times") : ReportCell.Of(value);

    private static ReportCell Cell(Quantity? quantity, string text) => quantity is { } value ? ReportCell.Of(value, text) : ReportCell.Of(text);
}
