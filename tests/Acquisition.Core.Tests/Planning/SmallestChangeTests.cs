using System;
using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What would help a candidate that fails: each change names its demand, and cures it when it is made.</summary>
public class SmallestChangeTests
{
    private static readonly Catalogue Workshop = Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json"));
    private static readonly Signal Clock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());

    [Fact]
    public void EveryFailedDemand_HasItsOwnChange_NamedInTheText()
    {
        Shortlist list = Shortlist.Of(new Requirement(Clock).WithAmplitudeTolerance(3.Percent()).WithEdgeTolerance(5.Percent()).WithHarmonics(5).WithSourceResistance(33.Ohm()), Workshop);
        Assert.All(list.Candidates, candidate => Assert.Equal(
            candidate.Criteria.Where(criterion => criterion.Suitability == Suitability.Unsuitable).Select(criterion => criterion.Code), candidate.SmallestChanges.Select(change => change.Demand.Code)));
        Assert.Contains("what would help: amplitude error: ", list.ToString(), StringComparison.Ordinal);
        Assert.Contains("what would help: edge error: ", list.ToString(), StringComparison.Ordinal);
        Assert.All(list.Candidates.SelectMany(candidate => candidate.SmallestChanges), change => Assert.Equal($"{change.Demand.Name}: {change.Change}", change.ToString()));
    }

    // A limit of 200 MHz stays in the way of any faster input: the change must take it out.
    [Fact]
    public void ChangeOfALimitedCandidate_SwitchesTheLimitOff()
    {
        Requirement wanted = new Requirement(Clock).WithAmplitudeTolerance(5.Percent()).WithHarmonics(5);
        CatalogueInstrument slow = Digitizer(300.MHz());
        CatalogueProbe probe = new CatalogueProbe("probe", 10, Stated.Claimed(1.5.GHz()), ResponseShape.Gaussian, 10.MOhm(), 8.pF(), 1.MOhm()).WithMaximumVoltage(400.V());
        Candidate limited = Shortlist.Of(wanted, new Catalogue([slow], [probe])).Candidates.Single(candidate => candidate.BandwidthLimit is not null);
        Match change = Regex.Match(Assert.Single(limited.SmallestChanges).Change, "^an input of (.*) with this probe, and the bandwidth limit off$");

        Assert.True(change.Success, limited.SmallestChanges[0].Change);
        Candidate[] cured = Shortlist.Of(wanted, new Catalogue([Digitizer(Frequency.Parse(change.Groups[1].Value))], [probe])).Candidates.ToArray();
        Assert.Empty(cured.Single(candidate => candidate.BandwidthLimit is null).SmallestChanges);
        Assert.Equal("the bandwidth limit switched off", Assert.Single(cured.Single(candidate => candidate.BandwidthLimit is not null).SmallestChanges).Change);
    }

    // 500 Ω on 50 Ω show 500/550 at DC; 3 % take 50 Ω x 0.97/0.03 = 1617 Ω at the tip (handbook 7.1).
    [Fact]
    public void DividerErrorAtDc_IsCuredByLessLoad_NotByBandwidth()
    {
        Requirement wanted = new Requirement(Signal.Sine(1.MHz(), 0.5.Vpk())).WithAmplitudeTolerance(3.Percent()).WithSourceResistance(50.Ohm());
        Candidate divider = Shortlist.Of(wanted, Workshop).Candidates.First(candidate => candidate.Probe.Name.StartsWith("low-capacitance divider", StringComparison.Ordinal));
        SmallestChange change = Assert.Single(divider.SmallestChanges);

        Assert.Equal("a probe of at least 1.617 kΩ on this source: at DC it shows 90.91 %, which no bandwidth cures", change.Change);
        CatalogueProbe old = divider.Probe;
        CatalogueProbe lighter = new CatalogueProbe("lighter", old.AttenuationFactor, old.Bandwidth, old.Shape, 1.617.kOhm(), old.Capacitance, old.Into).WithMaximumVoltage(12.V());
        Assert.Empty(Assert.Single(Shortlist.Of(wanted, new Catalogue([divider.Instrument], [lighter])).Candidates, candidate => candidate.BandwidthLimit is null).SmallestChanges);
    }

    // Enough of everything but a lead of 120 nH, which rings with 16 pF at 115 MHz: no bandwidth helps, a shorter lead does.
    [Fact]
    public void RingingLead_IsCuredByAShorterOne()
    {
        Requirement wanted = new Requirement(Signal.Sine(60.MHz(), 0.5.Vpk())).WithAmplitudeTolerance(5.Percent()).WithSourceResistance(10.Ohm());
        CatalogueInstrument instrument = Digitizer(1.GHz()).WithBandwidthLimits([]);
        CatalogueProbe probe = new CatalogueProbe("probe", 10, Stated.Claimed(1.GHz()), ResponseShape.Gaussian, 10.MOhm(), 16.pF(), 1.MOhm()).WithLeadInductance(120.nH()).WithMaximumVoltage(400.V());
        string change = Assert.Single(Assert.Single(Shortlist.Of(wanted, new Catalogue([instrument], [probe])).Candidates).SmallestChanges).Change;

        Match lead = Regex.Match(change, "^a lead of at most (.*) on this probe$");
        Assert.True(lead.Success, change);
        Assert.Empty(Assert.Single(Shortlist.Of(wanted, new Catalogue([instrument], [probe.WithLeadInductance(Inductance.Parse(lead.Groups[1].Value))])).Candidates).SmallestChanges);
        Assert.NotEmpty(Assert.Single(Shortlist.Of(wanted, new Catalogue([instrument], [probe.WithLeadInductance(Inductance.Parse(lead.Groups[1].Value) * 1.02)])).Candidates).SmallestChanges);
    }

    private static CatalogueInstrument Digitizer(Frequency bandwidth) => new CatalogueInstrument(
        "digitizer", Stated.Claimed(bandwidth), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(1, 5.GSaPerS(), 1.Mpts())], [new InputRange(20.Vpp())], [new InputTermination(1.MOhm(), 14.pF(), 50.V())]).WithBandwidthLimits([200.MHz()]);
}
