using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Tests.Handbook;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

public class OutlookTests
{
    private static readonly Digitizer Bench200 = new(2.GSaPerS(), 14.Mpts(), 8.bit());
    private static readonly Signal BeaconClock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());

    [Theory, HandbookData("SE-F1")]
    public void DisplayedAmplitude_ThroughProbeAndFrontEnd_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response chain = Response.Gaussian(500.MHz()).Then(Response.Butterworth(4, 1.GHz()));
        Outlook outlook = Signal.Sine(Frequency.FromHertz(value.Number("f")), 1.Vpk()).Through(chain).SampledBy(Bench200).Over(1.us());
        value.Confirm(-outlook.AmplitudeError.Fraction);
    }

    [Fact]
    public void NoiseAsLargeAsTheRange_LeavesNoBits_AndTheOutlookSaysSo()
    {
        Outlook Noisy(RmsVoltage noise) => BeaconClock.Through(Response.Gaussian(200.MHz())).SampledBy(Bench200).WithNoise(noise).WithFullScale(8.Vpp()).Over(1.us());
        Outlook drowned = Noisy(3.Vrms());
        Assert.Equal(0, drowned.EffectiveBits!.Value.Bits);
        Assert.Contains(drowned.Findings, finding => finding.Code == "no-bits-left" && finding.Severity == Severity.Failure);
        Assert.Contains("no-bits-left", drowned.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(Noisy(1.Vrms()).Findings, finding => finding.Code == "no-bits-left");
    }

    [Theory, HandbookData("SE-F2")]
    public void RootSumSquareRule_BesideTheComputedEdge_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        value.Confirm(EdgeThrough.RootSumSquare(EdgeThrough.RootSumSquare(value.Number("tr_signal"), value.Number("tr_probe")), value.Number("tr_front_end")));
    }

    [Theory, HandbookData("SE-F3")]
    public void AliasedFundamental_ShowsWhereTheHandbookFoldsIt(string id)
    {
        CheckValue value = CheckValue.All[id];
        Outlook outlook = Signal.Sine(Frequency.FromHertz(value.Number("f_signal")), 1.Vpk()).Through(Response.Cascade())
            .SampledBy(new Digitizer(SampleRate.FromSamplesPerSecond(value.Number("fs")), 1.Mpts(), 8.bit())).Over(1.us());
        value.Confirm(outlook.Aliases[0].ShownAt.Hertz);
        Assert.Contains(outlook.Findings, finding => finding.Code == "fundamental-aliased");
    }

    [Theory, HandbookData("SE-D3")]
    public void SampleRate_CappedByMemory_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Outlook outlook = BeaconClock.Through(Response.Gaussian(1.GHz()))
            .SampledBy(new Digitizer(SampleRate.FromSamplesPerSecond(value.Number("fs_max")), PointCount.FromPoints(value.Integer("memory")), 8.bit())).Over(Duration.FromSeconds(value.Number("window")));
        value.Confirm(outlook.SampleRate.Value.SamplesPerSecond);
        Assert.True(outlook.IsLimitedByMemory);
        Assert.Contains(outlook.Findings, finding => finding.Code == "memory-caps-rate");
    }

    [Theory, HandbookData("SE-D4")]
    public void IntervalsOnAnEdge_AreTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Outlook outlook = Signal.Square(1.MHz(), 1.Vpp(), Duration.FromSeconds(value.Number("tr"))).Through(Response.Cascade())
            .SampledBy(new Digitizer(SampleRate.FromSamplesPerSecond(value.Number("fs")), 1.Mpts(), 8.bit())).Over(1.us());
        value.Confirm(outlook.IntervalsPerEdge!.Value.Fraction);
        Assert.Contains(outlook.Findings, finding => finding.Code == "few-points-per-edge");
    }

    [Theory, HandbookData("SE-D2")]
    public void RecordLength_IsTheHandbooks(string id)
    {
        CheckValue value = CheckValue.All[id];
        Outlook outlook = BeaconClock.Through(Response.Gaussian(1.GHz()))
            .SampledBy(new Digitizer(SampleRate.FromSamplesPerSecond(value.Number("fs")), 20.Mpts(), 8.bit())).Over(Duration.FromSeconds(value.Number("window")));
        value.Confirm(outlook.RecordLength.Points);
    }

    // Common practice, no source: 2 GSa/s for 100 ms is 200 Mpts, for 50 ns 100 points.
    [Fact]
    public void TwoGigasamples_FillTwoHundredMegapointsInAHundredMilliseconds()
    {
        var deep = new Digitizer(2.GSaPerS(), 1.Gpts(), 8.bit());
        Assert.Equal(200.Mpts(), BeaconClock.Through(Response.Gaussian(200.MHz())).SampledBy(deep).Over(100.ms()).RecordLength);
        Assert.Equal(100.pts(), BeaconClock.Through(Response.Gaussian(200.MHz())).SampledBy(deep).Over(50.ns()).RecordLength);
    }

    // Common practice, no source: 14 divisions of 10 ms with 14 000 points is 100 kSa/s, so a 26 ns pulse meets a sample with a chance of 0.26 %.
    [Fact]
    public void NarrowPulse_AtAHundredKilosamples_FallsBetweenSamples()
    {
        Digitizer shallow = new Digitizer(1.GSaPerS(), 14.kpts(), 8.bit()).WithDivisions(8, 14);
        Outlook outlook = Signal.Square(100.Hz(), 1.Vpp(), 10.ns()).Through(Response.Gaussian(200.MHz())).SampledBy(shallow).WatchingFor(26.ns()).PerDivision(10.ms());
        Assert.Equal(140.ms(), outlook.Window);
        Assert.Equal(14.kpts(), outlook.RecordLength);
        Assert.Equal(100e3, outlook.SampleRate.Value.SamplesPerSecond, 1e-6);
        Assert.Equal(0.26, outlook.Events!.ChanceOfASample.Percent, 1e-12);
        Assert.Contains(outlook.Findings, finding => finding.Code == "pulse-between-samples" && finding.Severity == Severity.Failure);
    }

    // Common practice, no source: the 10 % to 90 % swing of a sine takes 0.2952 of its period.
    [Fact]
    public void EdgeOfASine_Takes2952OfItsPeriod() => Assert.Equal(0.2952 / 20e6, Signal.Sine(20.MHz(), 1.Vpk()).RiseTime.Seconds, 0.00005 / 20e6);

    // Common practice, no source: the half-power gain of a chain at its bandwidth, 0.7071 (0.7079 for a literal -3 dB).
    [Fact]
    public void SineAtTheBandwidth_ShowsAtSeventyPercent()
    {
        Outlook outlook = Signal.Sine(200.MHz(), 1.Vpk()).Through(Response.Gaussian(200.MHz())).SampledBy(Bench200).Over(1.us());
        Assert.Equal(Math.Sqrt(0.5) * 2, outlook.DisplayedAmplitude.Value.Volts, 1e-9);
        Assert.Contains(outlook.Findings, finding => finding.Code == "amplitude-short" && finding.Severity == Severity.Failure);
    }

    [Fact]
    public void GaussianEdgeInAGaussianChain_AddsAsRootSumSquare()
    {
        Signal signal = Signal.Square(1.MHz(), 1.Vpp(), 1.ns(), EdgeShape.Gaussian);
        Outlook outlook = signal.Through(Response.Gaussian(500.MHz())).SampledBy(Bench200).Over(1.us());
        double chain = outlook.ChainRiseTime!.Value.Seconds;
        Assert.Equal(Math.Sqrt(1e-18 + (chain * chain)), outlook.DisplayedEdge!.Value.Seconds, 1e-15);
        Assert.Equal(0, outlook.DisplayedEdge.Rules[0].Difference.Fraction, 1e-6);
    }

    // Handbook 2.5: a ramp (0 to 100 % in 1) into an RC of tau; the error of the root-sum-square estimate is listed.
    [Theory]
    [InlineData(0.1, 1.69)]
    [InlineData(0.25, 0.88)]
    [InlineData(0.5, -1.42)]
    [InlineData(1.0, -0.95)]
    public void RampIntoAnRc_ErrorOfRootSumSquare_IsTheHandbooks(double tau, double percent)
    {
        var edge = new Edge(0.8.us());
        double exact = EdgeThrough.RiseTime(edge, Response.SinglePole(Frequency.FromHertz(1 / (2 * Math.PI * tau * 1e-6))));
        double rule = EdgeThrough.RootSumSquare(0.8e-6, Math.Log(9) * tau * 1e-6);
        Assert.Equal(percent, 100 * ((rule / exact) - 1), 0.005);
    }

    // Handbook 2.5: an exponential edge of rise r into a Gaussian of rise 1.
    [Theory]
    [InlineData(1, -2.17)]
    [InlineData(2, -1.52)]
    [InlineData(3, -0.78)]
    [InlineData(5, -0.04)]
    public void ExponentialEdgeIntoAGaussian_ErrorOfRootSumSquare_IsTheHandbooks(double rise, double percent)
    {
        Response chain = Response.Gaussian(Frequency.FromHertz(0.339624 / 1e-9));
        double exact = EdgeThrough.RiseTime(new Edge(Duration.FromNanoseconds(rise), EdgeShape.Exponential), chain);
        double rule = EdgeThrough.RootSumSquare(rise * 1e-9, chain.RiseTime.Seconds);
        Assert.Equal(percent, 100 * ((rule / exact) - 1), 0.005);
    }

    [Fact]
    public void RampThroughNearlyNothing_StaysAsItIs()
    {
        Assert.Equal(1e-6, EdgeThrough.RiseTime(new Edge(1.us()), Response.Gaussian(1.GHz())), 1e-11);
        Assert.Equal(1e-6, EdgeThrough.RiseTime(new Edge(1.us()), Response.Cascade()), 1e-18);
    }

    // More bandwidth never makes the edge slower. For responses that overshoot this holds until the overshoot lifts the 90 % point: a Butterworth of order 8 shows a straight ramp up to 1.8 %
    // faster than it is, and only then, with still more bandwidth, as it is.
    [Property(MaxTest = 40)]
    public Property MoreBandwidth_NeverSlowsTheEdge() => Prop.ForAll(Gen.Choose(20, 2000).Two().ToArbitrary(), Gen.Choose(0, 5).ToArbitrary(), (megahertz, which) =>
    {
        ResponseShape shape = new[] { ResponseShape.SinglePole, ResponseShape.Gaussian, ResponseShape.Butterworth(2), ResponseShape.Butterworth(4), ResponseShape.Bessel(3), ResponseShape.Butterworth(8) }[which];
        double slack = which < 2 ? 1e-9 : 0.02;
        // Below 150 MHz a ringing response does not settle between the clock's edges: the edge shown is then one of the waveform, not of the step.
        if (which >= 2) megahertz = (Math.Max(150, megahertz.Item1), Math.Max(150, megahertz.Item2));
        return Edge(Math.Max(megahertz.Item1, megahertz.Item2)) <= Edge(Math.Min(megahertz.Item1, megahertz.Item2)) * (1 + slack);

        double Edge(int bandwidth) => BeaconClock.Through(shape.At(bandwidth.MHz())).SampledBy(Bench200).Over(1.us()).DisplayedEdge!.Value.Seconds;
    });

    // More memory never lowers the rate.
    [Property(MaxTest = 100)]
    public Property MoreMemory_NeverLowersTheRate() => Prop.ForAll(Gen.Choose(2, 100_000).Two().ToArbitrary(), Gen.Choose(1, 100_000).ToArbitrary(), (kilopoints, microseconds) =>
        Rate(Math.Max(kilopoints.Item1, kilopoints.Item2), microseconds) >= Rate(Math.Min(kilopoints.Item1, kilopoints.Item2), microseconds));

    // A slow square behind a fast chain has millions of lines above half the rate; their sum is counted in blocks. The exact share follows from Parseval.
    [Fact]
    public void FoldedContent_OfASlowIdealSquare_IsThePowerAboveHalfTheRate()
    {
        Signal slow = Signal.Square(1.kHz(), 2.Vpp());
        var sampler = new Digitizer(10.MSaPerS(), 1.Mpts(), 8.bit());
        Outlook outlook = slow.Through(Response.Gaussian(1.GHz())).SampledBy(sampler).Over(10.ms());
        // Odd harmonics from 5001 on: sum of 1/n² over odd n above N is close to 1/(2N), that over all is π²/8.
        double expected = Math.Sqrt(8 / (Math.PI * Math.PI) / (2 * 5000.0));
        Assert.Equal(expected, outlook.AliasShare!.Value.Fraction, 0.1 * expected);
    }

    [Fact]
    public void UnsettledLevels_ShowLessThanTheirSwing()
    {
        // A 24 MHz clock behind 10 MHz: only the fundamental is left, 4/π of the swing times the gain there.
        Outlook outlook = BeaconClock.Through(Response.Butterworth(4, 10.MHz())).SampledBy(Bench200).Over(1.us());
        double gain = Response.Butterworth(4, 10.MHz()).AmplitudeRatio(24.MHz()).Fraction, fundamental = 2 * BeaconClock.Harmonic(1).Peak.Volts * gain;
        Assert.Equal(fundamental, outlook.DisplayedAmplitude.Value.Volts, 0.02 * fundamental);
        Assert.Contains(outlook.Findings, finding => finding.Code == "signal-beyond-bandwidth");
    }

    [Fact]
    public void SourceAboveWhatMayBeTouched_IsASafetyFinding()
    {
        Signal mains = Signal.Sine(50.Hz(), 325.Vpk());
        FrontEnd input = FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Response.Gaussian(100.MHz())).WithRating(VoltageRating.Constant(300.V()));
        Outlook outlook = mains.Through(MeasurementChain.From(1.Ohm()).Into(input)).SampledBy(Bench200).Over(40.ms());
        Assert.Equal(["above-rating", "hazardous-voltage"], outlook.Findings.Where(finding => finding.Severity == Severity.Safety).Select(finding => finding.Code));
        Assert.Contains("local codes", outlook.Findings[0].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void WeakestLink_IsTheSlowestStage()
    {
        Probe slow = Probe.Passive(10, 10.MOhm(), 10.pF(), 60.MHz()).WithName("slow probe");
        FrontEnd fast = FrontEnd.HighImpedance(1.MOhm(), 12.pF(), Response.Gaussian(500.MHz())).WithName("fast input");
        Outlook outlook = BeaconClock.Through(MeasurementChain.From(50.Ohm()).Probe(slow).Into(fast)).SampledBy(Bench200).Over(1.us());
        Assert.Equal("slow probe", outlook.WeakestLink!.Element);
    }

    [Fact]
    public void EffectiveBits_AreInterpolatedInTheStatedOnes()
    {
        Outlook outlook = Signal.Sine(10.MHz(), 0.4.Vpk()).Through(Response.Gaussian(200.MHz())).SampledBy(Bench200)
            .WithEffectiveBits([new EffectiveBitsPoint(1.MHz(), 7.5.bit()), new EffectiveBitsPoint(100.MHz(), 6.5.bit())]).Over(1.us());
        Assert.Equal(7.0, outlook.EffectiveBits!.Value.Bits, 1e-12);
    }

    [Fact]
    public void IdealEffectiveBits_WithoutAnyNoise_AreTheConvertersBits()
    {
        Outlook outlook = Signal.Sine(1.MHz(), 0.5.Vpk()).Through(Response.Cascade()).SampledBy(Bench200).WithFullScale(1.Vpp()).Over(10.us());
        Assert.Equal(8.0, outlook.EffectiveBits!.Value.Bits, 1e-9);
    }

    // A pulse far longer than the chain's settling once met the periodic sum behind the step response again, and was shown at half its height.
    [Theory]
    [InlineData(20)]
    [InlineData(40)]
    [InlineData(1000)]
    public void LongPulse_ReachesItsWholeHeight(int nanoseconds)
    {
        MeasurementChain chain = MeasurementChain.From(10.Ohm()).Probe(Probe.Passive(10, 10.MOhm(), 16.pF(), 200.MHz())).Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())));
        Outlook outlook = BeaconClock.Through(chain).SampledBy(Bench200).WatchingFor(nanoseconds.ns()).Over(1.us());
        Assert.Equal(1.0, outlook.Events!.Height.Fraction, 1e-5);
    }

    [Fact]
    public void TrialsForConfidence_AreThoseOfRepeatedChances()
    {
        Outlook outlook = Signal.Square(1.kHz(), 1.Vpp(), 10.ns()).Through(Response.Gaussian(200.MHz())).SampledBy(new Digitizer(1.MSaPerS(), 1.Mpts(), 8.bit())).WithRecordRate(1.kHz()).WatchingFor(100.ns(), 10.Hz()).Over(1.ms());
        EventOutlook events = outlook.Events!;
        Assert.Equal(0.1, events.ChanceOfASample.Fraction, 1e-12);
        long trials = events.TrialsFor(99.Percent())!.Value;
        Assert.True(1 - Math.Pow(0.9, trials) >= 0.99 && 1 - Math.Pow(0.9, trials - 1) < 0.99);
    }

    private static SampleRate Rate(int kilopoints, int microseconds) =>
        BeaconClock.Through(Response.Gaussian(200.MHz())).SampledBy(new Digitizer(2.GSaPerS(), kilopoints.kpts(), 8.bit())).Over(microseconds.us()).SampleRate.Value;
}
