using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Slow signals with fast edges have more harmonics than anyone lists; what is said of them must not stop where the list does.</summary>
public class SlowSignalTests
{
    private static readonly Digitizer Bench200 = new(2.GSaPerS(), 14.Mpts(), 8.bit());

    [Fact]
    public void HarmonicsKept_OfASlowSquare_ReachTheBandwidth()
    {
        // 200 MHz / 1 kHz = 200 000; the last odd harmonic below it.
        Outlook outlook = Signal.Square(1.kHz(), 3.3.Vpp(), 1.ns()).Through(Response.Gaussian(200.MHz())).SampledBy(Bench200).Over(5.ms());
        Assert.Equal(199_999, outlook.HarmonicsKept);
        Assert.Equal(1e9 / 199.999e6, outlook.NyquistMargin!.Value.Fraction, 9);
    }

    [Fact]
    public void HarmonicsKept_EndAtHalfTheSampleRate_WhereThatComesFirst()
    {
        Outlook outlook = Signal.Square(1.kHz(), 3.3.Vpp(), 1.ns()).Through(Response.Gaussian(200.MHz())).SampledBy(Bench200).Over(100.ms());
        Assert.Equal(140.MSaPerS(), outlook.Timebase.Rate);
        Assert.Equal(69_999, outlook.HarmonicsKept);
    }

    [Fact]
    public void HarmonicsKept_GoOnSteadily_WhereTheListingEnds()
    {
        int Kept(double hertz) => Signal.Square(Frequency.FromHertz(hertz), 3.3.Vpp(), 1.ns()).Through(Response.Gaussian(200.MHz())).SampledBy(Bench200).Over(1.ms()).HarmonicsKept;
        Assert.Equal(1999, Kept(200e6 / 1999.5));
        Assert.Equal(2001, Kept(200e6 / 2001.5));
    }

    [Fact]
    public void HarmonicsThatMatter_OfASlowSquare_GoOnBehindThoseListed()
    {
        // Odd harmonics fall as 1/n up to 1/(π · edge) = 255 MHz, number 25 465: what lies beyond N adds up to √(1/(2 N)) of the fundamental until there, 0.44 % of it.
        Explained<SampleRate> rate = new Requirement(Signal.Square(10.kHz(), 3.3.Vpp(), 1.ns())).WithEdgeTolerance(5.Percent()).WithAmplitudeTolerance(0.1.Percent()).Specify().SampleRate!;
        string content = rate.Inputs.Select(input => input.ToString()).Single(text => text.Contains("what lies above harmonic", StringComparison.Ordinal));
        string number = content.Split("what lies above harmonic ")[1].Split(' ')[0];
        Assert.InRange(int.Parse(number, System.Globalization.CultureInfo.InvariantCulture), 25_465, 200_000);
    }

    [Fact]
    public void RangeSetToTheSwing_IsNotClippedByTheLastDigitsOfAGain()
    {
        MeasurementChain chain = MeasurementChain.From(1.Ohm()).Probe(Probe.Passive(10, 10.MOhm(), 12.pF(), 200.MHz())).Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())));
        Outlook outlook = Signal.Sine(50.Hz(), 3.Vpk()).Through(chain).SampledBy(Bench200).Over(100.ms());
        Assert.DoesNotContain(outlook.Findings, finding => finding.Code == "clipped");
    }

    [Fact]
    public void FallTimeLeftOut_IsTheRiseTime()
    {
        Signal given = Signal.SinglePulse(1.Vpp(), 10.ns(), 1.ns(), 1.ns()), left = Signal.SinglePulse(1.Vpp(), 10.ns(), 1.ns());
        Assert.Equal(given.SpectrumAt(123.MHz()), left.SpectrumAt(123.MHz()));
        Signal jump = Signal.SinglePulse(1.Vpp(), 10.ns(), 1.ns(), 0.ns());
        Assert.NotEqual(given.SpectrumAt(123.MHz()), jump.SpectrumAt(123.MHz()));
    }
}
