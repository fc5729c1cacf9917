using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>An uncertainty budget as bars: what each input contributes, the largest first, then what they make together.</summary>
public static class BudgetPlot
{
    /// <summary>The contributions of a budget with their shares of the variance, the combined and the expanded uncertainty (outlined).</summary>
    /// <param name="budget">The budget.</param>
    /// <param name="options">Width and title; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="budget"/> is null.</exception>
    public static Plot Of(UncertaintyBudget budget, PlotOptions? options = null)
    {
        if (budget is null) throw new ArgumentNullException(nameof(budget));
        options ??= PlotOptions.Default;
        Quantity combined = budget.StandardUncertainty, expanded = budget.ExpandedUncertainty;
        Axis x = Axis.Linear("standard uncertainty", combined.Kind.Symbol);
        // Inputs of equal weight keep their order.
        List<Bar> bars = budget.Lines.Select(line => (Line: line, Size: Math.Abs(line.Contribution.SiValue))).OrderByDescending(row => row.Size)
            .Select(row => new Bar(row.Line.Name, row.Size, x.Words(row.Size) + ", " + Engineering.Text(row.Line.Share.Percent, "%", 3), BarFill.Solid)).ToList();
        if (budget.SecondOrderShare.Fraction != 0) bars.Add(new Bar("second-order terms", 0, Engineering.Text(budget.SecondOrderShare.Percent, "%", 3) + " of the variance", BarFill.Absent));
        if (budget.CorrelationShare.Fraction != 0) bars.Add(new Bar("correlation", 0, Engineering.Text(budget.CorrelationShare.Percent, "%", 3) + " of the variance", BarFill.Absent));
        bars.Add(new Bar("combined", combined.SiValue, "u = " + x.Words(combined.SiValue), BarFill.Hollow, 0));
        bars.Add(new Bar("expanded", expanded.SiValue, "U = " + x.Words(expanded.SiValue), BarFill.Hollow, 0));
        string words = $"The result is {budget}.";
        if (budget.Lines.Count > 0) words += $" Most of its uncertainty comes from {bars[0].Name}: {bars[0].Note} of the variance.";
        return new Plot(options.Title ?? "Contributions to the uncertainty", x, Axis.Linear("", "")).With(options).WithBars(bars).WithDescription(words);
    }
}
