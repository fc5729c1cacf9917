using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Json.Schema;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Bench files that name instrument, probe and cables of a catalogue instead of describing them.</summary>
public class BenchFromCatalogueTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(DocumentFiles.Read("bench.schema.json"));
    private static readonly Catalogue Workshop = Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json"));

    private const string Probed = """
        {
          "name": "beacon clock",
          "signal": { "shape": "square", "frequency": "24 MHz", "swing": "3.3 Vpp", "riseTime": "2.8 ns" },
          "source": { "resistance": "33 Ω" },
          "probe": { "fromCatalogue": "passive probe 10:1, 500 MHz" },
          "instrument": { "fromCatalogue": "bench digitizer, 200 MHz" },
          "capture": { "window": "10 us", "channelsInUse": 2, "mode": "sample" }
        }
        """;

    private static string Line => DocumentFiles.Read("examples", "mixer-line.json");

    [Fact]
    public void Line_IsReadAndFollowsTheSchema()
    {
        Assert.True(Valid(Line));
        Bench bench = Bench.Parse(Line, Workshop);
        MeasurementChain chain = bench.Setup.Applied.Chain!;
        Assert.Equal([typeof(Cable), typeof(AttenuatorPad), typeof(FeedThroughTerminator)], chain.Elements.Select(element => element.GetType()));
        // 16 dB per 100 m: 0.32 dB on 2 m.
        Assert.Equal(0.32, ((Cable)chain.Elements[0]).Loss.At(100.MHz()).Decibels, 1e-12);
        Assert.Equal(1.MOhm(), chain.FrontEnd.InputResistance);
        // The smallest range that holds 2.4 V behind a pad of 6 dB: 8 Vpp x 1.995.
        Assert.Equal(8 * Math.Pow(10, 6.0 / 20), bench.Outlook.FullScale!.Value.Volts, 1e-9);
    }

    // The same instrument and probe, once named in a bench file and once set up from the catalogue by a shortlist.
    [Fact]
    public void NamedInstrumentAndProbe_AreThoseOfTheShortlist()
    {
        Assert.True(Valid(Probed));
        Bench bench = Bench.Parse(Probed, Workshop);
        Requirement wanted = new Requirement(Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns())).WithEdgeTolerance(15.Percent()).WithSourceResistance(33.Ohm()).WithWindow(10.us()).WithChannels(2);
        Candidate candidate = Shortlist.Of(wanted, Workshop).Candidates.Single(candidate => candidate.ToString() == "bench digitizer, 200 MHz + passive probe 10:1, 500 MHz");
        Assert.Equal(candidate.Outlook!.ToString(), bench.Outlook.ToString());
    }

    [Theory]
    [InlineData("500 MHz\"", "50 MHz\"", "probe.fromCatalogue", "did you mean \"passive probe 10:1, 500 MHz\"?")]
    [InlineData("bench digitizer, 200 MHz", "bench digitizer, 200 GHz", "instrument.fromCatalogue", "did you mean \"bench digitizer, 200 MHz\"?")]
    [InlineData("200 MHz\" }", "200 MHz\", \"bandwidthLimit\": \"25 MHz\" }", "instrument.bandwidthLimit", "has 20 MHz")]
    [InlineData("200 MHz\" }", "200 MHz\", \"inputResistance\": \"50 Ω\" }", "instrument.inputResistance", "that passive probe 10:1, 500 MHz is made for")]
    [InlineData("200 MHz\" }", "200 MHz\", \"inputResistance\": \"75 Ω\" }", "instrument.inputResistance", "has no input of 75 Ω")]
    [InlineData("\"channelsInUse\": 2", "\"channelsInUse\": 5", "capture.channelsInUse", "has 4")]
    [InlineData("\"channelsInUse\": 2", "\"range\": \"5 Vpp\"", "capture.range", "800 mVpp, 8 Vpp, 80 Vpp")]
    [InlineData("bench digitizer, 200 MHz\" },", "bench digitizer, 200 MHz\" }, \"input\": { \"resistance\": \"1 MΩ\", \"response\": \"Gaussian\", \"bandwidth\": \"200 MHz\" },", "input", "instrument is given too")]
    public void WhatTheCatalogueDoesNotHave_IsAProblemAtItsPlace(string text, string replacement, string path, string expected)
    {
        string changed = Probed.Replace(text, replacement, StringComparison.Ordinal);
        Assert.NotEqual(Probed, changed);
        Assert.False(Bench.TryParse(changed, Workshop, out _, out IReadOnlyList<DocumentProblem> problems));
        DocumentProblem problem = problems.First(found => found.Path == path);
        Assert.Contains(expected, string.Join("\n", problems.Where(found => found.Path == path)), StringComparison.Ordinal);
        Assert.True(problem.Line > 1);
    }

    [Fact]
    public void NamesWithoutACatalogue_AreSaidToNeedOne()
    {
        Assert.False(Bench.TryParse(Probed, out _, out IReadOnlyList<DocumentProblem> problems));
        Assert.Equal(["probe.fromCatalogue", "instrument.fromCatalogue"], problems.Select(problem => problem.Path));
        Assert.All(problems, problem => Assert.Contains("no catalogue was passed", problem.Message, StringComparison.Ordinal));
        Assert.Throws<ArgumentNullException>(() => Bench.Parse(Probed, null!));
    }

    [Fact]
    public void ModeThatTheInstrumentLacks_IsAProblem()
    {
        string pocket = Probed.Replace("bench digitizer, 200 MHz", "pocket digitizer, 25 MHz", StringComparison.Ordinal).Replace("\"mode\": \"sample\"", "\"mode\": \"peak detect\"", StringComparison.Ordinal);
        Assert.False(Bench.TryParse(pocket, Workshop, out _, out IReadOnlyList<DocumentProblem> problems));
        DocumentProblem problem = Assert.Single(problems);
        Assert.Equal("capture.mode", problem.Path);
        Assert.EndsWith("it has sample, average", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CataloguesCables_AreReadWithTheirLoss()
    {
        CatalogueCable cable = Workshop.Cable("coaxial cable, 75 ohm");
        Assert.Equal((75.Ohm(), 0.82, 100.0), (cable.Impedance, cable.VelocityFactor, cable.StatedLength.Meters));
        Assert.Equal(0.7, cable.OfLength(Length.FromMeters(10)).Loss.At(100.MHz()).Decibels, 1e-12);
        Assert.Contains("did you mean \"coaxial cable, 75 ohm\"?", Assert.Throws<ArgumentException>(() => Workshop.Cable("coaxial cable, 7 ohm")).Message, StringComparison.Ordinal);
    }

    private static bool Valid(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
