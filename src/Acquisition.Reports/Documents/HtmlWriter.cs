using System.Collections.Generic;
using System.Text;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>Writes a <see cref="Report"/> as an HTML fragment that a host puts into its own page.</summary>
internal static class HtmlWriter
{
    internal static string Write(Report report)
    {
        var html = new StringBuilder();
        html.Append("<article class=\"acquisition-report\">\n<h1>").Append(Escape(report.Title)).Append("</h1>\n");
        int plots = 0;
        foreach (Block block in report.Blocks)
        {
            switch (block)
            {
                case Heading heading:
                    html.Append("<h2>").Append(Escape(heading.Text)).Append("</h2>\n");
                    break;
                case Paragraph paragraph:
                    html.Append("<p>").Append(Escape(paragraph.Text)).Append("</p>\n");
                    break;
                case Table table:
                    html.Append("<table class=\"acquisition-table\">\n<thead>");
                    Row(html, table.Columns, "th");
                    html.Append("</thead>\n<tbody>\n");
                    foreach (IReadOnlyList<string> row in table.Rows) Row(html, row, "td");
                    html.Append("</tbody>\n</table>\n");
                    break;
                case FindingList list:
                    html.Append("<ul class=\"acquisition-findings\">\n");
                    foreach (Finding finding in list.Findings) Item(html, finding);
                    html.Append("</ul>\n");
                    break;
                case Picture picture:
                    html.Append("<figure class=\"acquisition-plot\">\n").Append(SvgWriter.Write(picture.Plot, ++plots)).Append("</figure>\n");
                    break;
            }
        }
        return html.Append("</article>\n").ToString();
    }

    private static void Row(StringBuilder html, IReadOnlyList<string> cells, string tag)
    {
        html.Append("<tr>");
        foreach (string cell in cells) html.Append('<').Append(tag).Append('>').Append(Escape(cell)).Append("</").Append(tag).Append('>');
        html.Append("</tr>\n");
    }

    private static void Item(StringBuilder html, Finding finding)
    {
        string severity = finding.Severity.ToString();
        html.Append("<li class=\"acquisition-").Append(severity.ToLowerInvariant()).Append("\"><strong>").Append(severity).Append("</strong> <code>")
            .Append(Escape(finding.Code)).Append("</code>: ").Append(Escape(finding.Message));
        if (finding.Remedy is not null) html.Append(" <em>Remedy:</em> ").Append(Escape(finding.Remedy));
        if (finding.Source is not null) html.Append(" <cite>").Append(Escape(finding.Source)).Append("</cite>");
        html.Append("</li>\n");
    }

    private static string Escape(string text) => SvgWriter.Escape(text);
}
