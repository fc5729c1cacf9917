using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Core.Uncertainty;

/// <summary>The budget as a table of plain text, columns aligned, for logs and consoles.</summary>
internal static class BudgetTable
{
    private static readonly string[] Heads = { "input", "value", "distribution", "standard uncertainty", "dof", "sensitivity (SI)", "contribution", "share" };

    internal static string Write(UncertaintyBudget budget)
    {
        var rows = new List<string[]> { Heads };
        foreach (BudgetLine line in budget.Lines)
        {
            rows.Add(new[]
            {
                line.Name, Short(line.Estimate, 6), line.Distribution, Short(line.StandardUncertainty, 3), Degrees(line.DegreesOfFreedom),
                line.SensitivityInSi.ToString("G4", CultureInfo.InvariantCulture), Short(line.Contribution, 3), Percent(line.Share),
            });
        }
        if (budget.CorrelationShare.SiValue != 0) rows.Add(new[] { "correlation", "", "", "", "", "", "", Percent(budget.CorrelationShare) });
        if (budget.IncludesSecondOrder) rows.Add(new[] { "second order", "", "", "", "", "", "", Percent(budget.SecondOrderShare) });
        rows.Add(new[] { "result", Short(budget.Value, 6), "", Short(budget.StandardUncertainty, 3), Degrees(budget.EffectiveDegreesOfFreedom), "", "", "" });

        var text = new StringBuilder();
        for (int row = 0; row < rows.Count; row++)
        {
            for (int column = 0; column < rows[row].Length; column++)
            {
                int width = 0;
                foreach (string[] other in rows) width = Math.Max(width, other[column].Length);
                text.Append(rows[row][column].PadRight(column == rows[row].Length - 1 ? 0 : width + 2));
            }
            while (text.Length > 0 && text[text.Length - 1] == ' ') text.Length--;
            text.Append('\n');
        }
        text.Append(budget).Append('\n');
        foreach (Finding finding in budget.Findings) text.Append(finding).Append('\n');
        return text.ToString();
    }

    private static string Short(Quantity quantity, int digits) => quantity.SiValue == 0 ? quantity.ToString() : new Quantity(SignificantDigits(quantity.SiValue, digits), quantity.Kind).ToString();

    private static double SignificantDigits(double number, int digits) =>
        double.Parse(number.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Degrees(double degrees) => double.IsPositiveInfinity(degrees) ? "∞" : degrees.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Percent(Ratio share) => share.Percent.ToString("0.0", CultureInfo.InvariantCulture) + " %";
}
