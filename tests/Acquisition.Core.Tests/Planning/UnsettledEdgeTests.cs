using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Edges of waveforms that never rest, against a plain walk over the computed waveform: between its extremes, from 10 % to 90 %, wherever in the period the steeper edge lies.</summary>
public sealed class UnsettledEdgeTests
{
    private static readonly Digitizer Sampler = new(10.GSaPerS(), 1.Mpts(), 8.bit());

    /// <summary>The shortest way of the walk from 10 % to 90 % of the swing, falling or rising, s.</summary>
    private static double Walked(Signal shown, double period, bool falling)
    {
        const int count = 200_000;
        double[] values = Enumerable.Range(0, 2 * count).Select(i => (falling ? -1 : 1) * shown.Value(i * period / count)).ToArray();
        double low = values.Min(), high = values.Max(), ten = low + (0.1 * (high - low)), ninety = low + (0.9 * (high - low)), shortest = double.PositiveInfinity;
        int last = -1;
        for (int i = 1; i < values.Length; i++)
        {
            if (values[i - 1] < ten && values[i] >= ten)
                last = i;
            if (last >= 0 && values[i - 1] < ninety && values[i] >= ninety)
            {
                shortest = Math.Min(shortest, (i - last) * period / count);
                last = -1;
            }
        }
        return shortest;
    }

    // The edge that is steeper lies first or second in the period, beside a slower one; a delay moves all of it by more than ten edges.
    [Theory]
    [InlineData(5, 40, 0.3, 0)]
    [InlineData(40, 5, 0.3, 0)]
    [InlineData(5, 40, 0.7, 0)]
    [InlineData(40, 5, 0.7, 0)]
    [InlineData(40, 5, 0.3, 330)]
    [InlineData(5, 40, 0.7, 330)]
    public void TheSteeperEdge_IsMeasuredWhereItLies(int rise, int fall, double duty, int delay)
    {
        Signal signal = Signal.Trapezoid(5.MHz(), 1.Vpp(), Ratio.FromFraction(duty), rise.ns(), fall.ns());
        Response chain = Response.SinglePole(20.MHz());
        if (delay > 0)
            chain = chain.Then(Response.Delay(delay.ns()));
        Outlook outlook = signal.Through(chain).SampledBy(Sampler).Over(1.us());
        Assert.Contains("computed waveform", outlook.DisplayedEdge!.Method, StringComparison.Ordinal);
        Assert.Equal(Walked(chain.Apply(signal), 200e-9, fall < rise), outlook.DisplayedEdge.Value.Seconds, 5e-12);
    }

    // Where the edges come too fast for the chain to pass 10 % and 90 % of the whole swing, none is given: a short pulse beside a long one, and bits between them.
    [Fact]
    public void TheShortestOfSeveralEdges_IsGiven()
    {
        Signal pattern = Signal.BitPattern([true, false, true, true, true, true, false, false, false, false], BitRate.FromMegabitsPerSecond(50), 1.Vpp(), 2.ns());
        Response chain = Response.SinglePole(15.MHz());
        Outlook outlook = pattern.Through(chain).SampledBy(Sampler).Over(1.us());
        Assert.Contains("computed waveform", outlook.DisplayedEdge!.Method, StringComparison.Ordinal);
        Signal shown = chain.Apply(pattern);
        Assert.Equal(Math.Min(Walked(shown, 200e-9, false), Walked(shown, 200e-9, true)), outlook.DisplayedEdge.Value.Seconds, 5e-12);
    }
}
