using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

public class SetupAdviceTests
{
    private static readonly Catalogue Workshop = Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json"));
    private static readonly Signal BeaconClock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());

    private static CatalogueInstrument Bench => Workshop.Instrument("bench digitizer, 200 MHz");

    private static CatalogueProbe Probe => Workshop.Probe("passive probe 10:1, 200 MHz");

    [Fact]
    public void EverySetting_HasAReason()
    {
        SetupAdvice advice = SetupAdvice.For(new Requirement(BeaconClock).WithEdgeTolerance(30.Percent()).WithSourceResistance(33.Ohm()), Bench, Probe);
        Assert.Equal(["window", "sample rate", "range", "bandwidth limit", "acquisition mode", "interpolation"], advice.Settings.Select(setting => setting.Setting));
        Assert.All(advice.Settings, setting => Assert.NotEmpty(setting.Reason));
        Assert.Equal(10 * BeaconClock.Period!.Value.Seconds, advice.Window.Seconds, 1e-15);
        Assert.Equal(8.Vpp(), advice.Outlooks[0].FullScale);
    }

    [Fact]
    public void LongWindow_GetsPeakDetectionForANarrowPulseAndSaysWhatIsLost()
    {
        Signal lamp = Signal.PulseTrain(2.kHz(), 3.Vpp(), 20.us(), 60.ns(), 60.ns());
        SetupAdvice advice = SetupAdvice.For(new Requirement(lamp).WithNarrowestPulse(10.ns()).WithWindow(1.s()).WithSourceResistance(10.Ohm()), Bench, Probe);
        Advice mode = advice.Settings.Single(setting => setting.Setting == "acquisition mode");
        Assert.Equal("peak detect", mode.Value);
        Assert.Contains("effective bits", mode.Loses, StringComparison.Ordinal);
        Assert.Contains(advice.Settings, setting => setting.Setting == "segments");
        Assert.Equal(1.0, advice.Outlooks[0].Events!.ChanceOfASample.Fraction);
    }

    [Fact]
    public void SmallRipple_GetsTheBandwidthLimitAndAveraging()
    {
        Signal ripple = Signal.Sine(100.kHz(), 0.05.Vpk());
        SetupAdvice advice = SetupAdvice.For(new Requirement(ripple).WithAmplitudeTolerance(2.Percent()).WithSmallestDetail(1.mV()).WithSourceResistance(10.Ohm()), Bench, Workshop.Probe("passive probe 10:1, 500 MHz"));
        Assert.Equal("20 MHz", advice.Settings.Single(setting => setting.Setting == "bandwidth limit").Value);
        Assert.StartsWith("average of", advice.Settings.Single(setting => setting.Setting == "acquisition mode").Value, StringComparison.Ordinal);
        Assert.True(advice.Outlooks[0].Noise < advice.Setups[0].Applied.Chain!.FrontEnd.Noise!.Value * 10);
    }

    [Fact]
    public void ProbeWithoutItsInput_IsRefusedByName()
    {
        var refusal = Assert.Throws<ArgumentException>(() => SetupAdvice.For(new Requirement(BeaconClock), Workshop.Instrument("bench digitizer, 100 MHz"), Workshop.Probe("active probe 10:1, 1 GHz")));
        Assert.Contains("has no input of 50 Ω", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SeveralSignals_AreServedByOneSetup_AndEachSettingNamesTheOneThatDecides()
    {
        Signal burst = Signal.Square(1.MHz(), 12.Vpp(), 50.ns()), sync = Signal.Square(10.kHz(), 1.Vpp(), 20.ns());
        SetupAdvice advice = SetupAdvice.For(new Requirement(sync, burst, BeaconClock).WithEdgeTolerance(30.Percent()).WithSourceResistance(33.Ohm()), Bench, Probe);

        Assert.Equal((sync, BeaconClock, burst), (Deciding("window"), Deciding("sample rate"), Deciding("range")));
        // Ten periods of the slowest.
        Assert.Equal(1e-3, advice.Window.Seconds, 1e-12);
        Assert.Equal(3, advice.Outlooks.Count);
        Assert.All(advice.Outlooks, outlook => Assert.Equal((advice.Window, 80.Vpp()), (outlook.Window, outlook.FullScale!.Value)));
        Assert.Equal([sync, burst, BeaconClock], advice.Outlooks.Select(outlook => outlook.Signal));
        Assert.Empty(advice.Findings);
        Assert.Contains("decided by " + burst, advice.ToString(), StringComparison.Ordinal);

        Signal? Deciding(string setting) => advice.Settings.Single(made => made.Setting == setting).DecidedBy;
    }

    // Whatever the order of the signals, the settings are the same.
    [Fact]
    public void OrderOfTheSignals_DoesNotChangeTheSettings()
    {
        Signal[] signals = [BeaconClock, Signal.Sine(50.Hz(), 3.Vpk()), Signal.SinglePulse(0.5.Vpp(), 40.ns(), 4.ns(), 4.ns())];
        string[] first = Settings(signals), second = Settings([signals[2], signals[0], signals[1]]);
        Assert.Equal(first, second);

        string[] Settings(Signal[] order) => SetupAdvice.For(new Requirement(order).WithEdgeTolerance(20.Percent()).WithSmallestDetail(20.mV()).WithSourceResistance(33.Ohm()), Bench, Probe)
            .Settings.Select(setting => setting.ToString()).ToArray();
    }

    // 14 Mpts at the 1.43 GSa/s that four intervals on 2.8 ns take are 9.8 ms; ten periods of 50 Hz are 200 ms.
    [Fact]
    public void LongViewAgainstAFastEdge_IsSaidWithSegmentsZoneAndTwoCaptures()
    {
        SetupAdvice advice = SetupAdvice.For(new Requirement(Signal.Sine(50.Hz(), 3.Vpk()), BeaconClock).WithEdgeTolerance(5.Percent()).WithSourceResistance(33.Ohm()), Bench, Probe);

        Finding conflict = Assert.Single(advice.Findings);
        Assert.Equal("window-against-rate", conflict.Code);
        Assert.Contains("sine, 50 Hz is shown over 200 ms", conflict.Message, StringComparison.Ordinal);
        Assert.Contains("21 segments of 466.7 µs", conflict.Remedy, StringComparison.Ordinal);
        Assert.Contains("a zone of 9.8 ms", conflict.Remedy, StringComparison.Ordinal);
        Assert.Contains("two captures, 9.8 ms at 1.429 GSa/s for square, 24 MHz and 200 ms at 70 MSa/s for sine, 50 Hz", conflict.Remedy, StringComparison.Ordinal);
        Assert.Equal(9.8e-3, advice.Window.Seconds, 1e-9);
        // The remedy cures: a window of that zone has the rate, and no conflict.
        SetupAdvice zone = SetupAdvice.For(new Requirement(Signal.Sine(50.Hz(), 3.Vpk()), BeaconClock).WithEdgeTolerance(5.Percent()).WithSourceResistance(33.Ohm()).WithWindow(9.8.ms()), Bench, Probe);
        Assert.Empty(zone.Findings);
        Assert.True(zone.Outlooks[1].SampleRate.Value.SamplesPerSecond >= 4 / 2.8e-9 * (1 - 1e-9));
    }

    [Fact]
    public void SmallDetailBesideALargeSwing_GetsAChannelOfItsOwn()
    {
        Signal supply = Signal.Square(1.kHz(), 40.Vpp(), 1.us()), ripple = Signal.Sine(100.kHz(), 0.05.Vpk());
        SetupAdvice advice = SetupAdvice.For(new Requirement(supply, ripple).WithSmallestDetail(50.mV()).WithSourceResistance(10.Ohm()), Bench, Probe);
        Finding conflict = Assert.Single(advice.Findings);
        Assert.Equal("range-against-detail", conflict.Code);
        // 80 Vpp over 2^8 against 160 mVpp over 2^8.
        Assert.Contains("codes of 312.5 mV", conflict.Message, StringComparison.Ordinal);
        Assert.Contains("in the range of 160 mVpp with codes of 625 µV", conflict.Remedy, StringComparison.Ordinal);
    }

    // The mean over samples is a low-pass: at 2.5 points per period it takes a quarter of the amplitude, which no tolerance of 2 % allows.
    [Fact]
    public void HighResolution_NeverCostsTheAmplitudeThatIsDemanded()
    {
        CatalogueInstrument steady = Workshop.Instrument("bench digitizer, 500 MHz, 12 bit").WithModes([AcquisitionMode.HighResolution]).WithBandwidthLimits([]);
        int chosen = 0;
        foreach (int megahertz in new[] { 1, 5, 20, 50, 100 })
        {
            Signal sine = Signal.Sine(megahertz.MHz(), 0.4.Vpk());
            SetupAdvice advice = SetupAdvice.For(new Requirement(sine).WithAmplitudeTolerance(5.Percent()).WithSmallestDetail(2.mV()), steady, Workshop.Probe("passive probe 10:1, 500 MHz"));
            Assert.True(-advice.Outlooks[0].AmplitudeError.Fraction <= 0.05, $"{megahertz} MHz: {advice}");
            chosen += advice.Setups[0].Mode == AcquisitionMode.HighResolution ? 1 : 0;
        }
        Assert.True(chosen > 1);
    }

    [Fact]
    public void DetailThatNoModeReaches_IsSaid()
    {
        CatalogueInstrument plain = Bench.WithModes([]).WithBandwidthLimits([]);
        Advice mode = SetupAdvice.For(new Requirement(BeaconClock).WithSmallestDetail(1.mV()).WithSourceResistance(33.Ohm()), plain, Probe).Settings.Single(setting => setting.Setting == "acquisition mode");
        Assert.Equal("sample", mode.Value);
        Assert.StartsWith("the 1 mV that are wanted", mode.Loses, StringComparison.Ordinal);
    }

    // A rectangular pulse of 1 ms has no edges to take a view from: it is shown with as much before and after it.
    [Fact]
    public void SinglePulse_IsShownWhole()
    {
        SetupAdvice advice = SetupAdvice.For(new Requirement(Signal.SinglePulse(1.Vpp(), 1.ms(), default, default)).WithSourceResistance(33.Ohm()), Bench, Probe);
        Assert.Equal(3e-3, advice.Window.Seconds, 1e-12);
    }

    [Fact]
    public void Comparison_OfASetupWithItself_IsEmpty()
    {
        Outlook outlook = BeaconClock.Through(Response.Gaussian(200.MHz())).SampledBy(new Digitizer(2.GSaPerS(), 1.Mpts(), 8.bit())).Over(1.us());
        OutlookComparison comparison = OutlookComparison.Of(outlook, outlook);
        Assert.Empty(comparison.Differences);
        Assert.Equal("no difference\n", comparison.ToString());
    }

    [Fact]
    public void Comparison_WithASlowerProbe_SaysWhatIsLost()
    {
        var digitizer = new Digitizer(2.GSaPerS(), 1.Mpts(), 8.bit());
        Outlook fast = BeaconClock.Through(Response.Gaussian(500.MHz())).SampledBy(digitizer).Over(1.us()), slow = BeaconClock.Through(Response.Gaussian(100.MHz())).SampledBy(digitizer).Over(1.us());
        OutlookComparison comparison = OutlookComparison.Of(fast, slow);
        Assert.All(comparison.Differences, row => Assert.NotEqual(row.FirstQuantity, row.SecondQuantity));
        Assert.Equal(fast.ChainBandwidth!.Value.ToQuantity(), comparison.Differences.Single(row => row.Name == "bandwidth of the chain").FirstQuantity);
        Assert.Equal(-0.8, comparison.Differences.Single(row => row.Name == "bandwidth of the chain").Relative!.Value.Fraction, 1e-9);
        Assert.Contains(comparison.FindingsAdded, finding => finding.Code == "edge-slowed");
        Assert.Contains("edge on the display", comparison.ToString(), StringComparison.Ordinal);
    }

    // The outlook computes, the simulation captures; what is measured on the captured record must agree within the error of reading a sampled record.
    [Theory]
    [InlineData(60)]
    [InlineData(150)]
    [InlineData(400)]
    public void PredictedTrace_OfASine_HasTheDisplayedAmplitude(int megahertz)
    {
        Outlook outlook = Signal.Sine(24.MHz(), 1.Vpk()).Through(Response.Butterworth(3, megahertz.MHz())).SampledBy(new Digitizer(1.01.GSaPerS(), 1.Mpts(), 12.bit())).WithFullScale(2.5.Vpp()).Over(20.us());
        Record trace = outlook.PredictTrace();
        double rms = Math.Sqrt(trace.ToSiValues().Average(volts => volts * volts));
        // Half a code of 0.6 mV, and an incomplete last period in 485: together well below 0.2 %.
        Assert.Equal(outlook.DisplayedAmplitude.Value.Volts / 2 / Math.Sqrt(2), rms, 2e-3 * rms);
    }

    [Theory]
    [InlineData("Gaussian", 200)]
    [InlineData("Bessel 3", 120)]
    [InlineData("Butterworth 4", 150)]
    public void PredictedTrace_OfASquare_HasTheDisplayedEdge(string shape, int megahertz)
    {
        Outlook outlook = Signal.Square(5.MHz(), 1.Vpp(), 2.8.ns()).Through(ResponseShape.Parse(shape).At(megahertz.MHz())).SampledBy(new Digitizer(40.GSaPerS(), 1.Mpts(), 16.bit())).WithFullScale(1.5.Vpp()).Over(300.ns());
        double[] volts = outlook.PredictTrace().ToSiValues();
        // Levels are known (-0.5 V, 0.5 V): reading 10 % and 90 % between 25 ps samples of a smooth edge is good to a tenth of an interval.
        double measured = FirstAbove(volts, 0.4) - FirstAbove(volts, -0.4);
        Assert.Equal(outlook.DisplayedEdge!.Value.Seconds * 40e9, measured, 0.2);

        static double FirstAbove(double[] volts, double level)
        {
            int start = Array.FindIndex(volts, value => value < -0.45);
            int at = Array.FindIndex(volts, start, value => value >= level);
            return at - ((volts[at] - level) / (volts[at] - volts[at - 1]));
        }
    }

    // The chance of a sample on a pulse, against ten thousand captures with a random phase.
    [Fact]
    public void ChanceOfASample_IsThatOfManyRandomPhases()
    {
        Outlook outlook = Signal.Square(1.kHz(), 1.Vpp(), 10.ns()).Through(Response.Gaussian(200.MHz())).SampledBy(new Digitizer(1.MSaPerS(), 1.Mpts(), 8.bit())).WatchingFor(260.ns()).Over(1.ms());
        var random = new Random(7);
        int hits = 0;
        for (int i = 0; i < 10_000; i++)
        {
            double start = random.NextDouble() * 1e-3, first = Math.Ceiling(start * 1e6) / 1e6;
            hits += first < start + 260e-9 ? 1 : 0;
        }
        // Five standard deviations of a binomial of 10 000.
        Assert.Equal(outlook.Events!.ChanceOfASample.Fraction, hits / 10_000.0, 5 * Math.Sqrt(0.26 * 0.74 / 10_000));
    }
}
