using System.Collections.Generic;
using System.Globalization;
using System.Text;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>Writes a <see cref="Report"/> as an HTML page, or as a fragment that a host puts into its own page. Both are well-formed XML besides.</summary>
internal sealed class HtmlWriter
{
    /// <summary>A text longer than this needs a column of some width.</summary>
    private const int LongText = 24;

    private readonly StringBuilder _html = new();
    private readonly int _top;

    private HtmlWriter(int topHeading) => _top = topHeading;

    internal static string Page(Report report, IReadOnlyList<Block> blocks)
    {
        var writer = new HtmlWriter(1);
        writer._html
            .Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\" />\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" />\n")
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\" />\n<title>")
            .Append(Escape(report.Title)).Append("</title>\n<style>\n").Append(HtmlStyle.OfPage).Append(HtmlStyle.OfReport).Append("</style>\n</head>\n<body>\n<main>\n");
        writer.Article(report, blocks);
        return writer._html.Append("</main>\n</body>\n</html>\n").ToString();
    }

    internal static string Fragment(Report report, IReadOnlyList<Block> blocks, int topHeading, bool hasStyle)
    {
        var writer = new HtmlWriter(topHeading);
        if (hasStyle) writer._html.Append("<style>\n").Append(HtmlStyle.OfReport).Append("</style>\n");
        writer.Article(report, blocks);
        return writer._html.ToString();
    }

    private void Article(Report report, IReadOnlyList<Block> blocks)
    {
        _html.Append("<article class=\"acquisition-report\">\n");
        Heading(1, report.Title);
        if (report.Identification.Count > 0)
        {
            _html.Append("<dl class=\"acquisition-identification\">\n");
            foreach (KeyValuePair<string, string> line in report.Identification)
                _html.Append("<div><dt>").Append(Escape(line.Key)).Append("</dt><dd>").Append(Escape(line.Value)).Append("</dd></div>\n");
            _html.Append("</dl>\n");
        }
        foreach (Block block in blocks) Write(block);
        _html.Append("</article>\n");
    }

    private void Write(Block block)
    {
        switch (block)
        {
            case Heading heading:
                Heading(heading.Level, heading.Text);
                break;
            case Paragraph paragraph:
                _html.Append("<p>").Append(Escape(paragraph.Text)).Append("</p>\n");
                break;
            case FindingList list:
                _html.Append("<ul class=\"acquisition-findings\">\n");
                foreach (Finding finding in list.Findings) Item(finding);
                _html.Append("</ul>\n");
                break;
            case Picture picture:
                _html.Append("<figure class=\"acquisition-plot\">\n").Append(picture.Plot.ToSvg()).Append("</figure>\n");
                break;
            default:
                Table(Grid.Of(block)!.Compact());
                break;
        }
    }

    private void Heading(int level, string text)
    {
        int at = System.Math.Min(6, level + _top - 1);
        string tag = "h" + at.ToString(CultureInfo.InvariantCulture);
        _html.Append('<').Append(tag).Append('>').Append(Escape(text)).Append("</").Append(tag).Append(">\n");
    }

    private void Table(Grid grid)
    {
        string caption = Escape(grid.Caption);
        // Wide tables scroll by themselves, by keyboard too, instead of widening the page.
        _html.Append("<div class=\"acquisition-scroll\" role=\"region\" tabindex=\"0\" aria-label=\"").Append(caption).Append("\">\n<table>\n<caption>").Append(caption).Append("</caption>\n<thead>\n<tr>");
        for (int i = 0; i < grid.Columns.Count; i++)
            _html.Append("<th scope=\"col\"").Append(grid.IsNumeric[i] ? " class=\"acquisition-number\"" : "").Append('>').Append(Escape(grid.Columns[i])).Append("</th>");
        _html.Append("</tr>\n</thead>\n<tbody>\n");
        foreach (GridRow row in grid.Rows)
        {
            _html.Append(row.IsDetail ? "<tr class=\"acquisition-detail\">" : "<tr>");
            for (int i = 0; i < row.Cells.Count; i++) Cell(grid, row, i);
            _html.Append("</tr>\n");
        }
        _html.Append("</tbody>\n</table>\n</div>\n");
    }

    private void Cell(Grid grid, GridRow row, int column)
    {
        ReportCell cell = row.Cells[column];
        bool isVerdict = row.IsVerdict && column == 1;
        string style = isVerdict ? "acquisition-verdict acquisition-" + ReportVerdict.InWords(row.Outcome).Replace(' ', '-') : grid.IsNumeric[column] ? "acquisition-number" : "";
        if (cell.Quantity is not null) style += " acquisition-quantity";
        else if (cell.Text.Length > LongText && column > 0 && !isVerdict) style += " acquisition-words";
        style = style.Trim();
        string tag = column == 0 ? "th" : "td";
        _html.Append('<').Append(tag).Append(column == 0 ? " scope=\"row\"" : "");
        if (style.Length > 0) _html.Append(" class=\"").Append(style).Append('"');
        _html.Append('>').Append(Escape(cell.Text)).Append("</").Append(tag).Append('>');
    }

    private void Item(Finding finding)
    {
        string severity = finding.Severity.ToString();
        _html.Append("<li class=\"acquisition-").Append(severity.ToLowerInvariant()).Append("\"><strong>").Append(severity).Append("</strong> <code>")
            .Append(Escape(finding.Code)).Append("</code> ").Append(Escape(finding.Message));
        if (finding.Remedy is not null) _html.Append(" <em>Remedy:</em> ").Append(Escape(finding.Remedy));
        if (finding.Source is not null) _html.Append(" <cite>").Append(Escape(finding.Source)).Append("</cite>");
        _html.Append("</li>\n");
    }

    private static string Escape(string value)
    {
        string visible = VisibleText.OneLine(value);
        var text = new StringBuilder(visible.Length + 16);
        foreach (char c in visible)
        {
            switch (c)
            {
                case '&': text.Append("&amp;"); break;
                case '<': text.Append("&lt;"); break;
                case '>': text.Append("&gt;"); break;
                case '"': text.Append("&quot;"); break;
                case '\'': text.Append("&#39;"); break;
                default: text.Append(c); break;
            }
        }
        return text.ToString();
    }
}
