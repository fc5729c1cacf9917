using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Nodes;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Json.Schema;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

public class CatalogueTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(DocumentFiles.Read("catalogue.schema.json"));

    private static string Workshop => DocumentFiles.Read("examples", "workshop-catalogue.json");

    [Fact]
    public void WorkshopCatalogue_IsRead()
    {
        Catalogue catalogue = Catalogue.Parse(Workshop);
        CatalogueInstrument bench = catalogue.Instrument("bench digitizer, 200 MHz");
        Assert.Equal(200.MHz(), bench.Bandwidth.Value);
        Assert.Equal(Assurance.Guaranteed, bench.Bandwidth.Assurance);
        Assert.Equal(230.MHz(), bench.Bandwidth.Typical);
        Assert.Equal(500.MSaPerS(), bench.ModeFor(3)!.MaximumRate);
        Assert.Null(bench.ModeFor(5));
        Assert.Equal(ResponseShape.Bessel(3), catalogue.Probe("active probe 10:1, 1 GHz").Shape);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-300)]
    public void AVoltageThatNothingBears_IsRefused(int volts)
    {
        Catalogue catalogue = Catalogue.Parse(Workshop);
        Assert.Equal("voltage", Assert.Throws<ArgumentOutOfRangeException>(() => catalogue.Probes[0].WithMaximumVoltage(volts.V())).ParamName);
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => new InputTermination(1.MOhm(), 14.pF(), volts.V()));
        Assert.Equal("maximumVoltage", refused.ParamName);
        Assert.Contains("above 0 V", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WorkshopCatalogue_FollowsTheSchema() => Assert.True(Valid(Workshop));

    // Each of these wrong catalogues is refused by the reader and by the schema alike.
    [Theory]
    [InlineData("/instruments/0/bandwidth", "null", "instruments[0].bandwidth: found null, expected a quantity such as \"100 MHz\"")]
    [InlineData("/instruments/0/bandwidth", "25e6", "instruments[0].bandwidth: found a number, expected a quantity such as \"100 MHz\" with its unit in double quotes")]
    [InlineData("/instruments/0/response", "\"gausian\"", "instruments[0].response: found \"gausian\", expected single pole, Gaussian, Butterworth 1 to 10, or Bessel 1 to 10")]
    [InlineData("/instruments/0/channels", "[]", "instruments[0].channels: this list is empty; expected at least one object")]
    [InlineData("/instruments/0/modes", "[\"peak detct\"]", "instruments[0].modes[0]: found \"peak detct\", expected one of sample, peak detect, high resolution, average, envelope; did you mean \"peak detect\"?")]
    [InlineData("/instruments/0/bandwith", "\"25 MHz\"", "instruments[0].bandwith: this member is not known here; did you mean \"bandwidth\"?")]
    [InlineData("/instruments/0/segments", "1.5", "instruments[0].segments: found 1.5, expected a whole number")]
    [InlineData("/instruments/0/price", "-1", "instruments[0].price: found -1, expected a number from 0 to 1000000000000")]
    [InlineData("/probes/1/bandwidth", "{}", "probes[1].bandwidth: one of claimed, typical and guaranteed must be given")]
    [InlineData("/probes/1", "[]", "probes[1]: found a list, expected an object")]
    public void WrongCatalogue_IsRefusedByReaderAndSchema(string pointer, string replacement, string expected)
    {
        string text = Replace(Workshop, pointer, replacement);
        Assert.False(Valid(text));
        Assert.False(Catalogue.TryParse(text, out _, out IReadOnlyList<DocumentProblem> problems));
        Assert.Contains(expected, problems.Select(problem => problem.Path + ": " + problem.Message));
    }

    // What only the reader can know: what a text means, and what does not go together.
    [Theory]
    [InlineData("/instruments/0/bandwidth", "\"-25 MHz\"", "instruments[0].bandwidth: found -25 MHz, expected from 1 µHz to 10 THz")]
    [InlineData("/instruments/1/name", "\"pocket digitizer, 25 MHz\"", "instruments: the name \"pocket digitizer, 25 MHz\" occurs twice in instruments")]
    public void ImpossibleCatalogue_IsRefusedByTheReader(string pointer, string replacement, string expected)
    {
        Assert.False(Catalogue.TryParse(Replace(Workshop, pointer, replacement), out _, out IReadOnlyList<DocumentProblem> problems));
        Assert.Contains(expected, problems.Select(problem => problem.Path + ": " + problem.Message));
    }

    [Fact]
    public void Exception_ListsEveryProblem()
    {
        string text = Replace(Replace(Workshop, "/instruments/0/bandwidth", "25"), "/probes/2/capacitance", "\"plenty\"");
        var refusal = Assert.Throws<DocumentFormatException>(() => Catalogue.Parse(text));
        Assert.Equal(2, refusal.Problems.Count);
        Assert.StartsWith("the catalogue has 2 problems:", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void UnknownName_SuggestsTheNearest()
    {
        var refusal = Assert.Throws<ArgumentException>(() => Catalogue.Parse(Workshop).Instrument("bench digitiser, 200 MHz"));
        Assert.Contains("did you mean \"bench digitizer, 200 MHz\"?", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void StatedValue_CountsOnTheBestAssured()
    {
        var stated = new Stated<Frequency>(250.MHz(), 230.MHz(), 200.MHz());
        Assert.Equal(200.MHz(), stated.Value);
        Assert.Equal(Assurance.Claimed, Stated.Claimed(1.MHz()).Assurance);
    }

    private static bool Valid(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    private static string Replace(string text, string pointer, string replacement)
    {
        JsonNode root = JsonNode.Parse(text)!;
        JsonNode at = root;
        string[] steps = pointer.Trim('/').Split('/');
        foreach (string step in steps[..^1])
            at = int.TryParse(step, out int index) ? at[index]! : at[step]!;
        JsonNode? value = JsonNode.Parse(replacement);
        if (int.TryParse(steps[^1], out int last))
            at[last] = value;
        else
            at[steps[^1]] = value;
        return root.ToJsonString();
    }
}
