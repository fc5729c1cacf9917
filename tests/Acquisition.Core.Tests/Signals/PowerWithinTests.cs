using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Acquisition.Core.Signals;
using Xunit;

namespace Acquisition.Core.Tests.Signals;

/// <summary>The share of power up to frequencies far above all lines that matter: answered, or refused with the highest that can be asked.</summary>
public sealed class PowerWithinTests
{
    public static TheoryData<string> Endings => new()
    {
        "sine", "square", "trapezoid", "triangle", "sawtooth with edges", "pulse train", "half-wave rectified", "full-wave rectified", "two-tone", "burst", "pseudo-random bits", "bit pattern",
        "filtered", "superposed",
    };

    private static Signal Named(string name) => name switch
    {
        "sine" => Signal.Sine(1.MHz(), 1.Vpk()),
        "square" => Signal.Square(1.MHz(), 1.Vpp(), 10.ns()),
        "trapezoid" => Signal.Trapezoid(1.MHz(), 1.Vpp(), Ratio.FromPercent(40), 20.ns(), 30.ns()),
        "triangle" => Signal.Triangle(1.MHz(), 1.Vpp()),
        "sawtooth with edges" => Signal.Trapezoid(1.MHz(), 1.Vpp(), Ratio.FromPercent(50), 500.ns(), 20.ns()),
        "pulse train" => Signal.PulseTrain(1.MHz(), 1.Vpp(), 100.ns(), 10.ns()),
        "half-wave rectified" => Signal.HalfWaveRectified(1.MHz(), 1.Vpk()),
        "full-wave rectified" => Signal.FullWaveRectified(1.MHz(), 1.Vpk()),
        "two-tone" => Signal.TwoTone(1.MHz(), 1.Vpk(), 1.3.MHz(), 1.Vpk()),
        "burst" => Signal.Burst(10.MHz(), 1.Vpk(), 5, 20.us()),
        "pseudo-random bits" => Signal.PseudoRandomBits(7, BitRate.FromMegabitsPerSecond(100), 2.Vpp(), 1.ns()),
        "bit pattern" => Signal.BitPattern(new[] { false, false, true, false, true, true, false, true }, BitRate.FromMegabitsPerSecond(100), 2.Vpp(), 1.ns()),
        "filtered" => Response.SinglePole(20.MHz()).Apply(Signal.Square(1.MHz(), 1.Vpp(), 10.ns())),
        _ => Response.SinglePole(20.MHz()).Apply(Signal.Square(1.kHz(), 1.Vpp(), 10.ns())),
    };

    [Theory, MemberData(nameof(Endings))]
    public void AllPower_LiesBelowAFrequencyFarAboveTheEdges(string name) =>
        Assert.Equal(1, Named(name).PowerWithin(0.Hz(), Frequency.FromHertz(1e18)).Fraction, 1e-8);

    /// <summary>A jump puts 8/(π² n²) of the power into its odd harmonics: there is no last one that matters (handbook 4.1).</summary>
    [Fact]
    public void ASignalThatJumps_IsRefusedTooManyLines_WithTheHighestFrequency()
    {
        Signal square = Signal.Square(1.kHz(), 1.Vpp());

        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => square.PowerWithin(0.Hz(), 1000.GHz()));

        Assert.Equal("to", refusal.ParamName);
        Assert.Contains("to must be below 4.194305 GHz; was 1 THz", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(8 / (Math.PI * Math.PI), square.PowerWithin(0.Hz(), 1.kHz()).Fraction, 1e-12);
    }

    /// <summary>Random bits have a density, a single pulse no power over all time: neither has lines to count.</summary>
    [Fact]
    public void RandomBits_HaveAllTheirPowerBelowAVeryHighFrequency() =>
        Assert.Equal(1, Signal.RandomBits(BitRate.FromMegabitsPerSecond(100), 2.Vpp(), 1.ns()).PowerWithin(0.Hz(), Frequency.FromHertz(1e18)).Fraction, 1e-3);
}
