using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Signals that are neither one sine nor levels: two tones, bursts, rectified sines. What has to be shown of them is not their repetition.</summary>
public class OutlookOfTonesTests
{
    private static readonly Signal TwoTones = Signal.TwoTone(50.MHz(), 1.Vpk(), 300.MHz(), 1.Vpk());
    private static readonly Signal Burst = Signal.Burst(300.MHz(), 1.Vpk(), 20, 10.us());

    private static Outlook Through200MHz(Signal signal, SampleRate rate) => signal.Through(Response.Gaussian(200.MHz())).SampledBy(new Digitizer(rate, 1.Mpts(), 8.bit())).Over(20.us());

    // A Gaussian response of 200 MHz leaves 2^(-(f/200 MHz)²/2): 0.97857 at 50 MHz, 0.45850 at 300 MHz.
    [Fact]
    public void TwoTones_AreShownEachWithItsOwnGain()
    {
        Outlook outlook = Through200MHz(TwoTones, 2.GSaPerS());
        Assert.Equal(2 * (0.978572 + 0.458502), outlook.DisplayedAmplitude.Value.Volts, 1e-5);
        Assert.Contains(outlook.Findings, finding => finding.Code == "amplitude-short");
        Assert.Contains(outlook.Findings, finding => finding.Code == "signal-beyond-bandwidth");
        Assert.Equal(0.978572, outlook.Harmonics[0].AmplitudeRatio.Fraction, 1e-5);
        Assert.Equal(0.458502, outlook.Harmonics[1].AmplitudeRatio.Fraction, 1e-5);
    }

    // 300 MHz at 500 MSa/s shows at 200 MHz.
    [Fact]
    public void HigherTone_IsWhatTheSampleRateMustReach()
    {
        Outlook outlook = Through200MHz(TwoTones, 500.MSaPerS());
        Finding aliased = Assert.Single(outlook.Findings, finding => finding.Code == "fundamental-aliased");
        Assert.StartsWith("750 MSa/s", aliased.Remedy, StringComparison.Ordinal);
        HarmonicOutlook alias = Assert.Single(outlook.Aliases);
        Assert.Equal(200e6, alias.ShownAt.Hertz, 1);
        Assert.Equal("300 MHz, folds to 200 MHz with 458.5 mVpk", alias.ToString());
        Assert.Null(outlook.InterpolationError);
        Assert.Equal(500.0 / 300, outlook.PointsPerPeriod!.Value.Fraction, 1e-12);
    }

    [Fact]
    public void Burst_IsShownWithTheGainAtItsCarrier()
    {
        Outlook outlook = Through200MHz(Burst, 500.MSaPerS());
        Assert.Equal(2 * 0.458502, outlook.DisplayedAmplitude.Value.Volts, 1e-5);
        Assert.Contains(outlook.Findings, finding => finding.Code == "fundamental-aliased");
        Assert.Equal(1, outlook.AliasShare!.Value.Fraction, 1e-12);
        Assert.Equal(250.0 / 300, outlook.NyquistMargin!.Value.Fraction, 1e-12);
    }

    // The Fourier series of |sin|, 2/π - 4/π Σ cos(2nωt)/(4n² - 1), each term with the gain of the pole, summed to n = 2000 and searched for its extremes: 0.614427 V.
    [Fact]
    public void RectifiedSine_IsShownWithAllItsHarmonics()
    {
        Outlook outlook = Signal.FullWaveRectified(10.MHz(), 1.Vpk()).Through(Response.SinglePole(20.MHz())).SampledBy(new Digitizer(2.GSaPerS(), 1.Mpts(), 8.bit())).Over(1.us());
        Assert.Equal(0.614427, outlook.DisplayedAmplitude.Value.Volts, 1e-5);
    }

    [Fact]
    public void Specification_AsksForTheHigherToneAndTheCarrier()
    {
        foreach (Signal signal in new[] { TwoTones, Burst, Signal.Sine(300.MHz(), 1.Vpk()) })
        {
            Specification needed = new Requirement(signal).WithAmplitudeTolerance(3.Percent()).WithSourceResistance(50.Ohm()).Specify();
            // 300 MHz / √(-2 ld 0.97): where a Gaussian of 1 Hz is 3 % short.
            Assert.Equal(300e6 / 0.296457, needed.Bandwidth!.Value.Hertz, 1e4);
            Assert.Equal(2.5 * 300e6, needed.SampleRate!.Value.SamplesPerSecond, 1);
            Assert.NotNull(needed.ProbeCapacitance);
        }
    }

    [Fact]
    public void AmplitudeOfWhatHasNoLines_IsSaidToFollowFromNothing()
    {
        Specification needed = new Requirement(Signal.SinglePulse(1.Vpp(), 50.ns(), 5.ns(), 5.ns())).WithAmplitudeTolerance(3.Percent()).Specify();
        Assert.Null(needed.Bandwidth);
        Assert.Equal("no-line", Assert.Single(needed.Findings).Code);
    }

    [Fact]
    public void HarmonicsOfARectifiedSine_AreKeptAsAsked()
    {
        Specification needed = new Requirement(Signal.FullWaveRectified(50.Hz(), 1.Vpk())).WithHarmonics(5).Specify();
        // At half power or better up to the fifth of 100 Hz.
        Assert.Equal(500, needed.Bandwidth!.Value.Hertz, 1e-6);
    }

    // A load that takes half of the voltage at DC is cured by no bandwidth.
    [Fact]
    public void AmplitudeThatTheLoadTakes_IsNotCuredByBandwidth()
    {
        MeasurementChain chain = MeasurementChain.From(50.Ohm()).Into(FrontEnd.HighImpedance(50.Ohm(), 2.pF(), Response.Gaussian(200.MHz())));
        Outlook outlook = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns()).Through(chain).SampledBy(new Digitizer(2.GSaPerS(), 1.Mpts(), 8.bit())).Over(1.us());
        Finding amplitude = Assert.Single(outlook.Findings, finding => finding.Code == "amplitude-short");
        Assert.StartsWith("less load on the source", amplitude.Remedy, StringComparison.Ordinal);
    }

    // Noise of 0.5 codes and more dithers: the mean of N records has an N-th of the variance of both, and lies between codes. Half a bit for each doubling (handbook 6.9).
    [Fact]
    public void AveragedDitheredNoise_ResolvesBelowOneCode()
    {
        SampledSignal noisy = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Gaussian(200.MHz())).SampledBy(new Digitizer(2.GSaPerS(), 1.Mpts(), 8.bit())).WithFullScale(2.56.Vpp()).WithNoise(10.mVrms());
        Outlook one = noisy.Over(10.us()), mean = noisy.WithAveraging(64).Over(10.us());
        Assert.Equal(one.TotalNoise!.Value.Volts / 8, mean.TotalNoise!.Value.Volts, 1e-9);
        Assert.Equal(one.EffectiveBits!.Value.Bits + 3, mean.EffectiveBits!.Value.Bits, 1e-9);
        Assert.Equal(2 * mean.TotalNoise.Value.Volts, mean.SmallestDetail!.Value.Volts, 1e-12);
        // Without noise to dither it, the error of quantisation is the same in every record.
        Outlook quiet = noisy.WithNoise(1.mVrms()).WithAveraging(64).Over(10.us());
        Assert.Equal(10e-3, quiet.SmallestDetail!.Value.Volts, 1e-12);
    }
}
