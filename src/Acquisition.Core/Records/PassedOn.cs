using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Records;

/// <summary>Findings of what a result was computed from, passed on with it: what is wrong with a record is wrong with all that is measured on it.</summary>
internal static class PassedOn
{
    /// <summary>Adds those that are not there yet: records of one file say the same.</summary>
    internal static void AddNew(this List<Finding> findings, IEnumerable<Finding> others)
    {
        foreach (Finding other in others)
        {
            if (!findings.Any(finding => finding.Code == other.Code && finding.Message == other.Message))
                findings.Add(other);
        }
    }

    /// <summary>Of many results, what is more than a note: what all say alike once, in the words of the first and with the number of the others.</summary>
    internal static IReadOnlyList<Finding> Gathered(IEnumerable<IReadOnlyList<Finding>> results) => results
        .SelectMany(findings => findings.Where(finding => finding.Severity > Severity.Note).GroupBy(finding => finding.Code).SelectMany(same => same.Select((finding, number) => (finding, number))))
        .GroupBy(of => (of.finding.Code, of.number), of => of.finding)
        .Select(alike => Gathered(alike.ToArray()))
        .ToArray();

    private static Finding Gathered(Finding[] alike)
    {
        Finding first = alike[0];
        return alike.All(finding => finding.Message == first.Message)
            ? first
            : new Finding(first.Code, alike.Max(finding => finding.Severity), $"{first.Message} (and {alike.Length - 1} more like it)", first.Remedy, first.Source);
    }
}
