using System;
using System.Collections.Generic;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Acquisition.Core.Signals;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>The table behind a filtered signal against the sum of its lines, and both against the closed form.</summary>
public sealed class FilteredSignalTests
{
    public static TheoryData<string> Signals => ["square", "train", "bits", "burst", "rectified"];

    private static Signal Named(string name) => name switch
    {
        "square" => Signal.Square(24.MHz(), 2.Vpp(), 1.ns()),
        "train" => Signal.PulseTrain(100.kHz(), 2.Vpp(), 100.ns(), 1.ns()),
        "bits" => Signal.PseudoRandomBits(7, BitRate.FromMegabitsPerSecond(100), 2.Vpp()),
        "burst" => Signal.Burst(10.MHz(), 1.Vpk(), 5, 20.us()),
        _ => Signal.FullWaveRectified(1.MHz(), 1.Vpk()),
    };

    [Theory, MemberData(nameof(Signals))]
    public void ValueOfAFilteredSignal_IsTheSumOfItsLines(string name)
    {
        var filtered = new FilteredSignal(Named(name), Response.SinglePole(200.MHz()));
        double period = filtered.Period!.Value.Seconds;
        foreach (double turns in new[] { -3.2, 0, 1e-5, 0.0123, 0.25, 0.49999, 0.5, 0.8131, 0.999999, 7.77 })
        {
            double sum = filtered.Dc.Volts;
            foreach (SpectralLine line in filtered.Lines(double.MaxValue))
                sum += 2 * (line.Coefficient * System.Numerics.Complex.FromPolarCoordinates(1, 2 * Math.PI * line.Number * turns)).Real;
            Assert.Equal(sum, filtered.ValueAt(Duration.FromSeconds(turns * period)).Volts, 1e-8);
        }
    }

    /// <summary>A square of ±1 through a single pole, steady state: 1 - 2 exp(-t/τ) / (1 + exp(-T/2τ)) (any textbook of circuits); the series ends before the corner at the jump is quite sharp.</summary>
    [Fact]
    public void SquareThroughASinglePole_IsTheExponentialOfTheTextbook()
    {
        var filtered = new FilteredSignal(Signal.Square(24.MHz(), 2.Vpp()), Response.SinglePole(100.MHz()));
        double tau = 1 / (2 * Math.PI * 100e6), half = 0.5 / 24e6;

        for (int i = 20; i < 980; i++)
        {
            double t = half * i / 1000;
            Assert.Equal(1 - 2 * Math.Exp(-t / tau) / (1 + Math.Exp(-half / tau)), filtered.ValueAt(Duration.FromSeconds(t)).Volts, 2e-7);
        }
    }

    [Fact]
    public void HarmonicsOfALongBitPattern_AreTheSumOverItsTransitions()
    {
        var bits = (LevelSignal)Signal.PseudoRandomBits(9, BitRate.FromMegabitsPerSecond(100), 2.Vpp(), 1.ns());
        var unslotted = new LevelSignal("bits", bits.Period!.Value.Seconds, bits.Value(-1e-12), new List<Transition>(bits.Transitions).ToArray());

        foreach (int n in new[] { 1, 2, 77, 510, 511, 512, 5000, 16384 })
            Assert.True(System.Numerics.Complex.Abs(bits.Coefficient(n) - unslotted.Coefficient(n)) < 1e-12, $"harmonic {n}");
    }

    /// <summary>What each edge of a pattern does alone, added up, is the sum of its lines.</summary>
    [Fact]
    public void BitPattern_ReadFromItsEdges_IsTheSumOfItsLines()
    {
        var bits = (LevelSignal)Signal.PseudoRandomBits(9, BitRate.FromMegabitsPerSecond(100), 2.Vpp(), 1.ns());
        Response response = Response.Gaussian(200.MHz());
        EdgeSum edges = EdgeSum.Of(bits, response)!;
        var lines = new FilteredSignal(bits, response);

        for (double time = 0; time < bits.Seconds; time += 12.37e-9)
            Assert.Equal(lines.ValueAt(Duration.FromSeconds(time)).Volts, edges.Value(time), 1e-8);
    }

    /// <summary>A series of all the harmonics of a long pattern is dear: it is read from its edges, a few of which count at a time.</summary>
    [Fact]
    public void LongBitPattern_IsReadFromItsEdges() =>
        Assert.IsType<SuperposedSignal>(Response.Gaussian(200.MHz()).Apply(Signal.PseudoRandomBits(15, BitRate.FromMegabitsPerSecond(100), 2.Vpp(), 1.ns())));
}
