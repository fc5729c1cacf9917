using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using Xunit;

namespace Acquisition.Core.Tests.Documents;

/// <summary>The pages that people read: README.md, DEVELOPERS.md, the packages' own and everything below docs/, by path from the root with slashes.</summary>
internal static class Pages
{
    public static TheoryData<string> All => new(Paths);

    public static IEnumerable<string> Paths =>
        from path in Directory.GetFiles(Repository.PathOf("docs"), "*.md", SearchOption.AllDirectories).Append(Repository.PathOf("README.md")).Append(Repository.PathOf("DEVELOPERS.md"))
            .Concat(Directory.GetDirectories(Repository.PathOf("src")).Select(project => Path.Combine(project, "README.md")))
        let page = Path.GetRelativePath(Repository.Root, path).Replace('\\', '/')
        orderby page
        select page;

    /// <summary>The lines of a page outside its blocks of code.</summary>
    public static IEnumerable<string> Prose(string page)
    {
        bool isCode = false;
        foreach (string line in Repository.Read(page).Split('\n'))
        {
            if (line.StartsWith("```", StringComparison.Ordinal)) isCode = !isCode;
            else if (!isCode) yield return line;
        }
    }

    /// <summary>The anchors that the headings of a page get: lower case, hyphens for spaces, without punctuation.</summary>
    public static IEnumerable<string> Anchors(string page) => Prose(page).Where(line => line.StartsWith('#')).Select(line => Anchor(line.TrimStart('#').Trim()));

    private static string Anchor(string heading)
    {
        var anchor = new StringBuilder();
        foreach (char c in heading)
        {
            if (char.IsLetterOrDigit(c) || c is '-' or '_') anchor.Append(char.ToLowerInvariant(c));
            else if (c == ' ') anchor.Append('-');
        }
        return anchor.ToString();
    }
}
