using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Chain;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>Long cables that match at neither end: the bounce diagram by hand, and the gain of the network solved at each frequency.</summary>
public sealed class BounceDiagramTests
{
    /// <summary>
    /// 10 m of 50 Ω from 25 Ω into 100 Ω, worked by hand (the method of any textbook on lines): 2/3 of the step enters; reflections 1/3 at the load, -1/3 at the source. The load steps to
    /// 2/3 · 4/3 = 8/9 after one delay, and each round trip brings -1/9 of the step before, towards 100/125.
    /// </summary>
    [Fact]
    public void StepThroughAMismatchedCable_ClimbsThePlateausOfTheBounceDiagram()
    {
        var cable = new Cable(50.Ohm(), 10.m(), 0.66);
        Response chain = MeasurementChain.From(25.Ohm()).Cable(cable).Into(FrontEnd.HighImpedance(100.Ohm(), 0.pF(), Response.Gaussian(1.GHz()))).Response;
        double delay = cable.Delay.Seconds, level = 0, arrival = 8.0 / 9;

        for (int k = 0; k < 8; k++)
        {
            level += arrival;
            arrival *= -1.0 / 9;
            // Half way between two arrivals.
            Assert.Equal(level, chain.StepAt(((2 * k + 2) * delay).s()).Fraction, 1e-11);
        }
        Assert.Equal(0.8, chain.StepAt((60 * delay).s()).Fraction, 1e-11);
        // The deviation falls to 1/9 each round trip: first 8/9 against 4/5, 1/9 of it; 0.2 % is reached with the third arrival: 1/729.
        Assert.Equal(5 * delay, chain.SettlingTime(Ratio.FromPercent(0.2)).Seconds, 2e-9);
    }

    public static TheoryData<double, double, double, double> Ends => new() { { 33, 1e6, 14e-12, 20 }, { 75, 50, 20e-12, 2 }, { 50, 1e6, 14e-12, 20 }, { 10, 1e3, 0, 5 } };

    /// <summary>The sum of the arrivals is the network, at any frequency.</summary>
    [Theory, MemberData(nameof(Ends))]
    public void SumOfTheArrivals_IsTheNetwork(double source, double load, double farads, double metres)
    {
        FrontEnd input = FrontEnd.HighImpedance(Resistance.FromOhms(load), Capacitance.FromFarads(farads), Response.Attenuator(0.dB()));
        var cable = new Cable(50.Ohm(), metres.m(), 0.66);
        Response chain = MeasurementChain.From(Resistance.FromOhms(source)).Cable(cable).Into(input).Response;
        var branches = new List<Branch>(cable.Stage(input).Branches) { input.Input };
        var network = new LadderSection(LumpedBranch.Series(source), branches);

        Assert.NotNull(chain.Branches);
        for (double hertz = 1; hertz < 3e9; hertz *= 1.37)
            Assert.True(Complex.Abs(chain.ComplexGain(hertz) - network.Transfer(new Complex(0, 2 * Math.PI * hertz))) < 1e-9, $"{hertz} Hz");
    }

    /// <summary>Echoes that hardly die are left to the transform over frequency.</summary>
    [Fact]
    public void NearlyLosslessEnds_AreNotDrawnEchoByEcho()
    {
        Response chain = MeasurementChain.From(1.Ohm()).Cable(new Cable(50.Ohm(), 1.m(), 0.66)).Into(FrontEnd.HighImpedance(1.MOhm(), 0.pF(), Response.Gaussian(100.MHz()))).Response;

        Assert.Null(chain.Branches);
    }
}
