using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;

namespace Acquisition.Reports;

public sealed partial class Report
{
    private const int NarrowestText = 40, UsualText = 100, WidestText = 1000;

    /// <summary>The report as Markdown with tables.</summary>
    /// <param name="plotName">The beginning of the names of <see cref="PlotFiles"/>, without extension.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plotName"/> is null.</exception>
    public string ToMarkdown(string plotName = "plot") => MarkdownWriter.Write(this, Blocks, plotName ?? throw new ArgumentNullException(nameof(plotName)));

    /// <summary>The report as one self-contained HTML page: plots inside, light, dark and print style, no scripts, no external resources.</summary>
    public string ToHtml() => HtmlWriter.Page(this, Blocks);

    /// <summary>The report as an HTML fragment for a host's page: an <c>article</c> whose classes, like all rules of its style, begin with <c>acquisition-</c>.</summary>
    /// <param name="topHeading">The level of its title, 1 to 4; headings below it go on from there.</param>
    /// <param name="hasStyle">Whether the style comes with it; a page with several fragments needs it once.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="topHeading"/> is out of its range.</exception>
    public string ToHtmlFragment(int topHeading = 2, bool hasStyle = true)
    {
        if (topHeading is < 1 or > 4) throw new ArgumentOutOfRangeException(nameof(topHeading), topHeading, "topHeading must be from 1 to 4");
        return HtmlWriter.Fragment(this, Blocks, topHeading, hasStyle);
    }

    /// <summary>The report as plain text: tables in columns, long lines wrapped.</summary>
    /// <param name="columns">The characters of a line, 40 to 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="columns"/> is out of its range.</exception>
    public string ToText(int columns = UsualText)
    {
        if (columns is < NarrowestText or > WidestText)
            throw new ArgumentOutOfRangeException(nameof(columns), columns, FormattableString.Invariant($"columns must be from {NarrowestText} to {WidestText}"));
        return ConsoleWriter.Write(this, Blocks, columns);
    }

    /// <summary>The report as one CSV table with a line for each cell: table, row, label, column, text, SI value, SI unit, UCUM code. Lines end with CRLF, as RFC 4180 has it.</summary>
    public string ToCsv() => CsvWriter.Write(this, Blocks);

    /// <summary>Name and CSV text of each table, list of values, list of verdicts and list of findings, columns with quantities having one with SI values beside them; and of each plot the points, lines and bars in SI.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> CsvTables() => CsvWriter.Tables(this, Blocks);

    /// <summary>The report as JSON; docs/report.schema.json describes it.</summary>
    public string ToJson() => JsonReport.Write(this, Blocks);

    /// <summary>The report in a format.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="format"/> is none of the formats.</exception>
    public string ToString(ReportFormat format) => format switch
    {
        ReportFormat.Markdown => ToMarkdown(),
        ReportFormat.Html => ToHtml(),
        ReportFormat.HtmlFragment => ToHtmlFragment(),
        ReportFormat.Text => ToText(),
        ReportFormat.Csv => ToCsv(),
        ReportFormat.Json => ToJson(),
        _ => throw new ArgumentOutOfRangeException(nameof(format), format, "format must be one of the report formats"),
    };

    /// <summary>The report as plain text.</summary>
    public override string ToString() => ToText();

    /// <summary>Writes the report in a format.</summary>
    /// <param name="writer">Where to; it stays open.</param>
    /// <param name="format">The format.</param>
    /// <exception cref="ArgumentNullException"><paramref name="writer"/> is null.</exception>
    public void WriteTo(TextWriter writer, ReportFormat format) => (writer ?? throw new ArgumentNullException(nameof(writer))).Write(ToString(format));

    /// <summary>Writes the report in a format as UTF-8 without byte order mark.</summary>
    /// <param name="stream">Where to; it stays open.</param>
    /// <param name="format">The format.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    public void WriteTo(Stream stream, ReportFormat format)
    {
        if (stream is null) throw new ArgumentNullException(nameof(stream));
        byte[] bytes = Encoding.UTF8.GetBytes(ToString(format));
        stream.Write(bytes, 0, bytes.Length);
    }

    /// <summary>File name and SVG text of each plot, as <see cref="ToMarkdown"/> links them.</summary>
    /// <param name="plotName">The beginning of the names, without extension.</param>
    public IReadOnlyList<KeyValuePair<string, string>> PlotFiles(string plotName = "plot") =>
        Blocks.OfType<Picture>().Select((picture, i) => new KeyValuePair<string, string>(PlotFile(plotName, i), picture.Plot.ToSvg())).ToArray();

    internal static string PlotFile(string plotName, int index) => plotName + "-" + (index + 1).ToString(CultureInfo.InvariantCulture) + ".svg";
}
