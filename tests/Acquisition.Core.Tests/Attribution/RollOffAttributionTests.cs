using System;
using System.Linq;
using Acquisition.Core.Attribution;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Attributions;

public sealed class RollOffAttributionTests
{
    private static readonly Frequency Reference = 10.MHz();
    private static readonly Frequency At = 1.GHz();

    /// <summary>A row as the handbook gives it: its level at 1 GHz relative to the reference, and the standard uncertainty of that.</summary>
    private static Sweep Level(double decibels, double? uncertainty) =>
        Sweep.OfDecibels([Reference.Hertz, At.Hertz], [0, decibels], uncertainty is { } u ? [0, u] : null);

    private static RollOffAttribution FromHandbook(CheckValue value)
    {
        string[] elements = value.Inputs.GetProperty("elements").EnumerateArray().Select(e => e.GetString()!).ToArray();
        int[][] rows = value.Inputs.GetProperty("rows").EnumerateArray().Select(r => r.EnumerateArray().Select(c => c.GetInt32()).ToArray()).ToArray();
        double[] levels = value.Has("dB") ? value.Numbers("dB") : new double[rows.Length];
        double[]? sigmas = value.Has("sigma_dB") ? value.Numbers("sigma_dB") : null;
        RollOffAttribution attribution = RollOffAttribution.OfElements(elements);
        for (int i = 0; i < rows.Length; i++)
            attribution = attribution.WithSweep(Level(levels[i], sigmas?[i]), elements.Where((_, k) => rows[i][k] == 1).ToArray());
        return attribution;
    }

    private static double ValueOf(AttributionResult result, params string[] elements) => result.ResponseOf(elements)!.LevelAt(At).Decibels;

    private static double DeviationOf(AttributionResult result, string element) => result.ResponseOf(element)!.Points[1].Uncertainty!.Value.Decibels;

    [Theory, HandbookData("AT-1", "AT-2", "AT-3", "AT-4")]
    public void Attribution_AgreesWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        AttributionResult result = FromHandbook(value).Solve();
        value.Confirm(id switch
        {
            "AT-101" or "AT-301" => result.Rank,
            "AT-102" => ValueOf(result, "A"),
            "AT-103" => ValueOf(result, "B"),
            "AT-104" => ValueOf(result, "G", "F"),
            // The even split of the pseudo-inverse: the kernel holds it, the result says that G is not determined and never prints it.
            "AT-105" when result.ResponseOf("G") is null => MinimumNorm(value)[0],
            "AT-201" => ValueOf(result, "F"),
            "AT-401" => ValueOf(result, "G"),
            "AT-402" => DeviationOf(result, "G"),
            "AT-411" => ValueOf(result, "A"),
            "AT-412" => DeviationOf(result, "A"),
            "AT-421" => ValueOf(result, "B"),
            "AT-422" => DeviationOf(result, "B"),
            "AT-431" => ValueOf(result, "F1"),
            "AT-432" => DeviationOf(result, "F1"),
            "AT-441" => ValueOf(result, "F2"),
            "AT-442" => DeviationOf(result, "F2"),
            "AT-490" => result.ChiSquared!.Value,
            "AT-491" => result.CorrelationBetween("G", "F1", At)!.Value,
            _ => throw new InvalidOperationException(id),
        });
    }

    private static double[] MinimumNorm(CheckValue value)
    {
        double[][] rows = value.Inputs.GetProperty("rows").EnumerateArray().Select(r => r.EnumerateArray().Select(c => c.GetDouble()).ToArray()).ToArray();
        var unit = new double[rows.Length, rows.Length];
        for (int i = 0; i < rows.Length; i++)
            unit[i, i] = 1;
        return new WeightedSolution(rows, value.Numbers("dB"), unit, new NullSpace(rows, rows[0].Length).Rank).Values;
    }

    /// <summary>Two probes on one 25 ohm point: nodal analysis gives the loaded levels, and the attribution sees that they do not add (handbook 10.4).</summary>
    [Theory, HandbookData("AT-5")]
    public void TwoProbesOnOnePoint_LoadEachOther_AndAreNamed(string id)
    {
        CheckValue value = CheckValue.All[id];
        double ohms = value.Number("R"), c1 = value.Number("C1"), c2 = value.Number("C2"), hertz = value.Number("f");
        Response Loaded(double farads) => Response.SinglePole(Frequency.FromHertz(1 / (2 * Math.PI * ohms * farads)));
        Frequency[] grid = [1.kHz(), Frequency.FromHertz(hertz / 2), Frequency.FromHertz(hertz)];
        Sweep Measured(Response response) => Sweep.OfDecibels(grid.Select(f => f.Hertz).ToArray(), grid.Select(f => response.Gain(f).Decibels).ToArray(), [0.01, 0.01, 0.01]);

        AttributionResult result = RollOffAttribution.OfElements("first probe", "second probe")
            .WithSweep(Measured(Loaded(c1)), "first probe")
            .WithSweep(Measured(Loaded(c2)), "second probe")
            .WithSweep(Measured(Loaded(c1 + c2)), "first probe", "second probe")
            .Solve();

        if (id == "AT-501")
            value.Confirm(Loaded(c1 + c2).Gain(At).Decibels);
        else
            value.Confirm(-Assert.Single(result.Interactions).Level.LevelAt(At).Decibels);
        Assert.Contains(result.Findings, f => f.Code == "decibels-do-not-add-up");
        Assert.Contains(result.Findings, f => f.Code == "elements-load-each-other" && f.Message.Contains("-0.54 dB at 1 GHz"));
        Assert.Contains("load each other", result.ExplainAt(At));
    }

    [Fact]
    public void WhatCannotBeToldApart_IsSaidInWords_WithTheMeasurementThatWould()
    {
        AttributionResult result = RollOffAttribution.OfElements("generator", "probe A", "probe B", "front end")
            .WithSweep(Level(-1.2, 0.1), "generator", "front end")
            .WithSweep(Level(-3.0, 0.1), "generator", "probe A", "front end")
            .WithSweep(Level(-2.1, 0.1), "generator", "probe B", "front end")
            .Solve();

        Ambiguity ambiguity = Assert.Single(result.Ambiguities);
        Assert.Equal("any number of decibels can move between generator and front end: the sweeps know only generator + front end", ambiguity.Text);
        Assert.Contains("generator on its own: a power sensor at its output, added as known", ambiguity.Remedies);
        Assert.Null(result.ResponseOf("generator"));
        Assert.Equal(-0.9, result.DifferenceOf("probe A", "probe B")!.LevelAt(At).Decibels, 1e-12);
        Assert.Equal(
            "At 1 GHz, relative to 10 MHz, generator + probe A + front end reads -3.00 dB: probe A -1.80 dB (u 0.14 dB, 60 %), generator + front end -1.20 dB (u 0.10 dB, 40 %), not separated. "
            + "The largest part is probe A.",
            result.ExplainAt(At));
        Assert.Contains(result.Findings, f => f.Code == "no-check-possible");
    }

    [Fact]
    public void Explanation_NamesTheFrequencyItAnswersFor_AndRefusesOneOutsideTheSweep()
    {
        AttributionResult result = RollOffAttribution.OfElements("generator", "front end")
            .WithSweep(Level(-1.2, 0.1), "generator", "front end").WithAssumedFlat("generator", 0.2.dB(), 1.MHz(), 2.GHz()).Solve();

        Assert.StartsWith("At 1 GHz, the solved frequency nearest to 900 MHz, relative to 10 MHz,", result.ExplainAt(900.MHz()), StringComparison.Ordinal);
        Assert.StartsWith("At 1 GHz, relative to 10 MHz,", result.ExplainAt(1.GHz()), StringComparison.Ordinal);
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => result.ExplainAt(5.GHz()));
        Assert.Contains("from 10 MHz to 1 GHz", refusal.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => result.SharesAt(1.MHz()));
        Assert.Throws<ArgumentOutOfRangeException>(() => result.CorrelationBetween("generator", "front end", 5.GHz()));
    }

    [Fact]
    public void FullFactorial_KnowsDifferencesOnly_AndAsksForADirectConnection()
    {
        RollOffAttribution factorial = RollOffAttribution.OfElements("generator", "probe A", "probe B", "front end 1", "front end 2");
        foreach (string probe in new[] { "probe A", "probe B" })
        {
            foreach (string front in new[] { "front end 1", "front end 2" })
                factorial = factorial.WithSweep(Level(-3, 0.1), "generator", probe, front);
        }
        AttributionResult result = factorial.Solve();

        Assert.Equal(3, result.Rank);
        Assert.Equal(2, result.Ambiguities.Count);
        Assert.NotNull(result.DifferenceOf("front end 1", "front end 2"));
        Assert.Contains(result.Ambiguities, a => a.Remedies.Any(r => r.StartsWith("a sweep of generator + front end 1, with probe A taken out", StringComparison.Ordinal)));
        // Handbook 10.6: direct connections raise the rank by one, one absolute row completes it.
        RollOffAttribution direct = factorial.WithSweep(Level(-1, 0.1), "generator", "front end 1").WithSweep(Level(-1, 0.1), "generator", "front end 2");
        Assert.Equal(4, direct.Solve().Rank);
        Assert.Equal(5, direct.WithKnown("generator", Level(-0.3, 0.05)).Solve().Rank);
    }

    [Fact]
    public void EveryRemedyOfAnAmbiguity_RaisesTheRank()
    {
        RollOffAttribution open = RollOffAttribution.OfElements("generator", "cable", "probe", "front end")
            .WithSweep(Level(-3, 0.1), "generator", "cable", "probe", "front end")
            .WithSweep(Level(-2, 0.1), "generator", "probe", "front end");
        int rank = open.Solve().Rank;

        Assert.Equal(rank + 1, open.WithSweep(Level(-1, 0.1), "generator", "front end").Solve().Rank);
        Assert.Equal(rank + 1, open.WithKnown("generator", Level(-1, 0.1)).Solve().Rank);
        Assert.All(open.Solve().Ambiguities, a => Assert.NotEmpty(a.Remedies));
    }

    [Fact]
    public void Assumption_SeparatesWhatSweepsDoNot_AndIsNamed()
    {
        AttributionResult result = RollOffAttribution.OfElements("generator", "front end")
            .WithSweep(Level(-3, 0.1), "generator", "front end")
            .WithAssumedFlat("generator", 0.2.dB(), 10.MHz(), 2.GHz())
            .Solve();

        Assert.Equal(-3, ValueOf(result, "front end"), 1e-12);
        Assert.Equal(Math.Sqrt(0.01 + 0.04), DeviationOf(result, "front end"), 1e-12);
        Assert.Equal(-0.2 / Math.Sqrt(0.05), result.CorrelationBetween("generator", "front end", At)!.Value, 1e-12);
        Assert.Contains("assumed flat within 0.20 dB", result.ExplainAt(At));
        Assert.Contains(result.Findings, f => f.Code == "rests-on-assumption");
    }

    [Fact]
    public void AssumptionThatEnds_LeavesTheRestOpen()
    {
        double[] hertz = [1e7, 1e8, 1e9, 2e9], u = [0.1, 0.1, 0.1, 0.1];
        AttributionResult result = RollOffAttribution.OfElements("generator", "front end")
            .WithSweep(Sweep.OfDecibels(hertz, [0, -0.1, -1, -3], u), "generator", "front end")
            .WithAssumedFlat("generator", 0.2.dB(), 10.MHz(), 500.MHz())
            .Solve();

        Assert.Equal(2, result.ResponseOf("front end")!.Count);
        Ambiguity ambiguity = Assert.Single(result.Ambiguities);
        Assert.Equal(1, ambiguity.From.Gigahertz);
        Assert.Equal(2, ambiguity.To.Gigahertz);
    }

    [Fact]
    public void Misuse_IsRefusedWithItsRemedy()
    {
        RollOffAttribution two = RollOffAttribution.OfElements("generator", "front end");
        Assert.Throws<ArgumentException>(() => RollOffAttribution.OfElements("a", "a"));
        Assert.Contains("generator, front end", Assert.Throws<ArgumentException>(() => two.WithSweep(Level(0, 1), "probe")).Message);
        Assert.Throws<InvalidOperationException>(() => two.Solve());
        Assert.Contains("WithLevelUncertainty", Assert.Throws<InvalidOperationException>(() => two.WithSweep(Level(0, null), "generator").WithAssumedFlat("front end", 1.dB(), 1.MHz(), 1.GHz()).Solve()).Message);
        Assert.Contains("reference frequency", Assert.Throws<InvalidOperationException>(() => two.WithSweep(Level(0, 1), "generator").WithReference(5.GHz()).Solve()).Message);
        Assert.Contains("exact", Assert.Throws<InvalidOperationException>(() => two.WithSweep(Level(0, 0), "generator").Solve()).Message);
    }
}
