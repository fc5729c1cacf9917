using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core.Literals;
using Acquisition.Core.Signals;
using Xunit;

namespace Acquisition.Core.Tests.Signals;

/// <summary>What is stated of a waveform, against sums over its own values and against the arithmetic of its definition.</summary>
public sealed class WaveformValuesTests
{
    /// <summary>Means of 10 000 values of a period, with offsets that leave it above zero, below it and across it.</summary>
    [Theory]
    [InlineData("sine", 0.4), InlineData("sine", 1.5), InlineData("sine", -1.5)]
    [InlineData("burst", 0.4), InlineData("burst", -2.0)]
    [InlineData("half", -0.4), InlineData("half", -2.0), InlineData("half", 0.2)]
    [InlineData("full", -0.4), InlineData("full", -2.0), InlineData("full", 0.2)]
    [InlineData("trapezoid", 0.4), InlineData("trapezoid", -0.9), InlineData("trapezoid", 1.2)]
    [InlineData("gaussian", 0.3), InlineData("exponential", 0.3), InlineData("exponential", -1.2)]
    public void MeansOfASignal_AreThoseOfItsValues(string name, double offset)
    {
        Signal signal = (name switch
        {
            "sine" => Signal.Sine(1.Hz(), 1.Vpk()),
            "burst" => Signal.Burst(12.Hz(), 1.Vpk(), 3, 1.s()),
            "half" => Signal.HalfWaveRectified(1.Hz(), 1.Vpk()),
            "full" => Signal.FullWaveRectified(0.5.Hz(), 1.Vpk()),
            "trapezoid" => Signal.Trapezoid(1.Hz(), 2.Vpp(), 30.Percent(), 0.2.s(), 0.1.s()),
            "gaussian" => Signal.Square(1.Hz(), 2.Vpp(), 40.Percent(), 0.08.s(), EdgeShape.Gaussian),
            _ => Signal.Square(1.Hz(), 2.Vpp(), 0.05.s(), EdgeShape.Exponential),
        }).WithOffset(Voltage.FromVolts(offset));
        double[] values = Enumerable.Range(0, 10_000).Select(i => signal.ValueAt(((i + 0.5) / 10_000).s()).Volts).ToArray();
        double mean = values.Average(), rms = Math.Sqrt(values.Average(x => x * x));

        Assert.Equal(mean, signal.Dc.Volts, 4e-6);
        Assert.Equal(rms, signal.Rms.Volts, 4e-6);
        Assert.Equal(Math.Sqrt(rms * rms - mean * mean), signal.AcRms.Volts, 8e-6);
        Assert.Equal(values.Average(Math.Abs), signal.MeanMagnitude, 3e-5);
        Assert.Equal(rms / values.Average(Math.Abs), signal.FormFactor.Fraction, 2e-5);
        // π/(2√2) times the mean magnitude is what such a meter shows (IEC 60050 and handbook 1.5: the form factor of a sine).
        Assert.Equal(Math.PI / Math.Sqrt(8) * values.Average(Math.Abs) / rms - 1, signal.AverageRespondingMeterError.Fraction, 2e-5);
        Assert.Equal(values.Max(), signal.Maximum.Volts, 2e-4);
        Assert.Equal(values.Min(), signal.Minimum.Volts, 2e-4);
        Assert.Equal(values.Max(Math.Abs), signal.Peak.Volts, 2e-4);
        Assert.Equal(values.Max() - values.Min(), signal.PeakToPeak.Volts, 4e-4);
        Assert.Equal(values.Max(Math.Abs) / rms, signal.CrestFactor.Fraction, 1e-3);
        Assert.Equal(1, signal.Period!.Value.Seconds, 1e-12);
        Assert.Equal(1, signal.Fundamental!.Value.Hertz, 1e-12);
    }

    /// <summary>Two tones drift through all phases against each other: means over 100 x 100 of them.</summary>
    [Theory]
    [InlineData(0), InlineData(1.5), InlineData(-5)]
    public void MeansOfTwoTones_AreThoseOverAllPhases(double offset)
    {
        Signal tones = Signal.TwoTone(10.MHz(), 1.Vpk(), 11.MHz(), 2.Vpk()).WithOffset(Voltage.FromVolts(offset));
        double sum = 0, squares = 0;
        for (int i = 0; i < 100; i++)
        {
            for (int j = 0; j < 100; j++)
            {
                double value = offset + Math.Sin(2 * Math.PI * (i + 0.5) / 100) + 2 * Math.Sin(2 * Math.PI * (j + 0.5) / 100);
                sum += Math.Abs(value);
                squares += value * value;
            }
        }
        Assert.Equal(sum / 10_000, tones.MeanMagnitude, 2e-3);
        Assert.Equal(Math.Sqrt(squares / 10_000), tones.Rms.Volts, 1e-9);
        Assert.Equal(offset + 3, tones.Maximum.Volts, 1e-12);
        Assert.Equal(offset - 3, tones.Minimum.Volts, 1e-12);
        Assert.Equal(offset, tones.Dc.Volts);
    }

    /// <summary>A long pseudo-random sequence is nearly random: as many ones as zeros less one, a transition in every other bit.</summary>
    [Theory]
    [InlineData(EdgeShape.Linear), InlineData(EdgeShape.Gaussian), InlineData(EdgeShape.Exponential)]
    public void MeansOfRandomBits_AreThoseOfALongSequence(EdgeShape shape)
    {
        BitRate rate = BitRate.FromMegabitsPerSecond(100);
        Signal random = Signal.RandomBits(rate, 3.Vpp(), 1.ns(), shape).WithOffset(0.4.V()), sequence = Signal.PseudoRandomBits(9, rate, 3.Vpp(), 1.ns(), shape).WithOffset(0.4.V());
        Assert.Equal(sequence.Dc.Volts, random.Dc.Volts, 1.5 / 511 + 1e-9);
        Assert.Equal(sequence.AcRms.Volts, random.AcRms.Volts, 4e-3);
        Assert.Equal(sequence.MeanMagnitude, random.MeanMagnitude, 8e-3);
        Assert.Equal(sequence.Maximum, random.Maximum);
        Assert.Equal(sequence.Minimum, random.Minimum);
        Assert.Equal(sequence.RiseTime, random.RiseTime);
        Assert.Equal(sequence.PowerWithin(0.Hz(), 75.MHz()).Fraction, random.PowerWithin(0.Hz(), 75.MHz()).Fraction, 8e-3);
        Assert.Equal(sequence.PowerWithin(130.MHz(), 450.MHz()).Fraction, random.PowerWithin(130.MHz(), 450.MHz()).Fraction, 8e-3);
    }

    /// <summary>10 % to 90 %, read off the waveform itself.</summary>
    [Fact]
    public void RiseTimesOfRoundWaveforms_AreThoseOfTheirValues()
    {
        Signal sine = Signal.Sine(1.Hz(), 1.Vpk()), burst = Signal.Burst(5.Hz(), 1.Vpk(), 2, 1.s());
        Assert.Equal(0.8, sine.ValueAt(sine.RiseTime / 2).Volts, 1e-12);
        Assert.Equal(0.8, burst.ValueAt(burst.RiseTime / 2).Volts, 1e-12);
        Assert.Equal(0, burst.ValueAt(0.45.s()).Volts);
        foreach (Signal rectified in new[] { Signal.HalfWaveRectified(1.Hz(), 1.Vpk()), Signal.FullWaveRectified(1.Hz(), 1.Vpk()) })
        {
            Duration tenth = Duration.FromSeconds(Math.Asin(0.1) / (2 * Math.PI));
            Assert.Equal(0.9, rectified.ValueAt(tenth + rectified.RiseTime).Volts, 1e-12);
        }
        // Slopes of 2π (3 V · 10 MHz + 4 V · 11 MHz) at most: a sine of 7 V has that slope at 74/7 MHz.
        Signal tones = Signal.TwoTone(10.MHz(), 3.Vpk(), 11.MHz(), 4.Vpk());
        Assert.Equal(Signal.Sine(Frequency.FromMegahertz(74.0 / 7), 7.Vpk()).RiseTime.Nanoseconds, tones.RiseTime.Nanoseconds, 1e-9);
        Assert.Null(sine.SteepestEdge);
    }

    [Fact]
    public void SteepestEdge_IsTheFasterOne_AndAJumpIsFasterThanAny()
    {
        Assert.Equal(3, Signal.Trapezoid(1.MHz(), 1.Vpp(), 50.Percent(), 30.ns(), 3.ns()).RiseTime.Nanoseconds, 1e-9);
        Assert.Equal(3, Signal.Trapezoid(1.MHz(), 1.Vpp(), 50.Percent(), 3.ns(), 30.ns()).RiseTime.Nanoseconds, 1e-9);
        Assert.Equal(0, Signal.Sawtooth(1.MHz(), 1.Vpp()).RiseTime.Seconds);
        Assert.Equal(0, Signal.PulseTrain(1.MHz(), 1.Vpp(), 500.ns(), default, 30.ns()).RiseTime.Seconds);
        Assert.Equal(3, Signal.SinglePulse(1.Vpp(), 100.ns(), 30.ns(), 3.ns()).RiseTime.Nanoseconds, 1e-9);
        Assert.Equal(3, Signal.SinglePulse(1.Vpp(), 100.ns(), 3.ns(), 30.ns()).RiseTime.Nanoseconds, 1e-9);
    }

    /// <summary>Definitions of an edge's own numbers: integrals over its course, and the rest that is left before it begins and after it has ended.</summary>
    [Theory]
    [InlineData(EdgeShape.Linear), InlineData(EdgeShape.Gaussian), InlineData(EdgeShape.Exponential)]
    public void NumbersOfAnEdge_AreIntegralsOverItsCourse(EdgeShape shape)
    {
        var edge = new Edge(1.s(), shape);
        double deficit = 0, lag = 0;
        const double step = 1e-3;
        for (double t = -edge.LastFelt - 1 + step / 2; t < edge.LastFelt + 1; t += step)
        {
            double fraction = edge.Fraction(t);
            deficit += fraction * (1 - fraction) * step;
            lag += ((t > 0 ? 1 : 0) - fraction) * step;
        }
        Assert.Equal(deficit, edge.PowerDeficit, 1e-4);
        Assert.Equal(lag, edge.CentroidLag, 1e-3);
        Assert.Equal(0.5, edge.Fraction(0), 1e-12);
        Assert.InRange(edge.Fraction(-edge.Before), 0, 1e-9);
        Assert.InRange(1 - edge.Fraction(edge.After), 0, 1.1e-9);
        Assert.InRange(edge.Fraction(-edge.FirstFelt), 0, 1.2e-16);
        Assert.InRange(1 - edge.Fraction(edge.LastFelt), 0, 1.2e-16);
        // Not much longer than that: three quarters of it are too short.
        Assert.True(edge.Fraction(-0.75 * edge.Before) > 1e-9 && 1 - edge.Fraction(0.75 * edge.After) > 1e-9);
        Assert.True(edge.Fraction(-0.75 * edge.FirstFelt) > 1e-16 && 1 - edge.Fraction(0.75 * edge.LastFelt) > 1e-14);
    }

    [Fact]
    public void AnIdealJump_IsHalfWayAtItsTime_AndFlatInItsSpectrum()
    {
        var jump = new Edge(default);
        Assert.Equal([0, 0.5, 1], new[] { -1e-15, 0, 1e-15 }.Select(jump.Fraction));
        Assert.Equal(Complex.One, jump.Spectrum(1e9));
        Assert.Equal("jump", jump.ToString());
        Assert.Equal("Gaussian edge, 2 ns", new Edge(2.ns(), EdgeShape.Gaussian).ToString());
    }

    /// <summary>The transform of the slope by a sum over the course: S(f) = Σ (S(t + dt) - S(t)) exp(-j ω t).</summary>
    [Theory]
    [InlineData(EdgeShape.Linear, 0.5), InlineData(EdgeShape.Linear, 9), InlineData(EdgeShape.Linear, 1e-4), InlineData(EdgeShape.Gaussian, 2), InlineData(EdgeShape.Exponential, 3), InlineData(EdgeShape.Exponential, 0.3)]
    public void SpectrumOfAnEdge_IsThatOfItsSlope(EdgeShape shape, double omega)
    {
        var edge = new Edge(1.s(), shape);
        Complex sum = 0;
        const double step = 1e-3;
        for (double t = -5; t < 12; t += step)
            sum += (edge.Fraction(t + step) - edge.Fraction(t)) * Complex.FromPolarCoordinates(1, -omega * (t + step / 2));
        Assert.True((sum - edge.Spectrum(omega)).Magnitude < 2e-6, $"{edge.Spectrum(omega)} against {sum}");
    }

    [Fact]
    public void LineAtDc_IsTheValueItself()
    {
        Signal square = Signal.Square(1.MHz(), 2.Vpp()).WithOffset(-(0.5.V()));
        SpectralLine dc = square.Harmonic(0), first = square.Harmonic(1);
        Assert.Equal(0, dc.Number);
        Assert.Equal(0, dc.Frequency.Hertz);
        Assert.Equal(0.5, dc.Peak.Volts, 1e-12);
        Assert.Equal(0.5, dc.Rms.Volts, 1e-12);
        Assert.Equal(Math.PI, Math.Abs(dc.Phase.Radians), 1e-12);
        Assert.Equal(20 * Math.Log10(0.5 / (4 / Math.PI)), dc.RelativeToCarrier!.Value.Decibels, 1e-9);
        Assert.Equal(0, first.RelativeToCarrier!.Value.Decibels, 1e-12);
        Assert.Equal(4 / Math.PI / Math.Sqrt(2), first.Rms.Volts, 1e-12);
        Assert.Equal(-Math.PI / 2, first.Phase.Radians, 1e-12);
        Assert.Null(Signal.Sine(1.MHz(), 1.Vpk()).Harmonic(2).RelativeToCarrier);
        Assert.Equal("1 MHz: 1 Vpk", Signal.Sine(1.MHz(), 1.Vpk()).Harmonic(1).ToString());
    }

    /// <summary>9 V² and 16 V² over two: each tone is a line, whichever is named first.</summary>
    [Fact]
    public void LinesOfTwoTones_ComeInOrderOfFrequency()
    {
        foreach (Signal tones in new[] { Signal.TwoTone(10.MHz(), 3.Vpk(), 11.MHz(), 4.Vpk()), Signal.TwoTone(11.MHz(), 4.Vpk(), 10.MHz(), 3.Vpk()) })
        {
            SpectralLine[] lines = tones.Lines(1e9).ToArray();
            Assert.Equal([10e6, 11e6], lines.Select(line => line.Frequency.Hertz));
            Assert.Equal([3.0, 4.0], lines.Select(line => line.Peak.Volts));
            Assert.Equal(20 * Math.Log10(0.75), lines[0].RelativeToCarrier!.Value.Decibels, 1e-12);
            Assert.All(lines, line => Assert.Equal(-Math.PI / 2, line.Phase.Radians, 1e-12));
            Assert.All(lines, line => Assert.Equal(-1, line.Number));
            Assert.Equal(0.36, tones.PowerWithin(0.Hz(), 10.MHz()).Fraction, 1e-12);
            Assert.Equal(0.64, tones.PowerWithin(11.MHz(), 12.MHz()).Fraction, 1e-12);
            Assert.Equal(0, tones.PowerWithin(0.Hz(), 9.9.MHz()).Fraction);
            Assert.Equal(1, tones.PowerWithin(10.MHz(), 11.MHz()).Fraction, 1e-12);
            Assert.Equal(11e6, tones.Tone);
        }
    }

    /// <summary>8/(π² n²) of a square's power lies in its odd harmonics (handbook 4.3); both ends of a band belong to it.</summary>
    [Fact]
    public void PowerBetweenTwoLines_CountsBoth()
    {
        Signal square = Signal.Square(1.MHz(), 2.Vpp());
        Assert.Equal(8 / (Math.PI * Math.PI) * (1.0 / 9 + 1.0 / 25), square.PowerWithin(3.MHz(), 5.MHz()).Fraction, 1e-9);
        Assert.Equal(8 / (Math.PI * Math.PI) / 9, square.PowerWithin(2.MHz(), 4.MHz()).Fraction, 1e-9);
        Assert.Equal(8 / (Math.PI * Math.PI) * (1 + 1.0 / 9), square.PowerUpToHarmonic(4).Fraction, 1e-9);
        Assert.Equal(Math.Sqrt(1 - 8 / (Math.PI * Math.PI) * (1 + 1.0 / 9)), square.RmsErrorBeyondHarmonic(4).Fraction, 1e-9);
        Assert.Equal([1, 2, 3], square.Harmonics(3).Select(line => line.Number));
    }

    /// <summary>The coefficients of a pattern of many transitions, by the sum over its values.</summary>
    [Theory]
    [InlineData(1), InlineData(7), InlineData(62), InlineData(63), InlineData(64), InlineData(130)]
    public void HarmonicsOfALongSequence_AreThoseOfItsValues(int number)
    {
        Signal sequence = Signal.PseudoRandomBits(6, 63.bitPerS(), 2.Vpp(), 0.004.s());
        const int count = 63 * 200;
        Complex sum = 0;
        for (int i = 0; i < count; i++)
            sum += sequence.ValueAt(((i + 0.5) / count).s()).Volts * Complex.FromPolarCoordinates(2.0 / count, -2 * Math.PI * number * (i + 0.5) / count);
        SpectralLine line = sequence.Harmonic(number);
        Assert.True((sum - Complex.FromPolarCoordinates(line.Peak.Volts, line.Phase.Radians)).Magnitude < 1e-4, $"{line.Peak} {line.Phase} against {sum}");
    }

    [Fact]
    public void AStepAndAPulse_AreWhatTheyAreBeforeAndAfter()
    {
        Signal step = Signal.Step(2.Vpp(), 4.ns()).WithOffset(-(0.5.V())), pulse = Signal.SinglePulse(2.Vpp(), 10.ns(), 1.ns(), 2.ns()).WithOffset(-(0.5.V()));
        Assert.Equal([-0.5, 1.5, 0.5], [step.Minimum.Volts, step.Maximum.Volts, step.Dc.Volts]);
        // Half of all time at -0.5 V, half at 1.5 V.
        Assert.Equal(1, step.AcRms.Volts, 1e-12);
        Assert.Equal(1, step.MeanMagnitude, 1e-12);
        Assert.Equal([-0.5, 1.5, -0.5], [pulse.Minimum.Volts, pulse.Maximum.Volts, pulse.Dc.Volts]);
        Assert.Equal(0.5, pulse.MeanMagnitude);
        Assert.Equal(0.5, pulse.ValueAt(default).Volts, 1e-12);
        Assert.Equal(1.5, pulse.ValueAt(5.ns()).Volts, 1e-12);
        Assert.Equal(0.5, pulse.ValueAt(10.ns()).Volts, 1e-12);
        Assert.Equal(-0.5, pulse.ValueAt(20.ns()).Volts, 1e-12);
        // 20 nV·s, the area between the 50 % points; a slow exponential fall adds its lag of 2 V (1 - ln 2) time constants.
        Assert.Equal(20e-9, Signal.SinglePulse(2.Vpp(), 10.ns(), 1.ns(), 2.ns()).SpectrumAt(default).Real, 1e-18);
        Signal lopsided = Signal.SinglePulse(2.Vpp(), 100.ns(), default, 2.ns(), EdgeShape.Exponential);
        Assert.Equal(200e-9 + 2 * (1 - Math.Log(2)) * 2e-9 / Math.Log(9), lopsided.SpectrumAt(default).Real, 1e-18);
    }

    /// <summary>A rectangular pulse has the spectrum A w sinc(f w), half its width late; jumps leave 1/(π² f T) of the power of random bits above f (the mean of the squared sine is one half).</summary>
    [Fact]
    public void SpectraOfJumps_AreThoseOfTheSinc()
    {
        Complex spectrum = Signal.SinglePulse(3.Vpp(), 10.ns()).SpectrumAt(25.MHz());
        Assert.Equal(3 * 10e-9 * Math.Sin(Math.PI / 4) / (Math.PI / 4), spectrum.Magnitude, 1e-18);
        Assert.Equal(-Math.PI / 4, spectrum.Phase, 1e-12);
        Signal bits = Signal.RandomBits(BitRate.FromMegabitsPerSecond(100), 3.Vpp());
        Assert.Equal(1 - 1 / (Math.PI * Math.PI * 5000), bits.PowerWithin(0.Hz(), 500.GHz()).Fraction, 1e-6);
    }

    /// <summary>Expected ranges of n normal values: the d2 of control charts (ASTM E2587; 1.128, 2.326, 3.078, 3.931), 5.015 for 100, 6.483 for 1000.</summary>
    [Theory]
    [InlineData(2, 1.128), InlineData(5, 2.326), InlineData(10, 3.078), InlineData(25, 3.931), InlineData(100, 5.015), InlineData(1000, 6.483)]
    public void ExpectedPeakToPeakOfNoise_IsD2(int samples, double d2) =>
        Assert.Equal(d2, GaussianNoise.ExpectedPeakToPeak(1.Vrms(), PointCount.FromPoints(samples)).Volts, 6e-4);

    [Fact]
    public void BandOfNoise_HoldsTheShareThatItWasMadeFor()
    {
        foreach (double share in new[] { 0.5, 0.9, 0.999, 0.999999 })
            Assert.Equal(1 - share, GaussianNoise.ShareOutside(2.mVrms(), GaussianNoise.BandFor(2.mVrms(), Ratio.FromFraction(share))).Fraction, 1e-12);
        // One standard deviation on each side: 68.27 %.
        Assert.Equal(0.317310508, GaussianNoise.ShareOutside(1.mVrms(), 2.mVpp()).Fraction, 1e-8);
    }
}
