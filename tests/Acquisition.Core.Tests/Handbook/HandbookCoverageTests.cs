using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Text;
using Xunit;

namespace Acquisition.Core.Tests.Handbook;

/// <summary>Which check values are used by which area, so that an unused one is seen.</summary>
public sealed class HandbookCoverageTests
{
    [Fact]
    public void UseOfTheCheckValues_IsAsDocumented()
    {
        string actual = Table();
        string path = Repository.PathOf("docs", "handbook-coverage.md");
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllText(path, actual);

        Assert.Equal(Repository.Read("docs", "handbook-coverage.md"), actual);
    }

    private static string Table()
    {
        Dictionary<string, SortedSet<string>> areasById = UsesByAttribute();
        var text = new StringBuilder();
        text.Append("# Use of the handbook's check values\n\n");
        text.Append("Counted by a test from the `HandbookData` attributes of all tests; `ACQUISITION_WRITE_DOCS=1 dotnet test` writes this page anew.\n\n");
        text.Append("| section | values | used | by |\n|---|---|---|---|\n");
        foreach (var section in CheckValue.All.Values.GroupBy(value => int.Parse(value.Section.Split('.')[0], System.Globalization.CultureInfo.InvariantCulture)).OrderBy(group => group.Key))
        {
            int used = section.Count(value => areasById.ContainsKey(value.Id));
            string areas = string.Join(", ", section.SelectMany(value => areasById.GetValueOrDefault(value.Id) ?? []).Distinct().Order(StringComparer.Ordinal));
            text.Append(FormattableString.Invariant($"| {section.Key} | {section.Count()} | {used} | {areas} |\n"));
        }
        text.Append(FormattableString.Invariant($"| all | {CheckValue.All.Count} | {areasById.Count} | |\n\n"));
        string[] unused = CheckValue.All.Keys.Where(id => !areasById.ContainsKey(id)).ToArray();
        text.Append(unused.Length == 0 ? "Every value is used.\n" : "Not used by any test: " + string.Join(", ", unused) + ".\n");
        return text.ToString();
    }

    private static Dictionary<string, SortedSet<string>> UsesByAttribute()
    {
        var areasById = new Dictionary<string, SortedSet<string>>();
        foreach (MethodInfo method in typeof(HandbookCoverageTests).Assembly.GetTypes().SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static)))
        {
            string area = (method.DeclaringType!.Namespace ?? "").Replace("Acquisition.Core.Tests", "", StringComparison.Ordinal).TrimStart('.').Split('.')[0];
            foreach (CheckValue value in method.GetCustomAttributes<HandbookDataAttribute>().SelectMany(data => data.Values))
            {
                if (!areasById.TryGetValue(value.Id, out SortedSet<string>? areas)) areasById.Add(value.Id, areas = new SortedSet<string>(StringComparer.Ordinal));
                areas.Add(area);
            }
        }
        return areasById;
    }
}
