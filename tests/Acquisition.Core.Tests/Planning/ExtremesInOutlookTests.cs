using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Peak detection and envelopes store extremes: what holds for samples is not told for them.</summary>
public sealed class ExtremesInOutlookTests
{
    private static SampledSignal Setup => Signal.Square(1.0137.MHz(), 1.Vpp(), 100.ns()).Through(Response.Gaussian(500.MHz()))
        .SampledBy(new Digitizer(5.GSaPerS(), 10.Mpts(), 8.bit())).WithNoise(3.mVrms()).WithFullScale(2.Vpp());

    // scipy.stats.norm.ppf(0.5**(1/n)): 2.2039 for 50 samples, 3.1976 for 1000 records.
    [Theory]
    [InlineData(false, "peak-detect-distorts", "the extremes of 50 samples lie about ±2.204 standard deviations")]
    [InlineData(true, "envelope-widens", "the extremes of 1000 records lie about ±3.198 standard deviations")]
    public void ExtremesAreNotTakenForSamples(bool isEnvelope, string code, string said)
    {
        Outlook samples = Setup.Over(100.ms()), extremes = (isEnvelope ? Setup.WithEnvelope(1000) : Setup.WithPeakDetect()).Over(100.ms());
        Assert.NotNull(samples.EdgeTimingUncertainty);
        Assert.NotNull(samples.EffectiveBits);
        Assert.NotNull(samples.SmallestDetail);
        Assert.Null(extremes.EdgeTimingUncertainty);
        Assert.Null(extremes.EffectiveBits);
        Assert.Null(extremes.EffectiveBitsOfSignal);
        Assert.Null(extremes.SmallestDetail);
        Finding finding = Assert.Single(extremes.Findings, finding => finding.Code == code);
        Assert.Contains(said, finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("edge timing  ", extremes.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void ATriangleThatNeverRests_IsNotToldThatItsEdgeIsNotItself()
    {
        string said = Signal.Triangle(1.kHz(), 1.Vpp()).Through(Response.Gaussian(500.MHz())).SampledBy(new Digitizer(5.GSaPerS(), 10.Mpts(), 8.bit())).Over(1.ms())
            .Findings.Single(finding => finding.Code == "levels-unsettled").Message;
        Assert.Contains("one edge alone would take as long, 400 µs", said, StringComparison.Ordinal);
        Assert.DoesNotContain("lasts 0 s", said, StringComparison.Ordinal);
    }

    // -ln(0.01) over 1 mHz of pulses and 0.1 % of the time observed is 4.605 Ms, 53.3 days.
    [Fact]
    public void ALongTimeToLook_IsAlsoSaidInDays()
    {
        string said = Setup.WithRecordRate(1.Hz()).WatchingFor(1.us(), Frequency.FromHertz(1e-3)).Over(1.ms()).Findings.Single(finding => finding.Code == "dead-time").Message;
        Assert.Contains(" days)", said, StringComparison.Ordinal);
    }
}
