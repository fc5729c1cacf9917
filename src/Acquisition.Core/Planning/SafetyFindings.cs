using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>What could hurt someone, or destroy equipment, in a choice or an advice: it is said there too, not only in the outlook.</summary>
internal static class SafetyFindings
{
    internal static IReadOnlyList<Finding> Of(IEnumerable<AppliedSignal> applied) => Of(applied.SelectMany(signal => signal.Findings));

    internal static IReadOnlyList<Finding> Of(IEnumerable<Finding> findings) =>
        findings.Where(finding => finding.Severity == Severity.Safety).GroupBy(finding => (finding.Code, finding.Message)).Select(alike => alike.First()).ToList();
}
