using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A block laid out in columns and rows: what Markdown, HTML, plain text and CSV have in common.</summary>
internal sealed class Grid
{
    private const string LowerHead = "lower limit", UpperHead = "upper limit", LimitHead = "limit";
    private static readonly string[] ValueHeads = { "what", "value", "how it was found" };
    private static readonly string[] VerdictHeads = { "what", "verdict", "value", "standard uncertainty", LowerHead, UpperHead, "margin", "guard band", "conformance probability", "rule", "remark" };
    private static readonly string[] ReaderHeads = { "what", "verdict", "value", LimitHead, "margin", "remark", "standard uncertainty", "guard band", "conformance probability", "rule" };
    private static readonly string[] FindingHeads = { "severity", "code", "message", "remedy", "source" };
    private static readonly string[] IdentificationHeads = { "what", "text" };

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

    /// <summary>Without the columns that hold nothing; verdicts with both limits in one column and the remark before the figures of the rule. A reader does not miss the rest, software would.</summary>
    internal Grid Compact() => Rows.Count > 0 && Rows.All(row => row.IsVerdict) ? ForReaders().WithoutEmptyColumns() : WithoutEmptyColumns();

    /// <summary>What a reader looks for comes first, since a narrow page shows the rest only by scrolling: ≥ 4.75 V, &lt; 500 ps, 4.75 V to 5.25 V.</summary>
    private Grid ForReaders() => new(
        Name, Caption, ReaderHeads,
        Rows.Select(row => row.With(ReaderHeads.Select(head => head == LimitHead ? Limits(CellOf(row, LowerHead), CellOf(row, UpperHead), row.IsLowerExcluded, row.IsUpperExcluded) : CellOf(row, head)).ToArray())).ToArray());

    private static ReportCell CellOf(GridRow row, string head) => row.Cells[Array.IndexOf(VerdictHeads, head)];

    private static ReportCell Limits(ReportCell lower, ReportCell upper, bool isLowerExcluded, bool isUpperExcluded)
    {
        if (lower.IsEmpty && upper.IsEmpty) return ReportCell.Empty;
        if (!lower.IsEmpty && !upper.IsEmpty) return (isLowerExcluded ? "above " : "") + lower.Text + (isUpperExcluded ? " to below " : " to ") + upper.Text;
        ReportCell only = lower.IsEmpty ? upper : lower;
        string text = (lower.IsEmpty ? isUpperExcluded ? "< " : "≤ " : isLowerExcluded ? "> " : "≥ ") + only.Text;
        return only.Quantity is { } quantity ? ReportCell.Of(quantity, text) : text;
    }

    private Grid WithoutEmptyColumns()
    {
        int[] kept = Enumerable.Range(0, Columns.Count).Where(i => i == 0 || Rows.Any(row => !row.Cells[i].IsEmpty)).ToArray();
        return new Grid(
            Name, Caption, kept.Select(i => Columns[i]).ToArray(),
            Rows.Select(row => row.With(kept.Select(i => row.Cells[i]).ToArray())).ToArray());
    }

    /// <summary>Findings as a table, for CSV.</summary>
    internal static Grid Of(FindingList list) => new(
        list.Name, "Findings", FindingHeads,
        list.Findings.Select(x => new GridRow(new ReportCell[] { x.Severity.ToString(), x.Code, x.Message, x.Remedy, x.Source })).ToArray());

    internal static Grid Of(IReadOnlyList<KeyValuePair<string, string>> identification) => new(
        "identification", "Identification", IdentificationHeads, identification.Select(x => new GridRow(new ReportCell[] { x.Key, x.Value })).ToArray());

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
        return new Grid(block.Name, block.Values.Caption, ValueHeads, rows);
    }

    private static Grid OfVerdicts(VerdictsBlock block) => new(
        block.Name, block.Caption,
        VerdictHeads,
        block.Verdicts.Select(x => new GridRow(new[] { x.Name, x.Text, x.Value, x.Uncertainty, x.Lower, x.Upper, x.Margin, x.GuardBand, x.Probability, x.Rule, x.Remark }) { Outcome = x.Outcome, IsVerdict = true, IsLowerExcluded = x.IsLowerExcluded, IsUpperExcluded = x.IsUpperExcluded })
            .ToList());

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

    internal bool IsLowerExcluded { get; set; }

    internal bool IsUpperExcluded { get; set; }

    internal GridRow With(IReadOnlyList<ReportCell> cells) => new(cells) { IsDetail = IsDetail, IsVerdict = IsVerdict, Outcome = Outcome, IsLowerExcluded = IsLowerExcluded, IsUpperExcluded = IsUpperExcluded };
}
