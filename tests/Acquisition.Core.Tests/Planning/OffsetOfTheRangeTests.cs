using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>A small signal on a DC level needs a range that can be moved there.</summary>
public class OffsetOfTheRangeTests
{
    private static readonly Signal Ripple = Signal.Sine(1.kHz(), 10.mVpk()).WithOffset(12.V());

    private static Requirement Wanted => new Requirement(Ripple).WithAmplitudeTolerance(3.Percent()).WithWindow(10.ms());

    // 40 mVpp hold 20 mVpp with 10 mV to spare on either side: 12 V - 10 mV are needed at least.
    [Theory]
    [InlineData(11.99, true)]
    [InlineData(12.5, true)]
    [InlineData(11.98, false)]
    public void StatedOffset_DecidesWhichRangeHoldsTheSignal(double offset, bool holds)
    {
        Candidate candidate = Only(new InputRange(40.mVpp(), null, Voltage.FromVolts(offset)), new InputRange(30.Vpp(), null, 0.V()));
        Assert.Equal(holds ? 0.04 : 30, candidate.Range.FullScale.Volts);
        Assert.Equal(Suitability.Suitable, candidate.Suitability);
        Assert.DoesNotContain(candidate.Outlook!.Findings, finding => finding.Code == "offset-needed");
        Assert.Equal(candidate.Range.FullScale, SetupAdvice.For(Wanted, candidate.Instrument, candidate.Probe).Setups[0].FullScale);
    }

    [Fact]
    public void OffsetThatNoRangeTakes_IsAFailedDemand_WithTheOffsetThatCures()
    {
        Candidate candidate = Only(new InputRange(40.mVpp(), null, 1.V()), new InputRange(8.Vpp(), null, 5.V()));
        Criterion offset = candidate.Criteria.Single(criterion => criterion.Code == "offset");

        Assert.Equal(Suitability.Unsuitable, candidate.Suitability);
        Assert.Equal(12 - 3.99, offset.NeededQuantity!.Value.SiValue, 1e-9);
        Assert.Equal("an offset of 8.01 V in the range of 8 Vpp, or AC coupling where the level does not matter", Assert.Single(candidate.SmallestChanges).Change);
        Finding finding = candidate.Outlook!.Findings.Single(found => found.Code == "offset-needed");
        Assert.Equal(Severity.Failure, finding.Severity);
        // Of 14.02 Vpp half is 7.01 V, and 5 V of offset reach 12.01 V.
        Assert.Contains("a range of at least 14.02 Vpp with the same offset", finding.Remedy, StringComparison.Ordinal);
        Assert.Equal(Suitability.Suitable, Only(new InputRange(14.02.Vpp(), null, 5.V())).Suitability);
    }

    [Fact]
    public void OffsetThatIsNotStated_IsUnproven_AndSaid()
    {
        Candidate candidate = Only(new InputRange(40.mVpp()));
        Assert.Equal(Suitability.Unproven, candidate.Suitability);
        Assert.Equal("offset of the range", Assert.Single(candidate.NotStated));
        Assert.Contains("not stated: offset of the range", ListOf(new InputRange(40.mVpp())).ToString(), StringComparison.Ordinal);
        Assert.Equal(Severity.Note, candidate.Outlook!.Findings.Single(found => found.Code == "offset-needed").Severity);
    }

    // Whatever range is chosen with an offset that it takes, the signal lies between its ends.
    [Property(MaxTest = 200)]
    public Property ChosenRange_HoldsTheSignal() => Prop.ForAll(Gen.Choose(-40, 40).ToArbitrary(), Gen.Choose(1, 20).ToArbitrary(), Gen.Choose(0, 30).ToArbitrary(), (level, swing, offset) =>
    {
        var signal = Signal.Sine(1.kHz(), PeakVoltage.FromVolts(swing / 2.0)).WithOffset(Voltage.FromVolts(level));
        var instrument = Instrument(new[] { 2, 10, 40 }.Select(volts => new InputRange(PeakToPeakVoltage.FromVolts(volts), null, Voltage.FromVolts(offset))).ToArray());
        Candidate candidate = Assert.Single(Shortlist.Of(new Requirement(signal).WithAmplitudeTolerance(3.Percent()), new Catalogue([instrument], [Direct])).Candidates);
        double half = candidate.Range.FullScale.Volts / 2, moved = Math.Max(-offset, Math.Min(offset, level));
        bool holds = level + (swing / 2.0) <= moved + half + 1e-9 && level - (swing / 2.0) >= moved - half - 1e-9;
        return holds == candidate.Criteria.Where(criterion => criterion.Code is "range" or "offset").All(criterion => criterion.Suitability == Suitability.Suitable);
    });

    [Fact]
    public void Documents_CarryTheOffset()
    {
        Bench bench = Bench.Parse(File("5 V"));
        Assert.Equal(5, bench.Setup.MaximumOffset!.Value.Volts);
        Assert.Contains(bench.Outlook.Findings, finding => finding.Code == "offset-needed" && finding.Severity == Severity.Failure);
        Assert.False(Bench.TryParse(File("-5 V"), out _, out var problems));
        Assert.Contains("capture.maximumOffset", Assert.Single(problems).ToString(), StringComparison.Ordinal);

        Catalogue catalogue = Catalogue.Parse("""
            { "instruments": [ { "name": "digitizer", "bandwidth": "200 MHz", "response": "Gaussian", "bits": "8 bit", "channels": [ { "rate": "1 GSa/s", "memory": "1 Mpts" } ],
              "ranges": [ { "fullScale": "40 mVpp", "maximumOffset": "1 V" } ], "inputs": [ { "resistance": "1 MΩ", "capacitance": "14 pF" } ] } ] }
            """);
        Assert.Equal(1, catalogue.Instruments[0].Ranges[0].MaximumOffset!.Value.Volts);
    }

    private static CatalogueProbe Direct => new CatalogueProbe("cable", 1, Stated.Claimed(1.GHz()), ResponseShape.Gaussian, 1.MOhm(), 50.pF(), 1.MOhm()).WithMaximumVoltage(100.V());

    private static CatalogueInstrument Instrument(params InputRange[] ranges) =>
        new("digitizer", Stated.Claimed(200.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(1, 1.GSaPerS(), 1.Mpts())], ranges, [new InputTermination(1.MOhm(), 14.pF())]);

    private static Shortlist ListOf(params InputRange[] ranges) => Shortlist.Of(Wanted, new Catalogue([Instrument(ranges)], [Direct]));

    private static Candidate Only(params InputRange[] ranges) => Assert.Single(ListOf(ranges).Candidates);

    private static string File(string offset) => $$"""
        {
          "name": "ripple of the supply",
          "signal": { "shape": "sine", "frequency": "1 kHz", "amplitude": "10 mVpk", "offset": "12 V" },
          "input": { "resistance": "1 MΩ", "capacitance": "14 pF", "response": "Gaussian", "bandwidth": "200 MHz" },
          "digitizer": { "rate": "1 GSa/s", "memory": "1 Mpts", "bits": "8 bit" },
          "capture": { "window": "10 ms", "range": "40 mVpp", "maximumOffset": "{{offset}}" }
        }
        """;
}
