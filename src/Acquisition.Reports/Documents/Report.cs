using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A report: headings, paragraphs, tables, values, verdicts, findings and plots in reading order, written as Markdown, HTML, plain text, CSV or JSON.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> returns a new report. It prints what it was given and computes nothing; it holds no clock and no machine name, so the same
/// contents give the same bytes on every host. Safety findings stand first, wherever they were added, and no finding is printed twice. Line ends are LF (CRLF in CSV).
/// </remarks>
public sealed partial class Report
{
    private readonly IReadOnlyList<Block> _blocks;

    /// <summary>An empty report.</summary>
    /// <param name="title">The title.</param>
    /// <exception cref="ArgumentNullException"><paramref name="title"/> is null.</exception>
    public Report(string title)
        : this(title ?? throw new ArgumentNullException(nameof(title)), Array.Empty<KeyValuePair<string, string>>(), Array.Empty<Block>())
    {
    }

    private Report(string title, IReadOnlyList<KeyValuePair<string, string>> identification, IReadOnlyList<Block> blocks)
    {
        Title = title;
        Identification = identification;
        _blocks = blocks;
    }

    /// <summary>The title.</summary>
    public string Title { get; }

    /// <summary>What identifies the measurement: name and text of each line, as the caller gave them.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Identification { get; }

    internal IReadOnlyList<Block> Blocks => Arrangement.Of(_blocks);

    /// <summary>The same report under another title.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="title"/> is null.</exception>
    public Report WithTitle(string title) => new(title ?? throw new ArgumentNullException(nameof(title)), Identification, _blocks);

    /// <summary>Adds a line that identifies the measurement, such as serial number, operator, place or date.</summary>
    /// <param name="name">What the line tells.</param>
    /// <param name="text">What it is; a date too is text, written as the reader wants it.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public Report WithIdentification(string name, string text)
    {
        var line = new KeyValuePair<string, string>(name ?? throw new ArgumentNullException(nameof(name)), text ?? throw new ArgumentNullException(nameof(text)));
        return new Report(Title, Identification.Append(line).ToArray(), _blocks);
    }

    /// <summary>Adds a heading.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public Report WithHeading(string text) => With(new Heading(2, text ?? throw new ArgumentNullException(nameof(text))));

    /// <summary>Adds a paragraph.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public Report WithParagraph(string text) => With(new Paragraph(text ?? throw new ArgumentNullException(nameof(text))));

    /// <summary>Adds a table; one without rows is left out.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="table"/> is null.</exception>
    public Report WithTable(ReportTable table)
    {
        if (table is null) throw new ArgumentNullException(nameof(table));
        return table.Rows.Count == 0 ? this : With(new TableBlock(table.Name, table));
    }

    /// <summary>Adds a list of values and what was found about them; an empty list is left out.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="values"/> is null.</exception>
    public Report WithValues(ReportValues values)
    {
        if (values is null) throw new ArgumentNullException(nameof(values));
        return values.Values.Count == 0 ? this : With(new ValuesBlock(values.Name, values)).WithFindings(values.Findings);
    }

    /// <summary>Adds a value, to four digits, with how it was computed, what from, the rules of thumb beside it, its assumptions and its findings.</summary>
    /// <typeparam name="T">The quantity type of the value.</typeparam>
    /// <exception cref="ArgumentNullException"><paramref name="value"/> is null.</exception>
    public Report WithExplained<T>(Explained<T> value)
        where T : struct, IQuantity =>
        WithValues(new ReportValues((value ?? throw new ArgumentNullException(nameof(value))).Name, value.Name).With(value));

    /// <summary>Adds verdicts with the numbers they follow from; none where the list is empty.</summary>
    /// <param name="name">The name by which CSV and JSON call the list.</param>
    /// <param name="caption">What was judged.</param>
    /// <param name="verdicts">The verdicts.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public Report WithVerdicts(string name, string caption, IEnumerable<ReportVerdict> verdicts)
    {
        if (name is null) throw new ArgumentNullException(nameof(name));
        if (caption is null) throw new ArgumentNullException(nameof(caption));
        ReportVerdict[] all = (verdicts ?? throw new ArgumentNullException(nameof(verdicts))).ToArray();
        return all.Length == 0 ? this : With(new VerdictsBlock(name, caption, all));
    }

    /// <summary>Adds findings, the gravest first, each with its remedy and source; none where the list is empty.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="findings"/> is null.</exception>
    public Report WithFindings(IReadOnlyList<Finding> findings)
    {
        if (findings is null) throw new ArgumentNullException(nameof(findings));
        return findings.Count == 0 ? this : With(new FindingList("findings", findings.ToArray()));
    }

    /// <summary>Adds a plot: in HTML inside the text, in Markdown as a link to one of <see cref="PlotFiles"/>.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="plot"/> is null.</exception>
    public Report WithPlot(Plot plot) => With(new Picture("plot", plot ?? throw new ArgumentNullException(nameof(plot))));

    /// <summary>Adds everything of another report below a heading with its title.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public Report WithReport(Report other)
    {
        if (other is null) throw new ArgumentNullException(nameof(other));
        IEnumerable<Block> lowered = other._blocks.Select(block => block is Heading heading ? new Heading(Math.Min(6, heading.Level + 1), heading.Text) : block);
        IEnumerable<Block> identification = other.Identification.Select(line => new Paragraph(line.Key + ": " + line.Value));
        return new Report(Title, Identification, _blocks.Append(new Heading(2, other.Title)).Concat(identification).Concat(lowered).ToArray());
    }

    private Report With(Block block) => new(Title, Identification, _blocks.Append(block).ToArray());
}
