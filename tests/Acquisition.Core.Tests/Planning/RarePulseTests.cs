using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Pulses that come seldom: how long one has to look, and what the acquisition mode leaves of them.</summary>
public sealed class RarePulseTests
{
    private static readonly Digitizer OneGigasample = new(1.GSaPerS(), 10.Mpts(), 8.bit());
    private static readonly Signal Idle = Signal.Sine(1.MHz(), 1.Vpk());

    private static SampledSignal Behind(Response chain) => Idle.Through(chain).SampledBy(OneGigasample);

    private static Finding? Of(Outlook outlook, string code) => outlook.Findings.SingleOrDefault(finding => finding.Code == code);

    // Arrivals with exponential gaps, records of 140 ms every 200 ms; counted, not computed. By hand: 1 - exp(-0.5 Hz x 0.7 x t) is 0.99 at 13.16 s and 0.939 at 8 s.
    [Fact]
    public void TimeForAConfidence_CatchesThatShareOfSimulatedRandomPulses()
    {
        EventOutlook events = Behind(Response.Cascade()).WithRecordRate(5.Hz()).WatchingFor(40.ns(), 0.5.Hz()).Over(140.ms()).Events!;
        double seconds = events.TimeFor(99.Percent())!.Value.Seconds;
        Assert.Equal(13.16, seconds, 0.005);
        Assert.Equal(4, events.TrialsFor(99.Percent()));
        var random = new Random(17);
        const int trials = 40_000;
        int caught = 0;
        for (int trial = 0; trial < trials; trial++)
        {
            double time = 0;
            while ((time -= Math.Log(1 - random.NextDouble()) / 0.5) < seconds)
            {
                if (time % 0.2 >= 0.14)
                    continue;
                caught++;
                break;
            }
        }
        // The last record is cut off at 13.16 s, which moves the share by less than a tenth of a percent; four standard deviations are 0.2 %.
        Assert.Equal(0.99, caught / (double)trials, 0.003);
    }

    [Fact]
    public void WithoutARecordRate_NoChanceAndNoTimeIsGiven_AndThatIsSaid()
    {
        Outlook outlook = Behind(Response.Cascade()).WatchingFor(5.ns(), 1.Hz()).Over(1.us());
        Assert.Null(outlook.Events!.ChancePerOccurrence);
        Assert.Null(outlook.Events.TrialsFor(99.Percent()));
        Assert.Null(outlook.Events.TimeFor(99.Percent()));
        Assert.Contains("WithRecordRate", Of(outlook, "record-rate-unknown")!.Remedy, StringComparison.Ordinal);
        Assert.Null(Of(Behind(Response.Cascade()).WithRecordRate(1.kHz()).WatchingFor(5.ns(), 1.Hz()).Over(1.us()), "record-rate-unknown"));
    }

    [Fact]
    public void RecordsThatOverlap_GiveNoChance()
    {
        Outlook outlook = Behind(Response.Cascade()).WithRecordRate(200.Hz()).WatchingFor(5.ns(), 1.Hz()).Over(10.ms());
        Assert.Null(outlook.Events!.ChancePerOccurrence);
        Assert.NotNull(Of(outlook, "records-overlap"));
        Assert.Contains("100 Hz", Assert.Throws<ArgumentOutOfRangeException>(() => DeadTime.ObservedShare(200.Hz(), 10.ms())).Message, StringComparison.Ordinal);
    }

    // 5 of 16 samples lie on a pulse of 5 ns at 1 GSa/s.
    [Fact]
    public void AMeanOfSixteenSamples_KeepsFiveSixteenthsOfAPulseOfFive()
    {
        Outlook outlook = Behind(Response.Cascade()).WithHighResolution(16).WatchingFor(5.ns(), 1.Hz()).Over(1.us());
        Assert.Equal(5.0 / 16, outlook.Events!.Height.Fraction, 1e-3);
        Assert.Equal(1, outlook.Events.FewestSamples.Points);
        Finding flattened = Of(outlook, "pulse-flattened")!;
        Assert.Equal(Severity.Failure, flattened.Severity);
        Assert.Contains("peak detection", flattened.Remedy, StringComparison.Ordinal);
        Assert.Null(Of(Behind(Response.Cascade()).WithPeakDetect().WatchingFor(5.ns(), 1.Hz()).Over(1.us()), "pulse-flattened"));
    }

    // One pole of 100 MHz has τ = 1/(2π 100 MHz); the pulse behind it is 1 - e^(-t/τ), less the same one width later. The best place of the mean is searched here.
    [Theory]
    [InlineData(5, 4)]
    [InlineData(12, 16)]
    [InlineData(40, 16)]
    [InlineData(40, 100)]
    public void TheMeanOfAPulseBehindAPole_IsThatOfASearchOverAllPhases(int width, int count)
    {
        double tau = 1e9 / (2 * Math.PI * 100e6), best = 0;
        double Step(double nanoseconds) => nanoseconds > 0 ? 1 - Math.Exp(-nanoseconds / tau) : 0;
        for (double start = -count; start < width + 20; start += 0.05)
            best = Math.Max(best, Enumerable.Range(0, count).Sum(i => Step(start + i) - Step(start + i - width)) / count);
        Assert.Equal(best, Behind(Response.SinglePole(100.MHz())).WithHighResolution(count).WatchingFor(width.ns()).Over(10.us()).Events!.Height.Fraction, 2e-3);
    }

    [Fact]
    public void AnAverage_LosesThePulse_AndGivesNoNumber()
    {
        Outlook outlook = Behind(Response.Cascade()).WithAveraging(16).WithRecordRate(5.Hz()).WatchingFor(40.ns(), 0.5.Hz()).Over(140.ms());
        Assert.Null(outlook.Events);
        Assert.Equal(Severity.Failure, Of(outlook, "average-loses-single-events")!.Severity);
        Assert.Null(Of(outlook, "dead-time"));
        Assert.Equal(Severity.Note, Of(Behind(Response.Cascade()).WithAveraging(16).Over(1.us()), "average-loses-single-events")!.Severity);
    }
}
