using System;
using System.Numerics;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Signals;

/// <summary>Spectra of what has no harmonics, against sums over the waveform itself and published integrals.</summary>
public sealed class PulseAndBitSpectrumTests
{
    /// <summary>The transform of an asymmetric pulse, as a sum of its values 1 ps apart: the phase tells a slow fall from an early one.</summary>
    [Theory]
    [InlineData(5, 2, 6)]
    [InlineData(40, 2, 6)]
    [InlineData(90, 6, 2)]
    public void SpectrumOfAnAsymmetricPulse_IsTheSumOfItsValues(double megahertz, double rise, double fall)
    {
        Signal pulse = Signal.SinglePulse(1.Vpp(), 20.ns(), Duration.FromNanoseconds(rise), Duration.FromNanoseconds(fall));
        Complex sum = 0;
        for (int i = -20_000; i <= 50_000; i++)
        {
            double t = i * 1e-12;
            sum += pulse.ValueAt(Duration.FromSeconds(t)).Volts * Complex.FromPolarCoordinates(1e-12, -2 * Math.PI * megahertz * 1e6 * t);
        }

        Complex spectrum = pulse.SpectrumAt(Frequency.FromMegahertz(megahertz));

        Assert.True((spectrum - sum).Magnitude < 1e-6 * 20e-9, $"{spectrum} against {sum}");
        Assert.Equal(2.0, pulse.RiseTime!.Nanoseconds, 1e-9);
    }

    /// <summary>The share of 2T sinc²(fT) between two frequencies, by SciPy's quad (1.x): 0 to 1/T, 1/T to 2/T, 0.5/T to 1.25/T.</summary>
    [Theory]
    [InlineData(0, 1, 0.9028233335802807)]
    [InlineData(1, 2, 0.047116006187029526)]
    [InlineData(0.5, 1.25, 0.1357208121040273)]
    public void PowerOfRandomBitsBetweenTwoFrequencies_IsThatOfTheSquaredSinc(double from, double to, double share) =>
        Assert.Equal(share, Signal.RandomBits(BitRate.FromMegabitsPerSecond(100), 1.Vpp()).PowerWithin(Frequency.FromMegahertz(100 * from), Frequency.FromMegahertz(100 * to)).Fraction, 1e-6);
}
