using System;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>A square without a rise time is the first that someone draws, and a wire the first chain: neither has a duration that a rule could be held against.</summary>
public sealed class IdealEdgeThroughAWireTests
{
    private static Outlook Wired(Signal signal) => signal.Through(Response.Cascade()).SampledBy(new Digitizer(100.MSaPerS(), 1.Mpts(), 8.bit())).Over(100.us());

    [Fact]
    public void AnIdealEdge_ThroughAWire_StaysIdeal()
    {
        Outlook outlook = Wired(Signal.Square(100.kHz(), 2.Vpp()));
        Assert.Equal(0, outlook.DisplayedEdge!.Value.Seconds);
        Assert.Empty(outlook.DisplayedEdge.Rules);
        Assert.Null(outlook.EdgeError);
        Assert.Null(outlook.EdgeTimingUncertainty);
        Assert.Equal(2, outlook.DisplayedAmplitude.Value.Volts, 1e-12);
        Assert.Contains("edge                  0 s", outlook.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void AnEdge_ThroughAWire_KeepsItsRule()
    {
        Outlook outlook = Wired(Signal.Square(100.kHz(), 2.Vpp(), 50.ns()));
        Assert.Equal(50e-9, outlook.DisplayedEdge!.Value.Seconds, 1e-15);
        Assert.Equal(0, Assert.Single(outlook.DisplayedEdge.Rules).Difference.Fraction, 1e-9);
    }
}
