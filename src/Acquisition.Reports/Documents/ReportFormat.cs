namespace Acquisition.Reports;

/// <summary>The forms that a <see cref="Report"/> is written in.</summary>
public enum ReportFormat
{
    /// <summary>Markdown with tables (CommonMark with the table extension).</summary>
    Markdown,

    /// <summary>One self-contained HTML page.</summary>
    Html,

    /// <summary>An HTML fragment for a host's own page.</summary>
    HtmlFragment,

    /// <summary>Plain text for consoles.</summary>
    Text,

    /// <summary>CSV (RFC 4180): the whole report as one table, one line for each cell.</summary>
    Csv,

    /// <summary>JSON; docs/report.schema.json describes it.</summary>
    Json,
}
