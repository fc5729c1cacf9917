using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>Writes a <see cref="Report"/> as plain text in lines of a given width: titles underlined, tables in columns, long cells wrapped.</summary>
/// <remarks>A character counts as one column; the wide ones of East Asian scripts are not told apart, since the tables that say so differ between runtimes.</remarks>
internal sealed class ConsoleWriter
{
    private const int Gap = 2;
    private const int LongestWord = 24;

    private readonly StringBuilder _text = new();
    private readonly int _width;

    private ConsoleWriter(int width) => _width = width;

    internal static string Write(Report report, IReadOnlyList<Block> blocks, int width)
    {
        var writer = new ConsoleWriter(width);
        writer.Underlined(report.Title, '=');
        if (report.Identification.Count > 0)
        {
            int label = report.Identification.Max(line => TextWrap.Columns(VisibleText.OneLine(line.Key)));
            foreach (KeyValuePair<string, string> line in report.Identification) writer.Labelled(VisibleText.OneLine(line.Key), Math.Min(label, width / 2) + Gap, line.Value);
        }
        foreach (Block block in blocks)
        {
            writer._text.Append('\n');
            writer.Block(block);
        }
        return writer._text.ToString();
    }

    private void Block(Block block)
    {
        switch (block)
        {
            case Heading heading:
                Underlined(heading.Text, heading.Level == 2 ? '-' : '.');
                break;
            case Paragraph paragraph:
                Lines("", paragraph.Text, "");
                break;
            case FindingList list:
                foreach (Finding finding in list.Findings) Item(finding);
                break;
            case Picture picture:
                Lines("", "[plot] " + picture.Plot.Title, "  ");
                break;
            default:
                Grid grid = Grid.Of(block)!.Compact();
                Lines("", grid.Caption, "");
                Table(grid);
                break;
        }
    }

    private void Underlined(string title, char line)
    {
        List<string> lines = TextWrap.Of(VisibleText.OneLine(title), _width);
        foreach (string part in lines) Line(part);
        Line(new string(line, Math.Max(1, lines.Max(TextWrap.Columns))));
    }

    private void Item(Finding finding)
    {
        Lines("", finding.Severity.ToString().ToUpperInvariant() + " " + finding.Code + ": " + finding.Message, "  ");
        if (finding.Remedy is not null) Lines("  -> ", finding.Remedy, "     ");
        if (finding.Source is not null) Lines("  (", finding.Source + ")", "   ");
    }

    private void Table(Grid grid)
    {
        string[] heads = grid.Columns.Select(VisibleText.OneLine).ToArray();
        string[][] cells = grid.Rows.Select(row => row.Cells.Select((cell, i) => (row.IsDetail && i == 0 ? "  " : "") + VisibleText.OneLine(cell.Text)).ToArray()).ToArray();
        int[] narrowest = heads.Select((head, i) => Math.Min(LongestWord, cells.Select(row => row[i]).Append(head).Max(TextWrap.LongestWord))).ToArray();
        if (narrowest.Sum() + (Gap * (heads.Length - 1)) > _width)
        {
            Records(grid);
            return;
        }
        int[] widths = Widths(heads, cells, narrowest);
        Row(heads, widths, grid.IsNumeric);
        Line(string.Join(new string(' ', Gap), widths.Select(width => new string('-', width))));
        foreach (string[] row in cells) Row(row, widths, grid.IsNumeric);
    }

    /// <summary>As wide as the cells are; where that is too much, the widest columns give way, but none breaks a word.</summary>
    private int[] Widths(string[] heads, string[][] cells, int[] narrowest)
    {
        int[] widths = heads.Select((head, i) => Math.Max(1, Math.Max(TextWrap.Columns(head), cells.Length == 0 ? 0 : cells.Max(row => TextWrap.Columns(row[i]))))).ToArray();
        int excess = widths.Sum() + (Gap * (widths.Length - 1)) - _width;
        for (; excess > 0; excess--) widths[Enumerable.Range(0, widths.Length).Where(i => widths[i] > narrowest[i]).OrderByDescending(i => widths[i]).First()]--;
        return widths;
    }

    private void Row(string[] cells, int[] widths, IReadOnlyList<bool> isNumeric)
    {
        List<string>[] wrapped = cells.Select((cell, i) => TextWrap.Of(cell, widths[i], cell.StartsWith("  ", StringComparison.Ordinal) ? "    " : "")).ToArray();
        int height = wrapped.Max(lines => lines.Count);
        for (int line = 0; line < height; line++)
        {
            var text = new StringBuilder();
            for (int i = 0; i < cells.Length; i++)
            {
                string part = line < wrapped[i].Count ? wrapped[i][line] : "";
                string space = new(' ', Math.Max(0, widths[i] - TextWrap.Columns(part)));
                text.Append(i > 0 ? new string(' ', Gap) : "").Append(isNumeric[i] ? space + part : part + space);
            }
            Line(text.ToString());
        }
    }

    /// <summary>Where columns would be too narrow to read: one line for each cell.</summary>
    private void Records(Grid grid)
    {
        int label = Math.Min(_width / 2, grid.Columns.Max(head => TextWrap.Columns(VisibleText.OneLine(head)))) + Gap;
        for (int i = 0; i < grid.Rows.Count; i++)
        {
            if (i > 0) _text.Append('\n');
            GridRow row = grid.Rows[i];
            for (int column = 0; column < grid.Columns.Count; column++)
            {
                if (!row.Cells[column].IsEmpty) Labelled(VisibleText.OneLine(grid.Columns[column]), label, row.Cells[column].Text);
            }
        }
    }

    private void Labelled(string label, int width, string value)
    {
        string head = TextWrap.Columns(label) >= width ? label + " " : label + new string(' ', width - TextWrap.Columns(label));
        if (TextWrap.Columns(head) > _width / 2 + Gap)
        {
            Lines("", label, "");
            head = "  ";
        }
        Lines(head, value, new string(' ', Math.Min(TextWrap.Columns(head), width)));
    }

    private void Lines(string head, string text, string indent)
    {
        foreach (string line in TextWrap.Of(head + VisibleText.OneLine(text), _width, indent)) Line(line);
    }

    private void Line(string line) => _text.Append(line.TrimEnd(' ')).Append('\n');
}
