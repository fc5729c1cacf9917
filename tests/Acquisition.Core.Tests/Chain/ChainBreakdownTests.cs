using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

public sealed class ChainBreakdownTests
{
    private static readonly FrontEnd Input = FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Response.Gaussian(500.MHz())).WithName("bench digitizer, 500 MHz").WithNoise(0.3.mVrms());

    private static readonly Probe Slow = Probe.Passive(10, 10.MOhm(), 10.pF(), 200.MHz()).WithName("passive probe 10:1, 200 MHz");

    private static MeasurementChain Chain => MeasurementChain.From(50.Ohm()).Probe(Slow).Into(Input);

    [Fact]
    public void ContributionsInOrder_AddUpToTheWhole()
    {
        ChainBreakdown<DecibelRatio> loss = Chain.AttenuationAt(100.MHz());
        ChainBreakdown<Duration> rise = Chain.RiseTimeByParts();

        Assert.Equal(loss.Total.Decibels, loss.Contributions.Sum(part => part.InOrder.Decibels), 10);
        Assert.Equal(rise.Total.Nanoseconds, rise.Contributions.Sum(part => part.InOrder.Nanoseconds), 10);
    }

    [Fact]
    public void TheSlowProbe_IsTheWeakestLink()
    {
        Assert.Equal("passive probe 10:1, 200 MHz", Chain.AttenuationAt(100.MHz()).WeakestLink!.Part);
        Assert.Equal("passive probe 10:1, 200 MHz", Chain.RiseTimeByParts().WeakestLink!.Part);
    }

    [Fact]
    public void ARingingLead_IsTheWeakestLink_ThoughItsAttenuationIsNegative()
    {
        MeasurementChain ringing = MeasurementChain.From(50.Ohm()).Probe(Slow.WithGroundLead(150.mm())).Into(Input);

        Assert.True(ringing.AttenuationAt(100.MHz()).Total.Decibels < -1);
        Assert.Equal("passive probe 10:1, 200 MHz", ringing.AttenuationAt(100.MHz()).WeakestLink!.Part);
    }

    [Fact]
    public void Attenuation_IsPositiveForALoss_HereAndInFormulas()
    {
        // Half power at the bandwidth of one pole.
        MeasurementChain chain = MeasurementChain.From(50.Ohm()).Into(FrontEnd.FiftyOhm(Response.SinglePole(1.GHz())));

        Assert.Equal(10 * Math.Log10(2), chain.AttenuationAt(1.GHz()).Total.Decibels, 10);
        Assert.Equal("attenuation at 1 GHz re DC", chain.AttenuationAt(1.GHz()).Name);
        Assert.Equal(10 * Math.Log10(2), TextFormulas.EvaluateNumber("dB", "attenuation(chain(50 Ω, terminated_input(single_pole(1 GHz))), 1 GHz)"), 10);
    }

    [Fact]
    public void TakingThePartAway_GivesTheChainWithoutIt()
    {
        ChainContribution<DecibelRatio> frontEnd = Chain.AttenuationAt(100.MHz()).Contributions[2];
        // Without limits of its own the front end still has 1 MΩ, and the probe its own response and loading.
        Response without = MeasurementChain.From(50.Ohm()).Probe(Slow).Into(FrontEnd.HighImpedance(1.MOhm(), default, Response.Cascade())).Response;

        Assert.Equal((without.ReferenceGain - without.Gain(100.MHz())).Decibels, frontEnd.Without.Decibels, 10);
        Assert.Equal(frontEnd.ByRemoval.Decibels, Chain.AttenuationAt(100.MHz()).Total.Decibels - frontEnd.Without.Decibels, 10);
    }

    [Fact]
    public void PartsThatLoadEachOther_DoNotAdd_AndItIsSaid()
    {
        // Handbook 10.4: 1 pF and 4 pF on 25 Ω at 1 GHz lose 2.0867 dB together; single losses add up to 0.5358 dB less.
        MeasurementChain chain = MeasurementChain.From(25.Ohm())
            .Load(new NodeLoad(Resistance.FromOhms(1e12), 1.pF()))
            .Load(new NodeLoad(Resistance.FromOhms(1e12), 4.pF()))
            .Into(FrontEnd.HighImpedance(Resistance.FromOhms(1e12), default, Response.Cascade()));

        ChainBreakdown<DecibelRatio> loss = chain.AttenuationAt(1.GHz());

        Assert.Equal(2.08669804864733, loss.Total.Decibels, 8);
        Assert.Equal(0.535770719896078, loss.Total.Decibels - loss.PartsOnTheirOwn.Value.Decibels, 8);
        Assert.Contains(loss.Findings, finding => finding.Code == "parts-do-not-add");
    }

    [Fact]
    public void MatchedStages_AddTheirDecibels_AndNothingIsSaid()
    {
        MeasurementChain chain = MeasurementChain.From(50.Ohm())
            .Cable(new Cable(50.Ohm(), 1.m(), 0.66).WithLoss(CableLoss.FromPoint(1.GHz(), 1.dB())))
            .Into(FrontEnd.FiftyOhm(Response.Gaussian(1.GHz())));

        Assert.Empty(chain.AttenuationAt(500.MHz()).Findings);
    }

    [Fact]
    public void Noise_OfFiftyOhmsThroughOnePole_IsTheHandbooks()
    {
        // 50 Ω at 290 K matched: half of √(4kTRB), B = π/2 · 1 GHz (handbook 6.5, 6.6; TH-002 scaled).
        MeasurementChain chain = MeasurementChain.From(50.Ohm()).Into(FrontEnd.FiftyOhm(Response.SinglePole(1.GHz())));

        Assert.Equal(1.41489966075337e-05 * Math.Sqrt(Math.PI / 2), chain.Noise(Temperature.StandardNoise).Volts, 12);
    }

    [Fact]
    public void NoiseOfTheFrontEnd_IsMultipliedByTheProbe_AndRules()
    {
        IReadOnlyList<KeyValuePair<string, RmsVoltage>> noises = Chain.NoiseByParts(Temperature.StandardNoise);

        Assert.Equal("bench digitizer, 500 MHz", noises[0].Key);
        Assert.Equal(3, noises[0].Value.Millivolts, 12);
    }

    [Fact]
    public void ExplainedAnswers_CarryTheRuleBesideTheValue()
    {
        Explained<Duration> rise = Chain.RiseTime();
        Explained<Frequency> bandwidth = Chain.Bandwidth();
        Explained<Ratio> amplitude = Chain.AmplitudeAt(100.MHz());

        Assert.Equal(2, rise.Rules.Count);
        Assert.InRange(Math.Abs(rise.Rules[0].Difference.Percent), 0.1, 10);
        Assert.InRange(Math.Abs(bandwidth.Rules[0].Difference.Percent), 0, 10);
        Assert.InRange(amplitude.Value.Fraction, 0.5, 1);
        Assert.Equal(3, bandwidth.Inputs.Count);
        Assert.Equal(0, Chain.Overshoot().Value.Fraction, 9);
    }

    private static string[] CodesOf(IEnumerable<Finding> findings) => findings.Select(finding => finding.Code).ToArray();

    [Fact]
    public void TheNonsenseCases_AreNamed()
    {
        Assert.Contains("source-impedance-zero", CodesOf(MeasurementChain.From(SourceImpedance.None).Probe(Slow).Into(Input).Findings));
        Assert.Contains("dc-only", CodesOf(Chain.Examine(default, default, default)));
        Assert.Contains("chain-slower-than-signal", CodesOf(Chain.Examine(default, 1.ns(), default)));
        Assert.Contains("probe-slower-than-signal", CodesOf(Chain.Examine(default, 1.ns(), default)));
        Assert.Contains("content-beyond-bandwidth", CodesOf(Chain.Examine(400.MHz(), default, default)));
        Assert.Contains("probe-needs-another-input", CodesOf(MeasurementChain.From(50.Ohm()).Probe(Slow).Into(FrontEnd.FiftyOhm(Response.Gaussian(1.GHz()))).Findings));
        Assert.Contains("cannot-compensate", CodesOf(MeasurementChain.From(50.Ohm()).Probe(Slow).Into(Input.WithInputCapacitance(120.pF())).Findings));
        Assert.Contains("probe-needs-50-ohm", CodesOf(MeasurementChain.From(50.Ohm()).Probe(Probe.Active(10, 1.MOhm(), 1.pF(), Response.Gaussian(1.GHz()))).Into(Input).Findings));
        Assert.Contains("terminated-twice", CodesOf(MeasurementChain.From(50.Ohm()).FeedThrough(50.Ohm()).Into(FrontEnd.FiftyOhm(Response.Gaussian(1.GHz()))).Findings));
        Assert.Contains("feed-through-mismatch", CodesOf(MeasurementChain.From(50.Ohm()).FeedThrough(50.Ohm()).Into(Input).Findings));
        Assert.Contains("cable-mismatch", CodesOf(MeasurementChain.From(50.Ohm()).Cable(new Cable(75.Ohm(), 1.m(), 0.66)).Into(FrontEnd.FiftyOhm(Response.Gaussian(1.GHz()))).Findings));
        Assert.Contains("pad-not-terminated", CodesOf(MeasurementChain.From(50.Ohm()).Pad(AttenuatorPad.Pi(6.dB(), 50.Ohm())).Into(Input).Findings));
        Assert.Contains("dc-error", CodesOf(MeasurementChain.From(50.Ohm()).Into(FrontEnd.FiftyOhm(Response.Gaussian(1.GHz()))).Findings));
    }

    [Fact]
    public void ALongGroundLead_RingsWithinThreeTimesTheContent_AndTheCureHasANumber()
    {
        // 150 nH with 10 pF: 129.95 MHz, Q = 2.449 on 50 Ω (handbook 7.4).
        Finding finding = MeasurementChain.From(50.Ohm()).Probe(Slow.WithGroundLead(150.mm())).Into(Input).Examine(100.MHz(), default, default).Single(x => x.Code == "lead-resonance-low");

        Assert.Contains("129.9 MHz", finding.Message);
        Assert.Contains("2.45", finding.Message);
        Assert.Contains("28.1 nH", finding.Remedy);
    }

    // L s² + R s + 1/C has real roots from R = 2 √(L/C) on, Q = 1/2: 150 nH and 10 pF take 244.9 Ω (the discriminant of the series resonant circuit).
    [Theory]
    [InlineData(244, true)]
    [InlineData(246, false)]
    [InlineData(1000, false)]
    public void ALeadThatIsDampedToRealPoles_DoesNotRing(double ohms, bool rings) => Assert.Equal(
        rings, CodesOf(MeasurementChain.From(Resistance.FromOhms(ohms)).Probe(Slow.WithGroundLead(150.mm())).Into(Input).Examine(100.MHz(), default, default)).Contains("lead-resonance-low"));

    [Fact]
    public void Voltages_BringCautionsThatDefer()
    {
        FrontEnd fifty = FrontEnd.FiftyOhm(Response.Gaussian(1.GHz()));
        Assert.Contains("fifty-ohm-input", CodesOf(MeasurementChain.From(50.Ohm()).Into(fifty).Examine(1.MHz(), default, 20.Vpk())));
        IReadOnlyList<Finding> high = MeasurementChain.From(50.Ohm()).Probe(Slow.WithRating(VoltageRating.Derated([1.MHz(), 100.MHz()], [300.V(), 30.V()]))).Into(Input).Examine(10.MHz(), default, 200.Vpk());
        Assert.Contains("above-rating", CodesOf(high));
        Assert.All(high.Where(x => x.Severity == Severity.Safety), x => Assert.Contains("local codes", x.Remedy));
        Assert.All(VoltageCautions.OnMains().Concat(VoltageCautions.Floating()), x => Assert.Contains("licensed practice", x.Remedy));
        Assert.DoesNotContain(Chain.Examine(10.MHz(), default, 3.Vpk()), x => x.Severity == Severity.Safety);
    }

    [Fact]
    public void ADeratingCurve_IsStraightOnLogarithmicScales()
    {
        VoltageRating rating = VoltageRating.Derated([1.MHz(), 100.MHz()], [300.V(), 30.V()]);

        Assert.Equal(300, rating.At(10.kHz())!.Value.Volts, 9);
        Assert.Equal(300 / Math.Sqrt(10), rating.At(10.MHz())!.Value.Volts, 9);
        Assert.Null(rating.At(101.MHz()));
    }

    [Fact]
    public void AnAmplitudeStatedIntoFiftyOhms_ReadsAsStatedOnFiftyOhms()
    {
        MeasurementChain chain = MeasurementChain.From(SourceImpedance.Resistive(50.Ohm()).WithAmplitudeStatedInto(50.Ohm())).Into(FrontEnd.FiftyOhm(Response.Gaussian(1.GHz())));

        Assert.Equal(1, chain.Response.ReferenceGain.ToAmplitudeRatio().Fraction, 12);
        Assert.DoesNotContain(chain.Findings, finding => finding.Code == "dc-error");
    }
}
