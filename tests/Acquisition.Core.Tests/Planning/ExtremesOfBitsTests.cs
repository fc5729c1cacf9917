using System;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Random bits are told by the same rule as a pattern of them: where levels do not settle, from the lowest to the highest value.</summary>
public class ExtremesOfBitsTests
{
    // By brute force: all 1024 patterns of ten bits, 100 phases each, superposed from the ramp response of four Butterworth poles in closed form (residues); 0.8 Vpp, bits of 800 ps, edges of 200 ps.
    [Theory]
    [InlineData(2.5, 0.88482)]
    [InlineData(0.6, 1.02247)]
    public void RandomBits_SwingAsTheWorstOfAllPatterns(double gigahertz, double volts) =>
        Assert.Equal(volts, Behind(Signal.RandomBits(1.25.GbitPerS(), 0.8.Vpp(), 200.ps()), gigahertz), 3e-4);

    // A long pseudo-random pattern holds every run that matters.
    [Theory]
    [InlineData(2.5)]
    [InlineData(1.0)]
    public void PseudoRandomBits_SwingAsFar(double gigahertz) =>
        Assert.Equal(Behind(Signal.RandomBits(1.25.GbitPerS(), 0.8.Vpp(), 200.ps()), gigahertz), Behind(Signal.PseudoRandomBits(9, 1.25.GbitPerS(), 0.8.Vpp(), 200.ps()), gigahertz), 1e-3);

    // Bits that settle have their levels, overshoot apart.
    [Fact]
    public void BitsThatSettle_SwingByTheirLevels() => Assert.Equal(0.8, Behind(Signal.RandomBits(125.MbitPerS(), 0.8.Vpp(), 200.ps()), 2.5), 1e-9);

    private static double Behind(Signal bits, double gigahertz) => bits.Through(Response.Butterworth(4, Frequency.FromHertz(gigahertz * 1e9)))
        .SampledBy(new Digitizer(20.GSaPerS(), 1.Mpts(), 8.bit())).Over(1.us()).DisplayedAmplitude.Value.Volts;
}
