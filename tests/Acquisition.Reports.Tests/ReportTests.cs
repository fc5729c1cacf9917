using System;
using System.Xml.Linq;
using Acquisition.Core;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Reports.Tests;

public sealed class ReportTests
{
    private static Report Sample() => new Report("Beacon clock")
        .WithParagraph("One edge of 2.8 ns & its chain.")
        .WithTable(["what", "value"], [["edge | shown", "2.9 ns"]])
        .WithFindings(
        [
            new Finding("edge-stretched", Severity.Warning, "the edge reads 3.6 % long", "a probe of 500 MHz", "handbook 4.7"),
            new Finding("mains-nearby", Severity.Safety, "the lamp driver is on the mains side"),
        ])
        .WithPlot(new Plot("edge", Axis.Linear("time", "s"), Axis.Linear("voltage", "V")).WithLine("edge", [0, 1e-9], [0, 1]));

    [Fact]
    public void Markdown_HoldsEverything_GravestFindingFirst() => Assert.Equal(
        """
        # Beacon clock

        One edge of 2.8 ns & its chain.

        | what | value |
        | --- | --- |
        | edge \| shown | 2.9 ns |

        - **Safety** `mains-nearby`: the lamp driver is on the mains side
        - **Warning** `edge-stretched`: the edge reads 3.6 % long *Remedy:* a probe of 500 MHz (handbook 4.7)

        ![edge](beacon-1.svg)

        """.Replace("\r\n", "\n", StringComparison.Ordinal),
        Sample().ToMarkdown("beacon"));

    [Fact]
    public void PlotFiles_AreThoseTheMarkdownLinks()
    {
        var file = Assert.Single(Sample().PlotFiles("beacon"));
        Assert.Equal("beacon-1.svg", file.Key);
        Assert.StartsWith("<svg", file.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_IsWellFormed_AndKeepsThePlotInside()
    {
        string html = Sample().ToHtml();

        Assert.NotNull(XDocument.Parse(html).Root);
        Assert.Contains("class=\"acquisition-safety\"", html, StringComparison.Ordinal);
        Assert.Contains("<svg", html, StringComparison.Ordinal);
        Assert.Contains("2.8 ns &amp; its chain", html, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoPlotsInOnePage_DoNotShareAClipPath()
    {
        var plot = new Plot("edge", Axis.Linear("time", "s"), Axis.Linear("voltage", "V"));
        string html = new Report("two").WithPlot(plot).WithPlot(plot).ToHtml();

        Assert.Contains("url(#frame-1)", html, StringComparison.Ordinal);
        Assert.Contains("url(#frame-2)", html, StringComparison.Ordinal);
    }

    [Fact]
    public void ExplainedValue_IsPrintedWithItsRuleOfThumbAndSource()
    {
        var explained = new Explained<Duration>(
            "rise time", Duration.FromNanoseconds(3.5), "step response", "handbook 2.2",
            rules: [new RuleOfThumb<Duration>("0.35 / bandwidth", Duration.FromNanoseconds(3.5), Ratio.FromPercent(0.1))]);

        string markdown = new Report("r").WithExplained(explained).ToMarkdown();

        Assert.Contains("| rise time | 3.5 ns |", markdown, StringComparison.Ordinal);
        Assert.Contains("| rule of thumb | 0.35 / bandwidth = 3.5 ns (+0.1 %) |", markdown, StringComparison.Ordinal);
        Assert.Contains("| source | handbook 2.2 |", markdown, StringComparison.Ordinal);
    }

    [Fact]
    public void RowOfAnotherLength_IsRefusedByItsNumber()
    {
        var refusal = Assert.Throws<ArgumentException>(() => new Report("r").WithTable(["a", "b"], [["1", "2"], ["3"]]));
        Assert.StartsWith("row 2 must have 2 cells; had 1", refusal.Message, StringComparison.Ordinal);
    }

    [Property]
    public void AnyText_StaysWellFormedHtml(string text)
    {
        string printable = string.Concat(System.Linq.Enumerable.Where(text ?? "", System.Xml.XmlConvert.IsXmlChar));
        string html = new Report(printable).WithParagraph(printable).WithTable([printable], [[printable]]).ToHtml();

        Assert.NotNull(XDocument.Parse(html).Root);
    }
}
