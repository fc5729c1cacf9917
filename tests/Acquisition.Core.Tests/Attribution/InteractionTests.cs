using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Attributions;

/// <summary>
/// Levels are made up of elements that are known, with one pair that loads each other. That pairs explain the same residuals follows from the columns of the design,
/// by hand: A·2 = A - A·1 in paths that hold A with 1 or with 2, so that x dB on A with 2 is x dB on A and -x dB on A with 1.
/// </summary>
public sealed class InteractionTests
{
    private const double Loading = 0.8;

    private static readonly Dictionary<string, double> Truth = new(StringComparer.Ordinal) { ["gen"] = -0.4, ["probe A"] = -3.0, ["probe B"] = -1.5, ["fe 1"] = -0.9, ["fe 2"] = -0.6 };

    public static IEnumerable<object[]> Orders =>
    [
        ["gen, probe A, probe B, fe 1, fe 2"], ["gen, probe B, probe A, fe 2, fe 1"], ["fe 2, fe 1, probe A, probe B, gen"], ["probe A, fe 2, gen, fe 1, probe B"],
    ];

    private static RollOffAttribution Measured(string order, params string[] paths)
    {
        RollOffAttribution attribution = RollOffAttribution.OfElements(order.Split([", "], StringSplitOptions.None));
        foreach (string path in paths)
        {
            string[] elements = path.Split([", "], StringSplitOptions.None);
            double level = elements.Sum(e => Truth[e]) + (elements.Contains("probe A") && elements.Contains("fe 2") ? Loading : 0);
            attribution = attribution.WithSweep(Sweep.OfDecibels([10e6, 500e6], [0, level], [0, 0.04]), elements);
        }
        return attribution;
    }

    private static string[] InWords(AttributionResult result) => result.Interactions
        .Select(p => string.Join(" ", new[] { p.First, p.Second }.OrderBy(x => x, StringComparer.Ordinal).ToArray()) + FormattableString.Invariant($" {p.Largest.Decibels:F3}"))
        .OrderBy(x => x, StringComparer.Ordinal).ToArray();

    private static readonly string[] SixSweeps = ["gen, fe 1", "gen, fe 2", "gen, probe A, fe 1", "gen, probe A, fe 2", "gen, probe B, fe 1", "gen, probe B, fe 2"];

    [Theory, MemberData(nameof(Orders))]
    public void PairsThatExplainTheResidualsAlike_AreAllNamed_InWhateverOrderTheElementsStand(string order)
    {
        AttributionResult result = Measured(order, SixSweeps).Solve();

        Assert.Equal(["fe 1 probe A -0.800", "fe 2 probe A 0.800"], InWords(result));
        Finding finding = Assert.Single(result.Findings, f => f.Code == "elements-load-each-other");
        Assert.Contains("do not tell which", finding.Message, StringComparison.Ordinal);
        Assert.Equal("to tell: probe A on its own, added as known", finding.Remedy);
        Assert.Contains("which of the pairs these sweeps do not tell", result.ExplainAt(500.MHz()), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Orders))]
    public void TheMeasurementThatIsNamed_TellsThePairsApart(string order)
    {
        AttributionResult result = Measured(order, SixSweeps).WithKnown("probe A", Sweep.OfDecibels([10e6, 500e6], [0, Truth["probe A"]], [0, 0.04])).Solve();

        Assert.Equal(["fe 2 probe A 0.800"], InWords(result));
        Assert.Contains("paths with both", Assert.Single(result.Findings, f => f.Code == "elements-load-each-other").Message, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Orders))]
    public void TwoProbesByTwoInputs_LeaveAllFourPairsOpen(string order)
    {
        AttributionResult result = Measured(order, "gen, probe A, fe 1", "gen, probe A, fe 2", "gen, probe B, fe 1", "gen, probe B, fe 2").Solve();

        Assert.Equal(["fe 1 probe A -0.800", "fe 1 probe B 0.800", "fe 2 probe A 0.800", "fe 2 probe B -0.800"], InWords(result));
    }

    /// <summary>Where the uncertainties are too large for the residuals to rule a pair out, that pair stays named.</summary>
    [Fact]
    public void DifferencesWithinTheUncertainty_DecideNothing()
    {
        AttributionResult result = Measured("gen, probe A, probe B, fe 1, fe 2", SixSweeps).WithKnown("probe A", Sweep.OfDecibels([10e6, 500e6], [0, Truth["probe A"]], [0, 2])).Solve();

        Assert.Equal(2, result.Interactions.Count);
        Assert.Equal("to tell: the same sweeps with smaller uncertainties", Assert.Single(result.Findings, f => f.Code == "elements-load-each-other").Remedy);
    }
}
