using System.Collections.Generic;
using System.Linq;
using System.Text;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>Writes a <see cref="Report"/> as Markdown. Text is escaped, so that a value with a star or a pipe in it stays what it is.</summary>
internal static class MarkdownWriter
{
    private static readonly HashSet<char> Escaped = new("\\`*_{}[]<>#|~");

    internal static string Write(Report report, string plotName)
    {
        var text = new StringBuilder();
        text.Append("# ").Append(Escape(report.Title)).Append('\n');
        int plots = 0;
        foreach (Block block in report.Blocks)
        {
            text.Append('\n');
            switch (block)
            {
                case Heading heading:
                    text.Append("## ").Append(Escape(heading.Text)).Append('\n');
                    break;
                case Paragraph paragraph:
                    text.Append(Escape(paragraph.Text)).Append('\n');
                    break;
                case Table table:
                    Row(text, table.Columns);
                    Row(text, table.Columns.Select(_ => "---").ToArray(), isEscaped: true);
                    foreach (IReadOnlyList<string> row in table.Rows) Row(text, row);
                    break;
                case FindingList list:
                    foreach (Finding finding in list.Findings) Item(text, finding);
                    break;
                case Picture picture:
                    text.Append("![").Append(Escape(picture.Plot.Title)).Append("](").Append(Report.PlotFile(plotName, plots++)).Append(")\n");
                    break;
            }
        }
        return text.ToString();
    }

    private static void Row(StringBuilder text, IReadOnlyList<string> cells, bool isEscaped = false)
    {
        text.Append('|');
        foreach (string cell in cells) text.Append(' ').Append(isEscaped ? cell : Escape(cell)).Append(" |");
        text.Append('\n');
    }

    private static void Item(StringBuilder text, Finding finding)
    {
        text.Append("- **").Append(finding.Severity.ToString()).Append("** `").Append(finding.Code).Append("`: ").Append(Escape(finding.Message));
        if (finding.Remedy is not null) text.Append(" *Remedy:* ").Append(Escape(finding.Remedy));
        if (finding.Source is not null) text.Append(" (").Append(Escape(finding.Source)).Append(')');
        text.Append('\n');
    }

    private static string Escape(string value)
    {
        var text = new StringBuilder(value.Length + 8);
        foreach (char c in value)
        {
            if (Escaped.Contains(c)) text.Append('\\');
            text.Append(c is '\n' or '\r' ? ' ' : c);
        }
        return text.ToString();
    }
}
