using System;
using System.Collections.Generic;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Acquisition.Core.Signals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>A slow clock with fast edges, the commonest case of a bench: millions of harmonics, drawn by adding up what its edges do.</summary>
public sealed class SlowClockTests
{
    private static readonly Response Chain = Response.Gaussian(200.MHz()).Then(Response.SinglePole(500.MHz()));

    [Fact]
    public void SquareOf1Kilohertz_WithEdgesOf1Nanosecond_RisesAsTheEdgeAlone()
    {
        Signal clock = Chain.Apply(Signal.Square(1.kHz(), 2.Vpp(), 1.ns()));
        Func<double, double> edge = Chain.EdgeOutput(new Edge(1.ns()));

        for (double t = -10e-9; t < 40e-9; t += 0.13e-9)
        {
            Assert.Equal(2 * edge(t) - 1, clock.Value(t), 1e-9);
            Assert.Equal(1 - 2 * edge(t), clock.Value(0.5e-3 + t), 1e-9);
            Assert.Equal(2 * edge(t) - 1, clock.Value(-7e-3 + t), 1e-6);
        }
        Assert.Equal(2, clock.PeakToPeak.Volts, 1e-10);
        Assert.Equal(0, clock.Dc.Volts, 1e-15);
    }

    [Fact]
    public void RareFastPulses_PeakLikeThePulseAlone()
    {
        Signal alone = Response.Gaussian(156.MHz()).Apply(Signal.SinglePulse(1.Vpp(), 3.ns(), 0.2.ns(), 0.2.ns()));
        Signal train = Response.Gaussian(156.MHz()).Apply(Signal.PulseTrain(20.kHz(), 1.Vpp(), 3.ns(), 0.2.ns(), 0.2.ns()));

        Assert.Equal(alone.PeakToPeak.Volts, train.PeakToPeak.Volts, 1e-6);
        Assert.Equal(3e-9 * 20e3, train.Dc.Volts, 1e-15);
    }

    /// <summary>±1 V through τ, steady state: 1 - 2 exp(-t/τ)/(1 + exp(-T/2τ)) (any textbook of circuits); its mean square is 1 - (4 τ/T) tanh(T/4τ).</summary>
    [Theory]
    [InlineData(1, 200e6)]
    [InlineData(1e3, 200e6)]
    [InlineData(1e6, 30e6)]
    public void SquareThroughASinglePole_IsTheExponentialOfTheTextbook(double hertz, double corner)
    {
        Signal seen = Response.SinglePole(Frequency.FromHertz(corner)).Apply(Signal.Square(Frequency.FromHertz(hertz), 2.Vpp()));
        double tau = 1 / (2 * Math.PI * corner), half = 0.5 / hertz;

        for (double t = 0.01 * tau; t < Math.Min(half, 30 * tau); t *= 1.1)
            Assert.Equal(1 - 2 * Math.Exp(-t / tau) / (1 + Math.Exp(-half / tau)), seen.Value(t), 1e-10);
        Assert.Equal(Math.Sqrt(1 - 2 * tau / half * Math.Tanh(half / (2 * tau))), seen.AcRms.Volts, 1e-10);
    }

    /// <summary>
    /// Behind a high-pass and a low-pass pole the step is τ₁/(τ₁ - τ₂) (exp(-t/τ₁) - exp(-t/τ₂)); repeated, each exponential is divided by 1 + exp(-T/2τ). From a coupling that
    /// forgets within a period to one that remembers 100 000 of them.
    /// </summary>
    [Theory]
    [InlineData(1e3, 2e4)]
    [InlineData(1e3, 1e3)]
    [InlineData(1e3, 100)]
    [InlineData(1e3, 10)]
    [InlineData(1e3, 1)]
    [InlineData(20e3, 3.5)]
    [InlineData(1e6, 10)]
    public void SquareBehindAnAcCoupling_DroopsAsTheTextbookSays(double hertz, double coupling)
    {
        const double band = 1e9;
        Signal seen = Response.HighPass(Frequency.FromHertz(coupling)).Then(Response.SinglePole(Frequency.FromHertz(band))).Apply(Signal.Square(Frequency.FromHertz(hertz), 2.Vpp()));
        double slow = 1 / (2 * Math.PI * coupling), fast = 1 / (2 * Math.PI * band), half = 0.5 / hertz;

        for (double t = 0.01 * fast; t < half; t *= 1.3)
        {
            double expected = 2 * slow / (slow - fast) * (Math.Exp(-t / slow) / (1 + Math.Exp(-half / slow)) - Math.Exp(-t / fast) / (1 + Math.Exp(-half / fast)));
            Assert.Equal(expected, seen.Value(t), 2e-8);
            Assert.Equal(-expected, seen.Value(half + t), 2e-8);
        }
        Assert.IsType<SuperposedSignal>(seen);
    }

    public static TheoryData<string> Responses => ["gaussian", "bessel", "butterworth", "ringing", "coupled", "echo"];

    private static Response Named(string name) => name switch
    {
        "gaussian" => Response.Gaussian(50.MHz()),
        "bessel" => Response.Bessel(4, 50.MHz()),
        "butterworth" => Response.Butterworth(4, 50.MHz()),
        "ringing" => Response.SecondOrder(40.MHz(), Ratio.FromFraction(0.05)),
        "coupled" => Response.HighPass(20.kHz()).Then(Response.Gaussian(50.MHz())),
        _ => Response.Parallel(Response.Gaussian(50.MHz()), Response.Gaussian(40.MHz()).Then(Response.Delay(83.ns())).Then(Response.Attenuator(14.dB()))),
    };

    /// <summary>Where both ways work they agree: the sum over edges against the sum over lines.</summary>
    [Theory, MemberData(nameof(Responses))]
    public void SumOfEdges_IsTheSumOfHarmonics(string name)
    {
        Response response = Named(name);
        var source = (LevelSignal)Signal.Trapezoid(1.MHz(), 2.Vpp(), Ratio.FromPercent(30), 5.ns(), 9.ns()).WithOffset(0.3.V());
        EdgeSum edges = EdgeSum.Of(source, response)!;
        var lines = new FilteredSignal(source, response);

        for (int i = 0; i < 400; i++)
            Assert.Equal(lines.Value(i * 2.5e-9), edges.Value(i * 2.5e-9), 1e-8);
    }

    // Harmonics are summed as far as each of them matters: of a hundred bits they leave a few 1e-8.
    [Property(MaxTest = 40)]
    public Property SumOfEdgesOfAnyPattern_IsTheSumOfHarmonics() => Prop.ForAll(
        Gen.Choose(0, 1).NonEmptyListOf().Where(bits => bits.Contains(0) && bits.Contains(1)).ToArbitrary(),
        Gen.Choose(3, 40).ToArbitrary(),
        (bits, megahertz) =>
        {
            var source = (LevelSignal)Signal.BitPattern([.. bits.ConvertAll(bit => bit == 1)], BitRate.FromMegabitsPerSecond(10), 1.Vpp(), 4.ns());
            Response response = Response.Bessel(3, megahertz.MHz());
            EdgeSum edges = EdgeSum.Of(source, response)!;
            var lines = new FilteredSignal(source, response);
            double period = source.Seconds;
            for (int i = 0; i < 50; i++)
            {
                if (Math.Abs(lines.Value(i * period / 50) - edges.Value(i * period / 50)) > 5e-8)
                    return false;
            }
            return true;
        });

    [Fact]
    public void AFurtherResponse_ActsOnTheSourceBehindBoth()
    {
        Response first = Response.SinglePole(200.MHz()), second = Response.Gaussian(100.MHz());
        Signal source = Signal.Square(1.kHz(), 2.Vpp(), 1.ns()), twice = second.Apply(first.Apply(source).WithOffset(0.5.V())), once = first.Then(second).Apply(source);

        for (double t = -5e-9; t < 20e-9; t += 1e-9)
            Assert.Equal(once.Value(t) + 0.5, twice.Value(t), 1e-9);
    }

    [Fact]
    public void APadThatPassesEverything_LeavesASlowClockAsItIs()
    {
        Signal source = Signal.Square(1.kHz(), 2.Vpp(), 1.ns()), seen = Response.Attenuator(6.0.dB()).Apply(source);

        for (double t = -1e-9; t < 1e-9; t += 0.1e-9)
            Assert.Equal(Math.Pow(10, -0.3) * source.Value(t), seen.Value(t), 1e-9);
    }

    [Fact]
    public void HarmonicsOfASlowClock_CarryTheGainOfTheResponse()
    {
        Signal source = Signal.Square(1.kHz(), 2.Vpp(), 1.ns()), seen = Chain.Apply(source);

        foreach (int n in new[] { 1, 3, 1001, 100_001 })
            Assert.Equal(source.Harmonic(n).Peak.Volts * Chain.AmplitudeRatio((n * 1e3).Hz()).Fraction, seen.Harmonic(n).Peak.Volts, 1e-14);
    }

    /// <summary>Poles eleven decades apart: the slow one keeps its digits. exp(-t/τ₁) - exp(-t/τ₂), times τ₁/(τ₁ - τ₂).</summary>
    [Fact]
    public void StepOfAnAcCouplingBeforeAFastInput_KeepsTheDigitsOfTheSlowPole()
    {
        Response chain = Response.HighPass(0.1.Hz()).Then(Response.SinglePole(10.GHz()));
        double slow = 1 / (2 * Math.PI * 0.1), fast = 1 / (2 * Math.PI * 10e9);

        foreach (double t in new[] { 1e-12, 1e-9, 1e-6, 1e-3, 0.1, 1, 3, 10 })
            Assert.Equal(slow / (slow - fast) * (Math.Exp(-t / slow) - Math.Exp(-t / fast)), chain.StepAt(t.s()).Fraction, 1e-13);
    }
}
