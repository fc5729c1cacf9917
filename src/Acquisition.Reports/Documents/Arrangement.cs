using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>The blocks of a report as all formats write them: safety first, no finding twice, every table with a name of its own.</summary>
internal static class Arrangement
{
    private const string FindingsName = "findings";

    internal static IReadOnlyList<Block> Of(IReadOnlyList<Block> blocks)
    {
        var said = new HashSet<string>(StringComparer.Ordinal);
        var safety = new List<Finding>();
        var rest = new List<Block>();
        foreach (Block block in blocks)
        {
            if (block is not FindingList list)
            {
                rest.Add(block);
                continue;
            }
            Finding[] fresh = list.Findings.Where(finding => said.Add(finding + "\n" + finding.Source)).ToArray();
            safety.AddRange(fresh.Where(finding => finding.Severity == Severity.Safety));
            Finding[] others = fresh.Where(finding => finding.Severity != Severity.Safety).OrderByDescending(finding => finding.Severity).ToArray();
            if (others.Length > 0) rest.Add(new FindingList(FindingsName, others));
        }
        if (safety.Count > 0) rest.InsertRange(0, new Block[] { new Heading(2, "Safety"), new FindingList("safety", safety) });
        return Named(rest);
    }

    private static Block[] Named(List<Block> blocks)
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        return blocks.Select(block => block switch
        {
            TableBlock table => new TableBlock(Free(taken, table.Name), table.Table),
            ValuesBlock values => new ValuesBlock(Free(taken, values.Name), values.Values),
            VerdictsBlock verdicts => new VerdictsBlock(Free(taken, verdicts.Name), verdicts.Caption, verdicts.Verdicts),
            Picture picture => new Picture(Free(taken, picture.Name), picture.Plot),
            FindingList findings => new FindingList(Free(taken, findings.Name), findings.Findings),
            _ => block,
        }).ToArray();
    }

    private static string Free(HashSet<string> taken, string name)
    {
        string free = name;
        for (int i = 2; !taken.Add(free); i++) free = name + "-" + i.ToString(CultureInfo.InvariantCulture);
        return free;
    }
}
