using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Which candidates another one makes needless, and the demands of floating signals.</summary>
public sealed class DominatedCandidatesTests
{
    private static readonly CatalogueProbe Stick = new CatalogueProbe("stick", 10, Stated.Guaranteed(500.MHz()), ResponseShape.Gaussian, 10.MOhm(), 8.pF(), 1.MOhm()).WithMaximumVoltage(400.V()).WithPrice(1);

    private static CatalogueInstrument Box(string name, int megahertz, double? price, Stated<Frequency>? bandwidth = null)
    {
        var box = new CatalogueInstrument(name, bandwidth ?? Stated.Guaranteed(megahertz.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(1, 1.GSaPerS(), 1.Mpts())], [new InputRange(1.Vpp())], [new InputTermination(1.MOhm(), 14.pF(), 50.V())]);
        return price is { } units ? box.WithPrice(units) : box;
    }

    private static Candidate[] Listed(params CatalogueInstrument[] boxes) =>
        Shortlist.Of(new Requirement(Signal.Sine(20.MHz(), 1.Vpk())).WithAmplitudeTolerance(10.Percent()), new Catalogue(boxes, [Stick])).Candidates.ToArray();

    private static bool IsDominated(Candidate[] all, string name) => all.Single(candidate => candidate.Instrument.Name == name).IsDominated;

    // 100 MHz shows 20 MHz to 1.4 %, 30 MHz to 14 %, which is too much (2^-(f/B)²/2, handbook 2.2).
    [Fact]
    public void OnlySuitableCandidatesWithAPrice_AreDominated()
    {
        Candidate[] all = Listed(Box("good", 200, 10), Box("dear", 200, 20), Box("slow", 100, 20), Box("wide", 300, 20), Box("failing", 30, 20), Box("unpriced", 100, null));
        Assert.Equal((false, true, true, false, false, false), (IsDominated(all, "good"), IsDominated(all, "dear"), IsDominated(all, "slow"), IsDominated(all, "wide"), IsDominated(all, "failing"), IsDominated(all, "unpriced")));
        Assert.Equal("failing", all[^1].Instrument.Name);
    }

    [Fact]
    public void TwoThatAreAlike_DoNotDominateEachOther()
    {
        Candidate[] all = Listed(Box("one", 200, 10), Box("other", 200, 10));
        Assert.False(IsDominated(all, "one") || IsDominated(all, "other"));
    }

    // What is only claimed does not dominate what is guaranteed, the other way round it does.
    [Fact]
    public void Assurance_CountsLikeAMargin()
    {
        Candidate[] all = Listed(Box("claimed", 200, 10, Stated.Claimed(200.MHz())), Box("guaranteed", 200, 10), Box("also guaranteed", 200, 12), Box("also claimed", 200, 12, Stated.Claimed(200.MHz())));
        Assert.Equal((true, false, true, true), (IsDominated(all, "claimed"), IsDominated(all, "guaranteed"), IsDominated(all, "also guaranteed"), IsDominated(all, "also claimed")));
    }

    // Behind an earthed input a floating signal fails; isolated inputs stand what is stated of them and of the probe's reference lead, whichever is less; behind a differential probe only the probe counts.
    [Theory]
    [InlineData(false, false, "an earthed input", -1)]
    [InlineData(true, false, "a differential probe", 0)]
    [InlineData(false, true, "isolated inputs", 0)]
    public void TheReferenceOfAFloatingSignal_IsToldByWhatCarriesIt(bool differential, bool isolated, string offered, int margin)
    {
        CatalogueProbe probe = (differential ? Stick.WithRating(null, true) : Stick).WithMaximumToEarth(600.V());
        var box = new CatalogueInstrument("box", Stated.Guaranteed(200.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(1, 1.GSaPerS(), 1.Mpts())], [new InputRange(1.Vpp())], [new InputTermination(1.MOhm(), 14.pF(), 50.V(), 300.V())]);
        Candidate candidate = Shortlist.Of(new Requirement(Signal.Sine(20.MHz(), 1.Vpk())).WithAmplitudeTolerance(10.Percent()).WithCommonMode(100.V()), new Catalogue([isolated ? box.WithRating(null, true) : box], [probe])).Candidates[0];
        Criterion reference = candidate.Criteria.Single(one => one.Code == "reference");
        Assert.Equal((offered, (double)margin), (reference.Offered, reference.Margin!.Value.Fraction));
        Assert.Equal(margin < 0, candidate.Limiting!.Code == "reference");
        string? toEarth = candidate.Criteria.SingleOrDefault(one => one.Code == "rating-to-earth")?.Offered;
        Assert.Equal(margin < 0 ? null : differential ? "600 V" : "300 V", toEarth);
    }

    // A probe of 30 MHz shows 20 MHz to 14 %: one of the named bandwidth cures, one of a fiftieth less does not.
    [Fact]
    public void ASlowProbe_IsCuredByTheBandwidthThatIsNamed()
    {
        Requirement wanted = new Requirement(Signal.Sine(20.MHz(), 1.Vpk())).WithAmplitudeTolerance(10.Percent());
        CatalogueProbe With(Frequency bandwidth) => new CatalogueProbe("stick", 10, Stated.Guaranteed(bandwidth), ResponseShape.Gaussian, 10.MOhm(), 8.pF(), 1.MOhm()).WithMaximumVoltage(400.V());
        SmallestChange[] Changes(Frequency bandwidth) => Shortlist.Of(wanted, new Catalogue([Box("box", 500, 1)], [With(bandwidth)])).Candidates[0].SmallestChanges.ToArray();
        string change = Assert.Single(Changes(30.MHz())).Change;
        Assert.StartsWith("a probe of ", change, StringComparison.Ordinal);
        Assert.EndsWith(" with this instrument", change, StringComparison.Ordinal);
        Frequency needed = Frequency.Parse(change.Substring(11, change.Length - 11 - " with this instrument".Length));
        Assert.Empty(Changes(needed));
        Assert.NotEmpty(Changes(needed * 0.98));
    }

    // Both too slow by far: through 15 MHz twice 29 % of 20 MHz are left, through one of them 54 %. Widened together they cure.
    [Fact]
    public void ASlowProbeOnASlowInput_AreBothNamed()
    {
        Requirement wanted = new Requirement(Signal.Sine(20.MHz(), 1.Vpk())).WithAmplitudeTolerance(10.Percent());
        CatalogueProbe With(Frequency bandwidth) => new CatalogueProbe("stick", 10, Stated.Guaranteed(bandwidth), ResponseShape.Gaussian, 10.MOhm(), 8.pF(), 1.MOhm()).WithMaximumVoltage(400.V());
        SmallestChange[] Changes(Frequency probe, Frequency input) => Shortlist.Of(wanted, new Catalogue([Box("box", 0, 1, Stated.Guaranteed(input))], [With(probe)])).Candidates[0].SmallestChanges.ToArray();
        string change = Assert.Single(Changes(15.MHz(), 15.MHz())).Change;
        string[] parts = change.Substring("a probe of ".Length).Split([" and an input of "], StringSplitOptions.None);
        Assert.Equal(2, parts.Length);
        Assert.Empty(Changes(Frequency.Parse(parts[0]), Frequency.Parse(parts[1])));
        Assert.NotEmpty(Changes(Frequency.Parse(parts[0]) * 0.98, Frequency.Parse(parts[1]) * 0.98));
    }
}
