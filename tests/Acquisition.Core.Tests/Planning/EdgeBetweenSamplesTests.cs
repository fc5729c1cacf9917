using System;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>An edge that no sample need lie on is timed no better than the samples are apart (JCGM 100 4.3.7: anywhere in between with the same chance).</summary>
public sealed class EdgeBetweenSamplesTests
{
    private static Outlook Seen(double rate) => Signal.Square(1.kHz(), 3.3.Vpp(), 20.ns()).Through(Response.Gaussian(200.MHz()))
        .SampledBy(new Digitizer(SampleRate.FromSamplesPerSecond(rate), 20.Mpts(), 12.bit())).Over(1.ms());

    // 500 ns less the 20 ns of the edge, over the root of 12, by hand: 138.6 ns.
    [Fact]
    public void SamplesFarApart_TimeAnEdgeToTheirDistance() => Assert.Equal(138.6e-9, Seen(2e6).EdgeTimingUncertainty!.Value.Seconds, 0.1e-9);

    [Fact]
    public void SamplesOnTheEdge_TimeItByNoiseOverSlew() => Assert.InRange(Seen(1e9).EdgeTimingUncertainty!.Value.Seconds, 1e-13, 1e-11);

    // Edges of any phase between samples, placed in the middle of the two that surround them: the root mean square of what they are off.
    [Property(MaxTest = 20)]
    public Property EdgesAtAnyPhase_AreOffAsMuchAsIsStated() => Prop.ForAll(Gen.Choose(1, 40).ToArbitrary(), rate =>
    {
        Outlook outlook = Seen(rate * 1e6);
        double interval = 1e-6 / rate, edge = outlook.DisplayedEdge!.Value.Seconds, free = interval - edge, squares = 0;
        for (int k = 0; k < 1000; k++)
        {
            double off = ((k + 0.5) / 1000 * free) - (free / 2);
            squares += off * off / 1000;
        }
        Assert.Equal(Math.Sqrt(squares), outlook.EdgeTimingUncertainty!.Value.Seconds, 0.01 * Math.Sqrt(squares) + 1e-11);
    });
}
