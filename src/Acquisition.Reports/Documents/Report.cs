using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A report: headings, paragraphs, tables, findings and plots in reading order, written as Markdown or as an HTML fragment.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> returns a new report. It prints what it was given and computes nothing; it holds no clock and no machine name, so the same
/// contents give the same bytes.
/// </remarks>
public sealed class Report
{
    private static readonly string[] ExplainedColumns = { "what", "value" };

    private readonly IReadOnlyList<Block> _blocks;

    /// <summary>An empty report.</summary>
    /// <param name="title">The title.</param>
    /// <exception cref="ArgumentNullException"><paramref name="title"/> is null.</exception>
    public Report(string title)
        : this(title ?? throw new ArgumentNullException(nameof(title)), Array.Empty<Block>())
    {
    }

    private Report(string title, IReadOnlyList<Block> blocks)
    {
        Title = title;
        _blocks = blocks;
    }

    /// <summary>The title.</summary>
    public string Title { get; }

    internal IReadOnlyList<Block> Blocks => _blocks;

    /// <summary>Adds a heading.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public Report WithHeading(string text) => With(new Heading(text ?? throw new ArgumentNullException(nameof(text))));

    /// <summary>Adds a paragraph.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public Report WithParagraph(string text) => With(new Paragraph(text ?? throw new ArgumentNullException(nameof(text))));

    /// <summary>Adds a table.</summary>
    /// <param name="columns">The heads of the columns.</param>
    /// <param name="rows">The cells, row by row, each row as long as <paramref name="columns"/>.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A row has another number of cells than there are columns.</exception>
    public Report WithTable(IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        if (columns is null) throw new ArgumentNullException(nameof(columns));
        if (rows is null) throw new ArgumentNullException(nameof(rows));
        for (int i = 0; i < rows.Count; i++)
        {
            if (rows[i] is null || rows[i].Count != columns.Count)
                throw new ArgumentException(FormattableString.Invariant($"row {i + 1} must have {columns.Count} cells; had {rows[i]?.Count ?? 0}"), nameof(rows));
        }
        return With(new Table(columns.ToArray(), rows.Select(row => row.ToArray()).ToArray()));
    }

    /// <summary>Adds findings, the gravest first, each with its remedy and source; none where the list is empty.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="findings"/> is null.</exception>
    public Report WithFindings(IReadOnlyList<Finding> findings)
    {
        if (findings is null) throw new ArgumentNullException(nameof(findings));
        return findings.Count == 0 ? this : With(new FindingList(findings.OrderByDescending(finding => finding.Severity).ToArray()));
    }

    /// <summary>Adds a value, to four digits, with how it was computed, what from, the rules of thumb beside it, its assumptions and its findings.</summary>
    /// <typeparam name="T">The quantity type of the value.</typeparam>
    /// <exception cref="ArgumentNullException"><paramref name="value"/> is null.</exception>
    public Report WithExplained<T>(Explained<T> value)
        where T : struct, IQuantity
    {
        if (value is null) throw new ArgumentNullException(nameof(value));
        var rows = new List<string[]> { new[] { value.Name, Text(value.Value) } };
        rows.AddRange(value.Inputs.Select(input => new[] { "from " + input.Key, input.Value }));
        rows.AddRange(value.Rules.Select(rule => new[] { "rule of thumb", rule.ToString() }));
        rows.AddRange(value.Assumptions.Select(assumption => new[] { "assumes", assumption }));
        rows.Add(new[] { "method", value.Method });
        rows.Add(new[] { "source", value.Source });
        return WithTable(ExplainedColumns, rows).WithFindings(value.Findings);
    }

    /// <summary>Adds a plot: in HTML inside the text, in Markdown as a link to one of <see cref="PlotFiles"/>.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="plot"/> is null.</exception>
    public Report WithPlot(Plot plot) => With(new Picture(plot ?? throw new ArgumentNullException(nameof(plot))));

    /// <summary>Adds everything of another report below a heading with its title.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public Report WithReport(Report other)
    {
        if (other is null) throw new ArgumentNullException(nameof(other));
        return new Report(Title, _blocks.Append(new Heading(other.Title)).Concat(other._blocks).ToArray());
    }

    /// <summary>The report as Markdown with tables; line ends are LF.</summary>
    /// <param name="plotName">The beginning of the names of <see cref="PlotFiles"/>, without extension.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plotName"/> is null.</exception>
    public string ToMarkdown(string plotName = "plot") => MarkdownWriter.Write(this, plotName ?? throw new ArgumentNullException(nameof(plotName)));

    /// <summary>The report as an HTML fragment: escaped, with classes that start with <c>acquisition-</c>, without scripts and external resources; line ends are LF.</summary>
    public string ToHtml() => HtmlWriter.Write(this);

    /// <summary>File name and SVG text of each plot, as <see cref="ToMarkdown"/> links them.</summary>
    /// <param name="plotName">The beginning of the names, without extension.</param>
    public IReadOnlyList<KeyValuePair<string, string>> PlotFiles(string plotName = "plot") =>
        _blocks.OfType<Picture>().Select((picture, i) => new KeyValuePair<string, string>(PlotFile(plotName, i), picture.Plot.ToSvg())).ToArray();

    internal static string PlotFile(string plotName, int index) => plotName + "-" + (index + 1).ToString(CultureInfo.InvariantCulture) + ".svg";

    private static string Text<T>(T value)
        where T : struct, IQuantity => value.ToQuantity().ToString("G4", CultureInfo.InvariantCulture);

    private Report With(Block block) => new(Title, _blocks.Append(block).ToArray());
}
