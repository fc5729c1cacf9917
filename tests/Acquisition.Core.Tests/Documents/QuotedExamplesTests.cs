using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Xunit;

namespace Acquisition.Core.Tests.Documents;

/// <summary>
/// Code and printed answers in the pages are cut from the examples that CI runs. A block below <c>&lt;!-- from docs/examples/x.cs#name --&gt;</c> must be the region of
/// that name; below <c>&lt;!-- from docs/examples/x.txt --&gt;</c> it must stand in that file, line for line.
/// </summary>
public sealed class QuotedExamplesTests
{
    private const string Mark = "<!-- from ";

    public static TheoryData<string> Pages()
    {
        var pages = new TheoryData<string> { "README.md", "DEVELOPERS.md" };
        foreach (string page in Directory.GetFiles(Repository.PathOf("docs"), "*.md").Order(StringComparer.Ordinal)) pages.Add("docs/" + Path.GetFileName(page));
        return pages;
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void QuotedBlocks_AreTheExamplesOwnLines(string page)
    {
        string[] lines = Repository.Read(page).Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            if (!lines[i].StartsWith(Mark, StringComparison.Ordinal)) continue;
            string source = lines[i][Mark.Length..lines[i].IndexOf(" -->", StringComparison.Ordinal)];
            string[] quoted = Block(lines, i + 1);
            string[] parts = source.Split('#');
            string[] original = Repository.Read(parts[0]).Split('\n');
            string[] expected = parts.Length == 2 ? Region(original, parts[1]) : Matching(original, quoted);

            Assert.Equal(string.Join("\n", expected), string.Join("\n", quoted));
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void LinksIntoTheRepository_LeadSomewhere(string page)
    {
        string folder = Path.GetDirectoryName(Repository.PathOf(page))!;
        var broken = from part in Repository.Read(page).Split("](").Skip(1)
                     let target = part[..Math.Max(0, part.IndexOf(')', StringComparison.Ordinal))].Split('#')[0]
                     where target.Length > 0 && !target.Contains(':', StringComparison.Ordinal) && !target.Contains(' ', StringComparison.Ordinal)
                     where !File.Exists(Path.Combine(folder, target)) && !Directory.Exists(Path.Combine(folder, target))
                     select target;

        Assert.Empty(broken);
    }

    private static string[] Block(string[] lines, int from)
    {
        Assert.StartsWith("```", lines[from], StringComparison.Ordinal);
        return lines.Skip(from + 1).TakeWhile(line => line != "```").ToArray();
    }

    private static string[] Region(string[] lines, string name)
    {
        int start = Array.FindIndex(lines, line => line.Trim() == "#region " + name || line.Trim() == "// region " + name);
        Assert.True(start >= 0, "no region " + name);
        string[] body = lines.Skip(start + 1).TakeWhile(line => line.Trim() is not ("#endregion" or "// endregion")).ToArray();
        int indent = body.Where(line => line.Length > 0).Min(line => line.Length - line.TrimStart().Length);
        return body.Select(line => line.Length > 0 ? line[indent..] : line).ToArray();
    }

    /// <summary>The run of lines that starts like the quoted one, to be compared with it.</summary>
    private static string[] Matching(string[] original, string[] quoted)
    {
        IEnumerable<int> starts = Enumerable.Range(0, original.Length).Where(i => quoted.Length > 0 && original[i] == quoted[0]);
        foreach (int start in starts)
        {
            string[] run = original.Skip(start).Take(quoted.Length).ToArray();
            if (run.SequenceEqual(quoted)) return run;
        }
        return original;
    }
}
