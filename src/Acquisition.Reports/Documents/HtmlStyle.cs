namespace Acquisition.Reports;

/// <summary>The style of HTML reports. Every rule but the page's begins with the class of the report, so that a host page is left as it is.</summary>
/// <remarks>
/// On a dark screen the report is dark on a ground of its own, as its plots are; printed, it is light. Contrast of text is at least 4.5:1 in both.
/// Nothing is told by colour alone: severities and verdicts stand there as words. No character of it needs escaping in XML.
/// </remarks>
internal static class HtmlStyle
{
    internal const string OfPage =
        ":root { color-scheme: light dark; }\n" +
        "body { margin: 0; padding: 1.5rem 1rem 3rem; background: #ffffff; }\n" +
        "main { max-width: 62rem; margin: 0 auto; }\n" +
        "@media screen and (prefers-color-scheme: dark) { body { background: #14181c; } }\n" +
        "@media print { body { padding: 0; } }\n";

    internal const string OfReport =
        ".acquisition-report { --acquisition-ink: #1c2126; --acquisition-quiet: #515b65; --acquisition-ground: #ffffff; --acquisition-line: #c3cad1; --acquisition-band: #f1f4f6;" +
        " --acquisition-good: #1b6338; --acquisition-bad: #a3231b; --acquisition-open: #7a5200;" +
        " color: var(--acquisition-ink); background: var(--acquisition-ground); font: 1rem/1.5 system-ui, sans-serif; overflow-wrap: break-word; }\n" +
        "@media screen and (prefers-color-scheme: dark) {\n" +
        ".acquisition-report { --acquisition-ink: #e4e8eb; --acquisition-quiet: #a9b3bc; --acquisition-ground: #14181c; --acquisition-line: #3d464e; --acquisition-band: #1f262c;" +
        " --acquisition-good: #7fd3a0; --acquisition-bad: #ff9a8f; --acquisition-open: #f0c36a; }\n" +
        "}\n" +
        ".acquisition-report h1, .acquisition-report h2, .acquisition-report h3, .acquisition-report h4, .acquisition-report h5, .acquisition-report h6 { line-height: 1.25; margin: 1.6em 0 0.5em; color: inherit; }\n" +
        ".acquisition-report > :first-child { margin-top: 0; }\n" +
        ".acquisition-report p { max-width: 46rem; margin: 0.6em 0; }\n" +
        ".acquisition-report .acquisition-identification { margin: 0.6em 0 1.2em; display: flex; flex-wrap: wrap; gap: 0.3em 2em; }\n" +
        ".acquisition-report .acquisition-identification dt { color: var(--acquisition-quiet); font-size: 0.85em; }\n" +
        ".acquisition-report .acquisition-identification dd { margin: 0; font-weight: 600; }\n" +
        ".acquisition-report .acquisition-scroll { overflow-x: auto; margin: 1em 0; }\n" +
        ".acquisition-report table { border-collapse: collapse; font-variant-numeric: tabular-nums; }\n" +
        ".acquisition-report caption { text-align: left; font-weight: 600; padding: 0.3em 0; }\n" +
        ".acquisition-report th, .acquisition-report td { padding: 0.3em 0.8em; border-bottom: 1px solid var(--acquisition-line); text-align: left; vertical-align: top; overflow-wrap: normal; }\n" +
        ".acquisition-report thead th { border-bottom: 2px solid var(--acquisition-quiet); color: var(--acquisition-quiet); font-size: 0.9em; vertical-align: bottom; }\n" +
        ".acquisition-report tbody th { font-weight: 500; }\n" +
        ".acquisition-report tbody th:not(.acquisition-number) { min-width: 8rem; }\n" +
        ".acquisition-report .acquisition-number { text-align: right; }\n" +
        ".acquisition-report .acquisition-quantity { white-space: nowrap; }\n" +
        ".acquisition-report .acquisition-words { min-width: 11rem; }\n" +
        ".acquisition-report .acquisition-detail th, .acquisition-report .acquisition-detail td { color: var(--acquisition-quiet); font-size: 0.9em; font-weight: 400; }\n" +
        ".acquisition-report .acquisition-detail th { padding-left: 2em; }\n" +
        ".acquisition-report .acquisition-verdict { font-weight: 700; white-space: nowrap; }\n" +
        ".acquisition-report .acquisition-pass { color: var(--acquisition-good); }\n" +
        ".acquisition-report .acquisition-fail { color: var(--acquisition-bad); }\n" +
        ".acquisition-report .acquisition-conditional-pass, .acquisition-report .acquisition-conditional-fail, .acquisition-report .acquisition-not-evaluated { color: var(--acquisition-open); }\n" +
        ".acquisition-report .acquisition-findings { list-style: none; margin: 1em 0; padding: 0; }\n" +
        ".acquisition-report .acquisition-findings li { border-left: 0.3em solid var(--acquisition-line); background: var(--acquisition-band); padding: 0.5em 0.8em; margin: 0.5em 0; }\n" +
        ".acquisition-report .acquisition-findings .acquisition-warning { border-left-color: var(--acquisition-open); }\n" +
        ".acquisition-report .acquisition-findings .acquisition-failure { border-left-color: var(--acquisition-bad); }\n" +
        ".acquisition-report .acquisition-findings .acquisition-safety { border: 2px solid var(--acquisition-bad); border-left-width: 0.6em; }\n" +
        ".acquisition-report .acquisition-failure strong, .acquisition-report .acquisition-safety strong { color: var(--acquisition-bad); }\n" +
        ".acquisition-report .acquisition-warning strong { color: var(--acquisition-open); }\n" +
        ".acquisition-report code { font-size: 0.9em; }\n" +
        ".acquisition-report cite { color: var(--acquisition-quiet); font-style: normal; font-size: 0.9em; }\n" +
        ".acquisition-report .acquisition-plot { margin: 1.2em 0; }\n" +
        ".acquisition-report .acquisition-plot svg { display: block; width: 100%; max-width: 50rem; height: auto; }\n" +
        "@media print { .acquisition-report { font-size: 10pt; } .acquisition-report .acquisition-scroll { overflow: visible; }" +
        " .acquisition-report tr, .acquisition-report li, .acquisition-report figure { break-inside: avoid; } .acquisition-report h2, .acquisition-report h3 { break-after: avoid; } }\n";
}
