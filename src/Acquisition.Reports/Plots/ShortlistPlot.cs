using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Planning;

namespace Acquisition.Reports;

/// <summary>The margins of a shortlist, demand by demand: a filled bar to the right is met, an outlined one to the left is not; each row says so in words too.</summary>
public static class ShortlistPlot
{
    /// <summary>The best candidates of a shortlist. Bars end at -100 % and +200 %; an arrow head says that a margin goes on, and its figure stands beside it.</summary>
    /// <param name="shortlist">The shortlist.</param>
    /// <param name="options">Width, title, how many candidates; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="shortlist"/> is null.</exception>
    public static Plot Of(Shortlist shortlist, PlotOptions? options = null)
    {
        if (shortlist is null) throw new ArgumentNullException(nameof(shortlist));
        options ??= PlotOptions.Default;
        var bars = new List<Bar>();
        int shown = 0;
        foreach (Candidate candidate in shortlist.Candidates.Take(options.MostCandidates))
        {
            shown++;
            bars.Add(new Bar(FormattableString.Invariant($"{shown}. {candidate}"), 0, Word(candidate.Suitability), BarFill.Heading));
            bars.AddRange(candidate.Criteria.Select(Row));
        }
        int suitable = shortlist.Suitable.Count;
        string words = FormattableString.Invariant($"The first {shown} of {shortlist.Candidates.Count} candidates, {suitable} of them all suitable.");
        if (shortlist.Best is { } best) words += $" Best: {best}" + (best.Limiting is { } limiting ? $"; its tightest demand is {limiting.Name}." : ".");
        return new Plot(options.Title ?? "Margins of the shortlist", Axis.Linear("margin over what is needed", "%").WithRange(-100, 200), Axis.Linear("", "")).With(options).WithBars(bars).WithDescription(words);
    }

    private static Bar Row(Criterion criterion) => criterion.Margin is { } margin
        ? new Bar(criterion.Name, margin.Percent, Figure(margin.Percent) + (margin.Percent >= 0 ? ", met" : ", not met"), margin.Percent >= 0 ? BarFill.Solid : BarFill.Hollow, margin.Percent >= 0 ? 1 : 2)
        : new Bar(criterion.Name, 0, "not stated", BarFill.Absent);

    /// <summary>A margin of ten times and more is a factor; beyond a thousand its size says nothing.</summary>
    private static string Figure(double percent) => percent switch
    {
        0 => "0 %",
        < 0 => Engineering.Minus + Engineering.Text(-percent, "%", 3),
        < 900 => "+" + Engineering.Text(percent, "%", 3),
        <= 99_900 => "\u00d7 " + Engineering.Number((percent / 100) + 1, 3),
        _ => "over \u00d7 1000",
    };

    private static string Word(Suitability suitability) => suitability switch
    {
        Suitability.Suitable => "suitable",
        Suitability.Unproven => "unproven",
        _ => "unsuitable",
    };
}
