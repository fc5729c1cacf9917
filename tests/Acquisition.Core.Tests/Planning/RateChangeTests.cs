using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Where the sample rate is at fault, the figure that is named cures it: it is rounded to the side that does.</summary>
public sealed class RateChangeTests
{
    // Two samples on 6 ns: 333.3 MSa/s and a third of a sample more.
    private static Requirement Wanted(Duration window) => new Requirement(Signal.Sine(1.MHz(), 1.Vpk())).WithNarrowestPulse(6.ns()).WithAmplitudeTolerance(20.Percent()).WithWindow(window);

    private static Candidate Judged(Requirement wanted, SampleRate rate, PointCount memory) => Shortlist.Of(wanted, new Catalogue(
        [new CatalogueInstrument("box", Stated.Typical(200.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(1, rate, memory)], [new InputRange(1.Vpp())], [new InputTermination(1.MOhm(), 14.pF(), 50.V())])],
        [new CatalogueProbe("stick", 10, Stated.Claimed(200.MHz()), ResponseShape.Gaussian, 10.MOhm(), 8.pF(), 1.MOhm()).WithMaximumVoltage(400.V())])).Candidates.Single();

    private static string Change(Candidate candidate) => candidate.SmallestChanges.Single(change => change.Demand.Code == "sample-rate").Change;

    // 1 Mpts at 333.33 MSa/s are 3 ms; 10 ms of it 3.3333 Mpts.
    [Fact]
    public void ATooLongWindow_IsCuredByAShorterOne_OrByTheMemoryThatIsNamed()
    {
        string change = Change(Judged(Wanted(10.ms()), 1.GSaPerS(), 1.Mpts()));
        Assert.Equal("a window of at most 3 ms, or 3.334 Mpts of memory", change);
        Assert.Empty(Judged(Wanted(3.ms()), 1.GSaPerS(), 1.Mpts()).SmallestChanges);
        Assert.Empty(Judged(Wanted(10.ms()), 1.GSaPerS(), 3334.kpts()).SmallestChanges);
        Assert.NotEmpty(Judged(Wanted(10.ms()), 1.GSaPerS(), 3333.kpts()).SmallestChanges);
    }

    [Fact]
    public void ATooSlowConverter_IsCuredByTheRateThatIsNamed()
    {
        string change = Change(Judged(Wanted(1.us()), 100.MSaPerS(), 1.Mpts()));
        Match rate = Regex.Match(change, "^a sample rate of (.*)$");
        Assert.True(rate.Success, change);
        Assert.Equal(333.4e6, SampleRate.Parse(rate.Groups[1].Value).SamplesPerSecond, 1);
        Assert.Empty(Judged(Wanted(1.us()), SampleRate.Parse(rate.Groups[1].Value), 1.Mpts()).SmallestChanges);
    }
}
