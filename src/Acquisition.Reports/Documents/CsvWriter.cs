using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>Writes a <see cref="Report"/> as CSV by RFC 4180: commas, CRLF, quotes doubled; decimal points whatever the culture.</summary>
/// <remarks>
/// A text that a spreadsheet would take for a formula (it begins with =, +, -, @ and is no quantity) gets an apostrophe before it. Quantities carry their SI value in a field of its own.
/// </remarks>
internal static class CsvWriter
{
    private const string End = "\r\n";

    /// <summary>The whole report as one table: a line for each cell.</summary>
    internal static string Write(Report report, IReadOnlyList<Block> blocks)
    {
        var csv = new StringBuilder("table,row,label,column,text,si_value,si_unit,ucum" + End);
        Line(csv, "report", "1", "", "title", report.Title, "", "", "");
        foreach (Grid grid in Grids(report, blocks))
        {
            for (int row = 0; row < grid.Rows.Count; row++)
            {
                for (int column = 0; column < grid.Columns.Count; column++)
                {
                    ReportCell cell = grid.Rows[row].Cells[column];
                    if (cell.IsEmpty) continue;
                    string unit = cell.Quantity?.Kind.Symbol ?? "";
                    Line(
                        csv, grid.Name, (row + 1).ToString(CultureInfo.InvariantCulture), grid.Rows[row].Cells[0].Text, grid.Columns[column], cell.Text,
                        Si(cell), unit, cell.Quantity is null ? "" : Ucum.Of(unit) ?? "");
                }
            }
        }
        return csv.ToString();
    }

    /// <summary>Each table of the report by its name: text columns, and beside each column with quantities one with their SI values; and the points of each plot.</summary>
    internal static IReadOnlyList<KeyValuePair<string, string>> Tables(Report report, IReadOnlyList<Block> blocks)
    {
        var tables = new List<KeyValuePair<string, string>>();
        if (report.Identification.Count > 0) tables.Add(Named(Grid.Of(report.Identification)));
        foreach (Block block in blocks)
        {
            if (block is Picture picture) tables.Add(new KeyValuePair<string, string>(picture.Name, Table(CsvPlot.Rows(picture.Plot))));
            else if (GridOf(block) is { } grid) tables.Add(Named(grid));
        }
        return tables;

        static KeyValuePair<string, string> Named(Grid grid) => new(grid.Name, Table(grid));
    }

    private static IEnumerable<Grid> Grids(Report report, IReadOnlyList<Block> blocks) =>
        (report.Identification.Count > 0 ? new[] { Grid.Of(report.Identification) } : Array.Empty<Grid>()).Concat(blocks.Select(GridOf).OfType<Grid>());

    private static Grid? GridOf(Block block) => block is FindingList list ? Grid.Of(list) : Grid.Of(block);

    private static string Table(IEnumerable<string[]> rows)
    {
        var csv = new StringBuilder();
        foreach (string[] row in rows) Line(csv, row);
        return csv.ToString();
    }

    private static string Table(Grid grid)
    {
        var csv = new StringBuilder();
        // A plain number whose text is the number already needs no second column.
        string?[][] units = grid.Columns.Select((_, i) => UnitsOf(grid.Rows.Select(row => row.Cells[i]).ToArray())).ToArray();
        var heads = new List<string>();
        for (int i = 0; i < grid.Columns.Count; i++)
        {
            heads.Add(grid.Columns[i]);
            // One unit stands in the head; several stand beside their values.
            if (units[i].Length == 1) heads.Add(grid.Columns[i] + " / " + (units[i][0]!.Length == 0 ? "1" : units[i][0]));
            if (units[i].Length > 1) heads.AddRange(new[] { grid.Columns[i] + " in SI", "unit of " + grid.Columns[i] });
        }
        Line(csv, heads.ToArray());
        foreach (GridRow row in grid.Rows)
        {
            var fields = new List<string>();
            for (int i = 0; i < grid.Columns.Count; i++)
            {
                fields.Add(row.Cells[i].Text);
                if (units[i].Length > 0) fields.Add(Si(row.Cells[i]));
                if (units[i].Length > 1) fields.Add(row.Cells[i].Quantity?.Kind.Symbol ?? "");
            }
            Line(csv, fields.ToArray());
        }
        return csv.ToString();
    }

    private static string?[] UnitsOf(ReportCell[] column) => column.All(cell => cell.Quantity is not { } quantity || (quantity.Kind == QuantityKind.Ratio && cell.Text == Si(cell)))
        ? Array.Empty<string>()
        : column.Select(cell => cell.Quantity?.Kind.Symbol).Where(unit => unit is not null).Distinct().ToArray();

    private static string Si(ReportCell cell) => cell.Quantity is { } quantity ? new Quantity(quantity.SiValue, QuantityKind.Ratio).ToString() : "";

    private static void Line(StringBuilder csv, params string[] fields)
    {
        for (int i = 0; i < fields.Length; i++)
        {
            if (i > 0) csv.Append(',');
            string field = Harmless(VisibleText.Lines(fields[i]));
            bool isQuoted = field.Any(c => c is ',' or '"' or '\r' or '\n') || (field.Length > 0 && (field[0] == ' ' || field[field.Length - 1] == ' '));
            csv.Append(isQuoted ? "\"" + field.Replace("\"", "\"\"") + "\"" : field);
        }
        csv.Append(End);
    }

    private static string Harmless(string field) =>
        field.Length > 0 && field[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' && !Quantity.TryParse(field, out _) ? "'" + field : field;
}
