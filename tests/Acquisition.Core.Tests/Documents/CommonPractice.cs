using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using Acquisition.Core.Tests.Conventions;

namespace Acquisition.Core.Tests.Documents;

/// <summary>Rules of the trade that the library uses and for which it knows no source: where they stand in the code, and what they say.</summary>
internal static class CommonPractice
{
    private static readonly SortedDictionary<string, string> Rules = new(StringComparer.Ordinal)
    {
        ["Attribution/DeembeddedRiseTime.cs"] = "an upper bound says more than a value whose standard uncertainty is above 30 % of it",
        ["Chain/GroundLead.cs"] = "a ground lead has about 1 nH for each millimetre; keep its resonance above three times the highest content",
        ["Chain/MeasurementChain.Cables.cs"] = "a 50 Ω input stands 5 V rms",
        ["Chain/MeasurementChain.Findings.cs"] = "a 50 Ω input stands 5 V rms",
        ["Chain/Probe.cs"] = "data sheets state a probe's bandwidth on 25 Ω",
        ["Digitizing/Sampling.cs"] = "3 to 5 sample intervals on an edge",
        ["Planning/Catalogues/InputRange.cs"] = "an input shifts a signal by about half of its range as a matter of course",
        ["Planning/Outlooks/OutlookFindings.Vertical.cs"] = "an input shifts a signal by about half of its range as a matter of course",
        ["Planning/PlanningFunctions.cs"] = "3 to 5 sample intervals on an edge",
        ["Planning/Requirements/NeededSampling.cs"] = "3 to 5 sample intervals on an edge",
        ["Planning/Requirements/Specifier.Sampling.cs"] = "3 to 5 sample intervals on an edge, more for a closer tolerance",
        ["Records/Pulses/PulseFindings.cs"] = "ordinary time bases are off by 1 ppm to 50 ppm",
        ["Records/Sine/SineChecks.cs"] = "a sine fit wants five periods",
        ["Signals/EnvelopeCorners.cs"] = "0.35 / rise time as a bandwidth",
        ["Uncertainty/Budgets/ResultText.cs"] = "how a result in parentheses is written where its digits straddle the point",
        ["Uncertainty/Decisions/ConformityDecision.cs"] = "a test uncertainty ratio below 4:1 is called too low",
    };

    public static IEnumerable<string> Listed => Rules.Keys;

    /// <summary>The sources that call something common practice; the functions of plain mathematics, which need no source, and the contract that explains the words are left out.</summary>
    public static IEnumerable<string> Found { get; } =
        (from path in LibrarySources.Files
         let file = LibrarySources.Relative(path)
         where !file.StartsWith("Functions/", StringComparison.Ordinal)
         where File.ReadAllText(path).Contains("common practice", StringComparison.OrdinalIgnoreCase)
         select file).Order(StringComparer.Ordinal).ToArray();

    public static void Append(StringBuilder text)
    {
        text.Append("## Common practice, no source\n\n");
        text.Append("Rules of the trade that the library uses, or prints beside its own values, without knowing a document for them. Those of the handbook carry `[cp]` there. The functions of plain mathematics (`abs`, `sin` ...) need none.\n\n");
        text.Append("| rule | in the code |\n|---|---|\n");
        foreach ((string file, string rule) in Rules) text.Append(CultureInfo.InvariantCulture, $"| {rule} | `{file}` |\n");
        text.Append("| 0.40 to 0.45 for flat and steep responses; 2.5 f with sinc, 4 to 5 times the bandwidth, 10 f with straight lines | handbook 2.4, 5.13 |\n");
    }
}
