using System;
using System.Linq;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>A cable with an open end says what runs to and fro in it and how to stop that. Overshoots and ringing by ngspice 39, tests/scripts/open_cable.py; a delay of 5 ns.</summary>
public sealed class CableTerminationTests
{
    private static Cable Line(double nanoseconds = 5, double ohms = 50) => new(Resistance.FromOhms(ohms), Length.FromMeters(nanoseconds * 0.299792458), 1);

    private static FrontEnd Open => FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.SinglePole(500.MHz()));

    private static MeasurementChain From(double ohms) => MeasurementChain.From(Resistance.FromOhms(ohms)).Cable(Line()).Into(Open);

    private static Signal Clock(Duration rise, double volts = 1) => Signal.Square(1.MHz(), PeakToPeakVoltage.FromVolts(volts), rise);

    private static Finding? Of(MeasurementChain chain, Signal signal) => chain.Examine(signal).SingleOrDefault(finding => finding.Code == "cable-unterminated");

    [Fact]
    public void AnOpenCable_NamesReflectionRoundTripRingingAndOvershoot()
    {
        Finding open = Of(From(10), Clock(2.ns()))!;
        Assert.Equal(Severity.Failure, open.Severity);
        // (10 - 50)/(10 + 50), and there and back in 10 ns (handbook 7.7).
        Assert.Contains("reflection -0.667", open.Message, StringComparison.Ordinal);
        Assert.Contains("every 10 ns", open.Message, StringComparison.Ordinal);
        Assert.Contains("a step overshoots by 66.7 %", open.Message, StringComparison.Ordinal);
        Assert.Contains("an edge of 2 ns overshoots by 71.2 %", open.Message, StringComparison.Ordinal);
        string rings = open.Message.Substring(open.Message.IndexOf("at about ", StringComparison.Ordinal) + 9).Split(';')[0];
        Assert.Equal(43.9e6, Quantity.Parse(rings).SiValue, 0.01 * 43.9e6);
    }

    [Fact]
    public void EachWayToTerminate_IsToldWithWhatIsThenLeft()
    {
        string remedy = Of(From(10), Clock(2.ns()))!.Remedy!;
        Assert.Contains("a feed-through of 50 Ω at its end (then 9.14 % of overshoot, 83.3 % of the amplitude)", remedy, StringComparison.Ordinal);
        Assert.Contains("39 Ω in series at its beginning (then 1.05 % of overshoot, 100 % of the amplitude)", remedy, StringComparison.Ordinal);
        Assert.Contains("the 50 Ω input instead of this one (then 0 % of overshoot, 83.3 % of the amplitude; look up first what it stands", remedy, StringComparison.Ordinal);
    }

    // The rules are those of handbook 7.7: a round trip of a third of the edge, and of its whole ramp.
    [Theory]
    [InlineData(2, Severity.Failure)]
    [InlineData(12, Severity.Warning)]
    [InlineData(29, Severity.Warning)]
    [InlineData(31, Severity.Note)]
    public void HowMuchItMatters_GoesByTheEdgeBesideTheRoundTrip(int nanoseconds, Severity expected)
    {
        Finding open = Of(From(10), Clock(nanoseconds.ns()))!;
        Assert.Equal(expected, open.Severity);
        // 5 ns / 50 Ω.
        Assert.Equal(expected == Severity.Note, open.Message.Contains("acts as a capacitance of 100 pF", StringComparison.Ordinal));
        Assert.Equal(expected == Severity.Note, open.Remedy is null);
    }

    [Fact]
    public void ACableThatIsMatchedAtOneEnd_IsNotCalledUnterminated()
    {
        Assert.Null(Of(From(50), Clock(2.ns())));
        Assert.Null(Of(MeasurementChain.From(10.Ohm()).Cable(Line()).FeedThrough(50.Ohm()).Into(Open), Clock(2.ns())));
        Assert.Null(Of(MeasurementChain.From(10.Ohm()).Cable(Line()).Into(FrontEnd.FiftyOhm(Response.SinglePole(500.MHz()))), Clock(2.ns())));
        // A pad of 20 dB looks like 50 Ω from both sides, whatever the source.
        Assert.Null(Of(MeasurementChain.From(10.Ohm()).Pad(AttenuatorPad.Pi(20.dB(), 50.Ohm())).Cable(Line()).Into(Open), Clock(2.ns())));
    }

    [Fact]
    public void TwoCablesOfOneImpedance_AreOne()
    {
        MeasurementChain chain = MeasurementChain.From(10.Ohm()).Cable(Line(2)).Cable(Line(3)).Into(Open);
        Assert.Contains("every 10 ns", Of(chain, Clock(2.ns()))!.Message, StringComparison.Ordinal);
        Assert.Equal(From(10).Response.OvershootOf(Clock(2.ns()).SteepestEdge!).Fraction, chain.Response.OvershootOf(Clock(2.ns()).SteepestEdge!).Fraction, 1e-9);
    }

    [Fact]
    public void BehindAHighResistance_AStepClimbsInStairs_AndNothingRings()
    {
        Finding open = Of(From(1000), Clock(2.ns()))!;
        Assert.Equal(Severity.Warning, open.Severity);
        // (950/1050) (1 MΩ - 50)/(1 MΩ + 50).
        Assert.Contains("each 90.5 % of the one before, so that a step climbs in stairs", open.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("rings", open.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("in series", open.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void AVoltageThatHurts_IsNotLedIntoFiftyOhms()
    {
        Finding open = Of(From(10), Clock(2.ns(), 100))!;
        Assert.Contains("safety", open.Remedy, StringComparison.Ordinal);
        // 20 Vpp: 8.3 V rms behind 10 Ω would put 1.4 W into 50 Ω.
        string remedy = Of(From(10), Clock(2.ns(), 20))!.Remedy!;
        Assert.DoesNotContain("feed-through", remedy, StringComparison.Ordinal);
        Assert.Contains("39 Ω in series", remedy, StringComparison.Ordinal);
    }

    // 40 MHz lies near the resonance: by how much it is too high is the gain of the network at it.
    [Fact]
    public void ASineBehindAnOpenCable_IsToldAsToo_High()
    {
        MeasurementChain chain = From(10);
        double much = (100 * chain.Response.AmplitudeRatio(40.MHz()).Fraction) - 100;
        Finding open = Of(chain, Signal.Sine(40.MHz(), 0.5.Vpk()))!;
        Assert.Contains(FormattableString.Invariant($"40 MHz is shown {FewDigits.Round(much, 3)} % too high"), open.Message, StringComparison.Ordinal);
        Assert.Null(chain.Examine(Frequency.FromHertz(0), default, default).SingleOrDefault(finding => finding.Code == "cable-unterminated"));
    }

    [Fact]
    public void AFeedThroughOfAnotherImpedance_IsAMismatch() =>
        Assert.Contains(MeasurementChain.From(50.Ohm()).Cable(Line()).FeedThrough(75.Ohm()).Into(Open).Findings, finding => finding.Code == "cable-mismatch" && finding.Message.Contains("75 Ω", StringComparison.Ordinal));

    // Handbook 7.7, from the bounce diagram in numpy: reflections of -2/3 and 1, the edge in round trips.
    [Theory]
    [InlineData(0.8, 0.6667)]
    [InlineData(1, 0.4444)]
    [InlineData(2, 0.1481)]
    [InlineData(3, 0.0988)]
    [InlineData(6, 0.0539)]
    public void TheSlowerTheEdge_TheLessOfTheEchoesIsSeen(double roundTrips, double expected)
    {
        Response line = MeasurementChain.From(10.Ohm()).Cable(Line()).Into(FrontEnd.HighImpedance(Resistance.FromOhms(1e12), default, Response.Cascade())).Response;
        Assert.Equal(expected, line.OvershootOf(new Edge(Duration.FromSeconds(1e-8 * roundTrips))).Fraction, 1e-4);
    }

    // Stairs by hand: after n round trips 1 - p^(n + 1) of the end, p = (Rs - 50)/(Rs + 50); from the first stair above 10 % to the first above 90 %.
    [Property(MaxTest = 20)]
    public Property StairsBehindAHighResistance_ReachTheirLevelsWhereTheBounceDiagramHasThem() => Prop.ForAll(Gen.Choose(150, 2000).ToArbitrary(), ohms =>
    {
        double p = (ohms - 50.0) / (ohms + 50);
        Response line = MeasurementChain.From(Resistance.FromOhms(ohms)).Cable(Line()).Into(FrontEnd.HighImpedance(Resistance.FromOhms(1e12), default, Response.Cascade())).Response;
        double stairs = Math.Max(0, Math.Ceiling(Math.Log(0.1) / Math.Log(p)) - 1) - Math.Max(0, Math.Ceiling(Math.Log(0.9) / Math.Log(p)) - 1);
        return Math.Abs(line.RiseTime.Seconds - (1e-8 * stairs)) < 1e-13;
    });
}
