using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Where the findings about amplitude, edge and range begin, and how grave they are on either side.</summary>
public sealed class OutlookLimitsTests
{
    private static readonly Digitizer Bench = new(5.GSaPerS(), 10.Mpts(), 8.bit());

    private static string Said(Outlook outlook, string code) => outlook.Findings.SingleOrDefault(finding => finding.Code == code)?.Severity.ToString() ?? "nothing";

    private static Finding Of(Outlook outlook, string code) => outlook.Findings.Single(finding => finding.Code == code);

    private static Outlook Wanting(Outlook outlook, Func<Requirement, Requirement> wanted) => new(outlook.Setup, outlook.Timebase, wanted(new Requirement(outlook.Signal)));

    // A Gaussian leaves 2^(-(f/B)²/2) (handbook 2.2), so that B = f/√(-2 ld(1 - e)) takes the fraction e.
    private static Outlook Short(double error) =>
        Signal.Sine(10.MHz(), 1.Vpk()).Through(Response.Gaussian(Frequency.FromHertz(10e6 / Math.Sqrt(-2 * Math.Log(1 - error, 2))))).SampledBy(Bench).Over(20.us());

    // Gaussian steps add as root-sum-square (handbook 2.5); 0.339624 is the product of rise time and bandwidth of a Gaussian (2.2).
    private static Outlook Slowed(double error) => Signal.Square(1.kHz(), 1.Vpp(), 100.ns(), EdgeShape.Gaussian)
        .Through(Response.Gaussian(Frequency.FromHertz(0.339624 / (100e-9 * Math.Sqrt((1 + error) * (1 + error) - 1))))).SampledBy(Bench).Over(1.ms());

    // Common practice, no source: 2 % and 10 % of the amplitude, 5 % and 20 % of the edge.
    [Theory]
    [InlineData(0.019, "nothing")]
    [InlineData(0.021, "Warning")]
    [InlineData(0.099, "Warning")]
    [InlineData(0.101, "Failure")]
    public void AShortAmplitude_IsSaidFromTwoPercentOn(double error, string severity) => Assert.Equal(severity, Said(Short(error), "amplitude-short"));

    [Theory]
    [InlineData(0.03, 5, "Note")]
    [InlineData(0.049, 5, "Note")]
    [InlineData(0.06, 5, "Failure")]
    [InlineData(0.015, 1, "Failure")]
    [InlineData(0.005, 1, "nothing")]
    [InlineData(0.015, 5, "nothing")]
    public void AToleranceThatIsWanted_DecidesInsteadOfTheUsualOne(double error, int percent, string severity)
    {
        Outlook outlook = Wanting(Short(error), wanted => wanted.WithAmplitudeTolerance(percent.Percent()));
        Assert.Equal(severity, Said(outlook, "amplitude-short"));
        if (severity == "Note")
        {
            Assert.EndsWith($"short, within the {percent} % wanted", Of(outlook, "amplitude-short").Message, StringComparison.Ordinal);
            Assert.Null(Of(outlook, "amplitude-short").Remedy);
        }
    }

    [Fact]
    public void AShortAmplitude_IsToldWithBothValuesAndTheBandwidthThatCures()
    {
        Finding finding = Of(Short(0.2), "amplitude-short");
        Assert.Equal("the display shows 1.6 Vpp of 2 Vpp: 20 % short", finding.Message);
        // 10 MHz/√(-2 ld 0.98) = 41.418 MHz, rounded up; 1/(1 - 0.2) = 1.25.
        Assert.Equal("a chain of at least 41.42 MHz (Gaussian) shows it to 2 %, or correct by the factor 1.25", finding.Remedy);
        Outlook loose = Wanting(Short(0.3), wanted => wanted.WithAmplitudeTolerance(20.Percent()));
        // 10 MHz/√(-2 ld 0.8) = 12.462 MHz.
        Assert.StartsWith("a chain of at least 12.47 MHz (Gaussian) shows it to 20 %", Of(loose, "amplitude-short").Remedy, StringComparison.Ordinal);
    }

    // A factor of ten multiplies the noise by ten as well.
    [Theory]
    [InlineData(0.89, true)]
    [InlineData(0.91, false)]
    public void ACorrectionByMoreThanTenTimes_IsNotProposed(double error, bool proposed) =>
        Assert.Equal(proposed, Of(Short(error), "amplitude-short").Remedy!.Contains("correct by the factor", StringComparison.Ordinal));

    [Theory]
    [InlineData(0.16, "nothing")]
    [InlineData(0.18, "Warning")]
    [InlineData(0.8, "Warning")]
    [InlineData(0.95, "Failure")]
    public void AnAmplitudeThatIsTooHigh_IsSaidAlike(double decibels, string severity)
    {
        // 0.172 dB are 2 %, 0.828 dB 10 %.
        Outlook outlook = Signal.Sine(10.MHz(), 1.Vpk()).Through(Response.Amplifier(DecibelRatio.FromDecibels(decibels))).SampledBy(Bench).Over(20.us());
        Assert.Equal(severity, Said(outlook, "amplitude-high"));
        Assert.Equal("nothing", Said(outlook, "amplitude-short"));
        if (severity != "nothing")
            Assert.Equal("check ratio and termination: the chain shows too much at DC as well", Of(outlook, "amplitude-high").Remedy);
    }

    // 20 dB are ten times, 21 dB 11.22 times: "900 % too much" and "11.22 times as much".
    [Theory]
    [InlineData(20, "900 % too much")]
    [InlineData(21, "11.22 times as much")]
    public void MuchTooMuch_IsToldInTimes(double decibels, string expected) => Assert.EndsWith(expected,
        Of(Signal.Sine(10.MHz(), 1.Vpk()).Through(Response.Amplifier(DecibelRatio.FromDecibels(decibels))).SampledBy(Bench).Over(20.us()), "amplitude-high").Message, StringComparison.Ordinal);

    [Fact]
    public void AHighAmplitudeWithinWhatIsWanted_IsANote() => Assert.Equal("Note", Said(Wanting(
        Signal.Sine(10.MHz(), 1.Vpk()).Through(Response.Amplifier(1.dB())).SampledBy(Bench).Over(20.us()), wanted => wanted.WithAmplitudeTolerance(13.Percent())), "amplitude-high"));

    [Theory]
    [InlineData(0.049, "nothing")]
    [InlineData(0.051, "Warning")]
    [InlineData(0.199, "Warning")]
    [InlineData(0.201, "Failure")]
    public void ASlowedEdge_IsSaidFromFivePercentOn(double error, string severity) => Assert.Equal(severity, Said(Slowed(error), "edge-slowed"));

    [Theory]
    [InlineData(0.15, 20, "Note")]
    [InlineData(0.25, 20, "Failure")]
    [InlineData(0.06, 4, "Failure")]
    [InlineData(0.045, 4, "Failure")]
    [InlineData(0.035, 4, "nothing")]
    public void AnEdgeToleranceThatIsWanted_DecidesInsteadOfTheUsualOne(double error, int percent, string severity) =>
        Assert.Equal(severity, Said(Wanting(Slowed(error), wanted => wanted.WithEdgeTolerance(percent.Percent())), "edge-slowed"));

    [Theory]
    [InlineData(0.5, "the 100 ns edge is shown as 150 ns: 50 % slower")]
    [InlineData(9.9, "the 100 ns edge is shown as 1.09 µs: 990 % slower")]
    [InlineData(11, "the 100 ns edge is shown as 1.2 µs: 12 times as long")]
    public void ASlowedEdge_IsToldInPercentOrInTimes(double error, string message) => Assert.Equal(message, Of(Slowed(error), "edge-slowed").Message);

    // √(1.05² - 1) x 100 ns = 32.02 ns, 0.339624/32.02 ns = 10.61 MHz by the rule, exact for Gaussian steps.
    [Fact]
    public void ASlowedEdge_IsCuredByTheBandwidthOfTheRule() =>
        Assert.StartsWith("a chain of at least 10.61 MHz (Gaussian, rise time 32 ns) shows it to 5 %", Of(Slowed(0.5), "edge-slowed").Remedy, StringComparison.Ordinal);

    // Common practice, no source: a range four times the swing costs two bits.
    [Theory]
    [InlineData(1.9, "clipped", "Failure", "2 Vpp do not fit into the range of 1.9 Vpp", "a range of at least 2 Vpp")]
    [InlineData(2, "clipped", "nothing", "", "")]
    [InlineData(7.9, "range-mostly-empty", "nothing", "", "")]
    [InlineData(16, "range-mostly-empty", "Warning", "the signal fills 12.5 % of the range of 16 Vpp, which costs 3 bits", "a range nearer to 2 Vpp")]
    public void ARange_IsHeldAgainstTheSwing(double range, string code, string severity, string message, string remedy)
    {
        Outlook outlook = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Cascade()).SampledBy(Bench).WithFullScale(PeakToPeakVoltage.FromVolts(range)).Over(20.us());
        Assert.Equal(severity, Said(outlook, code));
        if (severity != "nothing")
            Assert.Equal((message, remedy), (Of(outlook, code).Message, Of(outlook, code).Remedy));
    }

    // Where the display has lost nine tenths of the signal, the range is not what must be cured.
    [Theory]
    [InlineData(0.89, "Warning")]
    [InlineData(0.91, "nothing")]
    public void ARangeForASignalThatIsLost_IsNotCalledEmpty(double error, string severity)
    {
        Outlook lost = Short(error);
        Assert.Equal(severity, Said(lost.Setup.WithFullScale(2.Vpp()).Over(20.us()), "range-mostly-empty"));
    }

    [Fact]
    public void NoRangeThatHoldsTheSignal_IsAFailure()
    {
        Finding finding = Of(Signal.Sine(1.MHz(), 2.Vpk()).Through(Response.Cascade()).SampledBy(Bench.WithName("bench").WithFullScaleRanges(1.Vpp(), 2.Vpp())).Over(20.us()), "no-range");
        Assert.Equal((Severity.Failure, "no range of bench holds 4 Vpp"), (finding.Severity, finding.Message));
    }

    // 0 V to 2 V about 1 V: a range of 3 V holds it moved by 1 V - (3 - 2)/2 = 0.5 V at least. Common practice: half of the range, 1.5 V here, is what offsets reach.
    [Theory]
    [InlineData(3, null, "nothing")]
    [InlineData(3, 0.49, "Failure")]
    [InlineData(3, 0.5, "nothing")]
    [InlineData(2.01, null, "nothing")]
    public void AnOffset_IsSaidWhereTheRangeCannotBeMovedSoFar(double range, double? offset, string severity)
    {
        SampledSignal setup = Signal.Square(1.kHz(), 2.Vpp()).WithOffset(1.V()).Through(Response.Cascade()).SampledBy(Bench).WithFullScale(PeakToPeakVoltage.FromVolts(range));
        Outlook outlook = (offset is { } volts ? setup.WithMaximumOffset(Voltage.FromVolts(volts)) : setup).Over(1.ms());
        Assert.Equal(severity, Said(outlook, "offset-needed"));
        if (severity == "Failure")
        {
            // 2 x 1 V + 2 V - 2 x 0.49 V = 3.02 V.
            Assert.Equal("the range of 3 Vpp holds the signal only with an offset of 1 V, 500 mV at least; it has 490 mV at most", Of(outlook, "offset-needed").Message);
            Assert.Equal("AC coupling where the level does not matter, or a range of at least 3.02 Vpp with the same offset", Of(outlook, "offset-needed").Remedy);
        }
    }

    // 0.2 V about 5 V in 1 V: 4.6 V at least, far beyond half of the range; 2 x 5 V + 0.2 V = 10.2 V hold it without any.
    [Fact]
    public void AnOffsetThatNobodyStated_IsANote()
    {
        Finding finding = Of(Signal.Square(1.kHz(), 0.2.Vpp()).WithOffset(5.V()).Through(Response.Cascade()).SampledBy(Bench).WithFullScale(1.Vpp()).Over(1.ms()), "offset-needed");
        Assert.Equal(Severity.Note, finding.Severity);
        Assert.Contains("a range of at least 10.2 Vpp", finding.Remedy, StringComparison.Ordinal);
        Finding none = Of(Signal.Square(1.kHz(), 0.2.Vpp()).WithOffset(5.V()).Through(Response.Cascade()).SampledBy(Bench).WithFullScale(1.Vpp()).WithMaximumOffset(default).Over(1.ms()), "offset-needed");
        Assert.EndsWith("a range of at least 10.2 Vpp", none.Remedy, StringComparison.Ordinal);
    }

    // 2 V in 8 bits: 7.81 mV, /√12 = 2.255 mV. 2π 100 MHz x 1 V/√2 x t: 10 ps make 4.443 mV.
    [Theory]
    [InlineData(10, 0, "Note")]
    [InlineData(4, 0, "nothing")]
    [InlineData(10, 4, "Note")]
    [InlineData(10, 5, "nothing")]
    public void Jitter_IsSaidToRuleWhereItExceedsNoiseAndQuantisation(double picoseconds, double millivolts, string severity)
    {
        SampledSignal setup = Signal.Sine(100.MHz(), 1.Vpk()).Through(Response.Cascade()).SampledBy(Bench).WithFullScale(2.Vpp()).WithJitter(picoseconds.ps());
        Assert.Equal(severity, Said((millivolts > 0 ? setup.WithNoise(millivolts.mVrms()) : setup).Over(1.us()), "jitter-rules"));
    }
}
