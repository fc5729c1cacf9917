using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

public class DisplayedWaveformTests
{
    private static readonly Digitizer Fast = new(100.GSaPerS(), 14.Mpts(), 8.bit());

    private static double Swing(Signal signal, Response chain)
    {
        Signal shown = chain.Apply(signal);
        double[] values = Enumerable.Range(0, 20_001).Select(i => shown.Value((i - 10_000) * 1e-12)).ToArray();
        return values.Max() - values.Min();
    }

    [Theory]
    [InlineData(50)]
    [InlineData(130)]
    [InlineData(150)]
    [InlineData(300)]
    public void Amplitude_OfASquare_IsThatOfItsOwnTrace(double megahertz)
    {
        Signal square = Signal.Square(megahertz.MHz(), 3.3.Vpp(), 0.2.ns());
        Response chain = Response.Gaussian(156.MHz());
        Outlook outlook = square.Through(chain).SampledBy(Fast).Over(100.ns());
        Assert.Equal(Swing(square, chain), outlook.DisplayedAmplitude.Value.SiValue, 3.3 * 1.5e-3);
    }

    [Fact]
    public void Amplitude_OfASquareBehindAGaussian_IsShortWhereItsEdgesMeet()
    {
        Outlook outlook = Signal.Square(150.MHz(), 3.3.Vpp(), 0.2.ns()).Through(Response.Gaussian(156.MHz())).SampledBy(Fast).Over(100.ns());
        Assert.Equal(2.967, outlook.DisplayedAmplitude.Value.SiValue, 2e-3);
        Assert.InRange(outlook.AmplitudeError.Percent, -10.3, -9.8);
    }

    [Fact]
    public void Amplitude_OfASinglePulseBehindAGaussian_IsTheErrorFunctions()
    {
        // A pulse of width w behind a Gaussian of standard deviation s reaches erf(w / (2 sqrt2 s)); s = sqrt(ln 2) / (2 pi f3dB) (handbook 2.2).
        Outlook outlook = Signal.SinglePulse(1.Vpp(), 3.ns()).Through(Response.Gaussian(156.MHz())).SampledBy(Fast).Over(100.ns());
        double sigma = Math.Sqrt(Math.Log(2)) / (2 * Math.PI * 156e6);
        Assert.Equal(MathNet.Numerics.SpecialFunctions.Erf(3e-9 / (2 * Math.Sqrt(2) * sigma)), outlook.DisplayedAmplitude.Value.SiValue, 1e-3);
    }

    [Fact]
    public void Edge_OfASquareWhoseLevelsDoNotSettle_IsMeasuredOnTheWaveform()
    {
        Outlook outlook = Signal.Square(150.MHz(), 3.3.Vpp(), 0.2.ns()).Through(Response.Gaussian(156.MHz())).SampledBy(Fast).Over(100.ns());
        Assert.Equal(1.855e-9, outlook.DisplayedEdge!.Value.SiValue, 2e-12);
        Assert.Equal(1.855e-9 * 100e9, outlook.IntervalsPerEdge!.Value.Fraction, 0.2);
    }

    [Fact]
    public void Edge_OfAShownSine_IsASines()
    {
        // 10 % to 90 % of a sine: asin(0.8) / (pi f). Far above the bandwidth only the fundamental is left.
        Outlook outlook = Signal.Square(400.MHz(), 1.Vpp(), 0.1.ns()).Through(Response.Gaussian(156.MHz())).SampledBy(Fast).Over(100.ns());
        Assert.Equal(Math.Asin(0.8) / (Math.PI * 400e6), outlook.DisplayedEdge!.Value.SiValue, 1e-13);
    }

    [Fact]
    public void EdgeOfASquareBehindAPureDelay_IsTheSameWithoutIt()
    {
        Signal square = Signal.Square(100.MHz(), 1.Vpp(), 0.2.ns());
        Outlook near = square.Through(Response.Gaussian(156.MHz())).SampledBy(Fast).Over(100.ns());
        Outlook far = square.Through(Response.Gaussian(156.MHz()).Then(Response.Delay(37.3.ns()))).SampledBy(Fast).Over(100.ns());
        Assert.Equal(near.DisplayedEdge!.Value.SiValue, far.DisplayedEdge!.Value.SiValue, 1e-13);
        Assert.Equal(near.DisplayedAmplitude.Value.SiValue, far.DisplayedAmplitude.Value.SiValue, 1e-4);
    }

    [Fact]
    public void Amplitude_OfRareNarrowPulses_IsThatOfOneOfThem()
    {
        Outlook rare = Signal.PulseTrain(2.kHz(), 1.Vpp(), 3.ns()).Through(Response.Gaussian(156.MHz())).SampledBy(Fast).Over(1.us());
        Outlook once = Signal.SinglePulse(1.Vpp(), 3.ns()).Through(Response.Gaussian(156.MHz())).SampledBy(Fast).Over(1.us());
        Assert.Equal(once.DisplayedAmplitude.Value.SiValue, rare.DisplayedAmplitude.Value.SiValue, 1e-6);
        Assert.Equal(once.DisplayedEdge!.Value.SiValue, rare.DisplayedEdge!.Value.SiValue, 1e-13);
    }

    [Fact]
    public void Edge_OfRandomBitsFasterThanTheChain_IsNotGivenButSaid()
    {
        Outlook outlook = Signal.RandomBits(400.MbitPerS(), 1.Vpp(), 0.2.ns()).Through(Response.Gaussian(156.MHz())).SampledBy(Fast).Over(100.ns());
        Assert.Null(outlook.DisplayedEdge);
        Assert.Contains(outlook.Findings, finding => finding.Code == "edge-incomplete");
    }

    // A ringing chain that does not settle between the edges shows them between its own extremes; the finding and the value beside it say what one edge alone would take.
    [Fact]
    public void EdgeOfAClockBehindARingingChain_SaysWhetherItsLevelsSettle()
    {
        Outlook settled = Beacon(200), ringing = Beacon(60);
        Assert.DoesNotContain(settled.Findings, finding => finding.Code == "levels-unsettled");
        Finding said = Assert.Single(ringing.Findings, finding => finding.Code == "levels-unsettled");
        double alone = Response.Butterworth(4, 60.MHz()).RiseTimeOf(new Edge(2.8.ns())).Value.Seconds;
        Assert.Contains("one edge alone would take " + FewDigits.Of(alone, Duration.Kind), said.Message, StringComparison.Ordinal);
        Assert.Equal(alone, ringing.SingleEdge!.Value.Seconds, 1e-15);
        Assert.DoesNotContain(ringing.DisplayedEdge!.Rules, rule => rule.Value == ringing.SingleEdge);
        Signal shown = Response.Butterworth(4, 60.MHz()).Apply(Clock);
        Assert.Equal(shown.PeakToPeak.Volts, ringing.DisplayedAmplitude.Value.SiValue, 1e-9);

        static Outlook Beacon(int megahertz) => Clock.Through(Response.Butterworth(4, megahertz.MHz())).SampledBy(Fast).Over(100.ns());
    }

    private static Signal Clock => Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());

    // Behind an AC coupling of 1 Hz a clock of 1 kHz droops by about half of 2 pi 1 Hz / 1 kHz of its swing: the extremes lie so much further apart, and the edge goes between them.
    [Fact]
    public void EdgeOfASlowClockBehindAnAcCoupling_IsMeasuredOnItsWaveform()
    {
        Response chain = Response.HighPass(1.Hz()).Then(Response.Gaussian(200.MHz()));
        Outlook outlook = Signal.Square(1.kHz(), 2.Vpp(), 2.8.ns()).Through(chain).SampledBy(Fast).Over(100.us());
        double alone = Response.Gaussian(200.MHz()).RiseTimeOf(new Edge(2.8.ns())).Value.Seconds;
        Assert.Equal(2 * (1 + Math.PI / 2 * 1e-3), outlook.DisplayedAmplitude.Value.SiValue, 1e-5);
        Assert.Equal(alone, outlook.DisplayedEdge!.Value.Seconds, 5e-3 * alone);
        Assert.Contains("computed waveform", outlook.DisplayedEdge.Method, StringComparison.Ordinal);
    }

    // Straight edges of slope s behind a Gaussian of deviation d keep their slope, and each corner is lowered by s d √(2/π): 10 % to 90 % of what is left of the swing is 0.8 (T/2 - 2 d √(2/π)).
    [Theory]
    [InlineData(10)]
    [InlineData(37)]
    [InlineData(200)]
    [InlineData(2000)]
    public void EdgeOfATriangle_IsThatOfItsRoundedSwing(double megahertz)
    {
        Outlook outlook = Signal.Triangle(1.MHz(), 1.Vpp()).Through(Response.Gaussian(megahertz.MHz())).SampledBy(Fast).Over(10.us());
        double deviation = Math.Sqrt(Math.Log(2)) / (2 * Math.PI * megahertz * 1e6);
        Assert.Equal(0.8 * (500e-9 - (2 * deviation * Math.Sqrt(2 / Math.PI))), outlook.DisplayedEdge!.Value.Seconds, 1e-12);
        Assert.DoesNotContain(outlook.Findings, finding => finding.Code == "edge-slowed");
    }

    // One period of 2^20 points times the gain of the chain by numpy's FFT, crossings of the result by linear interpolation.
    [Theory]
    [InlineData(1e6, 398e-9, 0, 200e6, 397.976e-9)]
    [InlineData(1e3, 100e-6, 10, 100e6, 101.173e-6)]
    [InlineData(1e6, 100e-9, 10e3, 100e6, 101.148e-9)]
    public void EdgeWithoutALevelThatStays_IsThatOfTheFourierTransform(double hertz, double seconds, double cutoff, double bandwidth, double expected)
    {
        Response chain = Response.Gaussian(Frequency.FromHertz(bandwidth));
        if (cutoff > 0)
            chain = Response.HighPass(Frequency.FromHertz(cutoff)).Then(chain);
        Outlook outlook = Signal.Square(Frequency.FromHertz(hertz), 1.Vpp(), Duration.FromSeconds(seconds)).Through(chain).SampledBy(Fast).Over(10.us());
        Assert.Equal(expected, outlook.DisplayedEdge!.Value.Seconds, 2e-5 * expected);
    }

    // A triangular pulse behind a far wider chain keeps its height; behind a narrow one it shows what the difference of two ramps gives, less than the rectangle of its width.
    [Fact]
    public void WatchedPulseWithEdges_IsLowerThanARectangle()
    {
        Outlook rectangle = Watch(default), edges = Watch(2.ns());
        Assert.True(edges.Events!.Height < rectangle.Events!.Height);
        Signal pulse = Response.Gaussian(200.MHz()).Apply(Signal.SinglePulse(1.Vpp(), 2.5.ns(), 2.ns(), 2.ns()));
        Assert.Equal(pulse.Maximum.Volts, edges.Events.Height.Fraction, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => Watch(2.1.ns()));

        static Outlook Watch(Duration rise) => Clock.Through(Response.Gaussian(200.MHz())).SampledBy(Fast).WatchingFor(2.5.ns(), null, rise).Over(1.us());
    }
}
