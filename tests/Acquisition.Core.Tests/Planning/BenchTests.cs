using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json;
using Acquisition.Core.Literals;
using Json.Schema;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

public class BenchTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(DocumentFiles.Read("bench.schema.json"));

    private static string LanternBuoy => DocumentFiles.Read("examples", "lantern-buoy.json");

    [Fact]
    public void LanternBuoy_IsRead()
    {
        Bench bench = Bench.Parse(LanternBuoy);
        Assert.Equal(24.MHz(), bench.Setup.Applied.Signal.Fundamental);
        Assert.Equal(10.ms(), bench.Window);
        Assert.Equal(33.Ohm(), bench.Wanted!.SourceResistance);
        Assert.Contains("memory-caps-rate", bench.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void LanternBuoy_FollowsTheSchema() => Assert.True(Valid(LanternBuoy));

    [Theory]
    [InlineData("{ \"shape\": \"sine\", \"frequency\": \"1 MHz\", \"amplitude\": \"1 Vpk\" }")]
    [InlineData("{ \"shape\": \"trapezoid\", \"frequency\": \"1 MHz\", \"swing\": \"1 Vpp\", \"riseTime\": \"10 ns\", \"fallTime\": \"20 ns\" }")]
    [InlineData("{ \"shape\": \"triangle\", \"frequency\": \"1 MHz\", \"swing\": \"1 Vpp\" }")]
    [InlineData("{ \"shape\": \"sawtooth\", \"frequency\": \"1 MHz\", \"swing\": \"1 Vpp\" }")]
    [InlineData("{ \"shape\": \"pulse train\", \"frequency\": \"1 MHz\", \"swing\": \"1 Vpp\", \"width\": \"50 ns\", \"riseTime\": \"5 ns\", \"edge\": \"Gaussian\" }")]
    [InlineData("{ \"shape\": \"single pulse\", \"swing\": \"1 Vpp\", \"width\": \"50 ns\", \"riseTime\": \"5 ns\" }")]
    [InlineData("{ \"shape\": \"half-wave rectified sine\", \"frequency\": \"100 Hz\", \"amplitude\": \"1 Vpk\" }")]
    [InlineData("{ \"shape\": \"full-wave rectified sine\", \"frequency\": \"100 Hz\", \"amplitude\": \"1 Vpk\" }")]
    [InlineData("{ \"shape\": \"two tones\", \"frequency\": \"10 MHz\", \"amplitude\": \"1 Vpk\", \"secondFrequency\": \"11 MHz\" }")]
    [InlineData("{ \"shape\": \"burst\", \"frequency\": \"1 MHz\", \"amplitude\": \"1 Vpk\", \"cycles\": 5, \"repetition\": \"100 us\" }")]
    [InlineData("{ \"shape\": \"random bits\", \"bitRate\": \"10 Mbit/s\", \"swing\": \"1 Vpp\", \"riseTime\": \"2 ns\" }")]
    [InlineData("{ \"shape\": \"pseudo-random bits\", \"order\": 7, \"bitRate\": \"10 Mbit/s\", \"swing\": \"1 Vpp\" }")]
    [InlineData("{ \"shape\": \"bit pattern\", \"bits\": \"0101 1100\", \"bitRate\": \"10 Mbit/s\", \"swing\": \"1 Vpp\", \"riseTime\": \"2 ns\" }")]
    public void EveryShape_IsReadFollowsTheSchemaAndGivesAnOutlook(string signal)
    {
        string text = WithSignal(signal);
        Assert.True(Valid(text));
        Assert.NotEmpty(Bench.Parse(text).ToString());
    }

    [Fact]
    public void WrongFile_GetsAllItsProblemsWithTheirPlace()
    {
        string text = LanternBuoy
            .Replace("\"frequency\": \"24 MHz\"", "\"frequency\": \"24 MHzz\"", StringComparison.Ordinal)
            .Replace("\"kind\": \"passive\"", "\"kind\": \"pasive\"", StringComparison.Ordinal)
            .Replace("\"memory\": \"14 Mpts\",\n    \"bits\"", "\"memroy\": \"14 Mpts\",\n    \"bits\"", StringComparison.Ordinal)
            .Replace("\"window\": \"10 ms\",\n    \"inter", "\"window\": 10,\n    \"inter", StringComparison.Ordinal);
        Assert.False(Valid(text));
        Assert.False(Bench.TryParse(text, out Bench? bench, out IReadOnlyList<DocumentProblem> problems));
        Assert.Null(bench);
        Assert.Equal(["signal.frequency", "probe.kind", "digitizer.memory", "digitizer.memroy", "capture.window"], problems.Select(problem => problem.Path));
        Assert.Equal([5, 7, 9, 12, 19], problems.Select(problem => problem.Line));
    }

    [Theory]
    [InlineData("\"window\": \"10 ms\",", "", "capture.window: give either window or timePerDivision, and one of them only")]
    [InlineData("\"jitter\": \"20 ps\",", "\"mode\": \"average\",", "capture.combined: this member is missing")]
    public void CaptureWithoutWhatItNeeds_IsRefusedBySchemaAndReader(string member, string replacement, string expected)
    {
        string text = LanternBuoy.Replace(member, replacement, StringComparison.Ordinal);
        Assert.False(Valid(text));
        Assert.False(Bench.TryParse(text, out _, out IReadOnlyList<DocumentProblem> problems));
        Assert.Contains(problems, problem => (problem.Path + ": " + problem.Message).StartsWith(expected.Split(':')[0], StringComparison.Ordinal));
    }

    [Fact]
    public void WindowBeyondAllRates_IsAProblemOfTheFileAndNotACrash()
    {
        // The digitizer's slowest offer is what the memory dictates; an absurd window still is answered, with a finding.
        string text = LanternBuoy.Replace("\"window\": \"10 ms\",\n    \"inter", "\"window\": \"1e6 s\",\n    \"inter", StringComparison.Ordinal);
        Assert.Contains(Bench.Parse(text).Outlook.Findings, finding => finding.Code == "fundamental-aliased");
    }

    [Fact]
    public void LeadOnAnIdealSource_IsRefusedBecauseItWouldRingForever()
    {
        string text = LanternBuoy.Replace("\"source\": { \"resistance\": \"33 Ω\" },", "", StringComparison.Ordinal);
        Assert.False(Bench.TryParse(text, out _, out IReadOnlyList<DocumentProblem> problems));
        Assert.Contains("rings", Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    private const string CableAndPad = """
        "source": { "resistance": "50 Ω" },
          "path": [
            { "element": "cable", "impedance": "50 Ω", "length": "2 m", "velocityFactor": 0.66, "loss": { "at": "100 MHz", "loss": "15 dB", "secondAt": "1 GHz", "secondLoss": "50 dB", "per": "100 m" } },
            { "element": "pi pad", "attenuation": "6 dB", "impedance": "50 Ω" },
            { "element": "minimum-loss pad", "sourceImpedance": "75 Ω", "loadImpedance": "50 Ω" },
            { "element": "feed-through terminator", "resistance": "50 Ω" }
          ],
        """;

    private static string WithPath(string path)
    {
        int start = LanternBuoy.IndexOf("\"source\":", StringComparison.Ordinal), end = LanternBuoy.IndexOf("\"input\":", StringComparison.Ordinal);
        return LanternBuoy[..start] + path.Trim() + "\n  " + LanternBuoy[end..];
    }

    [Fact]
    public void CablesPadsAndTerminators_LieBetweenSourceAndInput()
    {
        string text = WithPath(CableAndPad);
        Assert.True(Valid(text));
        MeasurementChain chain = Bench.Parse(text).Setup.Applied.Chain!;
        Assert.Equal([typeof(Cable), typeof(AttenuatorPad), typeof(AttenuatorPad), typeof(FeedThroughTerminator)], chain.Elements.Select(element => element.GetType()));
        var cable = (Cable)chain.Elements[0];
        // 15 dB per 100 m: 0.3 dB on 2 m.
        Assert.Equal(0.3, cable.Loss.At(100.MHz()).Decibels, 1e-12);
    }

    [Fact]
    public void WrongElements_AreReportedAllAtOnceWithTheirPlace()
    {
        string text = WithPath(CableAndPad.Replace("\"2 m\"", "\"0 m\"", StringComparison.Ordinal).Replace("pi pad", "pie pad", StringComparison.Ordinal).Replace(", \"secondLoss\": \"50 dB\"", "", StringComparison.Ordinal));
        Assert.False(Bench.TryParse(text, out _, out IReadOnlyList<DocumentProblem> problems));
        Assert.Equal(["path[0].loss.secondAt", "path[1].element"], problems.Select(problem => problem.Path));
        text = WithPath(CableAndPad.Replace("\"2 m\"", "\"0 m\"", StringComparison.Ordinal));
        Assert.False(Bench.TryParse(text, out _, out problems));
        Assert.Contains("above 0 m", Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"rate\": \"2 GSa/s\"", "\"rate\": \"1e305 GSa/s\"", "digitizer.rate", "1e305 GSa/s")]
    [InlineData("\"memory\": \"14 Mpts\",\n    \"bits\"", "\"memory\": \"1e30 pts\",\n    \"bits\"", "digitizer.memory", "to 9007199254740992 pts")]
    [InlineData("\"rate\": \"2 GSa/s\"", "\"rate\": \"1e290 GSa/s\"", "digitizer.rate", "expected")]
    [InlineData("\"bits\": \"8 bit\"", "\"bits\": \"1e9 bit\"", "digitizer.bits", "found 1000000000 bit, expected from 1 bit")]
    public void ValuesThatAreTooLarge_AreReportedWithTheirPlace(string member, string replacement, string path, string said)
    {
        string text = LanternBuoy.Replace(member, replacement, StringComparison.Ordinal);
        Assert.NotEqual(LanternBuoy, text);
        Assert.False(Bench.TryParse(text, out _, out IReadOnlyList<DocumentProblem> problems));
        DocumentProblem problem = Assert.Single(problems);
        Assert.StartsWith(path, problem.Path, StringComparison.Ordinal);
        Assert.Contains(said, problem.Message, StringComparison.Ordinal);
    }

    // Whatever is done to the text, the reader answers with problems or a bench, never with another exception.
    [Fact]
    public void HostileFiles_AreAnsweredWithProblems()
    {
        string seed = LanternBuoy;
        const string alphabet = "{}[]\",:0123456789.eE+- VHznspµΩ%\\/\n";
        var random = new Random(4711);
        int readable = 0;
        for (int round = 0; round < 3000; round++)
        {
            var text = new StringBuilder(seed);
            for (int change = random.Next(1, 6); change > 0; change--)
            {
                int at = random.Next(text.Length);
                switch (random.Next(4))
                {
                    case 0: text[at] = alphabet[random.Next(alphabet.Length)]; break;
                    case 1: text.Insert(at, alphabet[random.Next(alphabet.Length)]); break;
                    case 2: text.Remove(at, Math.Min(text.Length - at, random.Next(1, 20))); break;
                    default: text.Insert(at, random.Next(2) == 0 ? "1e308" : "0"); break;
                }
            }
            bool read = Bench.TryParse(text.ToString(), out Bench? bench, out IReadOnlyList<DocumentProblem> problems);
            Assert.Equal(read, problems.Count == 0);
            readable += read ? 1 : 0;
            if (read && round % 10 == 0)
                Assert.NotNull(bench!.Outlook.Timebase);
        }
        Assert.InRange(readable, 1, 2999);
    }

    private static string WithSignal(string signal)
    {
        int start = LanternBuoy.IndexOf("\"signal\":", StringComparison.Ordinal), end = LanternBuoy.IndexOf('\n', start);
        return LanternBuoy[..start] + "\"signal\": " + signal + "," + LanternBuoy[end..];
    }

    private static bool Valid(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
