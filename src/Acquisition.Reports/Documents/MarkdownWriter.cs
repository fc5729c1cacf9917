using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>Writes a <see cref="Report"/> as Markdown. Text is escaped, so that a value with a star or a pipe in it stays what it is.</summary>
internal static class MarkdownWriter
{
    /// <summary>What CommonMark, its table extension and the further marks of some hosts (mathematics, superscripts) would take for a mark.</summary>
    private static readonly HashSet<char> Marks = new("\\`*_{}[]<>#|~$^");

    internal static string Write(Report report, IReadOnlyList<Block> blocks, string plotName)
    {
        var text = new StringBuilder();
        text.Append("# ").Append(AtStart(report.Title)).Append('\n');
        if (report.Identification.Count > 0)
        {
            text.Append('\n');
            foreach (KeyValuePair<string, string> line in report.Identification)
                text.Append("- ").Append(AtStart(line.Key)).Append(": ").Append(Escape(line.Value)).Append('\n');
        }
        int plots = 0;
        foreach (Block block in blocks)
        {
            text.Append('\n');
            switch (block)
            {
                case Heading heading:
                    text.Append('#', heading.Level).Append(' ').Append(AtStart(heading.Text)).Append('\n');
                    break;
                case Paragraph paragraph:
                    text.Append(AtStart(paragraph.Text)).Append('\n');
                    break;
                case FindingList list:
                    foreach (Finding finding in list.Findings) Item(text, finding);
                    break;
                case Picture picture:
                    text.Append("![").Append(Escape(picture.Plot.Title)).Append("](<").Append(Destination(Report.PlotFile(plotName, plots++))).Append(">)\n");
                    break;
                default:
                    Table(text, Grid.Of(block)!.Compact());
                    break;
            }
        }
        return text.ToString();
    }

    private static void Table(StringBuilder text, Grid grid)
    {
        string caption = Escape(grid.Caption);
        text.Append(caption.Length > 0 ? "**" + caption + "**\n\n|" : "|");
        foreach (string head in grid.Columns) text.Append(' ').Append(Escape(head)).Append(" |");
        text.Append("\n|");
        foreach (bool isNumeric in grid.IsNumeric) text.Append(isNumeric ? " ---: |" : " --- |");
        text.Append('\n');
        foreach (GridRow row in grid.Rows)
        {
            text.Append('|');
            for (int i = 0; i < row.Cells.Count; i++)
                text.Append(' ').Append(row.IsDetail && i == 0 ? "– " : "").Append(Escape(row.Cells[i].Text)).Append(" |");
            text.Append('\n');
        }
    }

    private static void Item(StringBuilder text, Finding finding)
    {
        text.Append("- **").Append(finding.Severity.ToString()).Append("** ").Append(Escape(finding.Code)).Append(": ").Append(Escape(finding.Message));
        if (finding.Remedy is not null) text.Append(" *Remedy:* ").Append(Escape(finding.Remedy));
        if (finding.Source is not null) text.Append(" (").Append(Escape(finding.Source)).Append(')');
        text.Append('\n');
    }

    /// <summary>At the start of a line, where a list, a rule or a heading could begin.</summary>
    private static string AtStart(string value)
    {
        string text = Escape(value);
        int digits = text.TakeWhile(c => c is >= '0' and <= '9').Count();
        bool beginsList = text.Length > 0 && text[0] is '-' or '+' or '=' or ':';
        bool beginsNumbering = digits > 0 && digits < text.Length && text[digits] is '.' or ')';
        return beginsList ? "\\" + text : beginsNumbering ? text.Insert(digits, "\\") : text;
    }

    private static string Escape(string value)
    {
        string visible = VisibleText.OneLine(value).Trim(' ');
        var text = new StringBuilder(visible.Length + 8);
        for (int i = 0; i < visible.Length; i++)
        {
            char c = visible[i];
            bool isEntity = c == '&' && i + 1 < visible.Length && (visible[i + 1] == '#' || IsAsciiLetter(visible[i + 1]));
            bool isDoubled = c is '+' or '=' && ((i > 0 && visible[i - 1] == c) || (i + 1 < visible.Length && visible[i + 1] == c));
            if (isEntity || isDoubled || Marks.Contains(c)) text.Append('\\');
            text.Append(c);
        }
        return text.ToString();
    }

    /// <summary>A file name between angle brackets: what could end it, or begin an entity, becomes its percent code.</summary>
    private static string Destination(string file)
    {
        var text = new StringBuilder(file.Length);
        foreach (char c in VisibleText.OneLine(file))
        {
            if (c is '<' or '>' or '\\' or '&' or '%' or ' ') text.Append('%').Append(((int)c).ToString("X2", CultureInfo.InvariantCulture));
            else text.Append(c);
        }
        return text.ToString();
    }

    private static bool IsAsciiLetter(char c) => c is (>= 'a' and <= 'z') or (>= 'A' and <= 'Z');
}
