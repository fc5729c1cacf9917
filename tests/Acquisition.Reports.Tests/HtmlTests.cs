using System;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Xml.Linq;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>What WCAG 2.2 asks of a document like this (1.1.1, 1.3.1, 1.4.1, 1.4.3, 2.1.1, 2.4.2, 2.4.6, 3.1.1; from memory), held on every page of the lantern buoy.</summary>
public sealed class HtmlTests
{
    public static TheoryData<string> Names() => new(LanternBuoy.Reports.Keys);

    private static XElement Page(string name) => XDocument.Parse(LanternBuoy.Reports[name].ToHtml()).Root!;

    [Theory]
    [MemberData(nameof(Names))]
    public void Page_HasLanguageTitleAndOneMainHeading(string name)
    {
        XElement page = Page(name);

        Assert.Equal("en", page.Attribute("lang")!.Value);
        Assert.Equal(LanternBuoy.Reports[name].Title, page.Element("head")!.Element("title")!.Value);
        Assert.Equal(LanternBuoy.Reports[name].Title, page.Descendants("h1").Single().Value);
        Assert.Single(page.Descendants("main"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Headings_LeaveNoLevelOut(string name)
    {
        int last = 0;
        foreach (XElement heading in Page(name).Descendants().Where(element => element.Name.LocalName is ['h', >= '1' and <= '6']))
        {
            int level = int.Parse(heading.Name.LocalName[1..], CultureInfo.InvariantCulture);
            Assert.True(level <= last + 1, $"h{level} after h{last}: {heading.Value}");
            last = level;
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Tables_HaveCaptionsAndScopedHeads_AndScrollByKeyboard(string name)
    {
        foreach (XElement table in Page(name).Descendants("table"))
        {
            Assert.NotEmpty(table.Element("caption")!.Value);
            Assert.All(table.Element("thead")!.Descendants("th"), head => Assert.Equal("col", head.Attribute("scope")!.Value));
            Assert.All(table.Element("tbody")!.Elements("tr"), row => Assert.Equal("row", row.Elements().First().Attribute("scope")!.Value));
            int columns = table.Element("thead")!.Descendants("th").Count();
            Assert.All(table.Element("tbody")!.Elements("tr"), row => Assert.Equal(columns, row.Elements().Count()));
            Assert.Equal("0", table.Parent!.Attribute("tabindex")!.Value);
            Assert.Equal(table.Element("caption")!.Value, table.Parent.Attribute("aria-label")!.Value);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Page_NeedsNothingFromElsewhere(string name)
    {
        string html = LanternBuoy.Reports[name].ToHtml();

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("url(", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(Page(name).Descendants().Attributes(), attribute => attribute.Name.LocalName is "src" or "href");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Fragment_CannotDisturbItsHost(string name)
    {
        string fragment = LanternBuoy.Reports[name].ToHtmlFragment(3);
        XElement host = XDocument.Parse("<host>" + fragment + "</host>").Root!;

        Assert.Equal(["style", "article"], host.Elements().Select(element => element.Name.LocalName));
        Assert.DoesNotContain(host.Descendants(), element => element.Name.LocalName is "h1" or "h2" or "main" or "body" or "html");
        Assert.DoesNotContain(host.Descendants().Attributes(), attribute => attribute.Name.LocalName is "id" or "name");
        Assert.All(host.Descendants().Where(element => element.Name.NamespaceName.Length == 0).Attributes("class"), names => Assert.All(names.Value.Split(' '), one => Assert.StartsWith("acquisition-", one, StringComparison.Ordinal)));
        Assert.All(Selectors(host.Element("style")!.Value), selector => Assert.StartsWith(".acquisition-report", selector, StringComparison.Ordinal));
        Assert.DoesNotContain("<style>", LanternBuoy.Reports["worksheet"].ToHtmlFragment(hasStyle: false), StringComparison.Ordinal);
    }

    [Fact]
    public void TextColours_StandOutFromTheirGround()
    {
        foreach (string scheme in HtmlStyle.OfReport.Split("@media screen and (prefers-color-scheme: dark)").Take(2))
        {
            string[] grounds = ["ground", "band"], inks = ["ink", "quiet", "good", "bad", "open"];
            foreach (string ground in grounds)
            {
                foreach (string ink in inks) Assert.True(Contrast(Colour(scheme, ink), Colour(scheme, ground)) >= 4.5, $"{ink} on {ground}: {Contrast(Colour(scheme, ink), Colour(scheme, ground)):F2}");
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    public void TopHeadingBeyondTheRange_IsRefused(int level) => Assert.Throws<ArgumentOutOfRangeException>(() => new Report("r").ToHtmlFragment(level));

    private static string Colour(string style, string name)
    {
        int at = style.IndexOf("--acquisition-" + name + ": #", StringComparison.Ordinal) + ("--acquisition-" + name + ": #").Length;
        return style.Substring(at, 6);
    }

    /// <summary>WCAG 2.2: relative luminance and contrast ratio.</summary>
    private static double Contrast(string one, string other)
    {
        double a = Luminance(one), b = Luminance(other);
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        double Channel(int index)
        {
            double c = int.Parse(colour.AsSpan(2 * index, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }
        return 0.2126 * Channel(0) + 0.7152 * Channel(1) + 0.0722 * Channel(2);
    }

    /// <summary>Every selector of the style, those within media queries too.</summary>
    private static string[] Selectors(string style)
    {
        var selectors = new System.Collections.Generic.List<string>();
        var text = new StringBuilder();
        foreach (char c in style)
        {
            if (c == '{')
            {
                string head = text.ToString().Trim();
                if (!head.StartsWith('@')) selectors.AddRange(head.Split(',', StringSplitOptions.TrimEntries));
                text.Clear();
            }
            else if (c == '}')
            {
                text.Clear();
            }
            else
            {
                text.Append(c);
            }
        }
        Assert.NotEmpty(selectors);
        return [.. selectors];
    }
}
