using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using Acquisition.Core;
using CsvHelper;
using CsvHelper.Configuration;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>Texts from elsewhere, read back by readers that are not ours: Markdig (CommonMark), CsvHelper (RFC 4180), System.Text.Json, System.Xml.</summary>
public sealed class HostileTextTests
{
    private static readonly string[] Nasty =
    [
        "<script>alert(1)</script>", "a | b", "two\nlines", "\r\n", "\u202Eevil\u202C", "\u001B[31mred\u001B[0m", "nul\0nul", "# head", "- item", "1. one", "1) one", "=1+1", "@SUM(A1)", "`code`",
        "*bold* _under_ ~~gone~~", "[link](javascript:alert(1))", "![x](http://example.invalid/x.png)", "&amp; &#60; &lt;", "\"quoted\", 'both'", "\\", "\\|", "```", "---", "===", "+ plus", "    code",
        "<!--", "]]>", "--", "\uD800", "\uDC00x", "😀", "\uFEFF", "\u2028", "\u0085", "\uFFFE", "$x^2$", "</style>", "</table></main>", ":--", "|---|", "a,b;c\td", "", " ", "{\"a\":1}", "🏳\u200D🌈", "ＷＩＤＥ",
        "<https://example.invalid>", "mail@example.invalid", "~", "- ", "-", "+", "*", ">", "> quote", "a  \nb", "\t\ttab", "a\\\nb",
    ];

    private static Report With(string text) => new Report(text)
        .WithIdentification(text, text)
        .WithHeading(text)
        .WithParagraph(text)
        .WithTable(new ReportTable(text, text, text, "other").WithRow(text, ReportCell.Of(new Quantity(1, QuantityKind.Voltage), text)))
        .WithValues(new ReportValues(text, text).With(text + ".", text + ".", text, text))
        .WithVerdicts(text, text, [new ReportVerdict(text, Verdict.Fail, text).WithValue(text).WithRule(text).WithRemark(text)])
        .WithFindings([new Finding("text-from-elsewhere", Severity.Safety, Message(text), text, text), new Finding("text-from-elsewhere", Severity.Note, Message(text), text, text)]);

    private static string Message(string text) => string.IsNullOrWhiteSpace(text) ? "a finding says something" : text;

    public static TheoryData<string> NastyTexts() => [.. Nasty.Select(Escaped)];

    [Theory]
    [MemberData(nameof(NastyTexts))]
    public void NastyText_StaysTextInEveryFormat(string escaped) => Check(Unescaped(escaped));

    [Property(MaxTest = 100)]
    public void AnyText_StaysTextInEveryFormat(string text) => Check(text ?? "");

    [Property(MaxTest = 60)]
    public Property AnyMixOfNastyTexts_StaysTextInEveryFormat() => Prop.ForAll(
        Gen.Elements(Nasty).ListOf().Select(parts => string.Concat(parts)).ToArbitrary(), text => Check(text));

    private static void Check(string text)
    {
        Report report = With(text);
        Html(report, text);
        Markdown(report, text);
        Csv(report, text);
        Json(report, text);
        Text(report);
    }

    private static void Html(Report report, string text)
    {
        XElement page = XDocument.Parse(report.ToHtml()).Root!;
        Assert.DoesNotContain(page.Descendants(), element => element.Name.LocalName is "script" or "img" or "iframe" or "a" or "link");
        Assert.DoesNotContain(page.Descendants().Attributes(), attribute => attribute.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase));
        Assert.Single(page.Descendants("style"));
        Assert.Equal(Collapsed(VisibleText.OneLine(text)), Collapsed(page.Descendants("h1").Single().Value));
        Assert.Equal(Collapsed(VisibleText.OneLine(text)), Collapsed(page.Descendants("p").Single().Value));
        Assert.NotNull(XDocument.Parse("<host>" + report.ToHtmlFragment() + "</host>").Root);
        NothingHidden(report.ToHtml());
    }

    private static void Markdown(Report report, string text)
    {
        string markdown = report.ToMarkdown(text);
        MarkdownDocument document = Markdig.Markdown.Parse(markdown, new MarkdownPipelineBuilder().UsePipeTables().UseEmphasisExtras().UseMathematics().Build());

        // One paragraph for the text and one for the caption of each of three tables; nothing of it has become markup.
        string visible = Collapsed(VisibleText.OneLine(text));
        HeadingBlock[] headings = [.. document.OfType<HeadingBlock>()];
        Assert.Equal(visible, Collapsed(Plain(headings[0].Inline!)));
        Assert.Equal(new[] { 1, 2, 2 }, headings.Select(heading => heading.Level));
        Table[] tables = [.. document.OfType<Table>()];
        Assert.Equal(3, tables.Length);
        Assert.Equal(visible, Collapsed(Plain(((ParagraphBlock)((TableCell)((TableRow)tables[0][1])[1])[0]).Inline!)), ignoreCase: false);
        Assert.Equal(2, ((TableRow)tables[0][1]).Count);
        Assert.DoesNotContain(document.Descendants(), node => node is HtmlBlock or HtmlInline or CodeBlock or CodeInline or ThematicBreakBlock or QuoteBlock || (node is LinkInline));
        NothingHidden(markdown);
    }

    /// <summary>A cell without text has no paragraph to hold it.</summary>
    private static string Plain(ContainerInline inline) => string.Concat(inline.Descendants().Select(node => node switch
    {
        LiteralInline literal => literal.Content.ToString(),
        LineBreakInline => " ",
        AutolinkInline link => "<" + link.Url + ">",
        _ => "",
    }));

    private static void Csv(Report report, string text)
    {
        string csv = report.ToCsv();
        using var reader = new CsvReader(new StringReader(csv), new CsvConfiguration(CultureInfo.InvariantCulture) { Mode = CsvMode.RFC4180, BadDataFound = null, IgnoreBlankLines = false });
        int lines = 0;
        while (reader.Read())
        {
            Assert.Equal(8, reader.Parser.Count);
            lines++;
            if (lines == 2) Assert.Equal(Harmless(VisibleText.Lines(text)), reader.GetField(4));
            for (int i = 0; i < 8; i++)
            {
                string field = reader.GetField(i)!;
                Assert.True(field.Length == 0 || field[0] is not ('=' or '+' or '@' or '-') || Quantity.TryParse(field, out _), field);
            }
        }
        Assert.True(lines > 5);
        foreach (var table in report.CsvTables()) NothingHidden(table.Value);
        NothingHidden(csv);
    }

    private static void Json(Report report, string text)
    {
        string json = report.ToJson();
        using JsonDocument document = JsonDocument.Parse(json);
        if (IsWellFormed(text)) Assert.Equal(text, document.RootElement.GetProperty("title").GetString());
        NothingHidden(json);
    }

    private static void Text(Report report)
    {
        foreach (int columns in new[] { 40, 80, 200 })
        {
            string text = report.ToText(columns);
            NothingHidden(text);
            foreach (string line in text.Split('\n')) Assert.True(TextWrap.Columns(line) <= columns, $"{TextWrap.Columns(line)} columns of {columns}: {line}");
        }
    }

    /// <summary>No control character but line ends and tabs, no mark of direction, no half of a pair.</summary>
    private static void NothingHidden(string document)
    {
        for (int i = 0; i < document.Length; i++)
        {
            char c = document[i];
            bool isPair = char.IsHighSurrogate(c) && i + 1 < document.Length && char.IsLowSurrogate(document[i + 1]);
            if (isPair) i++;
            else Assert.False((char.IsControl(c) && c is not ('\n' or '\r' or '\t')) || char.IsSurrogate(c) || c is '\u202E' or '\u202A' or '\u2066' or '\u200F' or '\u2028' or '\uFEFF', $"U+{(int)c:X4} at {i}");
        }
    }

    private static bool IsWellFormed(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)) == text;

    private static string Harmless(string field) => field.Length > 0 && field[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' && !Quantity.TryParse(field, out _) ? "'" + field : field;

    private static string Collapsed(string text) => string.Join(" ", text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Test names must be printable.</summary>
    private static string Escaped(string text) => JsonSerializer.Serialize(text.Select(c => (int)c).ToArray());

    private static string Unescaped(string text) => string.Concat(JsonSerializer.Deserialize<int[]>(text)!.Select(c => (char)c));
}
