using System;
using System.IO;
using System.Linq;
using System.Text;
using System.Xml.Linq;
using Acquisition.Core;
using Xunit;

namespace Acquisition.Reports.Tests;

public sealed class ReportTests
{
    private static Report Sample() => new Report("Beacon clock")
        .WithIdentification("serial number", "017")
        .WithParagraph("One edge of 2.8 ns & its chain.")
        .WithTable(new ReportTable("edges", "Edges", "what", "value").WithRow("edge | shown", ReportCell.Of(Duration.FromNanoseconds(2.9))))
        .WithFindings(
        [
            new Finding("edge-stretched", Severity.Warning, "the edge reads 3.6 % long", "a probe of 500 MHz", "handbook 4.7"),
            new Finding("mains-nearby", Severity.Safety, "the lamp driver is on the mains side"),
        ])
        .WithPlot(new Plot("edge", Axis.Linear("time", "s"), Axis.Linear("voltage", "V")).WithLine("edge", [0, 1e-9], [0, 1]));

    [Fact]
    public void Markdown_HoldsEverything_SafetyFirst() => Assert.Equal(
        """
        # Beacon clock

        - serial number: 017

        ## Safety

        - **Safety** mains-nearby: the lamp driver is on the mains side

        One edge of 2.8 ns & its chain.

        **Edges**

        | what | value |
        | --- | ---: |
        | edge \| shown | 2.9 ns |

        - **Warning** edge-stretched: the edge reads 3.6 % long *Remedy:* a probe of 500 MHz (handbook 4.7)

        ![edge](<beacon-1.svg>)

        """.Replace("\r\n", "\n", StringComparison.Ordinal),
        Sample().ToMarkdown("beacon"));

    [Fact]
    public void Text_IsWhatAConsoleShows() => Assert.Equal(
        """
        Beacon clock
        ============
        serial number  017

        Safety
        ------

        SAFETY mains-nearby: the lamp driver is on the mains side

        One edge of 2.8 ns & its chain.

        Edges
        what           value
        ------------  ------
        edge | shown  2.9 ns

        WARNING edge-stretched: the edge reads 3.6 % long
          -> a probe of 500 MHz
          (handbook 4.7)

        [plot] edge

        """.Replace("\r\n", "\n", StringComparison.Ordinal),
        Sample().ToText());

    [Fact]
    public void Csv_CarriesTextAndSiValue() => Assert.Equal(
        """
        table,row,label,column,text,si_value,si_unit,ucum
        report,1,,title,Beacon clock,,,
        identification,1,serial number,what,serial number,,,
        identification,1,serial number,text,017,,,
        safety,1,Safety,severity,Safety,,,
        safety,1,Safety,code,mains-nearby,,,
        safety,1,Safety,message,the lamp driver is on the mains side,,,
        edges,1,edge | shown,what,edge | shown,,,
        edges,1,edge | shown,value,2.9 ns,2.9E-09,s,s
        findings,1,Warning,severity,Warning,,,
        findings,1,Warning,code,edge-stretched,,,
        findings,1,Warning,message,the edge reads 3.6 % long,,,
        findings,1,Warning,remedy,a probe of 500 MHz,,,
        findings,1,Warning,source,handbook 4.7,,,

        """.Replace("\r\n", "\n", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal),
        Sample().ToCsv());

    [Fact]
    public void CsvTable_HasAColumnOfSiValuesBesideTheTexts() =>
        Assert.Equal("what,value,value / s\r\nedge | shown,2.9 ns,2.9E-09\r\n", Sample().CsvTables().Single(table => table.Key == "edges").Value);

    [Fact]
    public void ColumnOfSeveralUnits_CarriesTheUnitInEachRow()
    {
        var table = new ReportTable("limits", "Limits", "limit").WithRow(ReportCell.Of(Frequency.FromMegahertz(200))).WithRow(ReportCell.Of(Voltage.FromVolts(3.3))).WithRow("none");

        Assert.Equal("limit,limit in SI,unit of limit\r\n200 MHz,200000000,Hz\r\n3.3 V,3.3,V\r\nnone,,\r\n", new Report("r").WithTable(table).CsvTables()[0].Value);
    }

    [Fact]
    public void PlotFiles_AreThoseTheMarkdownLinks()
    {
        var file = Assert.Single(Sample().PlotFiles("beacon"));
        Assert.Equal("beacon-1.svg", file.Key);
        Assert.StartsWith("<svg", file.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_KeepsThePlotInside()
    {
        string html = Sample().ToHtml();

        Assert.Contains("class=\"acquisition-safety\"", html, StringComparison.Ordinal);
        Assert.Contains("<svg", html, StringComparison.Ordinal);
        Assert.Contains("2.8 ns &amp; its chain", html, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoPlotsInOnePage_HaveNoIdentifiersThatCouldBeTheSame()
    {
        var plot = new Plot("edge", Axis.Linear("time", "s"), Axis.Linear("voltage", "V"));
        Report two = new Report("two").WithPlot(plot).WithPlot(plot);
        string[] ids = XDocument.Parse("<host>" + two.ToHtmlFragment() + two.ToHtmlFragment(hasStyle: false) + "</host>").Descendants().Attributes("id").Select(id => id.Value).ToArray();

        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    [Fact]
    public void ExplainedValue_IsPrintedWithItsRuleOfThumbAndSource()
    {
        var explained = new Explained<Duration>(
            "rise time", Duration.FromNanoseconds(3.5), "step response", "handbook 2.2",
            rules: [new RuleOfThumb<Duration>("0.35 / bandwidth", Duration.FromNanoseconds(3.5), Ratio.FromPercent(0.1))]);

        string markdown = new Report("r").WithExplained(explained).ToMarkdown();

        Assert.Contains("| rise time | 3.5 ns | step response; handbook 2.2 |", markdown, StringComparison.Ordinal);
        Assert.Contains("| – rule of thumb: 0.35 / bandwidth | 3.5 ns | off by 0.1 % |", markdown, StringComparison.Ordinal);
    }

    [Fact]
    public void RowOfAnotherLength_IsRefusedByItsNumber()
    {
        var refusal = Assert.Throws<ArgumentException>(() => new ReportTable("t", "t", "a", "b").WithRow("1", "2").WithRow("3"));
        Assert.StartsWith("row 2 of the table 't' must have 2 cells; had 1", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FindingSaidTwice_IsPrintedOnce_AndSafetyOfAnotherReportComesFirst()
    {
        var danger = new Finding("over-voltage", Severity.Safety, "the probe stands 300 V, 340 V are applied");
        string text = new Report("whole").WithParagraph("text").WithReport(new Report("part").WithFindings([danger]).WithFindings([danger])).ToText();

        Assert.Equal(text.IndexOf("SAFETY", StringComparison.Ordinal), text.LastIndexOf("SAFETY", StringComparison.Ordinal));
        Assert.True(text.IndexOf("SAFETY", StringComparison.Ordinal) < text.IndexOf("text", StringComparison.Ordinal));
    }

    [Fact]
    public void TablesOfOneName_AreToldApart()
    {
        var table = new ReportTable("t", "caption", "a").WithRow("1");

        Assert.Equal(["t", "t-2", "t-3"], new Report("r").WithTable(table).WithTable(table).WithTable(table).CsvTables().Select(one => one.Key));
    }

    [Theory]
    [InlineData(ReportFormat.Markdown)]
    [InlineData(ReportFormat.Html)]
    [InlineData(ReportFormat.HtmlFragment)]
    [InlineData(ReportFormat.Text)]
    [InlineData(ReportFormat.Csv)]
    [InlineData(ReportFormat.Json)]
    public void StreamAndWriter_GetTheSameAsTheString(ReportFormat format)
    {
        using var stream = new MemoryStream();
        using var writer = new StringWriter { NewLine = "\r\n" };
        Sample().WriteTo(stream, format);
        Sample().WriteTo(writer, format);

        Assert.Equal(Encoding.UTF8.GetBytes(Sample().ToString(format)), stream.ToArray());
        Assert.Equal(Sample().ToString(format), writer.ToString());
        Assert.True(stream.CanWrite);
    }
}
