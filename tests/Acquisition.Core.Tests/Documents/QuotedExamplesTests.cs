using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Xunit;

namespace Acquisition.Core.Tests.Documents;

/// <summary>
/// Code and printed answers in the pages are cut from the examples that CI runs. A block below <c>&lt;!-- from docs/examples/x.cs#name --&gt;</c> must be the region of
/// that name, below <c>&lt;!-- from docs/examples/x.txt#name --&gt;</c> what is printed below the line <c>[name]</c>; below <c>&lt;!-- from docs/examples/x.txt --&gt;</c>
/// it must stand in that file, line for line. <c>ACQUISITION_WRITE_DOCS=1 dotnet test</c> cuts the named ones anew.
/// </summary>
public sealed class QuotedExamplesTests
{
    private const string Mark = "<!-- from ";

    /// <summary>Above code that is shown because it does not compile; <c>MustNotCompileTests</c> says so.</summary>
    private const string NotCompiled = "<!-- not compiled -->";

    public static TheoryData<string> AllPages => Pages.All;

    [Theory]
    [MemberData(nameof(AllPages))]
    public void QuotedBlocks_AreTheExamplesOwnLines(string page)
    {
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") CutAnew(page);
        string[] lines = Repository.Read(page).Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            if (SourceOf(lines[i]) is not { } source) continue;
            string[] quoted = Block(lines, i + 1);
            Assert.Equal(string.Join("\n", Original(source, quoted)), string.Join("\n", quoted));
        }
    }

    /// <summary>Code everywhere; in the guide answers and sheets too, elsewhere these may show a form.</summary>
    [Theory]
    [MemberData(nameof(AllPages))]
    public void Code_IsCutFromAnExample(string page)
    {
        string[] lines = Repository.Read(page).Split('\n');
        bool isGuide = page == "docs/tutorial.md" || page.StartsWith("docs/how-to/", StringComparison.Ordinal) || page.StartsWith("docs/explanation/", StringComparison.Ordinal);
        var uncut = from i in Enumerable.Range(0, lines.Length)
                    where lines[i] is "```csharp" || (isGuide && lines[i] is "```text" or "```worksheet")
                    let above = lines[Math.Max(0, i - 1)]
                    where above != NotCompiled && SourceOf(above) is null
                    select FormattableString.Invariant($"{page}, line {i + 1}");

        Assert.Empty(uncut);
    }

    /// <summary>Indented, code would slip through; so would a block whose language is spelt another way.</summary>
    [Theory]
    [MemberData(nameof(AllPages))]
    public void Code_StandsInABlockOfItsLanguage(string page)
    {
        Assert.DoesNotContain(Pages.Prose(page), line => line.StartsWith("    ", StringComparison.Ordinal) && line.TrimEnd().EndsWith(';'));
        Assert.DoesNotContain(Repository.Read(page).Split('\n'), line => line is "```cs" or "```c#" or "```C#" or "```CSharp");
    }

    private static string? SourceOf(string line) =>
        line.StartsWith(Mark, StringComparison.Ordinal) ? line[Mark.Length..line.IndexOf(" -->", StringComparison.Ordinal)] : null;

    private static string[] Block(string[] lines, int from)
    {
        Assert.StartsWith("```", lines[from], StringComparison.Ordinal);
        return lines.Skip(from + 1).TakeWhile(line => line != "```").ToArray();
    }

    private static string[] Original(string source, string[] quoted)
    {
        string[] parts = source.Split('#');
        string[] original = Repository.Read(parts[0]).TrimEnd('\n').Split('\n');
        return parts.Length < 2 ? Matching(original, quoted) : parts[0].EndsWith(".txt", StringComparison.Ordinal) ? Printed(original, parts[1]) : Region(original, parts[1]);
    }

    private static string[] Region(string[] lines, string name)
    {
        int start = Array.FindIndex(lines, line => line.Trim() == "#region " + name || line.Trim() == "// region " + name);
        Assert.True(start >= 0, "no region " + name);
        string[] body = lines.Skip(start + 1).TakeWhile(line => line.Trim() is not ("#endregion" or "// endregion")).ToArray();
        int indent = body.Where(line => line.Length > 0).Min(line => line.Length - line.TrimStart().Length);
        return body.Select(line => line.Length > 0 ? line[indent..] : line).ToArray();
    }

    /// <summary>What an example prints below the line <c>[name]</c>, up to the next such line, without empty lines around it.</summary>
    private static string[] Printed(string[] lines, string name)
    {
        int start = Array.IndexOf(lines, $"[{name}]");
        Assert.True(start >= 0, $"nothing is printed below [{name}]");
        string[] body = lines.Skip(start + 1).TakeWhile(line => !line.StartsWith('[')).ToArray();
        return string.Join("\n", body).Trim('\n').Split('\n');
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

    private static void CutAnew(string page)
    {
        string[] lines = Repository.Read(page).Split('\n');
        var written = new List<string>();
        for (int i = 0; i < lines.Length; i++)
        {
            written.Add(lines[i]);
            if (SourceOf(lines[i]) is not { } source || !source.Contains('#', StringComparison.Ordinal)) continue;
            string[] quoted = Block(lines, i + 1);
            written.Add(lines[i + 1]);
            written.AddRange(Original(source, quoted));
            written.Add("```");
            i += quoted.Length + 2;
        }
        File.WriteAllText(Repository.PathOf(page), string.Join("\n", written));
    }
}
