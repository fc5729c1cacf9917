using System;
using System.Collections.Generic;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

public class ShortlistTests
{
    private static readonly Catalogue Workshop = Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json"));
    private static readonly Signal BeaconClock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());

    private static Requirement Wanted => new Requirement(BeaconClock).WithEdgeTolerance(15.Percent()).WithAmplitudeTolerance(10.Percent()).WithHarmonics(5)
        .WithWindow(1.ms()).WithSmallestDetail(100.mV()).WithSourceResistance(33.Ohm());

    [Fact]
    public void Shortlist_PutsSuitableBeforeUnprovenBeforeUnsuitable()
    {
        Shortlist list = Shortlist.Of(Wanted, Workshop);
        Assert.NotNull(list.Best);
        Assert.Equal(list.Candidates.OrderByDescending(candidate => candidate.Suitability), list.Candidates);
        Assert.All(list.Candidates.Where(candidate => candidate.Suitability == Suitability.Suitable), candidate => Assert.All(candidate.Criteria, criterion => Assert.True(criterion.Margin!.Value.Fraction >= 0)));
    }

    [Fact]
    public void Demands_CarryTheirQuantitiesBesideTheirTexts()
    {
        Criterion edge = Shortlist.Of(Wanted, Workshop).Best!.Criteria.Single(criterion => criterion.Code == "edge");
        Criterion range = Shortlist.Of(Wanted, Workshop).Best!.Criteria.Single(criterion => criterion.Code == "range");

        Assert.Equal(new Quantity(0.15, QuantityKind.Ratio), edge.NeededQuantity);
        Assert.Equal(("at most 15 %", "3.3 Vpp"), (edge.Needed, range.Needed));
        Assert.Equal(QuantityKind.PeakToPeakVoltage, range.OfferedQuantity!.Value.Kind);
        Assert.Equal(range.Margin!.Value.Fraction, (range.OfferedQuantity.Value.SiValue / range.NeededQuantity!.Value.SiValue) - 1, 1e-9);
    }

    [Theory]
    [InlineData(-0.25, "-25 %")]
    [InlineData(0.5, "50 %")]
    [InlineData(8.99, "899 %")]
    [InlineData(9, "10 times")]
    [InlineData(9370, "9371 times")]
    public void AMarginOfTenTimesAndMore_IsToldAsAFactor(double margin, string expected) => Assert.Equal(expected, FewDigits.Margin(Ratio.FromFraction(margin)));

    // 2 GSa/s where 1 MSa/s would do.
    [Fact]
    public void AMarginBeyondPercents_ReadsAsTimesInACheck()
    {
        Signal slow = Signal.Sine(100.kHz(), 1.Vpk());
        Outlook outlook = slow.Through(Response.Gaussian(500.MHz())).SampledBy(new Digitizer(5.GSaPerS(), 10.Mpts(), 12.bit())).Over(100.us());
        string text = new Requirement(slow).WithAmplitudeTolerance(2.Percent()).Specify().ToString(outlook);
        Assert.Contains(" times", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\+\d{4,} %", text);
    }

    // The screening of thousands and the outlook of one must tell the same story.
    [Fact]
    public void ScreenedErrors_AreThoseOfTheOutlook()
    {
        int compared = 0;
        foreach (Candidate candidate in Shortlist.Of(Wanted, Workshop).Candidates)
        {
            Outlook outlook = candidate.Outlook!;
            Criterion edge = candidate.Criteria.Single(criterion => criterion.Code == "edge"), amplitude = candidate.Criteria.Single(criterion => criterion.Code == "amplitude");
            double top = outlook.Response.AmplitudeRatio(120.MHz()).Fraction;
            Assert.Equal(FewDigits.Of(Math.Abs(1 - top), Ratio.Kind), amplitude.Offered);
            if (outlook.EdgeError is not { } error || Math.Abs(error.Fraction) > 0.6)
                continue;
            double wantedMargin = error.Fraction <= 0 ? 1e6 : (0.15 / error.Fraction) - 1;
            // Where a lead rings, what is left of it after sixteen rise times blurs the comparison by up to half a percent.
            double screened = error.Fraction <= 0 ? 0 : 0.15 / (edge.Margin!.Value.Fraction + 1);
            if (wantedMargin < 1e5)
                Assert.Equal(error.Fraction, screened, 5e-3);
            compared++;
        }
        Assert.True(compared > 10);
    }

    [Property(MaxTest = 20)]
    public Property Order_DoesNotDependOnTheCatalogues() => Prop.ForAll(ArbMap.Default.ArbFor<int>(), seed =>
    {
        var random = new Random(seed);
        var shuffled = new Catalogue(Workshop.Instruments.OrderBy(_ => random.Next()), Workshop.Probes.OrderBy(_ => random.Next()));
        return Shortlist.Of(Wanted, shuffled).Candidates.Select(Text).SequenceEqual(Shortlist.Of(Wanted, Workshop).Candidates.Select(Text));

        static string Text(Candidate candidate) => $"{candidate} {candidate.Termination} {candidate.ScoreFraction:R} {candidate.IsDominated}";
    });

    [Property(MaxTest = 30)]
    public Property LooserDemand_NeverMakesACandidateUnsuitable() => Prop.ForAll(Gen.Choose(1, 60).Two().ToArbitrary(), percents =>
    {
        (int tight, int loose) = (Math.Min(percents.Item1, percents.Item2), Math.Max(percents.Item1, percents.Item2));
        HashSet<string> strict = Ask(tight), lax = Ask(loose);
        return strict.IsSubsetOf(lax);

        static HashSet<string> Ask(int percent) => Shortlist.Of(Wanted.WithEdgeTolerance(percent.Percent()).WithAmplitudeTolerance(percent.Percent()), Workshop)
            .Suitable.Where(candidate => candidate.BandwidthLimit is null).Select(candidate => candidate.ToString()).ToHashSet();
    });

    [Fact]
    public void DominatedCandidate_HasAnotherThatIsNowhereWorse()
    {
        Shortlist list = Shortlist.Of(Wanted, Workshop);
        Candidate[] dominated = list.Suitable.Where(candidate => candidate.IsDominated).ToArray();
        Assert.NotEmpty(dominated);
        Assert.All(dominated, candidate => Assert.Contains(list.Suitable, other => !ReferenceEquals(other, candidate) && other.PriceInUnits <= candidate.PriceInUnits && other.Assurance >= candidate.Assurance
            && other.Criteria.Zip(candidate.Criteria, (mine, others) => mine.Margin!.Value >= others.Margin!.Value).All(better => better)));
    }

    [Fact]
    public void UnsuitableCandidate_PassesAfterTheChangeItNames()
    {
        Candidate bench = Shortlist.Of(Wanted, Workshop).Candidates.First(candidate => candidate.Instrument.Name == "bench digitizer, 200 MHz" && candidate.Probe.Name == "passive probe 10:1, 500 MHz" && candidate.BandwidthLimit is null);
        Assert.Equal("amplitude", bench.Limiting!.Code);
        string change = Assert.Single(bench.SmallestChanges).Change;
        Frequency needed = Frequency.Parse(change["an input of ".Length..change.IndexOf(" with", StringComparison.Ordinal)]);
        CatalogueInstrument old = bench.Instrument;
        var faster = new CatalogueInstrument(old.Name, Stated.Guaranteed(needed), old.Shape, old.Bits, old.ChannelModes, old.Ranges, old.Terminations);
        Candidate cured = Shortlist.Of(Wanted, new Catalogue([faster], [bench.Probe])).Candidates[0];
        Assert.NotEqual(Suitability.Unsuitable, cured.Suitability);
    }

    [Fact]
    public void MissingNoise_MakesADetailUnproven()
    {
        Requirement coarse = new Requirement(Signal.Sine(1.MHz(), 1.Vpk())).WithAmplitudeTolerance(10.Percent()).WithSmallestDetail(100.mV());
        Candidate pocket = Shortlist.Of(coarse, Workshop).Candidates.First(candidate => candidate.Instrument.Name.StartsWith("pocket", StringComparison.Ordinal) && candidate.Probe.AttenuationFactor == 10);
        Assert.Equal(Suitability.Unproven, pocket.Suitability);
    }

    [Fact]
    public void Weights_DecideBetweenCheapAndAmple()
    {
        Candidate cheapest = Shortlist.Of(Wanted, Workshop, ShortlistWeights.Default.WithMarginFactor(0).WithAssuranceFactor(0)).Best!;
        Assert.Equal(Shortlist.Of(Wanted, Workshop).Suitable.Min(candidate => candidate.PriceInUnits), cheapest.PriceInUnits);
        Candidate amplest = Shortlist.Of(Wanted, Workshop, ShortlistWeights.Default.WithPriceFactor(0).WithAssuranceFactor(0)).Best!;
        Assert.Equal(Shortlist.Of(Wanted, Workshop).Suitable.Max(candidate => candidate.Limiting!.Margin!.Value.Fraction), amplest.Limiting!.Margin!.Value.Fraction, 1e-12);
    }

    [Fact]
    public void OverVoltage_IsAFailedCriterion()
    {
        Requirement mains = new Requirement(Signal.Sine(50.Hz(), 325.Vpk())).WithAmplitudeTolerance(5.Percent());
        Assert.All(Shortlist.Of(mains, Workshop).Candidates.Where(candidate => candidate.Probe.Name.StartsWith("passive probe 1:1", StringComparison.Ordinal)), candidate =>
        {
            Assert.Equal(Suitability.Unsuitable, candidate.Suitability);
            Assert.Contains(candidate.Criteria, criterion => criterion.Code == "rating" && criterion.Suitability == Suitability.Unsuitable);
        });
    }

    // Against the edge computed from the step response, for shapes and speeds across the range that the spectrum follows.
    [Theory]
    [InlineData("single pole", 150)]
    [InlineData("Gaussian", 150)]
    [InlineData("Gaussian", 1000)]
    [InlineData("Butterworth 4", 200)]
    [InlineData("Butterworth 8", 500)]
    [InlineData("Bessel 3", 120)]
    public void EdgeSpectrum_AgreesWithTheStepResponse(string shape, int megahertz)
    {
        Response input = ResponseShape.Parse(shape).At(megahertz.MHz()), probe = Response.Gaussian(400.MHz());
        foreach (EdgeShape edgeShape in new[] { EdgeShape.Linear, EdgeShape.Gaussian, EdgeShape.Exponential })
        {
            var edge = new Edge(2.8.ns(), edgeShape);
            var spectrum = new EdgeSpectrum(edge);
            double screened = spectrum.RiseTime(spectrum.GainsOf(probe), spectrum.GainsOf(input), new Complex[EdgeSpectrum.LineCount]);
            Assert.Equal(EdgeThrough.RiseTime(edge, probe.Then(input)), screened, 2.8e-9 * 2e-3);
        }
    }

    [Theory]
    [InlineData("{}", "the catalogue is empty")]
    [InlineData("{ \"probes\": [ { \"name\": \"probe\", \"attenuation\": 10, \"bandwidth\": \"200 MHz\", \"response\": \"Gaussian\", \"resistance\": \"10 MΩ\", \"capacitance\": \"16 pF\", \"into\": \"1 MΩ\" } ] }", "no instruments")]
    public void ShortlistOfNothing_SaysWhy(string catalogue, string reason)
    {
        Shortlist shortlist = Shortlist.Of(new Requirement(Signal.Sine(1.MHz(), 1.Vpk())), Catalogue.Parse(catalogue));
        Assert.Empty(shortlist.Candidates);
        Assert.Contains(reason, shortlist.WhyEmpty, StringComparison.Ordinal);
        Assert.Contains(reason, shortlist.ToString(), StringComparison.Ordinal);
    }

    // A slow signal has thousands of lines behind a fast chain; what folds of them must be told by shortlist and outlook alike.
    [Theory]
    [InlineData("square", 64)]
    [InlineData("square", 4)]
    [InlineData("rare pulses", 64)]
    [InlineData("rare pulses", 4)]
    public void FoldedContent_IsThatOfTheOutlook(string signal, int milliseconds)
    {
        Signal applied = signal == "square" ? Signal.Square(1.kHz(), 1.Vpp(), 20.ns()) : Signal.PulseTrain(1.kHz(), 1.Vpp(), 10.us(), 20.ns(), 20.ns());
        Requirement wanted = new Requirement(applied).WithAmplitudeTolerance(1.Percent()).WithWindow(milliseconds.ms());
        int compared = 0;
        foreach (Candidate candidate in Shortlist.Of(wanted, Workshop).Candidates.Where(candidate => candidate.Probe.LeadInductance is null || candidate.Probe.AttenuationFactor > 1))
        {
            Criterion folded = candidate.Criteria.Single(criterion => criterion.Code == "folded-content");
            // Blocks of lines are a tenth of their number wide: good to a tenth of what folds.
            Assert.Equal(candidate.Outlook!.AliasShare!.Value.Fraction, folded.OfferedQuantity!.Value.SiValue, 1e-3 + (0.1 * candidate.Outlook.AliasShare.Value.Fraction));
            compared++;
        }
        Assert.True(compared > 10);
    }

    // With several signals each demand holds for the one that asks most: a slow edge of a small swing beside a fast one of a large swing.
    [Fact]
    public void TimingOfSeveralSignals_IsThatOfTheOneThatAsksMost()
    {
        Signal large = Signal.Square(1.MHz(), 6.Vpp(), 5.ns()), small = Signal.Square(1.MHz(), 0.6.Vpp(), 100.ns());
        double together = Margin(large, small), alone = Margin(large);
        // Of the large one alone, an edge of a twentieth of the time over ten times the swing.
        Assert.True(together < alone / 20, $"{together} against {alone}");

        static double Margin(params Signal[] signals) => Shortlist.Of(new Requirement(signals).WithTimingTolerance(1.us()).WithSourceResistance(33.Ohm()), Workshop).Candidates
            .First(candidate => candidate.ToString() == "bench digitizer, 200 MHz + passive probe 10:1, 500 MHz").Criteria.Single(criterion => criterion.Code == "timing").Margin!.Value.Fraction;
    }
}
