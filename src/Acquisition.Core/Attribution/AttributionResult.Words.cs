using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Acquisition.Core.Attribution;
using Acquisition.Core.Records;

namespace Acquisition.Core;

public sealed partial class AttributionResult
{
    /// <summary>The answer in a sentence with numbers: what the path loses at a frequency, who takes how much of it, what is not separated, and on which assumptions.</summary>
    /// <param name="frequency">The frequency; the nearest solved one is taken and named; not outside the solved ones.</param>
    /// <param name="path">The elements of the path; none for the measured path with the most elements.</param>
    /// <exception cref="ArgumentNullException">The path is null.</exception>
    /// <exception cref="ArgumentException">There is no such element.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the solved ones.</exception>
    public string ExplainAt(Frequency frequency, params string[] path)
    {
        AttributionPoint point = Nearest(frequency);
        IReadOnlyList<string> elements = PathOr(path);
        List<AttributionShare> shares = Shares(point, elements);
        bool isAnother = Math.Abs(point.Hertz - frequency.SiValue) > 1e-9 * point.Hertz;
        string where = $"At {FewDigits.Hertz(point.Hertz)}{(isAnother ? $", the solved frequency nearest to {FewDigits.Hertz(frequency.SiValue)}" : "")}, relative to {FewDigits.Hertz(ReferenceFrequency.SiValue)},";
        if (shares.Count == 0)
            return $"{where} the sweeps do not determine {AttributionRow.Join(elements)}.";
        double total = point.Solution.Level(CombinationOf(elements));
        string parts = string.Join(", ", shares.OrderBy(s => s.Level.Decibels).Select(InText).ToArray());
        string sentence = $"{where} {AttributionRow.Join(elements)} reads {FewDigits.Decibels(total)}: {parts}. {Verdict(point, shares)}";
        string[] assumed = point.Rows.Where(r => r.Evidence == AttributionEvidence.Assumed).Select(r => r.Text).ToArray();
        if (assumed.Length > 0)
            sentence += $" This rests on: {string.Join("; ", assumed)}.";
        if (Interactions.Count > 0)
        {
            sentence += $" But decibels do not add up here, and the parts hold a share of that: {PairsInWords} load each other"
                + (Interactions.Count > 1 ? ", which of the pairs these sweeps do not tell." : ".");
        }
        return sentence;
    }

    private static string InText(AttributionShare share) =>
        $"{share.Name} {FewDigits.Decibels(share.Level.Decibels)}"
        + (share.Uncertainty is { } u ? $" (u {FewDigits.Decibels(u.Decibels)}" + (share.Fraction is { } f ? $", {f.Percent.ToString("F0", CultureInfo.InvariantCulture)} %)" : ")") : "")
        + (share.IsNotSeparated ? ", not separated" : "");

    /// <summary>Who takes most, if the difference to the next exceeds twice its uncertainty.</summary>
    private string Verdict(AttributionPoint point, List<AttributionShare> shares)
    {
        AttributionShare[] byLoss = shares.OrderBy(s => s.Level.Decibels).ToArray();
        AttributionShare first = byLoss[0];
        string open = first.IsNotSeparated ? ", which these sweeps do not separate" : "";
        if (byLoss.Length == 1)
            return first.IsNotSeparated ? "These sweeps do not separate its parts." : "It has one element only.";
        if (!(first.Level.Decibels < 0))
            return "Nothing in it takes a loss.";
        double[] difference = first.Combination.Select((c, i) => c - byLoss[1].Combination[i]).ToArray();
        double step = byLoss[1].Level.Decibels - first.Level.Decibels;
        if (Deviation(point, difference) is not { } u)
            return $"The largest part is {first.Name}{open}; no uncertainty is known.";
        return step > 2 * u
            ? $"The largest part is {first.Name}{open}."
            : $"{first.Name} and {byLoss[1].Name} take parts that differ by {FewDigits.Decibels(step)} with a standard uncertainty of {FewDigits.Decibels(u)}: which is larger is not decided.";
    }

    private List<Ambiguity> FindAmbiguities()
    {
        var found = new List<Ambiguity>();
        for (int i = 0; i < _points.Count;)
        {
            int last = i;
            while (last + 1 < _points.Count && ReferenceEquals(_points[last + 1].Open, _points[i].Open))
                last++;
            foreach (double[] vector in _points[i].Open.Basis)
                found.Add(new Ambiguity(vector, Elements, _points[i].Rows, _points[i].Open, _points[i].Hertz, _points[last].Hertz));
            i = last + 1;
        }
        return found;
    }

    /// <summary>The pairs of elements whose common column takes most of chi-squared away, where the residuals are too large for chance and the pairs are not chance themselves.</summary>
    private InteractionSearch? FindInteractions(double squares) =>
        DegreesOfFreedom == 0 || (_weighted && ChiSquaredTest.UpperTail(squares, DegreesOfFreedom) > 0.01)
            ? null
            : new InteractionSearch(Elements, _points, (gain, columns) => Significant(gain, columns, squares),
                (gain, columns) => _weighted ? 1 : Math.Max(0, squares - gain) / (DegreesOfFreedom - columns));

    private string PairsInWords => string.Join(", or ", Interactions.Select(p => $"{p.First} and {p.Second}").ToArray());

    private bool Significant(double gain, int columns, double squares)
    {
        if (_weighted)
            return ChiSquaredTest.UpperTail(gain, columns) < 0.001;
        // Without uncertainties the rest of the residuals is the measure, if there is one.
        int rest = DegreesOfFreedom - columns;
        return rest > 0 && gain / columns > 10 * (squares - gain) / rest && gain > 1e-6;
    }

    private List<Finding> Judge(double squares, string? deciding)
    {
        var findings = new List<Finding>();
        foreach (Ambiguity ambiguity in Ambiguities)
            findings.Add(new Finding("not-separable", Severity.Warning, ambiguity.Text, string.Join("; or ", ambiguity.Remedies.ToArray()), "handbook 10.3"));
        foreach (string assumption in Assumptions)
            findings.Add(new Finding("rests-on-assumption", Severity.Note, assumption, "replace the assumption by a measurement", "handbook 10.3"));
        if (DegreesOfFreedom == 0)
        {
            findings.Add(new Finding("no-check-possible", Severity.Note, "there are no more rows than the elements need: whether decibels add up cannot be seen", "measure one more combination", "handbook 10.3"));
        }
        if (_varianceScale is null)
            findings.Add(new Finding("no-uncertainty", Severity.Warning, "the sweeps carry no uncertainty and leave no residual to take it from", "state one with WithLevelUncertainty, or measure one more combination"));
        if (ChiSquared is { } chi && ChiSquaredTest.UpperTail(chi, DegreesOfFreedom) < 0.01)
        {
            (AttributionRow Row, double Level, double Hertz) worst = _points
                .SelectMany(p => p.Rows.Select((r, i) => (r, p.Solution.Residuals[i], p.Hertz, Weight: Math.Abs(p.Solution.WeightedResiduals[i]))))
                .OrderByDescending(x => x.Weight).Select(x => (x.r, x.Item2, x.Hertz)).First();
            findings.Add(new Finding("decibels-do-not-add-up", Severity.Warning,
                $"chi-squared is {FewDigits.Number(squares)} for {DegreesOfFreedom} rows to spare: the residuals are larger than the uncertainties, most at {FewDigits.Hertz(worst.Hertz)} for {worst.Row} ({FewDigits.Decibels(worst.Level)})",
                "elements load each other, a range was changed, or an uncertainty is too small", "handbook 10.4"));
        }
        if (Interactions.Count == 1)
        {
            ElementInteraction pair = Interactions[0];
            findings.Add(new Finding("elements-load-each-other", Severity.Warning,
                $"paths with both {pair.First} and {pair.Second} differ from the sum of the two by up to {FewDigits.Decibels(pair.Largest.Decibels)} at {FewDigits.Hertz(pair.LargestAt.SiValue)}",
                $"count {pair.First} + {pair.Second} as one element, or compute the loaded network", "handbook 10.4"));
        }
        else if (Interactions.Count > 1)
        {
            findings.Add(new Finding("elements-load-each-other", Severity.Warning,
                $"two elements load each other, and these sweeps do not tell which: {string.Join("; or ", Interactions.Select(p => $"{p.First} with {p.Second}, {FewDigits.Decibels(p.Largest.Decibels)} at {FewDigits.Hertz(p.LargestAt.SiValue)}").ToArray())} explain the residuals alike",
                deciding is null ? "measure each of the elements in other paths too" : $"to tell: {deciding}", "handbook 10.4"));
        }
        foreach (AttributionRow row in _attribution.Rows)
            findings.AddNew(row.Sweep.Findings);
        return findings;
    }

    /// <summary>Elements, rank and check in one line.</summary>
    public override string ToString() =>
        $"{Elements.Count} elements, rank {Rank}, {_points.Count} frequencies" + (ChiSquared is { } chi ? $", chi-squared {FewDigits.Number(chi)} for {DegreesOfFreedom}" : "");
}
