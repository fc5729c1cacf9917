using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Xunit;

namespace Acquisition.Core.Tests.Documents;

/// <summary>Links of the pages: files that are there, headings that are there, and no page that nothing leads to.</summary>
public sealed class LinksTests
{
    public static TheoryData<string> AllPages => Pages.All;

    [Theory]
    [MemberData(nameof(AllPages))]
    public void LinksIntoTheRepository_LeadSomewhere(string page)
    {
        var broken = from link in Links(page)
                     let path = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Repository.PathOf(page))!, link.File))
                     where link.File.Length > 0 && !File.Exists(path) && !Directory.Exists(path)
                     select link.File;

        Assert.Empty(broken);
    }

    [Theory]
    [MemberData(nameof(AllPages))]
    public void LinksToHeadings_MeetOne(string page)
    {
        var broken = from link in Links(page)
                     let target = link.File.Length == 0 ? page : Target(page, link.File)
                     where link.Heading.Length > 0 && target.EndsWith(".md", StringComparison.Ordinal) && !Pages.Anchors(target).Contains(link.Heading)
                     select link.File + "#" + link.Heading;

        Assert.Empty(broken);
    }

    [Fact]
    public void PagesOfTheSite_LinkOnlyToWhatIsBelowDocs() =>
        Assert.Empty(
            from page in Pages.Paths
            where page.StartsWith("docs/", StringComparison.Ordinal)
            from link in Links(page)
            where link.File.Length > 0 && !Target(page, link.File).StartsWith("docs/", StringComparison.Ordinal)
            select page + ": " + link.File);

    [Fact]
    public void EveryPageOfTheGuide_IsReachedFromTheStartPage()
    {
        var reached = new HashSet<string> { "docs/index.md" };
        var waiting = new Queue<string>(reached);
        while (waiting.TryDequeue(out string? page))
        {
            foreach ((string file, _) in Links(page))
            {
                string target = Target(page, file);
                if (target.EndsWith(".md", StringComparison.Ordinal) && File.Exists(Repository.PathOf(target)) && reached.Add(target)) waiting.Enqueue(target);
            }
        }

        Assert.Empty(Pages.Paths.Where(page => page.StartsWith("docs/", StringComparison.Ordinal)).Except(reached));
    }

    [Fact]
    public void EveryPlot_StandsOnAPage()
    {
        HashSet<string> shown = [.. from page in Pages.Paths from link in Links(page) select Target(page, link.File)];
        IEnumerable<string> drawn = from path in Directory.GetFiles(Repository.PathOf("docs"), "*.svg", SearchOption.AllDirectories) select Path.GetRelativePath(Repository.Root, path).Replace('\\', '/');

        Assert.Empty(drawn.Where(plot => plot.Contains("/plots/", StringComparison.Ordinal)).Except(shown));
    }

    [Fact]
    public void TableOfContents_OfTheSite_ListsEveryPage()
    {
        string contents = Repository.Read("docs", "toc.yml");
        string[] listed = contents.Split('\n').Select(line => line.Trim()).Where(line => line.StartsWith("href: ", StringComparison.Ordinal)).Select(line => line["href: ".Length..]).ToArray();

        Assert.Equal(
            Pages.Paths.Where(page => page.StartsWith("docs/", StringComparison.Ordinal)).Select(page => page["docs/".Length..]).Order(StringComparer.Ordinal),
            listed.Where(page => page.EndsWith(".md", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    private static string Target(string page, string file) =>
        Path.GetRelativePath(Repository.Root, Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Repository.PathOf(page))!, file))).Replace('\\', '/');

    /// <summary>The links of a page that stay in the repository.</summary>
    private static IEnumerable<(string File, string Heading)> Links(string page) =>
        from line in Pages.Prose(page)
        from part in line.Split("](").Skip(1)
        let end = part.IndexOf(')', StringComparison.Ordinal)
        where end > 0
        let target = part[..end]
        where !target.Contains(':', StringComparison.Ordinal) && !target.Contains(' ', StringComparison.Ordinal)
        let sides = target.Split('#')
        select (sides[0], sides.Length > 1 ? sides[1] : "");
}
