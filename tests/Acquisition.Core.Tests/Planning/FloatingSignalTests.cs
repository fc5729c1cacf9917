using System;
using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>A signal between two points neither of which is earth (handbook 12.6): what may be connected, and what it must stand.</summary>
public class FloatingSignalTests
{
    private static readonly Catalogue Workshop = Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json"));

    // The gate of the buoy's lamp driver, against a switch node that jumps to 400 V.
    private static readonly Signal Gate = Signal.Square(100.kHz(), 15.Vpp(), 20.ns());

    private static Requirement Wanted => new Requirement(Gate).WithEdgeTolerance(20.Percent()).WithSourceResistance(10.Ohm());

    private static Requirement Floating => Wanted.WithCommonMode(400.V());

    [Fact]
    public void EarthedInput_IsUnsuitableForAFloatingSignal()
    {
        Shortlist list = Shortlist.Of(Floating, Workshop);
        Candidate[] earthed = list.Candidates.Where(candidate => !candidate.Probe.IsDifferential && !candidate.Instrument.HasIsolatedInputs).ToArray();

        Assert.NotEmpty(earthed);
        Assert.All(earthed, candidate =>
        {
            Assert.Equal(Suitability.Unsuitable, candidate.Suitability);
            Assert.Equal("reference", candidate.Limiting!.Code);
            Assert.Contains(candidate.SmallestChanges, change => change.Demand.Code == "reference" && change.Change.Contains("a differential probe, or isolated inputs, rated for 407.5 V against earth", StringComparison.Ordinal));
        });
        Assert.True(list.Best!.Probe.IsDifferential);
    }

    [Fact]
    public void SameSignal_ReferredToEarth_LeavesThemSuitable() =>
        Assert.Contains(Shortlist.Of(Wanted, Workshop).Suitable, candidate => !candidate.Probe.IsDifferential && !candidate.Instrument.HasIsolatedInputs);

    // Whatever floats: no chain whose reference lead is protective earth is ever recommended.
    [Property(MaxTest = 40)]
    public Property EarthedInput_IsNeverRecommended() => Prop.ForAll(Gen.Choose(-2000, 2000).ToArbitrary(), Gen.Choose(1, 1000).ToArbitrary(), (commonMode, swing) =>
        Shortlist.Of(new Requirement(Signal.Sine(10.kHz(), PeakVoltage.FromVolts(swing / 2.0))).WithAmplitudeTolerance(50.Percent()).WithCommonMode(Voltage.FromVolts(commonMode)), Workshop)
            .Candidates.Where(candidate => candidate.Suitability != Suitability.Unsuitable).All(candidate => candidate.Probe.IsDifferential || candidate.Instrument.HasIsolatedInputs));

    // By Kirchhoff's voltage law either point is at most 400 V + 7.5 V away from earth; 592.5 V leave exactly the 600 V that the probe stands.
    [Theory]
    [InlineData(400, true)]
    [InlineData(592.5, true)]
    [InlineData(-592.5, true)]
    [InlineData(593, false)]
    public void CommonModeAndSignal_AreHeldAgainstTheRatingToEarth(double commonMode, bool isMet)
    {
        Candidate differential = Shortlist.Of(Wanted.WithCommonMode(Voltage.FromVolts(commonMode)), Workshop).Candidates.First(candidate => candidate.Probe.IsDifferential && candidate.BandwidthLimit is null);
        Criterion toEarth = differential.Criteria.Single(criterion => criterion.Code == "rating-to-earth");

        Assert.Equal(Math.Abs(commonMode) + 7.5, toEarth.NeededQuantity!.Value.SiValue, 1e-9);
        Assert.Equal(600, toEarth.OfferedQuantity!.Value.SiValue);
        Assert.Equal(isMet, toEarth.Suitability == Suitability.Suitable);
        Assert.Equal(isMet, differential.SafetyFindings.All(finding => finding.Code != "above-rating"));
    }

    // The isolated digitizer states 600 V against earth, the passive probes on it do not: their reference lead then hangs on 400 V.
    [Fact]
    public void UnstatedRatingToEarth_IsUnproven()
    {
        Candidate isolated = Shortlist.Of(Floating, Workshop).Candidates.First(candidate => candidate.Instrument.HasIsolatedInputs && candidate.Probe.Name == "passive probe 10:1, 200 MHz" && candidate.BandwidthLimit is null);

        Assert.Equal(Suitability.Unproven, isolated.Suitability);
        Assert.Contains(isolated.SafetyFindings, finding => finding.Code == "rating-to-earth-unknown" && finding.Message.Contains("passive probe 10:1, 200 MHz", StringComparison.Ordinal));
    }

    [Fact]
    public void Caution_StandsInSpecificationOutlookAdviceAndShortlist()
    {
        Shortlist list = Shortlist.Of(Floating.WithWindow(100.us()), Workshop);
        string[] texts =
        [
            list.Needed.ToString(), list.ToString(), list.Best!.Outlook!.ToString(), SetupAdvice.For(Floating, list.Best.Instrument, list.Best.Probe).ToString(),
        ];

        Assert.All(texts, text =>
        {
            Assert.Contains("SAFETY floating", text, StringComparison.Ordinal);
            Assert.Contains("local codes, the equipment's manuals and licensed practice decide", text, StringComparison.Ordinal);
            // The only thing ever said of lifting the earth is not to.
            Assert.DoesNotMatch("(?<!never )lift the", text);
        });
        Assert.Equal(407.5, list.Needed.VoltageToEarth!.Value.Volts, 1e-9);
    }

    [Fact]
    public void HazardousVoltage_IsSaidInTheTextOfAShortlist()
    {
        Requirement node = new Requirement(Signal.Square(100.kHz(), 400.Vpp(), 20.ns())).WithEdgeTolerance(20.Percent());
        Assert.Contains("SAFETY hazardous-voltage: a peak of 200 V", Shortlist.Of(node, Workshop).ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("SAFETY", Shortlist.Of(Wanted, Workshop).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Outlook_SaysThatAnEarthedInputMustNotBeConnected()
    {
        Probe passive = Probe.Passive(10, 10.MOhm(), 12.pF(), 200.MHz());
        FrontEnd earthed = FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz()));

        Assert.Equal(["floating", "hazardous-voltage", "input-is-earthed"], Safety(passive, earthed));
        Assert.Equal(["floating", "hazardous-voltage", "rating-to-earth-unknown"], Safety(passive.WithDifferentialInputs(), earthed));
        Assert.Equal(["floating", "hazardous-voltage"], Safety(passive.WithDifferentialInputs().WithMaximumToEarth(408.V()), earthed));
        Assert.Equal(["above-rating", "floating", "hazardous-voltage"], Safety(passive.WithDifferentialInputs().WithMaximumToEarth(407.V()), earthed));
        Assert.Equal(["floating", "hazardous-voltage"], Safety(passive.WithMaximumToEarth(1000.V()), earthed.WithIsolation().WithMaximumToEarth(600.V())));
        Assert.Equal(["floating", "hazardous-voltage", "rating-to-earth-unknown"], Safety(passive, earthed.WithIsolation().WithMaximumToEarth(600.V())));

        static string[] Safety(Probe probe, FrontEnd input) => Gate.Through(MeasurementChain.From(10.Ohm()).Probe(probe).Into(input)).WithCommonMode(400.V())
            .SampledBy(new Digitizer(1.GSaPerS(), 1.Mpts(), 8.bit())).Over(100.us()).Findings.Where(finding => finding.Severity == Severity.Safety).Select(finding => finding.Code).ToArray();
    }

    [Theory]
    [InlineData("", "", "input-is-earthed")]
    [InlineData(", \"differential\": true, \"maximumToEarth\": \"600 V\"", "", null)]
    [InlineData(", \"maximumToEarth\": \"1000 V\"", ", \"isolated\": true, \"maximumToEarth\": \"600 V\"", null)]
    [InlineData(", \"maximumToEarth\": \"1000 V\"", ", \"isolated\": true, \"maximumToEarth\": \"300 V\"", "above-rating")]
    public void BenchFile_StatesWhatFloats(string probe, string input, string? wrong)
    {
        Bench bench = Bench.Parse(File(probe, input));

        Assert.Equal(400, bench.Setup.Applied.CommonMode!.Value.Volts);
        Assert.Equal(400, bench.Wanted!.CommonMode!.Value.Volts);
        Assert.Contains("SAFETY floating", bench.ToString(), StringComparison.Ordinal);
        Assert.Contains("voltage to earth", bench.ToString(), StringComparison.Ordinal);
        Assert.Equal(wrong is null ? [] : new[] { wrong }, bench.Outlook.Findings.Select(finding => finding.Code).Intersect(["input-is-earthed", "above-rating", "rating-to-earth-unknown"]));
    }

    [Fact]
    public void VoltageThatIsNone_IsRefusedAtItsPlace()
    {
        Assert.False(Bench.TryParse(File(", \"maximumToEarth\": \"-600 V\"", ""), out _, out var problems));
        Assert.Contains("maximumToEarth", Assert.Single(problems).ToString(), StringComparison.Ordinal);
        Assert.Equal("maximumToEarth", Assert.Throws<ArgumentOutOfRangeException>(() => Workshop.Probes[0].WithMaximumToEarth(0.V())).ParamName);
    }

    private static string File(string probe, string input) => $$"""
        {
          "name": "gate of the lamp driver",
          "signal": { "shape": "square", "frequency": "100 kHz", "swing": "15 Vpp", "riseTime": "20 ns" },
          "source": { "resistance": "10 Ω", "commonMode": "400 V" },
          "probe": { "attenuation": 10, "resistance": "10 MΩ", "capacitance": "12 pF", "bandwidth": "200 MHz"{{probe}} },
          "input": { "resistance": "1 MΩ", "capacitance": "14 pF", "response": "Gaussian", "bandwidth": "200 MHz"{{input}} },
          "digitizer": { "rate": "1 GSa/s", "memory": "1 Mpts", "bits": "8 bit" },
          "capture": { "window": "100 us" },
          "wanted": { "edgeWithin": "20 %" }
        }
        """;
}
