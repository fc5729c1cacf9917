using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A block laid out in columns and rows: what Markdown, HTML, plain text and CSV have in common.</summary>
internal sealed class Grid
{
    private const string Value = "value";

    private Grid(string name, string caption, IReadOnlyList<string> columns, IReadOnlyList<GridRow> rows)
    {
        Name = name;
        Caption = caption;
        Columns = columns;
        Rows = rows;
        IsNumeric = columns.Select((_, i) => 2 * rows.Count(row => row.Cells[i].Quantity is not null) > rows.Count(row => !row.Cells[i].IsEmpty)).ToArray();
    }

    internal string Name { get; }

    internal string Caption { get; }

    internal IReadOnlyList<string> Columns { get; }

    internal IReadOnlyList<bool> IsNumeric { get; }

    internal IReadOnlyList<GridRow> Rows { get; }

    /// <summary>The grid of a block; null where it is none.</summary>
    internal static Grid? Of(Block block) => block switch
    {
        TableBlock table => new Grid(table.Name, table.Table.Caption, table.Table.Columns, table.Table.Rows.Select(row => new GridRow(row)).ToArray()),
        ValuesBlock values => OfValues(values),
        VerdictsBlock verdicts => OfVerdicts(verdicts),
        _ => null,
    };

    /// <summary>Findings as a table, for CSV.</summary>
    internal static Grid Of(FindingList list) => new(
        list.Name, "Findings", new[] { "severity", "code", "message", "remedy", "source" },
        list.Findings.Select(x => new GridRow(new ReportCell[] { x.Severity.ToString(), x.Code, x.Message, x.Remedy, x.Source })).ToArray());

    internal static Grid Of(IReadOnlyList<KeyValuePair<string, string>> identification) => new(
        "identification", "Identification", new[] { "what", "text" }, identification.Select(x => new GridRow(new ReportCell[] { x.Key, x.Value })).ToArray());

    private static Grid OfValues(ValuesBlock block)
    {
        var rows = new List<GridRow>();
        foreach (ReportValue value in block.Values.Values)
        {
            string how = string.Join("; ", new[] { value.Method, value.Source }.Where(text => !string.IsNullOrEmpty(text)));
            rows.Add(new GridRow(new[] { value.Name, value.Value, how }));
            rows.AddRange(value.Inputs.Select(input => Detail("from " + input.Key, input.Value, "")));
            rows.AddRange(value.Rules.Select(rule => Detail("rule of thumb: " + rule.Rule, rule.Value, "off by " + rule.Difference.Text)));
            rows.AddRange(value.Assumptions.Select(assumption => Detail("assumes", "", assumption)));
        }
        return WithoutEmptyColumns(block.Name, block.Values.Caption, new[] { "what", Value, "how it was found" }, rows);
    }

    private static Grid OfVerdicts(VerdictsBlock block) => WithoutEmptyColumns(
        block.Name, block.Caption,
        new[] { "what", "verdict", Value, "standard uncertainty", "lower limit", "upper limit", "guard band", "conformance probability", "rule", "remark" },
        block.Verdicts.Select(x => new GridRow(new[] { x.Name, x.Text, x.Value, x.Uncertainty, x.Lower, x.Upper, x.GuardBand, x.Probability, x.Rule, x.Remark }) { Outcome = x.Outcome, IsVerdict = true })
            .ToList());

    private static Grid WithoutEmptyColumns(string name, string caption, string[] columns, List<GridRow> rows)
    {
        int[] kept = Enumerable.Range(0, columns.Length).Where(i => i < 2 || rows.Any(row => !row.Cells[i].IsEmpty)).ToArray();
        return new Grid(
            name, caption, kept.Select(i => columns[i]).ToArray(),
            rows.Select(row => new GridRow(kept.Select(i => row.Cells[i]).ToArray()) { IsDetail = row.IsDetail, IsVerdict = row.IsVerdict, Outcome = row.Outcome }).ToArray());
    }

    private static GridRow Detail(string what, ReportCell value, string how) => new(new[] { what, value, how }) { IsDetail = true };
}

/// <summary>A row of a <see cref="Grid"/>.</summary>
internal sealed class GridRow(IReadOnlyList<ReportCell> cells)
{
    internal IReadOnlyList<ReportCell> Cells { get; } = cells;

    /// <summary>Whether it belongs to the row above: a rule of thumb, an input, an assumption.</summary>
    internal bool IsDetail { get; set; }

    /// <summary>Whether its second cell is a verdict, and which.</summary>
    internal bool IsVerdict { get; set; }

    internal Verdict? Outcome { get; set; }
}
