using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Attribution;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Records.Sine;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Attributions;

/// <summary>Attribution of whole benches with noise: uncertainties, chi-squared, and what must not change the answer.</summary>
public sealed class RollOffUncertaintyTests
{
    private static readonly Frequency Reference = 10.MHz();
    private static readonly Frequency At = 1.GHz();

    /// <summary>A row as the handbook gives it: its level at 1 GHz relative to the reference, and the standard uncertainty of that.</summary>
    private static Sweep Level(double decibels, double? uncertainty) =>
        Sweep.OfDecibels([Reference.Hertz, At.Hertz], [0, decibels], uncertainty is { } u ? [0, u] : null);

    private static double ValueOf(AttributionResult result, params string[] elements) => result.ResponseOf(elements)!.LevelAt(At).Decibels;

    private static double DeviationOf(AttributionResult result, string element) => result.ResponseOf(element)!.Points[1].Uncertainty!.Value.Decibels;

    private static (AttributionResult Result, Dictionary<string, Response> Truth) Bench(int seed, double noise, string[] order)
    {
        var truth = new Dictionary<string, Response>
        {
            ["generator"] = Response.SinglePole(2.GHz()),
            ["probe A"] = Response.SinglePole(300.MHz()),
            ["probe B"] = Response.SinglePole(600.MHz()),
            ["front end"] = Response.Gaussian(500.MHz()),
        };
        double[] hertz = Enumerable.Range(0, 40).Select(i => 10e6 * Math.Pow(100, i / 39.0)).ToArray();
        var random = new Random(seed);
        Sweep Measured(params string[] path) => Sweep.OfDecibels(
            hertz, hertz.Select(f => 7 + path.Sum(e => truth[e].Gain(Frequency.FromHertz(f)).Decibels) + noise * SineFitTests.Gauss(random)).ToArray(), hertz.Select(_ => noise).ToArray());
        RollOffAttribution bench = RollOffAttribution.OfElements(order)
            .WithSweep(Measured("generator", "front end"), "generator", "front end")
            .WithSweep(Measured("generator", "probe A", "front end"), "generator", "probe A", "front end")
            .WithSweep(Measured("generator", "probe B", "front end"), "generator", "probe B", "front end")
            .WithSweep(Measured("generator", "probe A", "front end"), "generator", "probe A", "front end")
            .WithKnown("generator", Measured("generator"));
        return (bench.Solve(), truth);
    }

    [Fact]
    public void EachElementsBandwidth_ComesOutOfABenchFullOfSweeps_WithinItsUncertainty()
    {
        (AttributionResult result, Dictionary<string, Response> truth) = Bench(11, 0.02, ["generator", "probe A", "probe B", "front end"]);

        foreach (string element in new[] { "probe A", "probe B", "front end" })
        {
            SweepCrossing edge = result.ResponseOf(element)!.Bandwidth().Upper!;
            double error = Math.Abs(edge.Frequency.Hertz - truth[element].Bandwidth.Hertz);
            Assert.True(error < 4 * edge.Uncertainty.Hertz + 0.002 * edge.Frequency.Hertz, $"{element}: {edge}");
        }
        Assert.DoesNotContain(result.Findings, f => f.Code is "decibels-do-not-add-up" or "elements-load-each-other" or "not-separable");
        Assert.Contains("The largest part is probe A", result.ExplainAt(500.MHz(), "generator", "probe A", "front end"));
    }

    [Property(MaxTest = 20)]
    public void OrderOfElements_ChangesNothing(int seed)
    {
        string[] names = ["generator", "probe A", "probe B", "front end"];
        string[] shuffled = names.OrderBy(n => (n, seed).GetHashCode()).ToArray();
        AttributionResult one = Bench(5, 0.05, names).Result, other = Bench(5, 0.05, shuffled).Result;
        foreach (string name in names)
            Assert.Equal(one.ResponseOf(name)!.LevelAt(300.MHz()).Decibels, other.ResponseOf(name)!.LevelAt(300.MHz()).Decibels, 1e-9);
        Assert.Equal(one.ChiSquared!.Value, other.ChiSquared!.Value, 1e-7);
    }

    [Property(MaxTest = 20)]
    public void DecibelsAndUncertaintiesTimesK_ScaleLevelsByK_AndLeaveChiSquared(int seed)
    {
        double k = 0.1 + (uint)seed % 100 / 10.0;
        RollOffAttribution Build(double scale)
        {
            RollOffAttribution a = RollOffAttribution.OfElements("generator", "probe", "front end");
            foreach ((string[] path, double level) in new[] { (new[] { "generator", "front end" }, -1.0), (["generator", "probe", "front end"], -2.5), (["generator"], -0.2), (["front end"], -0.7) })
                a = a.WithSweep(Level(scale * level, scale * 0.1), path);
            return a;
        }
        AttributionResult one = Build(1).Solve(), scaled = Build(k).Solve();
        Assert.Equal(k * ValueOf(one, "probe"), ValueOf(scaled, "probe"), 1e-9);
        Assert.Equal(one.ChiSquared!.Value, scaled.ChiSquared!.Value, 1e-9);
    }

    [Fact]
    public void Scatter_OfRepeatedBenches_MatchesTheStatedUncertainty_AndChiSquared()
    {
        AttributionResult[] runs = Enumerable.Range(0, 120).Select(seed => Bench(seed, 0.05, ["generator", "probe A", "probe B", "front end"]).Result).ToArray();
        double[] levels = runs.Select(r => r.ResponseOf("probe A")!.LevelAt(1.GHz()).Decibels).ToArray();
        double scatter = Math.Sqrt(levels.Sum(l => Math.Pow(l - levels.Average(), 2)) / (levels.Length - 1));
        Assert.InRange(scatter / runs[0].ResponseOf("probe A")!.Points[^1].Uncertainty!.Value.Decibels, 0.75, 1.25);
        Assert.InRange(runs.Average(r => r.ChiSquared!.Value / r.DegreesOfFreedom), 0.85, 1.15);
    }

    [Fact]
    public void UncertaintyThatRowsShare_DoesNotAverage()
    {
        RollOffAttribution twice = RollOffAttribution.OfElements("chain").WithSweep(Level(-3, 0.1), "chain").WithSweep(Level(-3, 0.1), "chain");
        Assert.Equal(0.1 / Math.Sqrt(2), DeviationOf(twice.Solve(), "chain"), 1e-12);
        Assert.Equal(Math.Sqrt(0.005 + 0.09), DeviationOf(twice.WithCommonUncertainty(0.3.dB()).Solve(), "chain"), 1e-12);
    }

    [Fact]
    public void SweepsWithoutUncertainty_TakeItFromTheirResiduals()
    {
        RollOffAttribution rows = RollOffAttribution.OfElements("chain");
        foreach (double level in new[] { -3.1, -2.9, -3.0, -3.0 })
            rows = rows.WithSweep(Level(level, null), "chain");
        AttributionResult result = rows.Solve();
        // Four readings: standard deviation 0.0816 dB, of the mean 0.0408 dB.
        Assert.Equal(Math.Sqrt(0.02 / 3 / 4), DeviationOf(result, "chain"), 1e-12);
        Assert.Null(result.ChiSquared);
    }
}
