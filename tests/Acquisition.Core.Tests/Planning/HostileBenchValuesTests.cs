using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Any single value of a bench file, replaced by one that makes no sense there: the file is still a bench, or the problem leads to that value.</summary>
public class HostileBenchValuesTests
{
    private static readonly JsonSerializerOptions OneValuePerLine = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly string[] Signals =
    [
        """{ "shape": "sine", "frequency": "1 MHz", "amplitude": "1 Vpk", "offset": "0.2 V" }""",
        """{ "shape": "square", "frequency": "1 MHz", "swing": "1 Vpp", "riseTime": "10 ns", "duty": "30 %", "edge": "linear" }""",
        """{ "shape": "trapezoid", "frequency": "1 MHz", "swing": "1 Vpp", "riseTime": "10 ns", "fallTime": "20 ns", "duty": "40 %" }""",
        """{ "shape": "triangle", "frequency": "1 MHz", "swing": "1 Vpp" }""",
        """{ "shape": "pulse train", "frequency": "1 MHz", "swing": "1 Vpp", "width": "50 ns", "riseTime": "5 ns", "fallTime": "6 ns", "edge": "Gaussian" }""",
        """{ "shape": "single pulse", "swing": "1 Vpp", "width": "50 ns", "riseTime": "5 ns" }""",
        """{ "shape": "full-wave rectified sine", "frequency": "100 Hz", "amplitude": "1 Vpk" }""",
        """{ "shape": "two tones", "frequency": "10 MHz", "amplitude": "1 Vpk", "secondFrequency": "11 MHz", "secondAmplitude": "0.5 Vpk" }""",
        """{ "shape": "burst", "frequency": "1 MHz", "amplitude": "1 Vpk", "cycles": 5, "repetition": "100 us" }""",
        """{ "shape": "random bits", "bitRate": "10 Mbit/s", "swing": "1 Vpp", "riseTime": "2 ns" }""",
        """{ "shape": "pseudo-random bits", "order": 7, "bitRate": "10 Mbit/s", "swing": "1 Vpp", "riseTime": "2 ns" }""",
        """{ "shape": "bit pattern", "bits": "0101 1100", "bitRate": "10 Mbit/s", "swing": "1 Vpp", "riseTime": "2 ns" }""",
    ];

    private const string Everything = """
        {
          "name": "beacon clock",
          "signal": { "shape": "square", "frequency": "24 MHz", "swing": "3.3 Vpp", "offset": "1.65 V", "riseTime": "2.8 ns" },
          "source": { "resistance": "33 Ω", "capacitance": "2 pF", "amplitudeStatedInto": "50 Ω" },
          "probe": { "name": "probe", "kind": "passive", "attenuation": 10, "resistance": "10 MΩ", "capacitance": "16 pF", "bandwidth": "200 MHz", "response": "Gaussian", "leadLength": "15 mm", "damping": "10 Ω", "maximumVoltage": "400 V", "noise": "1 mVrms" },
          "input": { "name": "input", "resistance": "1 MΩ", "capacitance": "14 pF", "response": "Gaussian", "bandwidth": "200 MHz", "bandwidthLimit": "20 MHz", "noise": "1.6 mVrms", "maximumVoltage": "300 V" },
          "digitizer": { "name": "digitizer", "rate": "2 GSa/s", "memory": "14 Mpts", "bits": "8 bit", "shared": [ { "inUse": 2, "rate": "1 GSa/s", "memory": "14 Mpts" } ], "ranges": ["800 mVpp", "8 Vpp"], "divisions": { "across": 14, "up": 8 } },
          "capture": { "window": "10 ms", "channelsInUse": 2, "range": "8 Vpp", "mode": "average", "combined": 16, "interpolation": "sinc", "jitter": "20 ps", "recordRate": "50 Hz", "timebaseAccuracy": "10 ppm", "gainAccuracy": "2 %", "watchFor": { "width": "5 ns", "rate": "10 Hz", "riseTime": "1 ns" } },
          "wanted": { "edgeWithin": "10 %", "amplitudeWithin": "3 %", "powerShare": "90 %", "harmonics": 5, "channels": 1, "narrowestPulse": "10 ns", "window": "10 ms", "smallestDetail": "50 mV", "timingWithin": "200 ps" }
        }
        """;

    private const string CableAndPads = """
        [
          { "element": "cable", "name": "lead", "impedance": "50 Ω", "length": "2 m", "velocityFactor": 0.66, "loss": { "at": "100 MHz", "loss": "15 dB", "secondAt": "1 GHz", "secondLoss": "50 dB", "per": "100 m" } },
          { "element": "pi pad", "attenuation": "6 dB", "impedance": "50 Ω" },
          { "element": "minimum-loss pad", "sourceImpedance": "75 Ω", "loadImpedance": "50 Ω" },
          { "element": "feed-through terminator", "resistance": "50 Ω" }
        ]
        """;

    private static readonly string[] Benches = [Everything, .. Signals.Select(signal => With("signal", signal)), With("path", CableAndPads)];

    [Fact]
    public void UntouchedBenches_AreRead() => Assert.All(Benches, text => Bench.Parse(text));

    [Property(MaxTest = 400)]
    public Property HostileValue_IsTakenOrLeadsToItsLine() => Prop.ForAll(Gen.Choose(0, int.MaxValue - 1).ToArbitrary(), seed =>
    {
        var random = new Random(seed);
        JsonNode bench = JsonNode.Parse(Benches[random.Next(Benches.Length)])!;
        string[][] values = Values(bench, []).ToArray();
        string[] path = values[random.Next(values.Length)];
        string[] hostile = Hostile(At(bench, path).ToJsonString(OneValuePerLine)).ToArray();
        (string text, int line) = Replaced(bench, path, hostile[random.Next(hostile.Length)]);

        bool read = Bench.TryParse(text, out Bench? taken, out IReadOnlyList<DocumentProblem> problems);

        bool answered = read
            ? taken!.Outlook.Timebase.Rate > default(SampleRate)
            : problems.Any(problem => problem.Line == line || problem.Message.Contains(FormattableString.Invariant($"in line {line}"), StringComparison.Ordinal));
        return answered.Label(string.Join("\n", problems) + "\n" + text);
    });

    [Theory]
    [InlineData("rate", "\"1e290 GSa/s\"", "digitizer.rate", "found 1E+299 Sa/s", "from 1 µSa/s to 100 TSa/s")]
    [InlineData("rate", "\"0 Sa/s\"", "digitizer.rate", "found 0 Sa/s", "from 1 µSa/s to 100 TSa/s")]
    [InlineData("bits", "\"1e9 bit\"", "digitizer.bits", "found 1000000000 bit", "from 1 bit to 64 bit")]
    [InlineData("recordRate", "\"-50 Hz\"", "capture.recordRate", "found -50 Hz", "from 1 µHz to 10 THz")]
    [InlineData("timebaseAccuracy", "\"-10 ppm\"", "capture.timebaseAccuracy", "found -0.00001", "expected 0 or from")]
    [InlineData("inUse", "2.5", "digitizer.shared[0].inUse", "found 2.5", "whole number")]
    [InlineData("edgeWithin", "\"0 %\"", "wanted.edgeWithin", "edgeWithin must be above 0", "was 0")]
    [InlineData("frequency", "null", "signal.frequency", "found null", "a quantity such as \"100 MHz\"")]
    public void RefusedValue_IsNamedWithItsRange(string member, string value, string path, string found, string allowed)
    {
        JsonNode bench = JsonNode.Parse(Everything)!;
        string[] place = Values(bench, []).First(values => values[^1] == member);
        (string text, int line) = Replaced(bench, place, value);

        Assert.False(Bench.TryParse(text, out _, out IReadOnlyList<DocumentProblem> problems));
        DocumentProblem problem = Assert.Single(problems);
        Assert.Equal((path, line), (problem.Path, problem.Line));
        Assert.Contains(found, problem.Message, StringComparison.Ordinal);
        Assert.Contains(allowed, problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("secondAt")]
    [InlineData("secondLoss")]
    public void HalfOfAPairThatIsNull_IsPointedAt(string absent)
    {
        JsonNode bench = JsonNode.Parse(Benches[^1])!;
        (string text, int line) = Replaced(bench, ["path", "0", "loss", absent], "null");
        Assert.False(Bench.TryParse(text, out _, out IReadOnlyList<DocumentProblem> problems));
        DocumentProblem problem = Assert.Single(problems);
        Assert.Equal(("path[0].loss." + absent, line), (problem.Path, problem.Line));
        Assert.Contains("give both or none", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EdgeThatDoesNotFit_LeadsToAllItDependsOn()
    {
        (string text, int line) = Replaced(JsonNode.Parse(Everything)!, ["signal", "frequency"], "\"1 GHz\"");
        Assert.False(Bench.TryParse(text, out _, out IReadOnlyList<DocumentProblem> problems));
        DocumentProblem problem = Assert.Single(problems);
        Assert.Equal("signal.riseTime", problem.Path);
        Assert.EndsWith(FormattableString.Invariant($"it depends on frequency in line {line}"), problem.Message, StringComparison.Ordinal);
    }

    private static string With(string member, string value)
    {
        JsonObject bench = JsonNode.Parse(Everything)!.AsObject();
        bench.Remove("probe");
        bench[member] = JsonNode.Parse(value);
        return bench.ToJsonString();
    }

    private static IEnumerable<string[]> Values(JsonNode node, string[] path) => node switch
    {
        JsonObject members => members.SelectMany(member => Values(member.Value!, [.. path, member.Key])),
        JsonArray items => items.SelectMany((item, index) => Values(item!, [.. path, index.ToString(CultureInfo.InvariantCulture)])),
        _ => [path],
    };

    private static JsonNode At(JsonNode node, IEnumerable<string> path) =>
        path.Aggregate(node, (inner, step) => inner is JsonArray items ? items[int.Parse(step, CultureInfo.InvariantCulture)]! : inner[step]!);

    private static (string Text, int Line) Replaced(JsonNode bench, string[] path, string value)
    {
        const string mark = "replaced here";
        JsonNode copy = JsonNode.Parse(bench.ToJsonString())!;
        if (At(copy, path.Take(path.Length - 1)) is JsonArray items)
            items[int.Parse(path[^1], CultureInfo.InvariantCulture)] = mark;
        else
            At(copy, path.Take(path.Length - 1))[path[^1]] = mark;
        string marked = copy.ToJsonString(OneValuePerLine).Replace("\r\n", "\n", StringComparison.Ordinal);
        int at = marked.IndexOf('"' + mark + '"', StringComparison.Ordinal);
        return (marked.Replace('"' + mark + '"', value, StringComparison.Ordinal), marked.Take(at).Count(character => character == '\n') + 1);
    }

    private static IEnumerable<string> Hostile(string value)
    {
        string[] always = ["true", "null", "[]", "{}", "\"\"", "\"nonsense\"", "\"3 kg\"", "\"3 °C\"", "\"3\"", "1e999"];
        if (double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            return always.Concat(["\"ten\"", "-1", "0", "1e300", "0.001", "2.5"]);
        Match quantity = Regex.Match(value, "^\"(-?[0-9.]+) ([^ ]+)\"$");
        return quantity.Success
            ? always.Concat(new[] { "-" + quantity.Groups[1].Value, "0", "NaN", "Infinity", "1e300", "1e999", "1e-300", "1e15", "1e-15" }.Select(number => $"\"{number} {quantity.Groups[2].Value}\"")).Append("42")
            : always.Append("42");
    }
}
