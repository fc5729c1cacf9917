using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

public class OutlookJudgementTests
{
    private static readonly Digitizer Bench200 = new(2.GSaPerS(), 14.Mpts(), 8.bit());

    private static string Buoy(string from = "", string to = "")
    {
        string text = DocumentFiles.Read("examples", "lantern-buoy.json");
        Assert.Contains(from, text, StringComparison.Ordinal);
        return from.Length == 0 ? text : text.Replace(from, to, StringComparison.Ordinal);
    }

    private static Finding? Of(Outlook outlook, string code) => outlook.Findings.SingleOrDefault(finding => finding.Code == code);

    [Fact]
    public void EdgeSlowerThanUsual_ButWithinWhatIsWanted_IsANote()
    {
        Finding slowed = Of(Bench.Parse(Buoy("\"edgeWithin\": \"10 %\"", "\"edgeWithin\": \"30 %\"")).Outlook, "edge-slowed")!;
        Assert.Equal(Severity.Note, slowed.Severity);
        Assert.Contains("within the 30 % wanted", slowed.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EdgeSlowerThanWanted_IsAFailureWhoseRemedyNamesTheWantedTolerance()
    {
        Finding slowed = Of(Bench.Parse(Buoy()).Outlook, "edge-slowed")!;
        Assert.Equal(Severity.Failure, slowed.Severity);
        Assert.Contains("shows it to 10 %", slowed.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void AmplitudeShortForWantOfBandwidth_IsNotBlamedOnTheLoad()
    {
        Finding small = Of(Signal.Square(150.MHz(), 3.3.Vpp(), 0.2.ns()).Through(Response.Gaussian(156.MHz())).SampledBy(Bench200).Over(1.us()), "amplitude-short")!;
        Assert.DoesNotContain("load", small.Remedy, StringComparison.Ordinal);
        Assert.Contains("MHz", small.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void RecordsThatWouldOverlap_AreSaid_AndNoShareIsComputed()
    {
        Outlook outlook = Bench.Parse(Buoy("\"recordRate\": \"50 Hz\"", "\"recordRate\": \"500 Hz\"")).Outlook;
        Finding overlap = Of(outlook, "records-overlap")!;
        Assert.Equal(Severity.Failure, overlap.Severity);
        Assert.Contains("100 Hz", overlap.Remedy, StringComparison.Ordinal);
        Assert.Contains("2 ms", overlap.Remedy, StringComparison.Ordinal);
        Assert.Null(outlook.Events!.ObservedShare);
    }

    [Fact]
    public void BestRecordRateOfACatalogue_IsNoFaultOfALongWindow()
    {
        Outlook outlook = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Gaussian(200.MHz())).SampledBy(Bench200).WithRecordRateAtBest(200.kHz()).WatchingFor(5.ns()).Over(1.ms());
        Assert.Null(Of(outlook, "records-overlap"));
        Assert.Null(outlook.Events!.ObservedShare);
    }

    [Fact]
    public void RecordsWithoutAGap_DoNotOverlap() =>
        Assert.Null(Of(Bench.Parse(Buoy("\"recordRate\": \"50 Hz\"", "\"recordRate\": \"100 Hz\"")).Outlook, "records-overlap"));

    [Fact]
    public void JitterNoise_OfASquare_IsItsRmsSlopeTimesTheJitter()
    {
        // Two linear edges of swing A and length r in a period T: mean square slope 2 (A/r)² r / T. The chain's 20 bandwidths end the sum early by a part in a thousand or so.
        Outlook outlook = Signal.Square(10.MHz(), 1.Vpp(), 8.ns()).Through(Response.Gaussian(10.GHz())).SampledBy(Bench200).WithJitter(20.ps()).Over(1.us());
        double slope = Math.Sqrt(2 * 1.0 / 10e-9 * 10e6);
        Assert.Equal(slope * 20e-12, outlook.JitterNoise!.Value.SiValue, 0.01 * slope * 20e-12);
    }

    [Fact]
    public void JitterNoise_OfASine_IsTheTextbooks()
    {
        Outlook outlook = Signal.Sine(10.MHz(), 1.Vpk()).Through(Response.Cascade()).SampledBy(Bench200).WithJitter(20.ps()).Over(1.us());
        Assert.Equal(2 * Math.PI * 10e6 * 20e-12 / Math.Sqrt(2), outlook.JitterNoise!.Value.SiValue, 1e-12);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(40)]
    public void PulseFlattened_NeverProposesLessBandwidthThanThereIs(double nanoseconds)
    {
        Response chain = Response.Gaussian(200.MHz()).Then(Response.HighPass(20.MHz()));
        Finding? flattened = Of(Signal.Square(1.MHz(), 1.Vpp(), 60.ns()).Through(chain).SampledBy(Bench200).WatchingFor(nanoseconds.ns()).Over(1.us()), "pulse-flattened");
        if (nanoseconds > 2.5)
            Assert.DoesNotContain("a chain of about", flattened?.Remedy ?? "", StringComparison.Ordinal);
        else
            Assert.Contains("500 MHz", flattened!.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void WindowShorterThanAPeriod_IsSaid() =>
        Assert.NotNull(Of(Signal.Square(1.kHz(), 1.Vpp(), 60.ns()).Through(Response.Gaussian(200.MHz())).SampledBy(Bench200).Over(1.us()), "window-too-short"));

    [Fact]
    public void MoreChannelsThanRatesAreStatedFor_AreSaid()
    {
        Assert.NotNull(Of(Bench.Parse(Buoy("\"window\": \"10 ms\",\n    \"inter", "\"window\": \"10 ms\", \"channelsInUse\": 3,\n    \"inter")).Outlook, "channels-not-stated"));
        Assert.Null(Of(Bench.Parse(Buoy()).Outlook, "channels-not-stated"));
    }

    [Theory]
    [InlineData("\"edgeWithin\": \"10 %\"", "\"edgeWithin\": \"-10 %\"", "wanted.edgeWithin")]
    [InlineData("\"window\": \"10 ms\",\n    \"inter", "\"window\": \"-10 ms\",\n    \"inter", "capture.window")]
    public void RefusedMember_IsReportedAtItsOwnPlace(string from, string to, string path)
    {
        Assert.False(Bench.TryParse(Buoy(from, to), out _, out var problems));
        Assert.Equal(path, Assert.Single(problems).Path);
    }

    [Fact]
    public void TruncatedFile_IsNotAlsoSaidToLackMembers()
    {
        string text = Buoy();
        Assert.False(Bench.TryParse(text.Substring(0, text.Length / 2), out _, out var problems));
        Assert.DoesNotContain(problems, problem => problem.Message.Contains("missing", StringComparison.Ordinal));
    }

    [Fact]
    public void MissingAmplitude_IsAskedForInAUnitThatExists()
    {
        Assert.False(Bench.TryParse(Buoy("\"shape\": \"square\", \"frequency\": \"24 MHz\", \"swing\": \"3.3 Vpp\", \"offset\": \"1.65 V\", \"riseTime\": \"2.8 ns\"", "\"shape\": \"sine\", \"frequency\": \"24 MHz\""), out _, out var problems));
        Assert.Contains("1 Vpk", Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    // A ramp a billion times shorter than the chain's own rise time is a step to it.
    [Fact]
    public void EdgeFarFasterThanTheChain_IsShownWithTheRiseTimeOfTheChain()
    {
        Response chain = Response.Gaussian(200.MHz());
        Outlook outlook = Signal.Square(1.MHz(), 1.Vpp(), Duration.FromSeconds(1e-18)).Through(chain).SampledBy(new Digitizer(2.GSaPerS(), 1.Mpts(), 8.bit())).Over(10.us());
        Assert.Equal(chain.RiseTime.Seconds, outlook.DisplayedEdge!.Value.Seconds, 1e-15);
    }

    [Fact]
    public void PulseThatIsNextToNeverCaught_IsSaidWithoutANumberOfTrials()
    {
        Outlook outlook = Signal.Square(1.MHz(), 1.Vpp(), 10.ns()).Through(Response.Gaussian(200.MHz())).SampledBy(new Digitizer(1.SaPerS(), 1.Mpts(), 8.bit()))
            .WatchingFor(Duration.FromSeconds(1e-17)).WithRecordRate(Frequency.FromHertz(1e-6)).Over(1.ms());
        Assert.DoesNotContain(outlook.Findings, finding => finding.Code == "dead-time");
        Assert.DoesNotContain("pulses for 99 %", outlook.ToString(), StringComparison.Ordinal);
    }
}
