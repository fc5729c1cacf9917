using System;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Signals;

/// <summary>Harmonics against numerical integration by SciPy 1.10.1 (tests/scripts/responses/scipy_responses.py), which knows the waveform only.</summary>
public class ScipySignalTests
{
    [Theory]
    [InlineData("trapezoid")]
    [InlineData("gaussian")]
    [InlineData("exponential")]
    [InlineData("half-wave")]
    [InlineData("burst")]
    public void Harmonics_AreThoseOfTheWaveformIntegrated(string name)
    {
        Frequency one = 1.Hz();
        Signal signal = name switch
        {
            "trapezoid" => Signal.Trapezoid(one, 2.Vpp(), Ratio.FromPercent(30), 0.04.s(), 0.08.s()),
            "gaussian" => Signal.Square(one, 2.Vpp(), Ratio.FromPercent(40), Duration.FromSeconds(0.02 * Edge.GaussianRisePerSigma), EdgeShape.Gaussian),
            "exponential" => Signal.Square(one, 2.Vpp(), Duration.FromSeconds(0.01 * Math.Log(9)), EdgeShape.Exponential),
            "half-wave" => Signal.HalfWaveRectified(one, 1.Vpk()),
            _ => Signal.Burst(12.Hz(), 1.Vpk(), 3, 1.s()),
        };
        foreach (string[] cells in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Signals", "scipy-signals.csv")).Skip(1).Select(line => line.Split(',')).Where(cells => cells[0] == name))
            Assert.Equal(double.Parse(cells[2], CultureInfo.InvariantCulture), signal.Harmonic(int.Parse(cells[1], CultureInfo.InvariantCulture)).Peak.Volts, 2e-8);
    }
}
