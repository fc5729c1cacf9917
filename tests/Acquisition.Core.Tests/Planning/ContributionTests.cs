using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What an outlook says about each element: slower, faster or as it is, never a slowing by nothing.</summary>
public sealed class ContributionTests
{
    private static readonly Digitizer Digitizer = new(2.GSaPerS(), 14.Mpts(), 8.bit());

    private static Contribution Of(Outlook outlook, string element) => outlook.Contributions.Single(contribution => contribution.Element.StartsWith(element, StringComparison.Ordinal));

    private static MeasurementChain Probed(double millimetres) => MeasurementChain.From(50.Ohm())
        .Probe(Probe.Passive(10, 10.MOhm(), 12.pF(), 500.MHz()).WithName("probe").WithGroundLead(Length.FromMillimeters(millimetres)))
        .Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())).WithName("input"));

    /// <summary>
    /// A lead of 300 mm rings with the probe near 85 MHz. The edge at the tip then overshoots and passes 90 % sooner: 4 ns behind the ringing probe are shorter than behind an ideal one.
    /// </summary>
    [Fact]
    public void AProbeWhoseLeadRings_MakesASlowEdgeFaster_AndDoesNoHarmToIt()
    {
        Signal clock = Signal.Square(10.MHz(), 1.Vpp(), 4.ns());
        MeasurementChain chain = Probed(300);
        Contribution probe = Of(clock.Through(chain).SampledBy(Digitizer).Over(1.us()), "probe");

        Assert.StartsWith("makes the edge faster by ", probe.Effect, StringComparison.Ordinal);
        Assert.Equal(0, probe.Share.Fraction);
        // The edge itself, without the outlook.
        var edge = new Edge(4.ns());
        Response ideal = MeasurementChain.From(50.Ohm()).Into(chain.FrontEnd).Response;
        Assert.True(chain.Response.RiseTimeOf(edge).Value < ideal.RiseTimeOf(edge).Value);
    }

    [Fact]
    public void AFastEdge_IsSlowedByProbeAndInput()
    {
        Outlook outlook = Signal.Square(10.MHz(), 1.Vpp(), 1.ns()).Through(Probed(10)).SampledBy(Digitizer).Over(1.us());

        Assert.StartsWith("slows the edge by ", Of(outlook, "probe").Effect, StringComparison.Ordinal);
        Assert.True(Of(outlook, "input").Share.Fraction > 0.1);
    }

    /// <summary>An attenuator of the right nominal value changes no edge; it must not be said to slow it by 0 s.</summary>
    [Fact]
    public void AStageWithoutABandwidth_LeavesTheEdgeAsItIs()
    {
        MeasurementChain chain = MeasurementChain.From(50.Ohm()).Pad(AttenuatorPad.Pi(6.dB(), 50.Ohm())).Into(FrontEnd.FiftyOhm(Response.Gaussian(200.MHz())));
        Contribution pad = Signal.Square(10.MHz(), 1.Vpp(), 4.ns()).Through(chain).SampledBy(Digitizer).Over(1.us()).Contributions[chain.Elements.Count];

        Assert.Equal("leaves the edge as it is", pad.Effect);
        Assert.Equal(0, pad.Share.Fraction);
    }

    [Fact]
    public void ASineAtTheResonanceOfTheLead_IsRaised()
    {
        Outlook outlook = Signal.Sine(80.MHz(), 1.Vpk()).Through(Probed(300)).SampledBy(Digitizer).Over(1.us());

        Assert.StartsWith("raises the amplitude by ", Of(outlook, "probe").Effect, StringComparison.Ordinal);
        Assert.StartsWith("takes ", Of(outlook, "input").Effect, StringComparison.Ordinal);
    }
}
